"""Players who carry something, or nothing."""

from __future__ import annotations

from grammar.core.reading.reader import Reader
from grammar.core.reading.whose import Senseless
from grammar.core.values import Laden, Population, Sort
from grammar.meanings import NothingMeaning
from grammar.sentences.base import Np


def with_load(reader: Reader, who: frozenset[Population], load: Np | None) -> frozenset[Population]:
    """Of these players those who carry such a thing, where a phrase speaks of one."""
    if load is None:
        return who
    if isinstance(reader.game.meaning(load.name), NothingMeaning):
        if not reader.laden:
            raise Senseless(load, "Nobody carries anything here.", "Who holds a ball is not counted; leave that out.")
        return frozenset(each for each in who if not isinstance(each.role, Laden))
    kinds = set(reader.kinds_meant(load, Sort.LOAD, Sort.BALL))
    found = frozenset(each for each in who if isinstance(each.role, Laden) and each.role.kind in kinds)
    if not any(isinstance(each.role, Laden) and each.role.kind in kinds for each in reader.laden):
        raise Senseless(load, f"Nobody carries `{load.words()}`.", "Say in play who takes it from where to where.")
    return found
