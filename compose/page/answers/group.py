"""The class that a sheet says."""

from __future__ import annotations

from functools import lru_cache

import library
from compose.staging.class_from_sheet import class_of
from compose.staging.school_class import SchoolClass
from grammar.finding import Finding, Outcome, Severity
from grammar.parse import parse_bytes
from grammar.span import nowhere

FILE = "the sheet"  # how a text without a file is called in findings


@lru_cache(maxsize=16)
def group_of(text: str) -> Outcome[SchoolClass]:
    """The class of a text, with what is wrong where it has none."""
    rules = parse_bytes(text.encode(), FILE)
    if rules.value is None or not rules.value.classes:
        return Outcome(None, rules.findings or (refused("There is no class in it."),))
    return class_of(rules.value.classes[0], library.halls(), library.kit_categories())


def refused(title: str) -> Finding:
    """What is wrong with a question itself."""
    return Finding("U-use", Severity.ERROR, title, nowhere())
