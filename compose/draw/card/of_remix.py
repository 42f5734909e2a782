"""The card of a remix: under its own title, with its modifiers and where it comes from."""

from __future__ import annotations

import attrs

import library
from compose.draw.card.card import Card, CardNotes, card_of
from compose.draw.plan.of_class import class_plan_on_card
from compose.draw.units import METRIC, Units
from compose.modifiers.remix import Remix
from compose.modifiers.remix_sheet import remix_title
from compose.modifiers.words_before import words_before
from compose.staging.resolved import resolved
from compose.staging.staging import Staging
from compose.telling.uses import label_said
from compose.telling.wording import ENGLISH, Wording
from grammar.frozen import frozen
from grammar.game import Game


@frozen
class Look:
    """Units, language, and whether in large print."""

    units: Units = METRIC
    wording: Wording = ENGLISH
    large: bool = False


USUAL_LOOK = Look()


def titled(made: Remix) -> Game:
    """The game under the title of the remix."""
    return attrs.evolve(made.game, sheet=attrs.evolve(made.game.sheet, title=remix_title(made)))


def card_of_remix(
    made: Remix,
    staging: Staging,
    look: Look = USUAL_LOOK,
    known: tuple[str, ...] = (),
) -> Card:
    """The card of a remix: its modifiers, its lineage, and what is known of it where that was asked."""
    labels = tuple(label_said(use, look.wording) for use in made.uses)
    notes = CardNotes(
        modifiers=tuple(zip(labels, (use.modifier.about for use in made.uses), strict=True)),
        known=known,
        lineage=(made.base.title, *labels) if made.uses else (),
        before=words_before(made),
    )
    game = titled(made)
    plan = class_plan_on_card(game, staging, units=look.units, wording=look.wording, large=look.large)
    kit = library.kit_names()
    return card_of(resolved(game), plan, notes, staging=staging, catalogue=kit, units=look.units, wording=look.wording)
