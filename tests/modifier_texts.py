"""Hypothesis strategies for modifiers: new ones as text, and those of the library with any values."""

from __future__ import annotations

from game_texts import Draw, chance, texts, titles
from hypothesis import strategies as st

from compose.modifiers.modifier import Use
from compose.modifiers.of_library import library_modifiers
from grammar.sentences.base import Quantity

CHANGES = (
    "change overarm throw, underarm throw to roll",
    "add 2 balls",
    "take away 1 balls",
    "add 1 targets for each side",
    "make every target like a bucket",
    "make every target 150 % as big",
    "make the court 75 % as long",
    "make the court 14 m by 8 m",
)
BLOCKS = (
    ("put in play", "players fetch balls from the middle"),
    ("put in care", '"Mind the benches."'),
    ("replace in play", "a ball is held at most 6 s"),
    ("replace in when", "a target is knocked: it stands up again"),
    ("replace in finish", "after 4 min: more targets standing wins, else a draw"),
    ("take from when", "a player is hit: play goes on"),
)
NEEDS = ("needs a ball", "needs a target", "needs a half", "needs a ball fit for roll", "needs overarm throw")


@st.composite
def modifiers(draw: Draw) -> str:
    """The text of a modifier without mistakes."""
    lines = [f"modifier {draw(titles)}", f"  heading {draw(st.sampled_from(('space', 'task', 'equipment', 'people')))}"]
    lines.append(f'  about "{draw(texts.filter(bool))}"')
    if chance(draw):
        lines += ["  takes n: 1 to 6, usually 2", "  add n balls"]
    lines += [f"  {need}" for need in draw(st.lists(st.sampled_from(NEEDS), max_size=2, unique=True))]
    lines += [f"  {change}" for change in draw(st.lists(st.sampled_from(CHANGES), min_size=1, max_size=3, unique=True))]
    for heading, line in draw(st.lists(st.sampled_from(BLOCKS), max_size=2, unique=True)):
        lines += [f"  {heading}", *([f"    note: {draw(texts)}"] if chance(draw, 4) else []), f"    {line}"]
    if chance(draw):
        lines += [f'  clashes with "{draw(texts)}"', f'  caution "{draw(texts)}"']
    return "\n".join(lines) + "\n"


@st.composite
def uses(draw: Draw) -> Use:
    """A modifier of the library with any values that it takes."""
    modifier = draw(st.sampled_from(library_modifiers()))
    values = {}
    for takes in modifier.takes:
        least, most = int(takes.least.value), int(takes.most.value)
        if chance(draw):
            values[takes.parameter] = Quantity(float(draw(st.integers(least, most))), takes.usually.unit)
    return Use(modifier, values)
