"""Lines of the space, the sides, the kit and the set-up: what there is, and where it starts."""
