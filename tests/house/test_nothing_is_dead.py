"""Whatever the program defines is used, by it or by a test of it."""

from __future__ import annotations

import re

import pytest
from sources import PACKAGES, ROOT

vulture = pytest.importorskip("vulture", reason="the tool that looks for what nobody uses is not installed")

USED_UNSEEN = frozenset(
    (
        "say_wish",  # a command is called by its name
        "likewise",  # taken out by its place, in a match
        "linked",  # a word of the sentence that changes nothing of what it means
        "KEEPS_SCORE", "HELPS",  # found by their values, the words of the sentence
        "length_cm",  # asked for by the name that it has in the data
        # What other libraries read of what they are handed:
        "_custom_shell_complete", "create_system", "external_attr", "has_sorted_indices", "priority", "should_exit",
        "writable",
    )
)  # fmt: skip


def named_in_texts() -> set[str]:
    """The words of templates, scripts and tables of addresses, and the sentences that rules of the grammar name."""
    pages = [path for path in (ROOT / "compose" / "page").rglob("*") if path.suffix in (".html", ".js")]
    tables = [ROOT / "compose" / "page" / "screens" / "__init__.py"]
    words = {word for path in (*pages, *tables) for word in re.findall(r"\w+", path.read_text(encoding="utf-8"))}
    rules = re.findall(r"^\??(\w+):", (ROOT / "grammar" / "rules.lark").read_text(encoding="utf-8"), re.MULTILINE)
    return words | {"".join(part.title() for part in rule.split("_")) for rule in rules}


def test_nothing_is_defined_that_nobody_uses() -> None:
    looking = vulture.Vulture(ignore_decorators=["@*.default"])
    looking.scavenge([str(ROOT / name) for name in (*PACKAGES, "tests")])
    unused = [each for each in looking.get_unused_code() if "tests" not in each.filename.relative_to(ROOT).parts[:1]]
    known = USED_UNSEEN | named_in_texts()
    assert not [f"{each.filename.relative_to(ROOT)}:{each.first_lineno} {each.name}" for each in unused
                if each.name not in known]  # fmt: skip
    assert {each.name for each in unused} >= USED_UNSEEN, "what is used now needs no mention"
