"""Lines of the finish: what ends the game, and what it comes to."""
