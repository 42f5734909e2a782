"""What the page asks for: pure functions that run in a worker and answer with values of plain words and numbers."""
