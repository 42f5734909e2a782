"""What a sheet tells people, and how it calls its players."""

from __future__ import annotations

import re

from grammar.core.game import Told
from grammar.core.values import KindId, RoleId, SideId
from grammar.game import Game
from grammar.meanings import PlayerMeaning
from grammar.sentences import head, play
from grammar.sentences.base import Node
from grammar.words import player_of, plural

_IN_QUOTES = (play.SaidRule, head.Caution)
_ANYWAY = re.compile(r"each player carries 1 .+ at a time\.?|nobody holds more than one ball\.?", re.IGNORECASE)


def holds_anyway(sentence: Node) -> bool:
    """Whether a line in quotes says only what is so in every game: the check does not go without it."""
    return isinstance(sentence, play.SaidRule) and _ANYWAY.fullmatch(sentence.text) is not None


def told_of(game: Game, own: list[tuple[Node, int]]) -> Told:
    """About, cues, cautions, credit and lines in quotes."""
    return Told(
        about=game.told("about"),
        cues=game.told("cue"),
        cautions=game.told("caution"),
        care=tuple(sentence.text for sentence, _ in own if isinstance(sentence, head.Caution)),
        credit=game.told("credit"),
        outcomes=game.told("outcomes"),
        licence=next((sentence.identifier for sentence, _ in own if isinstance(sentence, head.Licence)), ""),
        quotes=tuple((line, sentence.text) for sentence, line in own if isinstance(sentence, play.SaidRule)),
        anyway=frozenset(line for sentence, line in own if holds_anyway(sentence)),
        spoken_of=_spoken_of(game, [sentence.text for sentence, _ in own if isinstance(sentence, _IN_QUOTES)]),
    )


def _spoken_of(game: Game, quotes: list[str]) -> frozenset[RoleId]:
    """The roles that a line in quotes names: what they do may be for people alone."""
    names = {role.name: rf"\b(?:{re.escape(role.name)}|{re.escape(plural(role.name))})\b" for role in game.roles}
    said = " ".join(quotes)
    return frozenset(RoleId(name) for name, named in names.items() if re.search(named, said, re.IGNORECASE))


def called(game: Game) -> tuple[tuple[SideId, str], ...]:
    """What one player is called of each side whose name means its players: "heron" of the herons."""
    named = (side.name for side in game.sides if isinstance(game.vocabulary.get(side.name), PlayerMeaning))
    return tuple((SideId(name), player_of(name)) for name in named)


def plurals(game: Game) -> tuple[tuple[KindId, str], ...]:
    """What several of each kind are called."""
    return tuple((KindId(line.name), line.plural) for line in game.kit)
