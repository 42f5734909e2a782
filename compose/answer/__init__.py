"""All that is known of a game for a class, in one value: what speaks of a game speaks from it."""
