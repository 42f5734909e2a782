"""One-word slips of sound sheets, from a seed: a letter dropped, doubled, swapped or replaced, a word dropped,
doubled or exchanged for a near synonym; and sheets with several such slips."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator, Sequence
from functools import cache
from pathlib import Path

from attrs import evolve, frozen

from library import class_paths, game_paths, modifier_paths, remix_paths

LETTERS = ("letter dropped", "letter doubled", "letters swapped", "letter replaced")
WORDS = ("word dropped", "word doubled", "synonym")
KINDS = (*LETTERS, *WORDS)
_WORD = re.compile(r"[A-Za-z][A-Za-z'-]*")


@cache
def synonyms() -> dict[str, tuple[str, ...]]:
    """Words that somebody may have in mind instead, by no book: what teachers say (assumption)."""
    lines = Path(__file__).with_name("synonyms.txt").read_text(encoding="utf-8").splitlines()
    return {word: tuple(others.split(", ")) for word, others in (line.split(": ") for line in lines)}


@frozen
class Slip:
    """A sheet with one line changed: `line` counts from 1, `was` and `now` are the line before and after."""

    kind: str
    file: str
    text: str
    line: int
    was: str
    now: str


@cache
def sound_sheets() -> tuple[tuple[tuple[str, str], ...], ...]:
    """Name and text of every sheet of the library: the games first, twice, for theirs are most of the lines."""

    def texts(paths: tuple[Path, ...]) -> tuple[tuple[str, str], ...]:
        return tuple((path.name, path.read_text(encoding="utf-8")) for path in paths)

    games = texts(game_paths())
    return games, games, texts((*modifier_paths(), *remix_paths(), *class_paths()))


def slips(seed: int, number: int) -> Iterator[Slip]:
    """So many slips, each kind as often as any other."""
    chance = random.Random(seed)
    while number:
        name, text = chance.choice(chance.choice(sound_sheets()))
        found = _slipped(chance, KINDS[number % len(KINDS)], name, text)
        if found:
            yield found
            number -= 1


def twice_in_a_line(seed: int, number: int) -> Iterator[Slip]:
    """So many slips of letters in two words of one line of a game."""
    chance = random.Random(seed)
    while number:
        name, text = chance.choice(sound_sheets()[0])
        first = _slipped(chance, chance.choice(LETTERS), name, text)
        words = [match for match in _WORD.finditer(first.now) if len(match.group()) > 2] if first else []
        now = _with_slip(chance, chance.choice(LETTERS), first.now, words) if first and '"' not in first.now else None
        if first and now and sum(a != b for a, b in zip(first.was.split(), now.split(), strict=True)) == 2:
            lines = first.text.split("\n")
            lines[first.line - 1] = now
            yield evolve(first, text="\n".join(lines), now=now)
            number -= 1


def spoiled_sheets(seed: int, number: int, most_slips: int = 3) -> Iterator[tuple[str, str]]:
    """Name and text of so many sheets with one to three slips each."""
    chance = random.Random(seed)
    for _ in range(number):
        name, text = chance.choice(chance.choice(sound_sheets()))
        for _ in range(chance.randint(1, most_slips)):
            found = _slipped(chance, chance.choice(KINDS), name, text)
            text = found.text if found else text
        yield name, text


def _slipped(chance: random.Random, kind: str, name: str, text: str) -> Slip | None:
    lines = text.split("\n")
    number = chance.randrange(len(lines))
    was = lines[number]
    words = [match for match in _WORD.finditer(was) if was.count('"', 0, match.start()) % 2 == 0]
    if not was.startswith(" ") or was.lstrip().startswith("note:") or len(words) < 2:
        return None
    now = _with_slip(chance, kind, was, words)
    if now is None or " ".join(now.split()) == " ".join(was.split()):
        return None
    lines[number] = now
    return Slip(kind, name, "\n".join(lines), number + 1, was, now)


def _with_slip(chance: random.Random, kind: str, line: str, words: Sequence[re.Match[str]]) -> str | None:
    least = 3 if kind in LETTERS else 1
    fitting = [
        each for each in words if len(each.group()) >= least and (kind != "synonym" or each.group() in synonyms())
    ]
    if not fitting:
        return None
    match = chance.choice(fitting)
    word, at = match.group(), chance.randrange(len(match.group()) - (kind == "letters swapped"))
    before, behind = line[: match.start()], line[match.end() :]
    match kind:
        case "letter dropped":
            word = word[:at] + word[at + 1 :]
        case "letter doubled":
            word = word[:at] + word[at] + word[at:]
        case "letters swapped":
            word = word[:at] + word[at + 1] + word[at] + word[at + 2 :]
        case "letter replaced":
            word = word[:at] + chance.choice("abcdefghijklmnopqrstuvwxyz") + word[at + 1 :]
        case "word dropped":
            word, behind = "", behind.lstrip()
        case "word doubled":
            word = f"{word} {word}"
        case _:
            word = chance.choice(synonyms()[word])
    return before + word + behind
