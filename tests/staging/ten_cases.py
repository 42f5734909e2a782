"""The games, remixes and classes of which the ten numbers are asked, and what the staging itself says of them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Any

from attrs import frozen

import library
from compose.answer.answer import Answer
from compose.modifiers.apply import remix
from compose.modifiers.remix import Remix
from compose.staging.class_from_sheet import class_of
from compose.staging.moving import active_in_whole_lesson
from compose.staging.norms import Ability
from compose.staging.school_class import SchoolClass
from compose.staging.staging import Staging, stage
from compose.terminal.typed.finding_games import use
from grammar.amounts import percent
from grammar.parse import parse
from tests.interpreter.sheets import library_game

PUPILS = (9, 17, 24, 27, 32)
REMIXES = (
    ("lantern-row", ("two games side by side",)),
    ("lantern-row", ("roll instead", "fewer balls")),
    ("lantern-row", ("seated play",)),
    ("lantern-row", ("odd pupil keeps the score",)),
    ("heron-and-pike", ("nobody is out",)),
    ("heron-and-pike", ("two games side by side", "few wait")),
    ("heron-and-pike", ("uneven sides",)),
    ("sledge-road", ("first to points",)),
    ("millrace-roll", ("add balls, n 4",)),
    ("millrace-roll", ("two games side by side",)),
    ("quarry-row", ("shorter court",)),
    ("quarry-row", ("smaller targets",)),
    ("beck-gates", ("more targets",)),
    ("cairn-keepers", ("two games side by side",)),
    ("cloud-drift", ("add balls",)),
    ("four-becks", ("add balls",)),
    ("ferry-bench", ("odd pupil changes",)),
    ("heather-raid", ("fewer targets",)),
    ("homestead", ("narrower court",)),
    ("toll-stone", ("best of rounds",)),
)
CASES = (*((path.stem, ()) for path in library.game_paths()), *REMIXES)
CLASS = """\
class Ten Class
  class of {pupils}
  in the hall "triple hall 45 by 27"
  lesson of 60 min
  3 foam balls
  12 soft volleyballs
  16 soft tennis balls
  10 yarn balls
  5 plastic pins
  9 cones
  3 buckets
"""
Numbers = Mapping[str, Any]


@frozen
class Case:
    """A game or remix for so many pupils."""

    name: str
    modifiers: tuple[str, ...]
    pupils: int

    @property
    def made(self) -> Remix:
        """The remix; the test fails where the modifiers do not go together."""
        base = library_game(self.name)
        if not self.modifiers:
            return Remix(base, base)
        outcome = remix(base, [use(each) for each in self.modifiers], library.kit_names())
        assert outcome.value is not None, (self, [each.title for each in outcome.findings])
        return outcome.value


def ten_class(pupils: int) -> SchoolClass:
    """A class with too few things in its cupboard, in a large hall."""
    sheet = parse(CLASS.format(pupils=pupils), "ten.rules").value
    assert sheet is not None
    found = class_of(sheet.classes[0], library.halls(), library.kit_categories()).value
    assert found is not None
    return found


def staging_of(case: Case) -> Staging:
    """The case staged."""
    return stage(case.made.game, library.norms(), library.kit_names(), ten_class(case.pupils))


def expected(staging: Staging, answer: Answer | None) -> Numbers:
    """The numbers of the value itself."""
    kit = Counter({row.line.category: 0 for row in staging.kit})
    stand_ins = Counter[str]()
    for row in staging.kit:
        kit[row.line.category] += row.needed
        stand_ins.update({each.name: each.count for each in row.stand_ins})
    told = {
        "teams": teams_of_games([dict(court.players) for court in staging.courts]),
        "over": staging.teams.over,
        "odd": staging.teams.odd if staging.teams.over else "",
        "courts": len(staging.courts),
        "court_m": staging.game.court_m,
        "balls": kit["ball"],
        "targets": kit["target"],
        "stand_ins": +stand_ins,
        "play_min": (round(staging.lesson.play, 1), round(staging.lesson.warm_play, 1)),
    }
    numbers = answer.numbers if answer is not None else None
    if numbers is not None:
        told |= {"waiting": round(100 * numbers.idle.value), "turns": f"{numbers.turns.value:.1f}"}
    if answer is not None:
        bell = answer.staged.net.bell
        round_min = answer.round_minutes or (bell.after_s / 60 if bell is not None else None)
        told |= of_lesson(staging, round_min, answer.active_in_round) if round_min is not None else {}
    return told


def of_lesson(staging: Staging, round_min: float, in_round: float | None) -> Numbers:
    """The whole rounds of a lesson and the minutes from the first to the last, and the share of it that pupils are
    active in: as they are told."""
    lesson = staging.lesson
    fitting, warm = lesson.whole_rounds(round_min), lesson.warm_rounds(round_min)
    told: dict[str, Any] = {}
    if in_round is not None:
        ability = Ability(library.norms())
        told["active"] = percent(active_in_whole_lesson(ability, staging.ages_years, lesson, round_min, in_round))
    if fitting.number:
        told["rounds"] = (fitting.number, f"{round(fitting.minutes, 1):g}")
    if warm.number:
        told["warm_rounds"] = (warm.number, f"{round(warm.minutes, 1):g}")
    return told


def teams_of_games(games: Sequence[Mapping[str, int]]) -> Counter[tuple[tuple[str, int], ...]]:
    return Counter(tuple(sides.items()) for sides in games)
