"""The modifiers under their four headings: which go with a remix, and why the others do not."""

from __future__ import annotations

from compose.modifiers.clash import clash
from compose.modifiers.modifier import Modifier, Use
from compose.modifiers.remix import Remix
from compose.page.answers.at_hand import made, modifiers
from compose.page.answers.said import said
from compose.page.answers.values import Choice, Heading
from compose.page.wording import page_wording
from compose.page.work.worker import raise_if_withdrawn
from compose.telling.wording import Wording

HEADINGS = ("space", "task", "equipment", "people")


def choices(texts: tuple[str, ...], uses: tuple[str, ...], language: str) -> tuple[Heading, ...]:
    """All modifiers of the library for the remix that these make of the game."""
    wording, there = page_wording(language), uses if made(texts, uses).value is not None else ()
    remix = made(texts, there).value
    if remix is None:
        return ()
    say = wording.say
    labels = {"space": say("Space"), "task": say("Task"), "equipment": say("Equipment"), "people": say("People")}
    by_heading: dict[str, list[Choice]] = {name: [] for name in HEADINGS}
    for modifier in modifiers().values():
        raise_if_withdrawn()
        used = any(use.modifier.name == modifier.name for use in remix.uses)
        why = "" if used else _why_not(modifier, texts, there, remix, wording)
        choice = Choice(modifier.name, wording.author(modifier.name), wording.author(modifier.about), used, why)
        by_heading.setdefault(modifier.step, []).append(choice)
    return tuple(
        Heading(name, labels.get(name, name), tuple(sorted(some, key=lambda each: bool(each.why_not))))
        for name, some in by_heading.items()
    )


def _why_not(modifier: Modifier, texts: tuple[str, ...], uses: tuple[str, ...], remix: Remix, wording: Wording) -> str:
    use = Use(modifier)
    for other in remix.uses:
        if clash(use, other):
            return wording.say("Does not go with {other}.", other=wording.author(other.modifier.name))
    more, before = made(texts, (*uses, modifier.name)), made(texts, uses)
    if more.value is None:
        return said(more.findings[len(before.findings)], wording).title.replace(f"`{modifier.name}` does not fit: ", "")
    changed = len(more.value.edits) > len(remix.edits)
    return "" if changed else wording.say("It changes nothing here.")
