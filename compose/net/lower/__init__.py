"""The core of a game → the pieces of its net. Nothing here sees a sentence."""
