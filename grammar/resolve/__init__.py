"""Tree → game: names declared and resolved, counts possible, every mistake with its place."""

from grammar.resolve.from_tree import resolve

__all__ = ["resolve"]
