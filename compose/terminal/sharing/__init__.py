"""Shelf, packs, merging and the common shelf on the terminal."""
