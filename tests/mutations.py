"""Hypothesis strategies for rule files that somebody spoiled, and for bytes that never were rule files."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from functools import cache

from hypothesis import strategies as st

from library import game_paths, granted_path, modifier_paths

Draw = st.DrawFn
MOST_BYTES = 1 << 20
UNITS = ("m", "cm", "s", "min", "%", "kg", "ft", "seconds", "")
_ODD = tuple("\0\ufeff\u200f\u202e\u00a0\x1bש漢🏐\u0301\\{}%\"'\t")
_NUMBERS = st.one_of(st.integers(-5, 10**12).map(str), st.floats(0, 1e6).map(str), st.sampled_from(("0", "9" * 400)))


@cache
def library_texts() -> tuple[str, ...]:
    """The texts of all rule files of the library."""
    paths = (*game_paths(), *modifier_paths(), granted_path())
    return tuple(path.read_text(encoding="utf-8") for path in paths)


def _at(draw: Draw, items: Sequence[str]) -> int:
    return draw(st.integers(0, max(0, len(items) - 1)))


def _words(draw: Draw, text: str) -> str:
    words = re.findall(r"\s+|[^\s]+", text)
    if len(words) < 4:
        return text
    one, other = _at(draw, words), _at(draw, words)
    match draw(st.sampled_from(("drop", "double", "swap", "join"))):
        case "drop":
            del words[one]
        case "double":
            words.insert(one, f"{words[one]} ")
        case "swap":
            words[one], words[other] = words[other], words[one]
        case _:
            words[one] = words[one].strip()
    return "".join(words)


def _lines(draw: Draw, text: str) -> str:
    lines = text.split("\n")
    one, other = _at(draw, lines), _at(draw, lines)
    match draw(st.sampled_from(("drop", "double", "swap", "indent", "cut", "heading"))):
        case "drop":
            del lines[one]
        case "double":
            lines.insert(other, lines[one])
        case "swap":
            lines[one], lines[other] = lines[other], lines[one]
        case "indent":
            lines[one] = " " * draw(st.integers(0, 40)) + lines[one].strip()
        case "cut":
            lines = lines[:one]
        case _:
            lines.insert(one, draw(st.sampled_from(("when", "kit", "game", "modifier add balls", "wehn", "play"))))
    return "\n".join(lines)


def _letters(draw: Draw, text: str) -> str:
    place = draw(st.integers(0, len(text)))
    letter = draw(st.one_of(st.sampled_from(_ODD), st.characters()))
    return text[:place] + letter + text[place + draw(st.integers(0, 2)) :]


def _numbers(draw: Draw, text: str) -> str:
    numbers = list(re.finditer(r"\d+(?:\.\d+)?(\s*(?:min|cm|m|s|%)\b)?", text))
    if not numbers:
        return text
    match = draw(st.sampled_from(numbers))
    return text[: match.start()] + f"{draw(_NUMBERS)} {draw(st.sampled_from(UNITS))}".rstrip() + text[match.end() :]


_MUTATIONS: tuple[Callable[[Draw, str], str], ...] = (_words, _lines, _letters, _numbers)


@st.composite
def spoiled_files(draw: Draw) -> str:
    """A file of the library after one to four mishaps."""
    text = draw(st.sampled_from(library_texts()))
    for mutate in draw(st.lists(st.sampled_from(_MUTATIONS), min_size=1, max_size=4)):
        text = mutate(draw, text)
    return text


@st.composite
def spoiled_bytes(draw: Draw) -> bytes:
    """The bytes of a spoiled file in one encoding or another, perhaps with bytes put in."""
    text = draw(spoiled_files())
    encoding = draw(st.sampled_from(("utf-8", "utf-8-sig", "latin-1", "utf-16")))
    data = text.encode(encoding, "surrogatepass" if "utf" in encoding else "replace")
    place = draw(st.integers(0, len(data)))
    return data[:place] + draw(st.binary(max_size=4)) + data[place:]


def hostile_files() -> dict[str, bytes]:
    """Bytes that are meant to hurt, by name."""
    game = library_texts()[0]
    line = b'  "Aim low."\n'
    return {
        "nothing": b"",
        "a zero byte": game.encode().replace(b"space", b"sp\0ce"),
        "a byte order mark": b"\xef\xbb\xbf" + game.encode(),
        "a byte order mark inside": game.replace("space", "\ufeffspace").encode(),
        "latin-1": game.replace("schools", "schöols").encode("latin-1"),
        "utf-16": game.encode("utf-16"),
        "half a letter": game.encode() + b"\xc3",
        "lone surrogates": game.encode() + b"\xed\xa0\x80",
        "carriage returns": game.replace("\n", "\r").encode(),
        "dos line ends": game.replace("\n", "\r\n").encode(),
        "right to left": ("game גשר\n\u202espace\n" + game).encode(),
        "terminal escapes": game.replace("players", "\x1b[2Jplayers").encode(),
        "one line of 1 MiB": b"game " + b"x" * (MOST_BYTES - 5),
        "one quote of 1 MiB": b'game A\ncare\n  "' + b"x" * (MOST_BYTES - 16),
        "one sentence of 1 MiB": b"game A\nplay\n  players stay in " + b"the " * ((MOST_BYTES - 40) // 4),
        "lines of 1 MiB": b"game A\ncare\n" + line * ((MOST_BYTES - 12) // len(line)),
        "slips of 1 MiB": b"game A\nplay\n" + b"  players stays in ther half\n" * ((MOST_BYTES - 12) // 29),
        "games of 1 MiB": (game * (MOST_BYTES // len(game.encode()))).encode(),
        "empty lines of 1 MiB": b"\n" * MOST_BYTES,
        "notes of 1 MiB": b"game A\n" + b"note: x\n" * ((MOST_BYTES - 7) // 8),
        "kit of 1 MiB": b"game A\nkit\n" + b"  8 foam balls\n" * ((MOST_BYTES - 11) // 15),
        "more than 1 MiB": b"game A\n" + b"x" * MOST_BYTES,
        "deep indentation": "".join(f"{' ' * depth}game {depth}\n" for depth in range(1000)).encode(),
        "deep brackets": b"game A\nkit\n  1 wolf " + b"(" * 300,
        "a huge number": b"game A\nkit\n  " + b"9" * 380 + b" balls",
        "many commas": b"game A\nsides\n  " + b"a, " * 120 + b"b",
        "many ors": b"game A\nfinish\n  a side wins when it has 1 point" + b" or it has 1 point" * 20,
    }
