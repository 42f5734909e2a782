"""Which files after the core still read sentences of the tree: the list only shrinks.

Modifiers change sheets, and a sheet is a tree; merging compares the lines of two.
"""

from __future__ import annotations

from sources import dotted, imported, modules, nodes

ON_TREES = ("compose.modifiers.", "compose.share.merge")
# Nothing joins this list. What no longer reads sentences is taken off it.
STILL = (
    "compose.fit.school_class",
)


def readers() -> list[str]:
    """The files of compose/ that import sentences, but for those whose work is with trees."""
    found = {
        dotted(path)
        for path in modules()
        for node in nodes(path)
        for name in imported(node)
        if name == "grammar.sentences" or name.startswith("grammar.sentences.")
    }
    return sorted(name for name in found if name.startswith("compose.") and not name.startswith(ON_TREES))


def test_no_file_begins_to_read_sentences() -> None:
    assert not [name for name in readers() if name not in STILL]


def test_the_list_only_shrinks() -> None:
    assert not [name for name in STILL if name not in readers()]
