"""Invented sheets with about a hundred mistakes each: one for each way in which somebody comes to so many."""

from __future__ import annotations

import random
import re
from collections.abc import Callable, Sequence

BASE = """\
game Many Mistakes
  ages 8 to 12
space
  court 18 m by 9 m, halved across
  strip: 2 m deep, before each back line
sides
  north and south, 6 to 12 players each, mirrored
kit
  4 foam balls
  2 cones for each side, like a plastic pin
{kit}set-up
  2 foam balls in each half
  cones on the back line of their side
{set_up}play
  players stay in their half
{play}when
  a cone is knocked: it stays down
{when}finish
  a side wins when the other side has no cones standing
  after 6 min: more cones standing wins, else a draw
"""
OF_PLAY = (
    "players overarm throw a foam ball at the {thing} of the other side",
    "players roll a foam ball at the {thing} of the other side",
    "players underarm throw a foam ball at the {thing} of the other side",
    "players kick a foam ball at the {thing} of the other side",
)
OF_WHEN = (
    "a {thing} is knocked: it stays down",
    "a {thing} is knocked: the thrower's side scores 2 points",
    "a {thing} is knocked: the thrower's side scores 1 point and it stays down",
)
KINDS = 25
FRENCH = (
    "les joueurs lancent un ballon sur les plots de l'autre équipe",
    "chaque joueur reste dans son camp",
    "un ballon est tenu au plus huit secondes",
    "celui qui est touché sort et attend sur le banc",
    "quand un ballon est attrapé, le premier du banc revient",
    "une quille tombée reste par terre",
    "on ne lance jamais à la tête",
    "les gardiens restent derrière la ligne de fond",
    "l'équipe qui a renversé toutes les quilles gagne",
    "après six minutes, le plus de quilles debout gagne",
    "tout le monde change de camp au signal",
    "un but dans le cerceau vaut trois points",
)
STRANGE = (
    "players throw throw throw a a foam foam ball ball at at the the cones cones of of the the other other side side",
    "a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a a",
    "players rol a fom bal at teh cons of teh othr sid, players kik a fom bal at teh cons of teh othr sid",
    "a side wins when a side wins when a side wins when a side wins when a side wins when a side wins when it",
    "the thrower's side's catcher's half's ball's cone's bench's strip's cones of the other side's other side",
    "players north south foam ball cones strip bench half court players north south foam ball cones strip of",
    ": : : , , , ( ( ( ) ) ) players : roll , a ( foam ) ball : at , the ( cones ) of : the , other ( side )",
)
MANY = 100


def slips(number: int = MANY) -> str:
    """A slip of one word in each line."""
    chance = random.Random(7)
    play, when = _lines(number * 3 // 4, OF_PLAY), _lines(number - number * 3 // 4, OF_WHEN)
    return _sheet(
        kit=_kit(),
        set_up=_set_up(),
        play=[_slipped(chance, line) for line in play],
        when=[_slipped(chance, line) for line in when],
    )


def another_language(number: int = MANY) -> str:
    """All lines are French, no two the same."""
    lines = [f"{FRENCH[at % len(FRENCH)]} {_letters(at)}" for at in range(number)]
    return _sheet(play=lines[: number // 2], when=lines[number // 2 :])


def doubled(number: int = MANY) -> str:
    """All that the kit declares stands there twice."""
    lines = [f"{1 + at % 4} {_letters(at)} pins" for at in range(number)]
    return _sheet(kit=(*lines, *lines))


def unknown_names(number: int = MANY) -> str:
    """Each line speaks of something that nothing declares."""
    return _sheet(play=[OF_PLAY[at % 3].format(thing=f"{_letters(at)} towers") for at in range(number)])


def no_numbers(number: int = MANY) -> str:
    """No line says how many or how long, or it says so of what is not meant."""
    kit = [f"{_letters(at)} cones for each side" for at in range(number // 4)]
    put = [f"foam balls in the {_letters(at)} half" for at in range(number // 4)]
    held = ["a ball is held at most s" for _ in range(number // 4)]
    when = ["a cone is knocked: the thrower's side scores points" for _ in range(number // 4)]
    return _sheet(kit=kit, set_up=put, play=held, when=when)


def senseless(number: int = MANY) -> str:
    """Sentences of which each is read, but none can mean what it says beside the others."""
    lines = ("players touch the strip", "players kick a cone through the strip", "players carry a strip to the cones",
             "players roll a cone at the bench", "players of the bench throw a foam ball at the strip")
    when = ("a strip is knocked: it stays down", "a bench is hit: it scores 1 point",
            "a player crosses the bench: the first in the strip returns",
            "a cone is caught: the cone waits in the strip")
    return _sheet(
        play=[lines[at % len(lines)] for at in range(number // 2)],
        when=[when[at % len(when)] for at in range(number // 2)],
    )


def mixed(number: int = MANY) -> str:
    """A little of all: slips, sentences without sense, lines of another language, names unknown."""
    chance = random.Random(8)
    right = _lines(number, OF_PLAY)
    several: Sequence[Callable[[int], str]] = (
        lambda at: _slipped(chance, right[at]),
        lambda at: OF_PLAY[at % 3].format(thing=f"{_letters(at)} towers"),
        lambda at: FRENCH[at % len(FRENCH)],
        lambda at: f"players roll a {_kind(at)} at the strip",
    )
    play = [several[at % len(several)](at) for at in range(number * 3 // 4)]
    when = [_slipped(chance, line) for line in _lines(number - len(play), OF_WHEN)]
    return _sheet(kit=_kit(), set_up=_set_up(), play=play, when=when)


def hostile(number: int = MANY) -> str:
    """Long lines that are near to much and are nothing."""
    return _sheet(play=[f"{STRANGE[at % len(STRANGE)]} {_letters(at)}" for at in range(number)])


SHEETS: dict[str, Callable[[], str]] = {
    each.__name__: each
    for each in (slips, another_language, doubled, unknown_names, no_numbers, senseless, mixed, hostile)
}  # fmt: skip


def _sheet(**lines: Sequence[str]) -> str:
    parts = ("kit", "set_up", "play", "when")
    return BASE.format(**{part: "".join(f"  {line}\n" for line in lines.get(part, ())) for part in parts})


def _kind(at: int) -> str:
    return f"{_letters(at)} cone"


def _kit() -> list[str]:
    return [f"2 {_kind(at)}s for each side, like a plastic pin" for at in range(KINDS)]


def _set_up() -> list[str]:
    return [f"{_kind(at)}s on the back line of their side" for at in range(KINDS)]


def _lines(number: int, rules: Sequence[str]) -> list[str]:
    """So many lines, no two of them the same: each rule with each of the kinds of cone."""
    every = [rule.format(thing=_kind(at) + ("s" if rule in OF_PLAY else "")) for at in range(KINDS) for rule in rules]
    return every[:number]


def _letters(at: int) -> str:
    """A word of its own for each number, like no other word."""
    chance = random.Random(at)
    return "".join(chance.choice("bdfgklmrtvz") + chance.choice("aeiou") for _ in range(4))


def _slipped(chance: random.Random, line: str) -> str:
    """The line with one letter left out of a word, doubled, or two letters swapped."""
    word = chance.choice(list(re.finditer(r"[a-z]{4,}", line)))
    text, at = word.group(), chance.randrange(1, len(word.group()) - 1)
    slipped = chance.choice((text[:at] + text[at + 1 :], text[:at] + text[at] + text[at:],
                             text[: at - 1] + text[at] + text[at - 1] + text[at + 1 :]))  # fmt: skip
    return line[: word.start()] + slipped + line[word.end() :]
