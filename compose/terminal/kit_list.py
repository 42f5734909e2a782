"""The kit of the library in words: what each thing is like, how large, and which skills it is fit for."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from typing import Any

import attrs

import library
from compose.terminal.answer import WIDTH, refuse, say, say_json
from grammar.words import count, did_you_mean, listing
from library import Figure, KitItem
from library.records import CATEGORIES

HEADINGS = {
    "ball": "BALLS",
    "target": "TARGETS",
    "ring": "RINGS",
    "body": "BIG BODIES",
    "furniture": "FURNITURE",
}
_SIZES = (
    ("diameter_cm", "cm across"),
    ("width_cm", "cm wide"),
    ("height_cm", "cm high"),
    ("length_cm", "cm long"),
    ("stands_above_floor_cm", "cm above the floor"),
    ("mass_g", "g"),
)


def list_kit(skill: str | None, as_json: bool) -> None:
    """Everything in the kit, or only the balls that are fit for a skill."""
    items = library.kit_catalogue().values()
    known = sorted({each for item in items for each in item.may})
    if skill is not None and skill not in known:
        hint = did_you_mean(skill, known) or f"Balls are fit for {listing(known, 'or')}."
        refuse(f"No ball is fit for `{skill}`.", hint, as_json)
    chosen = [item for item in items if skill is None or skill in item.may]
    if as_json:
        say_json({"kit": [_json(item) for item in chosen]})
        return
    for category in CATEGORIES:
        of_category = [item for item in chosen if item.category == category]
        if of_category:
            say(HEADINGS[category])
        for item in of_category:
            for line in _told(item):
                say(line)
    example = next(iter(chosen))
    say(f'{count(len(chosen), "thing")}. In a sheet: "4 {example.plural}", or under a name of your own:')
    say(f'"4 eggs, like a {example.name}".')


def _told(item: KitItem) -> Iterator[str]:
    names = (item.plural, *(f"or {name}" for name in item.also))
    yield from _wrapped(f"{item.name}  ({', '.join(names)})", "  ")
    yield from _wrapped(item.about, "    ")
    softness = ("soft",) if item.soft else ()
    yield from _wrapped(f"{', '.join((*softness, *_sizes(item))).capitalize()}.", "    ")
    if item.may:
        yield from _wrapped(f"Fit for {listing(item.may)}.", "    ")
    if item.caution:
        yield from _wrapped(f"Mind: {item.caution}", "    ")


def _wrapped(text: str, lead: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=lead, subsequent_indent=f"{lead}  ", break_on_hyphens=False)


def _figures(item: KitItem) -> Iterator[tuple[str, str, Figure]]:
    for field, unit in _SIZES:
        figure = getattr(item, field)
        if figure is not None:
            yield field, unit, figure


def _sizes(item: KitItem) -> Iterator[str]:
    """Such as "16 to 21 cm across (usually 17.8)"."""
    for _, unit, figure in _figures(item):
        if figure.low == figure.high:
            yield f"{figure.usual:,g} {unit}"
        else:
            yield f"{figure.low:,g} to {figure.high:,g} {unit} (usually {figure.usual:,g})"


def _json(item: KitItem) -> dict[str, Any]:
    sizes = {field: attrs.asdict(figure, filter=_is_number) for field, _, figure in _figures(item)}
    return {
        "name": item.name,
        "plural": item.plural,
        "also": list(item.also),
        "category": item.category,
        "about": item.about,
        "soft": item.soft,
        "fit_for": list(item.may),
        "caution": item.caution,
        **sizes,
    }


def _is_number(field: attrs.Attribute[Any], _: object) -> bool:
    return field.name in ("low", "usual", "high")
