"""The resolved core: what a game means, in values. `from_game.py` is the door."""
