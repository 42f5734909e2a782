"""The doors to the data files; each reads its files once and keeps them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import TypeVar

from library.reading import HERE, DataError, Entry, read_file
from library.records import (
    BALL_SKILLS,
    CATEGORIES,
    READ,
    SERVES,
    WALLS,
    Court,
    Door,
    Figure,
    Hall,
    KitItem,
    Marking,
    Obstacle,
    Source,
)

OPENINGS = ("", "up", "to the front")
SIZES = ("diameter_cm", "width_cm", "height_cm", "length_cm", "mass_g", "stands_above_floor_cm")
Kind = TypeVar("Kind")


@cache
def game_paths() -> tuple[Path, ...]:
    """The rule files of the library's games, by name."""
    return tuple(sorted((HERE / "games").glob("*.rules")))


@cache
def modifier_paths() -> tuple[Path, ...]:
    """The rule files of the library's modifiers, by name."""
    return tuple(sorted((HERE / "modifiers").glob("*.rules")))


@cache
def remix_paths() -> tuple[Path, ...]:
    """The rule files of the library's remixes, by name."""
    return tuple(sorted((HERE / "remixes").glob("*.rules")))


def class_paths() -> tuple[Path, ...]:
    """The rule files of the invented classes, by name."""
    return tuple(sorted((HERE / "classes").glob("*.rules")))


def beginning_paths() -> tuple[Path, ...]:
    """The sheets to begin from, by kind of play, in the order of their names."""
    return tuple(sorted((HERE / "beginnings").glob("*.rules")))


def granted_path() -> Path:
    """The rule sheet that every game takes for granted."""
    return HERE / "taken-for-granted.rules"


@cache
def sources() -> Mapping[str, Source]:
    """Every source a number may name, by its key."""
    return gather(read_file(HERE / "sources.toml"), source_from)


@cache
def kit_catalogue() -> Mapping[str, KitItem]:
    """The kit by name; raises DataError on a malformed file, as do the doors below."""
    return folder("kit", kit_from)


@cache
def fixed_kit() -> frozenset[str]:
    """All names of what does not fall when it is hit."""
    return frozenset(name for name, item in kit_names().items() if item.fixed)


@cache
def kit_names() -> Mapping[str, KitItem]:
    """The kit by every name it goes by: name, plural and other names, in small letters."""
    found: dict[str, KitItem] = {}
    for item in kit_catalogue().values():
        for name in {item.name, item.plural, *item.also}:
            if name in found:
                raise DataError(f"library/kit: `{name}` names both {found[name].name} and {item.name}")
            found[name] = item
    return MappingProxyType(found)


@cache
def kit_categories() -> Mapping[str, str]:
    """The category of everything in the kit, by every singular name it goes by."""
    items = kit_catalogue().values()
    return MappingProxyType({name: item.category for item in items for name in (item.name, *item.also)})


@cache
def halls() -> Mapping[str, Hall]:
    """The halls by name."""
    return folder("halls", hall_from)


@cache
def courts() -> Mapping[str, Court]:
    """The courts of the sports whose lines halls carry, by name."""
    return folder("courts", court_from)


def folder(name: str, make: Callable[[str, Entry], Kind]) -> Mapping[str, Kind]:
    """Every table of every file of a folder; a name may stand only once in the folder."""
    found: dict[str, Kind] = {}
    for path in sorted((HERE / name).glob("*.toml")):
        whole = read_file(path)
        for key, value in gather(whole, make).items():
            if key in found:
                raise whole.wrong(key, "stands in another file too")
            found[key] = value
    return MappingProxyType(found)


def gather(whole: Entry, make: Callable[[str, Entry], Kind]) -> Mapping[str, Kind]:
    """The tables of one file, each made into its record."""
    return MappingProxyType({key: make(key, entry) for key, entry in whole.entries()})


def source_from(key: str, entry: Entry) -> Source:
    """A source of sources.toml; only our own habits and assumptions may lack a year."""
    entry.only("title", "issuer", "year", "section", "read")
    read = entry.one_of("read", READ)
    year = int(entry.number("year")) if "year" in entry.values else None
    return Source(key, entry.text("title"), entry.text("issuer", ""), year, entry.text("section", ""), read)


def kit_from(name: str, entry: Entry) -> KitItem:
    """A kit item; a ball says what it may be used for, whatever can be hit says how big it is."""
    entry.only("plural", "category", "about", "also", "soft", "fixed", "may", "serves", "opens", "caution", *SIZES)
    category = entry.one_of("category", CATEGORIES)
    sizes = {size: entry.figure_under(size, sources()) for size in SIZES}
    may, serves = entry.words("may", BALL_SKILLS), entry.words("serves", SERVES)
    if category in ("ball", "ring") and sizes["diameter_cm"] is None:
        raise entry.wrong("diameter_cm", f"a {category} must have it")
    if category == "target" and sizes["diameter_cm"] is None and sizes["width_cm"] is None:
        raise entry.wrong("width_cm", "a target must have it, or a diameter")
    if category == "ball" and not may:
        raise entry.wrong("may", "a ball must be fit for something")
    if category in ("body", "furniture") and not serves:
        raise entry.wrong("serves", f"what is a {category} must serve for something, or anything could stand in for it")
    about, caution = entry.text("about"), entry.text("caution", "")
    plural, also = entry.text("plural"), entry.words("also")
    soft, fixed = entry.flag("soft"), entry.flag("fixed")
    opens = entry.one_of("opens", OPENINGS, "")
    return KitItem(name, plural, category, about, also, soft, fixed, may, serves, opens=opens, caution=caution, **sizes)


def needed(entry: Entry, key: str) -> Figure:
    """A figure that must be there."""
    return entry.entry(key).figure(sources())


def hall_from(name: str, entry: Entry) -> Hall:
    """A hall with its doors, what stands fixed in it and what is painted on its floor."""
    lists = ("door", "obstacle", "marking")
    entry.only("about", "invented", "length_m", "width_m", "height_m", *lists)
    size = (needed(entry, "length_m"), needed(entry, "width_m"), needed(entry, "height_m"))
    doors, obstacles, markings = (tuple(entry.listed(key)) for key in lists)
    return Hall(
        name,
        entry.text("about"),
        entry.flag("invented"),
        *size,
        tuple(door_from(door) for door in doors),
        tuple(obstacle_from(obstacle) for obstacle in obstacles),
        tuple(marking_from(marking) for marking in markings),
    )


def door_from(entry: Entry) -> Door:
    """A door of a hall."""
    entry.only("side", "at_m", "width_m", "source")
    side = entry.one_of("side", WALLS)
    return Door(side, entry.number("at_m"), entry.number("width_m"), entry.source(sources()))


def obstacle_from(entry: Entry) -> Obstacle:
    """A fixed thing of a hall."""
    entry.only("name", "x_m", "y_m", "length_m", "width_m", "source")
    x, y, length, width = (entry.number(key) for key in ("x_m", "y_m", "length_m", "width_m"))
    return Obstacle(entry.text("name"), x, y, length, width, entry.source(sources()))


def marking_from(entry: Entry) -> Marking:
    """A court painted in a hall; its name must be one of the courts."""
    entry.only("court", "x_m", "y_m", "turned", "source")
    court = entry.one_of("court", tuple(courts()))
    x, y, turned = entry.number("x_m"), entry.number("y_m"), entry.flag("turned")
    return Marking(court, x, y, turned, entry.source(sources()))


def court_from(name: str, entry: Entry) -> Court:
    """A court of a sport."""
    strips = ("run_off_side_m", "run_off_end_m", "clear_height_m")
    entry.only("about", "length_m", "width_m", *strips)
    around = {key: entry.figure_under(key, sources()) for key in strips}
    return Court(name, entry.text("about"), needed(entry, "length_m"), needed(entry, "width_m"), **around)
