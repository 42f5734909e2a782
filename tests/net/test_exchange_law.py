"""No silent word: whatever word of a sheet is exchanged for another, it is refused, or the game is another one.

A synonym, and what says in words what holds anyway, gives the same game, and the same net of it; a line of which the
check says that it never takes effect may change nothing.
"""

from __future__ import annotations

from itertools import islice

import pytest

from grammar.sentences.base import Node
from tests.grammar.alike import FOR_PEOPLE
from tests.grammar.exchanges import exchanges, names_of
from tests.net.exchange_sample import Tried, sample
from tests.net.exchange_sheets import Place, of_generated, of_library, of_page
from tests.net.exchange_verdicts import Verdict, verdict

SEED, EACH, OF_THE_PAGE = 11, 36, 12
MOST_FOR_PEOPLE = 12


@pytest.fixture(scope="module")
def tried() -> tuple[Tried, ...]:
    """As many exchanges of the library, of the page and of games nobody wrote."""
    kinds = (of_library(), of_page(OF_THE_PAGE, SEED), of_generated(SEED, 12))
    return tuple(each for places in kinds for each in islice(sample(places, SEED), EACH))


def test_no_word_is_silent(tried: tuple[Tried, ...]) -> None:
    wrong = (Verdict.SILENT, Verdict.TRACEBACK, Verdict.TWO_NETS)
    assert [each.words() for each in tried if each.verdict in wrong] == [], f"seed {SEED}"


def test_exchanges_of_every_sort_are_tried(tried: tuple[Tried, ...]) -> None:
    found = {each.verdict for each in tried}
    assert found >= {Verdict.REFUSED, Verdict.DIFFERS, Verdict.SYNONYM}
    assert {each.place.section for each in tried} >= {"space", "sides", "kit", "set-up", "play", "when", "finish"}


def test_a_number_that_never_takes_effect_is_told() -> None:
    """To the reed bank of Reed Bank nobody is sent: who is there changes places with somebody."""
    place = next(each for each in of_library() if "at most 2 players there" in _line(each).words())
    found = [each for each in exchanges(_line(place), names_of(place.before.game)) if each.slot == "AtMostThere.most"]
    assert {verdict(place.before, place.section, place.at, each) for each in found} == {Verdict.IDLE}


def _line(place: Place) -> Node:
    return place.before.game.sheet.lines(place.section)[place.at].sentence


def test_few_constructs_are_for_people_only(tried: tuple[Tried, ...]) -> None:
    assert len(FOR_PEOPLE) <= MOST_FOR_PEOPLE
    told = {each.place.section for each in tried if each.verdict is Verdict.PEOPLE}
    assert told <= {"head", "sides", "play", "care"}
