"""The sheet of a lesson."""
