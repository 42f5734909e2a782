"""Hypothesis strategies for games that are without mistakes, written as somebody might write them.

`plain_games` puts sentences together; `games` dresses them: capital letters, spaces, notes, the order of
the sections, other line ends.
"""

from __future__ import annotations

import re

from attrs import define, field
from hypothesis import strategies as st

Draw = st.DrawFn
SIDES = (("north", "south"), ("herons", "pikes"), ("millers", "boatmen"), ("upper moss", "lower moss"))
TARGETS = (
    ("lantern", "lanterns", ""),
    ("finch", "finches", ""),
    ("lily", "lilies", ""),
    ("wolf", "wolves", "wolf"),
    ("mossy post", "mossy posts", ""),
)
LIKE = ("plastic pin", "cone", "box")
SKILLS = {"overarm throw": "thrower", "underarm throw": "thrower", "roll": "roller", "kick": "kicker"}
SPREADS = ("", ", evenly spaced", ", staggered", ", close together")
UNSEEN = ("Cc", "Cf", "Co", "Cn", "Cs", "Zl", "Zp")
texts = st.text(st.characters(exclude_characters='"', exclude_categories=UNSEEN), max_size=40).map(str.strip)
_TITLE = r"[A-Za-zÀ-ÖØ-öø-ÿ0-9][\w '&,.!-]{0,20}\w"
titles = st.from_regex(_TITLE, fullmatch=True).map(lambda title: " ".join(title.split()))


@define
class Sheet:
    """A game in the making: its lines by section, and what it has."""

    title: str
    sides: tuple[str, str]
    halved: bool
    lines: dict[str, list[str]] = field(factory=dict)
    queue: bool = False
    ring: bool = False
    bench: bool = False
    points: bool = False

    def say(self, section: str, *lines: str) -> None:
        self.lines.setdefault(section, []).extend(line for line in lines if line)


def chance(draw: Draw, one_in: int = 2) -> bool:
    """True in one of so many cases."""
    return draw(st.integers(1, one_in)) == 1


@st.composite
def plain_games(draw: Draw) -> Sheet:
    """A game without mistakes, as lines of its sections."""
    sheet = Sheet(draw(titles), draw(st.sampled_from(SIDES)), not chance(draw, 4))
    _head(draw, sheet)
    length = _space(draw, sheet)
    _sides(draw, sheet, length)
    target = draw(st.sampled_from(TARGETS))
    _things(draw, sheet, target)
    actor = _play(draw, sheet, target)
    _when(draw, sheet, target, actor)
    _finish(draw, sheet, target)
    for text in draw(st.lists(texts, max_size=2, unique=True)):
        sheet.say("care", f'"{text}"')
    return sheet


def _head(draw: Draw, sheet: Sheet) -> None:
    least = draw(st.integers(4, 14))
    sheet.say("head", f"ages {least} to {draw(st.integers(least, 18))}")
    sheet.say(
        "head", draw(st.sampled_from(("skills overarm throw, catch", "skills roll", "skills move into space, aim")))
    )
    if chance(draw):
        sheet.say("head", f'about "{draw(texts)}"', "licence CC-BY-4.0")
    if chance(draw):
        sheet.say("head", f'cue "{draw(texts)}"', 'credit "Tarn Valley schools (invented)"')


def _space(draw: Draw, sheet: Sheet) -> int:
    length, width = draw(st.integers(12, 30)), draw(st.decimals(6, 20, places=1))
    cut = ", halved across" if sheet.halved else draw(st.sampled_from(("", ", in one piece")))
    sheet.say("space", f"court {length} m by {width} m{cut}")
    if chance(draw):
        rule = draw(st.sampled_from(("", ", nobody guards there", ", at most 2 players there")))
        sheet.say("space", f"reed strip: {draw(st.integers(50, 300))} cm deep, before each back line{rule}")
    sheet.queue, sheet.bench = chance(draw), chance(draw, 4)
    if sheet.queue:
        sheet.say("space", "moss queue: beside each half" if sheet.halved else "moss queue: beside each side line")
    if sheet.bench:
        sheet.say("space", "far bench: behind each back line")
    return length


def _sides(draw: Draw, sheet: Sheet, length: int) -> None:
    least = draw(st.integers(2, 6))
    most = draw(st.integers(least, 12))
    mirrored = draw(st.sampled_from((", mirrored", "")))
    sheet.say("sides", f"{sheet.sides[0]} and {sheet.sides[1]}, {least} to {most} players each{mirrored}")
    if chance(draw, 4):
        sheet.say("sides", f"role near aimer: 0 to 1 players of each side, aims from {max(2, length // 4)} m")
    if chance(draw, 4):
        sheet.say(
            "sides", draw(st.sampled_from(("the odd pupil keeps the score", "the odd pupil joins the first side")))
        )


def _things(draw: Draw, sheet: Sheet, target: tuple[str, str, str]) -> None:
    number, each = draw(st.integers(1, 4)), draw(st.integers(2, 6))
    one = f" (one {target[2]})" if target[2] else ""
    big = draw(st.sampled_from(("", ", 150 % as big")))
    sheet.say("kit", f"{2 * number} foam balls")
    sheet.say("kit", f"{each} {target[1]}{one} for each side, like a {draw(st.sampled_from(LIKE))}{big}")
    sheet.say("set-up", f"{target[1]} on the back line of their side{draw(st.sampled_from(SPREADS))}")
    if sheet.halved and chance(draw):
        sheet.say("set-up", f"{number} foam {'ball' if number == 1 else 'balls'} in each half")
    else:
        sheet.say("set-up", "foam balls in the middle")
    sheet.ring = chance(draw, 3)
    if sheet.ring:
        sheet.say("kit", "1 ring for each side, like a hanging hoop")
        sheet.say("set-up", "ring behind the back line of their side")


def _play(draw: Draw, sheet: Sheet, target: tuple[str, str, str]) -> str:
    skill = draw(st.sampled_from(sorted(SKILLS)))
    at_players = draw(st.sampled_from(("", " or the players")))
    detail = draw(
        st.sampled_from(("", ", 3 in 5 succeed", ", 1 in 10 are caught", ", 6 times a minute", ", from 5 m away"))
    )
    if sheet.halved:
        sheet.say("play", "players stay in their half")
    sheet.say("play", f"players {skill} a foam ball at the {target[1]}{at_players} of the other side{detail}")
    if sheet.ring:
        sheet.say("play", f"players {skill} a foam ball through the ring of the other side, 1 in 5 of the attempts")
    if sheet.bench:
        sheet.say("play", "players pass a foam ball to a team-mate on the far bench")
    rests = ("a missed ball rests in the half it was sent to", "a caught ball rests in the half it came from")
    others = (f"a ball is held at most {draw(st.integers(3, 20))} s", "players fetch balls from behind their back line")
    sheet.say("play", *draw(st.lists(st.sampled_from((*others, *(rests if sheet.halved else ()))), unique=True)))
    return SKILLS[skill]


def _when(draw: Draw, sheet: Sheet, target: tuple[str, str, str], actor: str) -> None:
    points = f"the {actor}'s side scores {draw(st.integers(1, 3))} points"
    down = draw(st.sampled_from(("it stays down", "it stands up again", f"{points} and it stands up again")))
    waits = ("that player waits in the moss queue",) if sheet.queue else ()
    hit = draw(st.sampled_from((*waits, "play goes on", "that player is out", "that player joins the other side")))
    article = "an" if target[0][0] in "aeiou" else draw(st.sampled_from(("a", "any", "each")))
    possible = [f"{article} {target[0]} is knocked: {down}", f"a player is hit: {hit}"]
    possible.append(f"a ball crosses the back line: {points}")
    if sheet.queue:
        end = draw(st.sampled_from(("first", "last")))
        possible.append(f"a ball is caught: the {end} in the catcher's moss queue returns")
    if sheet.ring:
        everyone = f"all in the {actor}'s moss queue return" if sheet.queue else points
        possible.append(f"a ball goes through a ring: {everyone}")
    if sheet.bench:
        possible.append("a pass is caught on the far bench: the passer joins the far bench")
    sheet.say("when", *draw(st.lists(st.sampled_from(possible), min_size=1, unique=True)))
    sheet.points = any("scores" in line for line in sheet.lines["when"])


def _finish(draw: Draw, sheet: Sheet, target: tuple[str, str, str]) -> None:
    ways = [f"a side wins when the other side has no {target[1]} standing", "a side loses when it has no players in"]
    if sheet.points:
        ways.append(f"the first side to {draw(st.integers(2, 20))} points wins")
    if sheet.bench:
        ways.append("a side wins when it has 2 players on the far bench")
    then = draw(st.sampled_from((", else a draw", "", ", else more players in wins, else nobody wins")))
    clock = f"after {draw(st.integers(2, 12))} min: more {target[1]} standing wins{then}"
    more = draw(st.lists(st.sampled_from((clock, "both at once: a draw", "best of 3 rounds")), unique=True))
    sheet.say("finish", *draw(st.lists(st.sampled_from(ways), min_size=1, unique=True)), *more)


def written(sheet: Sheet) -> str:
    """The plain text of a sheet."""
    lines = [f"game {sheet.title}", *(f"  {line}" for line in sheet.lines["head"])]
    for section, body in sheet.lines.items():
        if section != "head":
            lines += ["", section, *(f"  {line}" for line in body)]
    return "\n".join(lines) + "\n"


@st.composite
def games(draw: Draw) -> str:
    """The text of a game without mistakes, dressed up."""
    sheet = draw(plain_games())
    order = draw(st.permutations([section for section in sheet.lines if section != "head"]))
    lines = [*_notes(draw), f"{draw(_cases('game'))} {sheet.title}"]
    lines += [line for text in sheet.lines["head"] for line in _dressed(draw, text)]
    for section in order:
        heading = draw(st.sampled_from((section, section.upper(), f"{section.title()}:", section.replace("-", ""))))
        lines += ["", *_notes(draw), heading, *(line for text in sheet.lines[section] for line in _dressed(draw, text))]
    end = draw(st.sampled_from(("\n", "\r\n")))
    return end.join([*lines, *_notes(draw)]) + end


def _dressed(draw: Draw, line: str) -> list[str]:
    """A line with other capitals and spaces, perhaps with a note above it; texts in quotes stay."""
    indent = draw(st.sampled_from(("  ", "\t", "      ")))
    if line.startswith("licence"):
        return [*_notes(draw), indent + line]
    space = draw(st.sampled_from((" ", "  ", "\t")))
    pieces = re.split(r'("[^"]*")', line)
    dressed = [piece if piece.startswith('"') else draw(_cases(piece)).replace(" ", space) for piece in pieces]
    return [*_notes(draw), indent + "".join(dressed)]


def _cases(text: str) -> st.SearchStrategy[str]:
    return st.sampled_from((text, text, text.upper(), text.capitalize()))


def _notes(draw: Draw) -> list[str]:
    return [f"note: {text}" for text in draw(st.lists(texts, max_size=1))] if chance(draw, 4) else []
