"""The modifiers under their four headings: which go with a remix, and why the others do not."""

from __future__ import annotations

import library
from compose.modifiers.apply import apply
from compose.modifiers.clash import clash
from compose.modifiers.modifier import Modifier, Use
from compose.modifiers.remix import Remix
from compose.page.answers.at_hand import modifiers, remixed
from compose.page.answers.said import said
from compose.page.answers.values import Choice, Heading
from compose.page.wording import page_wording
from compose.page.work.worker import raise_if_withdrawn
from compose.telling.wording import Wording

HEADINGS = ("space", "task", "equipment", "people")


def choices(texts: tuple[str, ...], uses: tuple[str, ...], language: str) -> tuple[Heading, ...]:
    """All modifiers of the library for the remix that these make of the game."""
    wording, outcome = page_wording(language), remixed(texts, uses)
    made = outcome.value or remixed(texts, ()).value
    if made is None:
        return ()
    say = wording.say
    labels = {"space": say("Space"), "task": say("Task"), "equipment": say("Equipment"), "people": say("People")}
    by_heading: dict[str, list[Choice]] = {name: [] for name in HEADINGS}
    for modifier in modifiers().values():
        raise_if_withdrawn()
        by_heading.setdefault(modifier.step, []).append(_choice(modifier, made, wording))
    return tuple(
        Heading(name, labels.get(name, name), tuple(sorted(some, key=lambda each: bool(each.why_not))))
        for name, some in by_heading.items()
    )


def _choice(modifier: Modifier, made: Remix, wording: Wording) -> Choice:
    used = any(use.modifier.name == modifier.name for use in made.uses)
    why = "" if used else _why_not(modifier, made, wording)
    return Choice(modifier.name, wording.author(modifier.name), wording.author(modifier.about), used, why)


def _why_not(modifier: Modifier, made: Remix, wording: Wording) -> str:
    use = Use(modifier)
    for other in made.uses:
        if clash(use, other):
            return wording.say("Does not go with {other}.", other=wording.author(other.modifier.name))
    outcome = apply(made.game, use, library.kit_names())
    if outcome.value is None:
        return said(outcome.findings[0], wording).title.replace(f"`{modifier.name}` does not fit: ", "")
    return "" if outcome.value[1] else wording.say("It changes nothing here.")
