"""What the tests of the fit share: classes, halls and games as texts."""

from __future__ import annotations

import sys
from pathlib import Path
from textwrap import dedent

import library
from compose.staging.class_from_sheet import class_of
from compose.staging.school_class import SchoolClass
from grammar.finding import Finding
from grammar.parse import parse

sys.path.append(str(Path(__file__).parents[1] / "modifiers"))

BECK = """
    class Beck Class
      about "An invented class."
      class of 27
      ages 9 to 10
      in the hall "Fellgate school sports hall"
      lesson of 45 min
      8 foam balls
      12 plastic pins
    """


def sheet_of(text: str) -> SchoolClass:
    """The class in a text; the test fails where it has mistakes."""
    outcome = parse(dedent(text).lstrip("\n"))
    assert outcome.value is not None, [each.title for each in outcome.findings]
    found = class_of(outcome.value.classes[0], library.halls(), library.kit_categories())
    assert found.value is not None, [each.title for each in found.findings]
    return found.value


def wrong_class(text: str) -> tuple[Finding, ...]:
    """What is wrong with the class in a text."""
    outcome = parse(dedent(text).lstrip("\n"))
    assert outcome.value is not None, [each.title for each in outcome.findings]
    found = class_of(outcome.value.classes[0], library.halls(), library.kit_categories())
    assert found.value is None
    return found.findings
