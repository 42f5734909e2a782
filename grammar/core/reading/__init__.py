"""A sheet whose names are known → its core. `from_game.py` is the door; each room reads lines of one kind.

The rooms build on one another in this order: sheet, phrases, set_up, play, events, consequences, finish.
"""
