"""Calls of every command, drawn from what the program says that each takes: most as a teacher would, some odd."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from random import Random
from typing import Any

import typer.main
from attrs import frozen

from compose.terminal.main import app

LEFT_OUT = {("page",), ("mix",), ("suggest",)}  # a server; and two whose whole work is to look at hundreds of games
GAMES = ("small.rules", "small.rules", "remix.rules", "lantern row", "toll stone", "big.rules")
ODD_FILES = (
    *(f"spoiled-{number}.rules" for number in range(12)),
    *("empty.rules", "bytes.rules", "nul.zip", "a\x1b[31m\u202e.rules", "Größe und # %.rules", "mine.txt", "folder"),
    *(
        "dangling.rules",
        "link.txt",
        "nonesuch",
        "class.rules",
        "my modifier.rules",
        "/dev/null",
        "",
        ".",
        "\udcff.rules",
    ),
)
MODIFIERS = ("kick instead", "add balls, n 2", "time limit", "overarm instead", "softer balls", "best of rounds")
ODD_WORDS = ("", "nan", "-1", "1e400", "\x1b[2J", "\u202e", 'a"b', "x\ny", "é" * 500, "--", "0", "\udcff", "N" * 5000)
ENDINGS = {
    "card": (".pdf", ".html", ".svg", ".md", ".txt"), "plan": (".svg",), "strip": (".svg", ".html"),
    "lesson": (".pdf", ".txt", ".html", ".md"), "booklet": (".pdf",), "lineage": (".svg",), "make": (".zip",),
    "page": ("",), "export": (".json", ".prism"),
}  # fmt: skip
SOUND: dict[str, Sequence[str]] = {
    "understood": (), "skill": ("kick", "roll"), "language": ("en", "fr"), "class_name": ("class.rules",),
    "hall": ("15 m by 12 m", "Fellgate school sports hall"), "paper": ("a4", "letter"), "units": ("metric", "feet"),
    "minutes": ("40", "30.5"), "seed": ("1", "7"), "states": ("400",), "memory": ("200",), "seconds": ("0.5",),
    "rounds": ("100",), "absent": ("1",), "finding": ("C-stall", "C-endless"), "title": ("My Row",),
    "about": ("Two sides roll.",), "credit": ("Beck school (invented)",), "origin": ("Beck school (invented)",),
    "pictures": ("4", "6"), "old": ("small.rules",), "base": ("small.rules",), "rest": ("ours", "theirs"),
    "keep": ("mine", "theirs", "both"), "words": ("pins", "roll"), "age": ("9",), "players": ("18",),
    "kit": ("foam ball",),
    "space": ("15 by 12",), "kind": ("game", "remix"), "winner": ("north", "south", "draw"), "waited": ("2",),
    "class_code": ("5a",), "of_class": ("5a",), "day": ("2026-11-20",), "text": ("It went well.",), "what": ("rounds",),
    "game": ("Small Pins",), "shelf": ("shelf",), "folder": ("common",), "file": ("made.zip",), "pupils": ("12", "18"),
    "choose": (), "only": (),
}  # fmt: skip
OF_SHEETS = {"name", "names", "files", "base", "path", "paths", "one", "other", "ours", "theirs", "played"}
BOUNDING = ("states", "seconds", "memory", "names")  # without names a booklet holds the whole library
HEAVY = {"games", "lesson", "booklet", "strip", "forecast", "common page", "replay", "differ", "fit", "check", "card"}
KEPT = "small pins"  # as it is called on the shelf


@frozen
class Call:
    """The words of a call."""

    words: tuple[str, ...]


def commands(group: Any = None, before: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], Any]]:
    """Every command by its words."""
    group = group or typer.main.get_command(app)
    for name, command in group.commands.items():
        if hasattr(command, "commands"):
            yield from commands(command, (*before, name))
        elif (*before, name) not in LEFT_OUT:
            yield (*before, name), command


def drawn_calls(number: int, chance: Random) -> Iterator[Call]:
    """So many calls; those that look at whole state spaces are drawn less often."""
    known = list(commands())
    weights = [1 if " ".join(words) in HEAVY else 5 for words, _ in known]
    for _ in range(number):
        words, command = chance.choices(known, weights)[0]
        yield _call(words, command, chance)


def _call(words: tuple[str, ...], command: Any, chance: Random) -> Call:
    odd = chance.random() < 0.35
    given: list[str] = []
    parts = [part for part in command.params if part.name != "help"]
    spoiled = chance.choice(parts).name if odd and parts else ""
    for part in parts:
        needed = part.required or part.name in BOUNDING or part.name == spoiled
        if part.name == "quick" or needed or chance.random() < 0.25:
            given += _part(words, part, part.name == spoiled, chance)
    if words[0] in ("shelf", "common", "merge") and "--shelf" not in given and any(p.name == "shelf" for p in parts):
        given += ["--shelf", "shelf"]
    if odd and chance.random() < 0.1:
        given.append(chance.choice(["--nonesuch", "extra", "--json=3", "-x"]))
    return Call((*words, *given))


def _part(words: tuple[str, ...], part: Any, odd: bool, chance: Random) -> list[str]:
    """An argument or an option with its value."""
    option = [part.opts[-1]] if part.param_type_name == "option" else []
    if getattr(part, "is_flag", False):
        return option
    times = chance.choice([1, 1, 2]) if part.nargs == -1 or getattr(part, "multiple", False) else 1
    values = [_value(words, part.name, odd, chance) for _ in range(times)]
    values = [value for value in values if value is not None]
    if not option:
        return [value for value in values if value != "" or odd]
    return [word for value in values for word in (*option, value)]


def _value(words: tuple[str, ...], name: str, odd: bool, chance: Random) -> str | None:
    if name == "out":
        odd_places = ("mine.txt", "folder", "link.txt", "dangling.rules", "none/x.pdf", "/dev/full", "a\x1b[m.pdf", "")
        return chance.choice(odd_places) if odd else f"out-{chance.randrange(10**9)}{_ending(words, chance)}"
    if odd:
        return chance.choice((*ODD_WORDS, *ODD_FILES) if name not in OF_SHEETS else (*ODD_FILES, *ODD_WORDS[:4]))
    if name == "modifier":
        return chance.choice(MODIFIERS)
    if name == "understood":
        return None
    if name in OF_SHEETS:
        if words[0] in ("shelf", "merge", "common", "pack"):
            return chance.choice((KEPT, "small.rules")) if words[0] != "merge" else "small.rules"
        return "remix.rules" if words[0] == "carry" else chance.choice(GAMES[:3] if _heavy(words) else GAMES)
    return chance.choice(SOUND[name]) if SOUND.get(name) else None


def _heavy(words: tuple[str, ...]) -> bool:
    return " ".join(words) in HEAVY


def _ending(words: tuple[str, ...], chance: Random) -> str:
    return chance.choice(ENDINGS.get(words[-1], (".rules",)))
