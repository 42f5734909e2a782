"""The modifiers under their four headings: which go with a remix, and why the others do not."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from compose.modifiers.clash import clash
from compose.modifiers.modifier import Modifier, Use, why_not
from compose.modifiers.remix import Remix
from compose.page.answers.at_hand import made, modifiers, use_of
from compose.page.answers.said import said
from compose.page.answers.values import Choice, Heading
from compose.page.wording import page_wording
from compose.page.work.worker import raise_if_withdrawn
from compose.telling.wording import Wording
from grammar.finding import Finding, retold

HEADINGS = ("space", "task", "equipment", "people")


def choices(texts: tuple[str, ...], uses: tuple[str, ...], language: str) -> tuple[Heading, ...]:
    """All modifiers of the library for the remix that these make of the game."""
    wording, there = page_wording(language), uses if made(texts, uses).value is not None else ()
    remix = made(texts, there).value
    if remix is None:
        return ()
    used = tuple(use.modifier.name for use in remix.uses)

    def why_not(modifier: Modifier) -> str:
        raise_if_withdrawn()
        return _why_not(modifier, texts, there, remix, wording)

    return _listed(used, wording, why_not)


def names(uses: tuple[str, ...], language: str) -> tuple[Heading, ...]:
    """The same before anybody tried which of them fit."""
    used = tuple(use.value.modifier.name for use in map(use_of, uses) if use.value is not None)
    return _listed(used, page_wording(language), lambda modifier: "")


def _listed(used: Sequence[str], wording: Wording, why_not: Callable[[Modifier], str]) -> tuple[Heading, ...]:
    say = wording.say
    labels = {"space": say("Space"), "task": say("Task"), "equipment": say("Equipment"), "people": say("People")}
    by_heading: dict[str, list[Choice]] = {name: [] for name in HEADINGS}
    for each in modifiers().values():
        on, label, about = each.name in used, wording.author(each.name), wording.author(each.about)
        choice = Choice(each.name, label, about, on, "" if on else why_not(each))
        by_heading.setdefault(each.step, []).append(choice)
    return tuple(Heading(name, labels.get(name, name), tuple(some)) for name, some in by_heading.items())


def _without_name(finding: Finding) -> Finding:
    return retold(finding, why_not(finding))


def _why_not(modifier: Modifier, texts: tuple[str, ...], uses: tuple[str, ...], remix: Remix, wording: Wording) -> str:
    use = Use(modifier)
    for other in remix.uses:
        if clash(use, other):
            return wording.say("Does not go with “{other}”.", other=wording.author(other.modifier.name))
    more, before = made(texts, (*uses, modifier.name)), made(texts, uses)
    if more.value is None:
        return said(_without_name(more.findings[len(before.findings)]), wording).title
    changed = len(more.value.edits) > len(remix.edits)
    return "" if changed else wording.say("It changes nothing here.")
