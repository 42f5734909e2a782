"""Which modifiers mend a game or meet wishes: the smallest sets first, each with what it bought."""
