"""A sheet whose names are known → its core. `from_game.py` is the door; each other file reads lines of one kind."""
