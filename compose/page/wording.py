"""The words of the page: those of all outputs, with the page's own catalogue beside them."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path

from attrs import evolve

from compose.telling.wording import Wording, catalogue, languages, wording_of

FOLDER = Path(__file__).parent / "messages"
NAMES: Mapping[str, str] = {"en": "English", "fr": "Français"}


@cache
def page_wording(language: str) -> Wording:
    """The wording of a language of `languages()`; English where there is none of that name."""
    if language not in languages():
        return wording_of("en")
    usual = wording_of(language)
    if usual.english:
        return usual
    messages, several = catalogue(FOLDER, language)
    return evolve(usual, messages={**usual.messages, **messages}, several={**usual.several, **several})
