"""Packs spoiled at random: bytes, structure, manifest and rules, so that every layer of the reader is met."""

from __future__ import annotations

import hashlib
import json
import random
import struct
import zipfile
from collections.abc import Iterator, Sequence
from typing import Any

from hostile_packs import opened, zipped

_ODD_NUMBERS = (0, 1, -1, 2**31, 2**32, 2**63, 10**11, 10**400, 65_536, 0.5, 1e308)
_ODD_TEXTS = (
    "",
    "\x00",
    "\u202e",
    "a" * 5000,
    "../../x",
    "/x",
    "games/a.rules",
    "ﬁ",
    "İ",
    "\ud83d",
    "null",
    "</script>",
)
_ODD_NAMES = (
    "../a.rules",
    "games//a.rules",
    "games/A.rules",
    "con.rules",
    "games/a.zip",
    "games/\x7f.rules",
    "./manifest.json",
)
_WORDS = (
    "roll",
    "kick",
    "9" * 30,
    "players",
    "each",
    "the other side",
    '"',
    ":",
    ",",
    "\t",
    "\u00a0",
    "\x0b",
    "game X",
    "play",
)


def mutated(packs: Sequence[bytes], number: int, seed: int) -> Iterator[bytes]:
    """`number` packs, each spoiled once to three times in one of the ways."""
    chance = random.Random(seed)
    ways = (_bytes, _bytes, _header, _cut, _splice, _entries, _manifest, _manifest, _rules, _rules)
    for _ in range(number):
        pack = chance.choice(packs)
        way = chance.choice(ways)
        yield way(pack, chance)


def _bytes(pack: bytes, chance: random.Random) -> bytes:
    spoiled = bytearray(pack)
    for _ in range(chance.randint(1, 8)):
        spoiled[chance.randrange(len(spoiled))] = chance.randrange(256)
    return bytes(spoiled)


def _header(pack: bytes, chance: random.Random) -> bytes:
    """Odd numbers in the zip's own records."""
    spoiled = bytearray(pack)
    marks = [at for at in range(len(pack) - 4) if pack[at : at + 2] == b"PK" and pack[at + 2] < 8]
    for _ in range(chance.randint(1, 3)):
        at = chance.choice(marks) + chance.randrange(4, 46)
        value = chance.choice((b"\xff\xff\xff\xff", b"\0\0\0\0", b"\1", b"\x08", struct.pack("<L", len(pack))))
        spoiled[at : at + len(value)] = value
    return bytes(spoiled)


def _cut(pack: bytes, chance: random.Random) -> bytes:
    start, end = sorted(chance.randrange(len(pack)) for _ in range(2))
    return pack[:start] + pack[end:] if chance.random() < 0.5 else pack[:end]


def _splice(pack: bytes, chance: random.Random) -> bytes:
    start, length, to = chance.randrange(len(pack)), chance.randint(1, 300), chance.randrange(len(pack))
    return pack[:to] + pack[start : start + length] + pack[to:]


def _entries(pack: bytes, chance: random.Random) -> bytes:
    files = opened(pack)
    at = chance.randrange(len(files))
    match chance.randrange(5):
        case 0:
            files.append((files[at][0].upper() if chance.random() < 0.5 else files[at][0], files[at][1]))
        case 1:
            files[at] = (chance.choice(_ODD_NAMES), files[at][1])
        case 2:
            files.pop(at)
        case 3:
            files.append((chance.choice(_ODD_NAMES), b"0" * chance.choice((0, 10, 10**5))))
        case _:
            files[at] = (files[at][0], _bytes(files[at][1], chance))
    method = chance.choice((zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED, zipfile.ZIP_BZIP2))
    attributes = chance.choice(
        ({}, {"external_attr": chance.randrange(2**32)}, {"comment": b"x"}, {"extra": b"\1\0\0\0"})
    )
    return zipped(files, method, **attributes)


def _manifest(pack: bytes, chance: random.Random) -> bytes:
    """A zip in order whose manifest says something odd."""
    files = opened(pack)
    manifest = json.loads(files[0][1])
    for _ in range(chance.randint(1, 2)):
        _spoil(manifest, chance)
    text = json.dumps(manifest, ensure_ascii=chance.random() < 0.5)
    return zipped([(files[0][0], text.encode("utf-8", "surrogatepass")), *files[1:]])


def _spoil(value: Any, chance: random.Random) -> None:
    """Change, drop or add one thing somewhere in a JSON value."""
    keys = list(value) if isinstance(value, dict) else list(range(len(value)))
    if not keys:
        return
    key = chance.choice(keys)
    if isinstance(value[key], dict | list) and value[key] and chance.random() < 0.8:
        _spoil(value[key], chance)
        return
    match chance.randrange(6):
        case 0:
            del value[key]
        case 1:
            value[key] = chance.choice(_ODD_NUMBERS)
        case 2:
            value[key] = chance.choice(_ODD_TEXTS)
        case 3:
            value[key] = chance.choice(([], {}, None, True, [[[[]]]]))
        case 4 if isinstance(value, dict):
            value[chance.choice(_ODD_TEXTS)] = value[key]
        case _:
            value[key] = value[chance.choice(keys)]


def _rules(pack: bytes, chance: random.Random) -> bytes:
    """A zip in order with right hashes over rules that are spoiled."""
    files = opened(pack)
    manifest = json.loads(files[0][1])
    at = chance.randrange(1, len(files))
    text = files[at][1].decode()
    for _ in range(chance.randint(1, 3)):
        spot = chance.randrange(len(text) + 1)
        match chance.randrange(4):
            case 0:
                text = text[:spot] + chance.choice(_WORDS) + text[spot:]
            case 1:
                text = text[:spot] + text[spot + chance.randint(1, 40) :]
            case 2:
                lines = text.splitlines(keepends=True)
                chance.shuffle(lines)
                text = "".join(lines)
            case _:
                text = text.replace(chance.choice("0123456789"), chance.choice(("0", "7", "999", "1.5")))
    data = text.encode()
    for item in manifest["items"]:
        if item["file"] == files[at][0]:
            item |= {"bytes": len(data), "sha256": hashlib.sha256(data).hexdigest()}
    files[at] = (files[at][0], data)
    return zipped([(files[0][0], json.dumps(manifest).encode()), *files[1:]])
