"""What every output says of the ten numbers of a game for a class: read back out of texts, JSON and drawings.

Teams, odd pupil, courts, size of a court, balls, targets, stand-ins, minutes of play, share of time not playing,
turns a minute. Each reader gives those that its output shows.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable
from typing import Any

from compose.answer.staged import Staged
from compose.draw.signs.shapes import Drawing, Label
from compose.draw.strip.moments import moments_of
from compose.draw.strip.strip import strip_of
from compose.staging.staging import Staging
from tests.staging.ten_cases import Numbers, teams_of_games


def in_text(text: str, staging: Staging) -> Numbers:
    """The numbers in lines of words, however they are wrapped."""
    flat = re.sub(r"\s+", " ", re.sub(r"\n\s*-\s", "\n", text))
    told: dict[str, Any] = {}
    if teams := re.search(r"Teams: (.+?)\.(?: |$)", flat):
        told["teams"] = _teams_said(teams[1])
        over = re.search(r"Left over(?:, not playing)?: (\d+) pupils?(?:; an odd pupil (.+?))?\.", flat)
        told |= {"over": int(over[1]) if over else 0, "odd": (over[2] or "") if over else ""}
    if courts := re.search(r"(\d+) courts? of ([\d.]+) m by ([\d.]+) m", flat):
        told |= {"courts": int(courts[1]), "court_m": (float(courts[2]), float(courts[3]))}
    kit = _kit_said(text)
    if kit:
        sorts = {name: row.line.category for row in staging.kit for name in (row.line.name, row.line.plural)}
        for sort, word in (("ball", "balls"), ("target", "targets")):
            told[word] = sum(number for number, name, _ in kit if sorts[name] == sort)
        told["stand_ins"] = _standing_in(said for *_, said in kit)
    if play := re.search(r"(?:Time:|count) ([\d.]+) min of play(?: in a lesson of [\d.]+ min)?, ([\d.]+) with", flat):
        told["play_min"] = (float(play[1]), float(play[2]))
    if turns := re.search(r"A pupil gets ([\d.]+) turns a minute(?: and spends (under )?(\d+) % of the round)?", flat):
        told |= {"turns": turns[1], "waiting": 0 if turns[2] else int(turns[3] or 0)}
    if alone := re.search(r" turns a minute ([\d.]+)", flat):
        told["turns"] = alone[1]
    if every := re.search(r"All \d+ pupils .*?turns a minute: ([\d.]+) not playing: (under )?(\d+) %", flat):
        told |= {"turns": every[1], "waiting": 0 if every[2] else int(every[3])}
    return told | _of_lesson(flat)


def _of_lesson(flat: str) -> Numbers:
    """The rounds that a lesson has time for with the minutes that they take, and how active pupils are in it."""
    told: dict[str, Any] = {}
    flat = re.sub(r"In a lesson of .*?(?=All \d+ pupils)", "", flat)  # one of the courts, where all are told after it
    rounds, minutes = r"(\d+) rounds? of about [\d.]+ (?:min|s)", r"(?:, \d+ s between: ([\d.]+) min)?"
    if found := re.search(rf"{rounds}{minutes}; with a warm-up and a talk (\d+) in ([\d.]+) min", flat):
        number, whole, warm, warm_minutes = found.groups()
        told |= {"rounds": (int(number), whole), "warm_rounds": (int(warm), warm_minutes)}
    elif found := re.search(rf"Play: [^,]+, {rounds}{minutes}", flat):  # the lesson, which has both
        told["warm_rounds"] = (int(found[1]), found[2])
    elif found := re.search(r"there is time for (\d+) [\d.]+ (?:min|s) each, \d+ s between ([\d.]+) min", flat):
        told["rounds"] = (int(found[1]), found[2])
        warm = re.search(r"between [\d.]+ min with a warm-up and a talk (\d+) in ([\d.]+) min", flat)
        told |= {"warm_rounds": (int(warm[1]), warm[2])} if warm else {}
    if found := re.search(r"(?:and with a warm-up and a talk |[Aa]ctive: )(\d+ %)", flat):
        told["active"] = found[1]
    return {key: said for key, said in told.items() if said != "" and said[-1] is not None and said[0] != 0}


def _kit_said(text: str) -> list[tuple[int, str, str]]:
    """How many of what, and what stands in: of lines that say "Kit:", or of the list of what one needs, on a card or
    for a lesson, but for what the sheet does not list."""
    flat = re.sub(r"\n  (?=\S)", " ", text)
    lists = re.findall(r"\n(?:You need|Kit of the whole lesson)\n-+\n(.+?)\n\n", flat + "\n\n", re.DOTALL)
    lines = re.findall(r"Kit: (.+?)\.(?: |\n|$)", re.sub(r"\s+", " ", text))
    if lists:
        lines = [line.removeprefix("- ") for line in lists[0].split("\n")]
    row = r"(\d+) ([^(,;]+?)(?: \(.*?\))?(?:, \d+ there)?(?:, ([^;]+?) can stand in)?(?:; \d+ short)?"
    found = [re.fullmatch(row, line) for line in lines]
    return [(int(each[1]), each[2], each[3] or "") for each in found if each and not each[2].startswith("bench")]


def _teams_said(said: str) -> Counter[tuple[tuple[str, int], ...]]:
    """ "13 games of 1 west and 1 east", "14 north and 13 south"."""
    found = Counter[tuple[tuple[str, int], ...]]()
    said = re.sub(r" \((?:among them|on each court) [^)]*\)", "", said)
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
        "teams": teams_of_games(block["teams"]),
        "over": block["over"],
        "odd": block["odd_pupil"] if block["over"] else "",
        "courts": len(block["courts"]),
        "court_m": tuple(block["court_m"]),
        "balls": kit["ball"],
        "targets": kit["target"],
        "stand_ins": +stand_ins,
        "play_min": (round(block["play_minutes"], 1), round(block["warm_play_minutes"], 1)),
    }
    if every is not None:
        said |= {"waiting": round(100 * every["not_playing"]), "turns": f"{every['turns_a_minute']:.1f}"}
    return said


def _standing_in(said: Iterable[str]) -> Counter[str]:
    """What stands in: "6 cones and 2 pins", for each thing that there is too little of."""
    counts = Counter[str]()
    for each in said:
        for number, name in re.findall(r"(\d+) ([^,]+?)(?:,| and |$)", each):
            counts[name] += int(number)
    return counts


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
    said["teams"] = teams_of_games([{side.name: sides[side.name] for side in staging.game.sides}])
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
        return {"teams": teams_of_games([of_one])}
    assert of_one == dict(staging.court.players)
    return {}
