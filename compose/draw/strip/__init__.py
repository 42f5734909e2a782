"""A round in pictures."""
