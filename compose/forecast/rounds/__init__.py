"""Rounds played at random."""
