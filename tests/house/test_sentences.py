"""The files of compose/ that still read sentences of the tree: the list only shrinks."""

from __future__ import annotations

TREE = ("compose.modifiers.",)  # modifiers change sheets, and a sheet is a tree
