"""A forecast in words and as JSON."""
