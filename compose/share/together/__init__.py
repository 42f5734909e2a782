"""The folder that schools share."""
