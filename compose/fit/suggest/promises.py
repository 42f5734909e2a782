"""Which modifiers are likely to bring a wish nearer, by what they change: these are tried first.

A promise is only an order of trying; what is not promised is tried later, and what is promised is looked at.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from compose.fit.suggest.played_wishes import Mended, RoundLasts, TurnsAtLeast, WaitsAtMost
from compose.fit.suggest.sheet_wishes import FitsClass, ForAges, ForPupils, KitAtMost, NobodyOut, OnCourt, Practises
from compose.fit.suggest.wish import Wish
from compose.modifiers.modifier import Modifier
from grammar.sentences import finish, head, play, sides, when
from grammar.sentences import modifier as said
from grammar.sentences.base import Node

_BACK = (play.Free, play.ComesBack, when.Returns, when.ChangesPlaces, when.Waits)
_PROMISES: Mapping[type, tuple[type[Node], ...]] = {
    ForAges: (head.Ages,),
    ForPupils: (sides.SideBySide, said.UnevenSides),
    OnCourt: (said.ScaleCourt, said.MakeCourt),
    KitAtMost: (said.TakeKit,),
    NobodyOut: (play.Free, play.ComesBack, when.ChangesPlaces, when.PlaysOn, when.Joins, when.Scores),
    FitsClass: (
        head.Ages,
        sides.SideBySide,
        sides.OddPupil,
        said.UnevenSides,
        said.ScaleCourt,
        said.TakeKit,
        said.MakeLike,
    ),
    RoundLasts: (
        finish.After,
        finish.FirstTo,
        said.AddKit,
        said.TakeKit,
        said.ScaleKit,
        said.ScaleCourt,
        said.AimFrom,
        play.SucceedAsOften,
        play.TakeAsLong,
        play.StandUp,
    ),
    WaitsAtMost: _BACK,
    TurnsAtLeast: (said.AddKit, said.ScaleCourt, play.Fetch, play.Rest, *_BACK),
}
_MENDS: Mapping[str, tuple[type[Node], ...]] = {
    "N-too-high": (said.MakeLike, said.ChangeSkill),
    "N-hard-ball": (said.MakeLike, said.TakeKit),
    "N-unfit": (said.MakeLike, said.ChangeSkill),
    "C-stranded": (play.Fetch, play.Rest, play.Free, play.ComesBack, when.Returns),
    "C-dead-end": (finish.After, play.Fetch, play.Rest, play.Free, play.ComesBack),
    "C-endless": (finish.After,),
    "C-stall": (play.HoldLimit, finish.After),
    "C-no-end": (finish.After,),
}


def promises(modifier: Modifier, wish: Wish) -> bool:
    """Whether a modifier changes what a wish is about."""
    sentences = tuple(_all(modifier))
    if isinstance(wish, Practises):
        return any(_tries(sentence, wish.skill) for sentence in sentences)
    wanted = _MENDS.get(wish.code, ()) if isinstance(wish, Mended) else _PROMISES.get(type(wish), ())
    return any(isinstance(sentence, wanted) for sentence in sentences)


def _tries(sentence: Node, skill: str) -> bool:
    if isinstance(sentence, said.ChangeSkill):
        return sentence.to == skill
    return isinstance(sentence, play.Attempt) and skill in sentence.skills


def _all(modifier: Modifier) -> Iterator[Node]:
    """The sentences of a modifier's changes, those in its blocks and what follows in their rules included."""
    for line in modifier.changes:
        yield line.sentence
        for inner in line.block:
            yield inner.sentence
            if isinstance(inner.sentence, when.When):
                yield from inner.sentence.consequences
