"""From what a teacher types to values: games, classes, halls, options."""
