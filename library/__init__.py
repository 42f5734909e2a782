"""The library: games, modifiers, kit, halls, courts and norms as data, and the doors to read them.

The doors open late: naming one loads the loader, importing the package alone loads nothing.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from library.granted import granted_sheet
    from library.load import (
        beginning_paths,
        class_paths,
        courts,
        fixed_kit,
        game_paths,
        granted_path,
        halls,
        kit_catalogue,
        kit_categories,
        kit_names,
        modifier_paths,
        remix_paths,
        sources,
    )
    from library.norm_tables import norms
    from library.own_halls import own_hall
    from library.reading import DataError
    from library.records import (
        Court,
        Door,
        Figure,
        Hall,
        KitItem,
        Marking,
        Norms,
        Obstacle,
        Row,
        Source,
        Table,
        Word,
        WordList,
    )
    from library.word_lists import word_list

__all__ = [
    "Court",
    "DataError",
    "Door",
    "Figure",
    "Hall",
    "KitItem",
    "Marking",
    "Norms",
    "Obstacle",
    "Row",
    "Source",
    "Table",
    "Word",
    "WordList",
    "beginning_paths",
    "class_paths",
    "courts",
    "fixed_kit",
    "game_paths",
    "granted_path",
    "granted_sheet",
    "halls",
    "kit_catalogue",
    "kit_categories",
    "kit_names",
    "modifier_paths",
    "norms",
    "own_hall",
    "remix_paths",
    "sources",
    "word_list",
]
HOMES = {
    "DataError": "reading",
    "granted_sheet": "granted",
    "norms": "norm_tables",
    "own_hall": "own_halls",
    "word_list": "word_lists",
}


def __getattr__(name: str) -> object:
    """A public name, fetched from its module the first time it is asked for."""
    if name not in __all__:
        raise AttributeError(f"the library has no {name!r}")
    module = HOMES.get(name, "load" if name.islower() else "records")
    value: object = getattr(import_module(f"library.{module}"), name)
    globals()[name] = value
    return value
