"""Packs: things passed on in one file."""
