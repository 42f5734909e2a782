"""The own shelf of a school."""
