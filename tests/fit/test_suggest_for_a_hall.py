"""Suggestions for a hall with a stage: found where sets put on by hand do it, nearer where less floor is lacking, and
never at the cost of pupils who sit out."""

from __future__ import annotations

import pytest
from class_sheets import sheet_of
from drawn_classes import Drawn
from hypothesis import given
from hypothesis import strategies as st
from playing_games import every_modifier, granted_rules, library_games, modifier_named

import library
from compose.fit.suggest.amounts import at_the_ends
from compose.fit.suggest.class_wishes import Fits, Part, fits
from compose.fit.suggest.look import Looker
from compose.fit.suggest.score import Scored
from compose.fit.suggest.search import nearest_of, search
from compose.fit.suggest.wish import MET, Miss, missed
from compose.modifiers.apply import remix
from compose.modifiers.modifier import Use

STAGE = """
    class Stage
      class of 27
      ages {ages}
      the hall is 15 m by 12 m
      stage along the north wall, 6 m by 2 m, 4 m from its west end
      lesson of 40 min
      5 foam balls
      6 cones
    """


@pytest.mark.parametrize(("ages", "most"), [("9 to 10", 3), ("6 to 7", 4)])
def test_what_is_put_on_by_hand_is_found(ages: str, most: int) -> None:
    """Fewer balls, fewer targets and a court of 13 m by 7 m do it by hand, with "for the youngest" at six."""
    group = Drawn(sheet_of(STAGE.format(ages=ages)), library_games()["lantern-row"])
    found = search(group.scorer(), at_the_ends(every_modifier()), wanted=1)
    assert found.solutions and len(found.solutions[0].uses) <= most


@pytest.mark.parametrize("other", ["shorter court", "narrower court"])
def test_a_smaller_court_is_never_farther_from_a_hall(other: str) -> None:
    """Of one game on courts of all sizes: what the hall lacks is one measure, whichever finding tells of it."""
    game, group = library_games()["lantern-row"], sheet_of(STAGE.format(ages="9 to 10"))
    looker = Looker(granted_rules(), library.kit_names(), library.norms(), group=group)
    wish, modifier = Fits(group, Part.HALL), modifier_named(other)
    gaps = [wish.miss(game, looker).gap]
    for part in range(95, 35, -5):
        made = remix(game, [Use(modifier, {"part": modifier.value("part", float(part))})], library.kit_names()).value
        assert made is not None
        gaps.append(wish.miss(made.game, looker).gap)
    assert gaps == sorted(gaps, reverse=True) and gaps[-1] < gaps[0]


@given(st.lists(st.tuples(st.integers(0, 3), st.integers(0, 3), st.integers(0, 3)), min_size=1, max_size=8))
def test_the_nearest_leaves_no_more_pupils_out(gaps: list[tuple[int, int, int]]) -> None:
    game, group = library_games()["lantern-row"], sheet_of(STAGE.format(ages="9 to 10"))
    wishes = [each for each in fits(group, game) if each.part in (Part.PUPILS, Part.HALL, Part.SPACE)]
    tried = [Scored((), 0, tuple(_miss(gap) for gap in each), number) for number, each in enumerate(gaps)]
    pupils = next(number for number, each in enumerate(wishes) if each.part is Part.PUPILS)
    nearest = nearest_of(tried, wishes)
    assert gaps[nearest.key][pupils] <= gaps[0][pupils]
    fair = [each for each in tried if gaps[each.key][pupils] <= gaps[0][pupils]]
    assert nearest.hope == min(each.hope for each in fair)


def _miss(gap: int) -> Miss:
    return missed(float(gap), "it is missed") if gap else MET
