"""What every output says of the ten numbers of a game for a class: read back out of texts, JSON and drawings.

Teams, odd pupil, courts, size of a court, balls, targets, stand-ins, minutes of play, share of time not playing,
turns a minute. Each reader gives those that its output shows.
"""

from __future__ import annotations

import io
import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from contextlib import redirect_stdout
from typing import Any

from attrs import frozen

import library
from compose.answer.answer import Answer
from compose.answer.foreseeing import foreseen
from compose.answer.proving import proved
from compose.answer.staged import Staged, staged
from compose.check import Budget
from compose.draw.card import Card
from compose.draw.card_text import text_of
from compose.draw.lesson_sheet import lesson_card
from compose.draw.lesson_table import Planned, lesson_table
from compose.draw.moments import moments_of
from compose.draw.plan_class import class_plan
from compose.draw.proof import answer_lines
from compose.draw.remix_card import card_of_remix
from compose.draw.shapes import Drawing, Label
from compose.draw.strip import strip_of
from compose.fit.fit import fit_of
from compose.forecast.simulate import Play
from compose.modifiers.apply import remix
from compose.modifiers.remix import Remix
from compose.page.answers.for_class import for_class
from compose.staging.school_class import SchoolClass, class_of
from compose.staging.staging import Staging, stage
from compose.telling.wording import ENGLISH
from compose.terminal.answering import answer_json
from compose.terminal.finding_games import use
from compose.terminal.fitting import fit_lines
from compose.terminal.forecasting import say_all_pupils, say_first
from compose.terminal.stages import Ready
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
LOOK = Budget(states=4_000)
PLAY = Play(rounds=60, events=200_000)

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
        "teams": _teams([dict(court.players) for court in staging.courts]),
        "over": staging.teams.over,
        "odd": staging.teams.odd if staging.teams.over else "",
        "courts": len(staging.courts),
        "court_m": staging.game.court_m,
        "balls": kit["ball"],
        "targets": kit["target"],
        "stand_ins": +stand_ins,
        "play_min": round(staging.lesson.play, 1),
    }
    numbers = answer.numbers if answer is not None else None
    if numbers is not None:
        told |= {"waiting": round(100 * numbers.idle.value), "turns": f"{numbers.turns.value:.1f}"}
    return told


def _teams(games: Sequence[Mapping[str, int]]) -> Counter[tuple[tuple[str, int], ...]]:
    return Counter(tuple(sides.items()) for sides in games)


def shown(case: Case, staging: Staging) -> Iterator[tuple[str, Numbers, Numbers]]:
    """Every output by its name, with what it says and what the value says."""
    made = case.made
    ready = staged(staging, library.granted_sheet()).value
    assert ready is not None, case
    answer = foreseen(proved(ready, LOOK), library.norms(), library.kit_names(), play=PLAY, budget=LOOK)
    round_min = answer.round_minutes
    found = fit_of(staging, library.norms(), library.kit_names(), round_min)
    card = text_of(card_of_remix(made, staging, known=answer_lines(answer, ENGLISH)))
    bound = text_of(card_of_remix(made, staging))
    planned = Planned(staging.game, staging, round_min, answer.active_in_round)
    lesson = lesson_card(lesson_table([planned], library.norms()), "Lesson")
    for name, said in (
        ("card", in_text(card, staging)),
        ("booklet", in_text(bound, staging)),
        ("fit", in_text("\n".join(fit_lines(found)), staging)),
        ("page", in_text("\n".join(for_class(found, ENGLISH, "plan-").lines), staging)),
        ("forecast", in_text(forecast_text(made, ready, answer), staging)),
        ("lesson", in_lesson(lesson, staging)),
        ("JSON", in_json(answer_json(answer), staging)),
        ("plan", in_plan(class_plan(staging.game, staging), staging)),
        ("strip", in_strip(ready, staging)),
    ):
        yield name, said, expected(staging, answer)


def forecast_text(made: Remix, ready: Staged, answer: Answer) -> str:
    """What the forecast prints first."""
    printed = io.StringIO()
    if answer.forecast is None:
        return ""
    with redirect_stdout(printed):
        say_first(Ready(made, ready), answer.forecast)
        say_all_pupils(answer)
    return printed.getvalue()


def in_text(text: str, staging: Staging) -> Numbers:
    """The numbers in lines of words, however they are wrapped."""
    flat = re.sub(r"\s+", " ", re.sub(r"\n\s*-\s", "\n", text))
    told: dict[str, Any] = {}
    if teams := re.search(r"Teams: (.+?)\.(?: |$)", flat):
        told["teams"] = _teams_said(teams[1])
        over = re.search(r"Over: (\d+) pupils?(?:; an odd pupil (.+?))?\.", flat)
        told |= {"over": int(over[1]) if over else 0, "odd": (over[2] or "") if over else ""}
    if courts := re.search(r"(\d+) courts? of ([\d.]+) m by ([\d.]+) m", flat):
        told |= {"courts": int(courts[1]), "court_m": (float(courts[2]), float(courts[3]))}
    kit = re.findall(r"Kit: (\d+) (.+?)(?:, (\d+) there)?(?:, ([^;.]+?) can stand in)?(?:; \d+ short)?\.", flat)
    if kit:
        sorts = {name: row.line.category for row in staging.kit for name in (row.line.name, row.line.plural)}
        for sort, word in (("ball", "balls"), ("target", "targets")):
            told[word] = sum(int(number) for number, name, _, _ in kit if sorts[name] == sort)
        stand_ins = Counter[str]()
        for *_, said in kit:
            for number, name in re.findall(r"(\d+) ([^,]+?)(?:,| and |$)", said):
                stand_ins[name] += int(number)
        told["stand_ins"] = stand_ins
    if play := re.search(r"Time: ([\d.]+) min of play", flat):
        told["play_min"] = float(play[1])
    if turns := re.search(r"A pupil gets ([\d.]+) turns a minute(?: and spends (under )?(\d+) % of the round)?", flat):
        told |= {"turns": turns[1], "waiting": 0 if turns[2] else int(turns[3] or 0)}
    if alone := re.search(r" turns a minute ([\d.]+)", flat):
        told["turns"] = alone[1]
    if every := re.search(r"All \d+ pupils .*?turns a minute: ([\d.]+) not playing: (under )?(\d+) %", flat):
        told |= {"turns": every[1], "waiting": 0 if every[2] else int(every[3])}
    return told


def _teams_said(said: str) -> Counter[tuple[tuple[str, int], ...]]:
    """ "13 games of 1 west and 1 east", "14 north and 13 south"."""
    found = Counter[tuple[tuple[str, int], ...]]()
    parts = re.findall(r"(\d+) games? of (.+?)(?=,? (?:and )?\d+ games? of |$)", said) or [("1", said)]
    for number, sides in parts:
        pairs = re.findall(r"(\d+) ([a-z ]+?)(?=,| and |$)", sides)
        found[tuple((side, int(players)) for players, side in pairs)] += int(number)
    return found


def in_json(told: dict[str, Any], staging: Staging) -> Numbers:
    """The numbers in the JSON of an answer."""
    block, every = told["staging"], told["all_pupils"]
    kit = Counter[str]()
    stand_ins = Counter[str]()
    for row in block["kit"]:
        kit[row["sort"]] += row["needed"]
        stand_ins.update(row["stand_ins"])
    said = {
        "teams": _teams(block["teams"]),
        "over": block["over"],
        "odd": block["odd_pupil"] if block["over"] else "",
        "courts": len(block["courts"]),
        "court_m": tuple(block["court_m"]),
        "balls": kit["ball"],
        "targets": kit["target"],
        "stand_ins": +stand_ins,
        "play_min": round(block["play_minutes"], 1),
    }
    if every is not None:
        said |= {"waiting": round(100 * every["not_playing"]), "turns": f"{every['turns_a_minute']:.1f}"}
    return said


def in_lesson(card: Card, staging: Staging) -> Numbers:
    """The numbers on the sheet of a lesson with one game."""
    kit = card.section("Kit of the whole lesson")
    sorts = {name: row.line.category for row in staging.kit for name in (row.line.name, row.line.plural)}
    found = [re.fullmatch(r"(\d+) (.+)", line) for line in (kit.lines if kit else ())]
    counts = Counter({"ball": 0, "target": 0})
    for each in found:
        assert each is not None, kit
        counts[sorts[each[2]]] += int(each[1])
    return {"balls": counts["ball"], "targets": counts["target"], **in_text(text_of(card), staging)}


def in_plan(drawing: Drawing, staging: Staging) -> Numbers:
    """The numbers on a plan: its captions, its legend, and the courts that are numbered on it."""
    words = [shape.text for shape in drawing.shapes if isinstance(shape, Label)]
    numbered = [shape for shape in drawing.shapes if isinstance(shape, Label) and shape.bold and shape.text.isdigit()]
    caption = next(text for text in words if re.match(r"(\d+ courts of|Court) [\d.]+ m by", text))
    size = re.search(r"([\d.]+) m by ([\d.]+) m", caption)
    assert size is not None
    said: dict[str, Any] = {"courts": max(1, len(numbered)), "court_m": (float(size[1]), float(size[2]))}
    if len(staging.kinds) == 1 and _all_at_the_start(staging):
        said |= _on_the_floor(drawing.description, staging)
    if len(numbered) > 1:
        assert caption.startswith(f"{len(numbered)} courts")
        said["teams"] = next(_teams_said(text) for text in words if re.match(r"\d+ games? of ", text))
        return said
    sides = Counter[str]()
    for text in words:
        found = re.match(r"(.+): (\d+) ", text)
        if found and found[1] in {side.name for side in staging.game.sides}:
            sides[found[1]] += int(found[2])
    said["teams"] = _teams([{side.name: sides[side.name] for side in staging.game.sides}])
    return said


def _all_at_the_start(staging: Staging) -> bool:
    """Whether all kit lies on the floor at the start: none finds no room, falls part by part or comes in later."""
    floor, players = staging.court.floor, staging.court.players
    return all(
        row.line.parts == 1 and len(floor.items_of(row.line.name)) == row.line.total(players) for row in staging.kit
    )


def _on_the_floor(description: str, staging: Staging) -> Numbers:
    """Balls and targets that lie on all courts, as the plan in words has those of one."""
    lying = re.search(r"On the floor: (.+?)\.", description)
    counts = Counter({"ball": 0, "target": 0})
    sorts = {name: row.line.category for row in staging.kit for name in (row.line.name, row.line.plural)}
    for number, name in re.findall(r"(\d+) (.+?)(?=, | and \d|$)", lying[1] if lying else ""):
        counts[sorts[name]] += int(number) * len(staging.courts)
    return {"balls": counts["ball"], "targets": counts["target"]}


def in_strip(ready: Staged, staging: Staging) -> Numbers:
    """The numbers in the first picture of a round, which shows one court."""
    net = ready.net
    moments = moments_of(net, (), "")
    made = strip_of(staging.game, staging.court.floor, net, moments, "Strip", "")
    sides = Counter(token.item.side for token in made.scenes[0] if token.item.category == "player")
    of_one = {side.name: sides[side.name] for side in staging.game.sides}
    if len(staging.courts) == 1:
        return {"teams": _teams([of_one])}
    assert of_one == dict(staging.court.players)
    return {}


def differing(case: Case) -> list[str]:
    """What outputs say otherwise than the value; nothing where all agree, or where the class is refused."""
    staging = staging_of(case)
    if staging.refused:
        return []
    wrong = []
    for output, said, wanted in shown(case, staging):
        for key, value in said.items():
            if value != wanted.get(key):
                wrong.append(f"{output}: {key} {value!r}, not {wanted.get(key)!r}")
    return wrong
