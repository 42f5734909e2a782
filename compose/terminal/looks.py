"""How what is drawn shall look: hall, units and language by their names, and the card of a remix in them."""

from __future__ import annotations

import attrs
from attrs import frozen

import library
from compose.draw.card import Card, CardNotes, card_of
from compose.draw.plan import plan_on_card
from compose.draw.units import METRIC, UNITS, Units
from compose.modifiers.modifier import Use
from compose.modifiers.remix import Remix
from compose.staging.floor.values import Floor
from compose.staging.resolved import resolved
from compose.telling.wording import ENGLISH, Wording, languages, wording_of
from compose.terminal.answer import refuse
from compose.terminal.finding_games import kit
from compose.terminal.remixing import remix_title
from grammar.game import Game
from grammar.words import did_you_mean, listing
from library import Hall


@frozen
class Look:
    """Units, language, and whether in large print."""

    units: Units = METRIC
    wording: Wording = ENGLISH
    large: bool = False


USUAL_LOOK = Look()


def hall_named(name: str | None, as_json: bool) -> Hall | None:
    """A hall of the library by its name in any case; ends the command where there is none."""
    if name is None:
        return None
    halls = library.halls()
    known = {key.lower(): hall for key, hall in halls.items()}
    if name.lower() not in known:
        hint = did_you_mean(name, halls) or f"The library has {listing(halls)}."
        refuse(f"There is no hall called `{name}`.", hint, as_json)
    return known[name.lower()]


def units_named(name: str, as_json: bool) -> Units:
    """Metres or feet; ends the command where it is neither."""
    if name.lower() not in UNITS:
        refuse(f"There are no units called `{name}`.", f"Choose {listing(UNITS, 'or')}.", as_json)
    return UNITS[name.lower()]


def wording_named(language: str, as_json: bool) -> Wording:
    """A language that there is a catalogue for; ends the command where there is none."""
    if language.lower() not in (*languages(), "en-gb"):
        refuse(f"There is no language `{language}`.", f"Choose {listing(languages(), 'or')}.", as_json)
    return wording_of(language)


def titled(made: Remix) -> Game:
    """The game under the title of the remix."""
    return attrs.evolve(made.game, sheet=attrs.evolve(made.game.sheet, title=remix_title(made)))


def label_said(use: Use, wording: Wording) -> str:
    """A modifier by its name with the values that were given, in the language: "add balls (n 2)"."""
    if wording.english:
        return use.label
    from compose.modifiers.recipe import OWN_EDITS

    given = wording.listed(
        f"{wording.author(name)} {value.words().replace('.', ',')}" for name, value in use.values.items()
    )
    name = wording.say(OWN_EDITS) if use.modifier.name == OWN_EDITS else wording.author(use.modifier.name)
    return f"{name} ({given})" if given else name


def card_of_remix(
    made: Remix,
    floor: Floor,
    hall: Hall | None,
    look: Look = USUAL_LOOK,
    known: tuple[str, ...] = (),
) -> Card:
    """The card of a remix: its modifiers, its lineage, and what is known of it where that was asked."""
    labels = tuple(label_said(use, look.wording) for use in made.uses)
    notes = CardNotes(
        modifiers=tuple(zip(labels, (use.modifier.about for use in made.uses), strict=True)),
        known=known,
        lineage=(made.base.title, *labels) if made.uses else (),
    )
    game = titled(made)
    plan = plan_on_card(game, floor, hall, units=look.units, wording=look.wording, large=look.large)
    return card_of(resolved(game), plan, notes, catalogue=kit(), units=look.units, wording=look.wording)
