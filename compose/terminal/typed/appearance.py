"""How what is drawn shall look: units and language by their names."""

from __future__ import annotations

from compose.draw.units import UNITS, Units
from compose.telling.wording import Wording, languages, wording_of
from compose.terminal.answer import refuse, speak
from grammar.words import listing


def units_named(name: str, as_json: bool) -> Units:
    """Metres or feet; ends the command where it is neither."""
    if name.lower() not in UNITS:
        refuse(f"There are no units called `{name}`.", f"Choose {listing(UNITS, 'or')}.", as_json)
    return UNITS[name.lower()]


def wording_named(language: str, as_json: bool) -> Wording:
    """A language that there is a catalogue for; ends the command where there is none."""
    if language.lower() not in (*languages(), "en-gb"):
        refuse(f"There is no language `{language}`.", f"Choose {listing(languages(), 'or')}.", as_json)
    wording = wording_of(language)
    speak(wording)
    return wording
