"""Packs that nobody should take: one for each trick, with the code of the refusal that it must meet."""

from __future__ import annotations

import hashlib
import io
import json
import stat
import struct
import warnings
import zipfile
from collections.abc import Callable, Iterator
from functools import cache
from typing import Any

from shared_games import FELL_GATE, game_item, pack_of

RULES = "games/fell-gate.rules"


def zipped(files: list[tuple[str, bytes]], method: int = zipfile.ZIP_STORED, **attributes: Any) -> bytes:
    """A zip of files as a usual tool writes it; the attributes are set on every entry."""
    held = io.BytesIO()
    with warnings.catch_warnings(), zipfile.ZipFile(held, "w", method) as archive:
        warnings.simplefilter("ignore")
        for name, data in files:
            entry = zipfile.ZipInfo(name)
            entry.compress_type = method
            for attribute, value in attributes.items():
                setattr(entry, attribute, value)
            archive.writestr(entry, data)
    return held.getvalue()


def opened(pack: bytes) -> list[tuple[str, bytes]]:
    """The files of a pack."""
    with zipfile.ZipFile(io.BytesIO(pack)) as archive:
        return [(name, archive.read(name)) for name in archive.namelist()]


def with_manifest(change: Callable[[dict[str, Any]], None], pack: bytes | None = None) -> bytes:
    """The pack of Fell Gate with something in its manifest changed."""
    files = opened(pack or pack_of(game_item()))
    manifest = json.loads(files[0][1])
    change(manifest)
    return zipped([(files[0][0], json.dumps(manifest).encode()), *files[1:]])


def with_rules(data: bytes, **said: Any) -> bytes:
    """The pack of Fell Gate with other bytes as its rules, and right hashes over them; `said` goes into its entry."""

    def change(manifest: dict[str, Any]) -> None:
        entry = {"bytes": len(data), "sha256": hashlib.sha256(data).hexdigest(), **said}
        manifest["items"][0].update(entry)

    files = opened(with_manifest(change))
    return zipped([files[0], (said.get("file", RULES), data)])


def with_file(name: str, data: bytes = b"game Stray\n") -> bytes:
    """The pack of Fell Gate with one file more."""
    return zipped([*opened(pack_of(game_item())), (name, data)])


def patched(offset_in_first: int, value: bytes, listed_too: int | None = None) -> bytes:
    """The pack of Fell Gate with bytes of its first entry's header changed, and of its line in the contents."""
    pack = bytearray(pack_of(game_item()))
    pack[offset_in_first : offset_in_first + len(value)] = value
    if listed_too is not None:
        at = pack.rindex(b"PK\5\6")
        start = struct.unpack_from("<L", pack, at + 16)[0] + listed_too
        pack[start : start + len(value)] = value
    return bytes(pack)


def overlapping() -> bytes:
    """Two lines of contents that point at one entry."""
    pack = bytearray(zipped([("games/a.rules", b"game A\n"), ("games/b.rules", b"game B\n")]))
    second = pack.rindex(b"PK\1\2")
    struct.pack_into("<L", pack, second + 42, 0)
    return bytes(pack)


def set_item(key: str, value: Any) -> bytes:
    """The pack of Fell Gate whose manifest says something else of its one item."""
    return with_manifest(lambda manifest: manifest["items"][0].__setitem__(key, value))


def set_manifest(data: bytes) -> bytes:
    """The pack of Fell Gate with other bytes as its manifest."""
    return zipped([("manifest.json", data), *opened(pack_of(game_item()))[1:]])


def _names() -> Iterator[tuple[str, bytes, str]]:
    for name, code in (
        ("../games/out.rules", "P-path"),
        ("games/../../out.rules", "P-path"),
        ("/etc/out.rules", "P-path"),
        ("\\\\server\\out.rules", "P-path"),
        ("C:out.rules", "P-path"),
        ("games/inner.zip", "P-nested"),
        ("games/.hidden.rules", "P-name"),
        ("games/deep/er/still.rules", "P-name"),
        ("games/Fell-Gate.rules", "P-twice"),
        ("games/UPPER.rules", "P-name"),
        ("games/fell-gate.rules ", "P-name"),
        ("games/" + "a" * 300 + ".rules", "P-name"),
        ("games/gr\u00f6\u00dfe.rules", "P-name"),
        ("games/gro\u0308\u00dfe.rules", "P-name"),
        ("games/lantern\u202eselur.rules", "P-name"),
        ("games/stray.rules", "P-manifest"),
        ("run.py", "P-name"),
        ("games/fell-gate.rules", "P-twice"),
        ("manifest.json", "P-twice"),
    ):
        yield f"a file called {ascii(name)[:60]}", with_file(name), code


def _zips() -> Iterator[tuple[str, bytes, str]]:
    good = pack_of(game_item())
    files = opened(good)
    yield "nothing", b"", "P-zip"
    yield "a text", FELL_GATE.encode(), "P-zip"
    yield "an empty zip", zipped([]), "P-manifest"
    yield "no manifest", zipped(files[1:]), "P-manifest"
    yield "no rules", zipped(files[:1]), "P-manifest"
    yield "bytes before the first entry", b"#!/bin/sh\n" + good, "P-zip"
    yield "bytes behind the end", good + b"\0", "P-zip"
    yield "a second zip behind the first", good + good, "P-zip"
    yield "a pack in a pack", zipped([*files, ("games/more.zip", good)]), "P-nested"
    yield "a pack named as rules", with_rules(good), "P-nested"
    yield "a link", zipped(files, external_attr=(stat.S_IFLNK | 0o777) << 16, create_system=3), "P-link"
    yield "a device", zipped(files, external_attr=(stat.S_IFCHR | 0o666) << 16, create_system=3), "P-link"
    yield "entries that overlap", overlapping(), "P-zip"
    yield "a locked entry", patched(6, b"\1\0", listed_too=8), "P-locked"
    yield "an unknown packing", patched(8, b"\x0e\0", listed_too=10), "P-zip"
    yield "another name in the entry", patched(30, b"Manifest"), "P-zip"
    yield "a wrong checksum", patched(14, b"\0\0\0\0", listed_too=16), "P-damaged"
    yield "a comment", zipped_with_comment(files), "P-zip"
    yield "a name given a second time beside the entry", zipped(files, extra=b"\x75\x70\5\0\1\0\0\0\0"), "P-zip"
    yield "a folder with bytes", zipped([*files, ("games/", b"x")]), "P-zip"
    yield "too many entries", zipped([(f"games/a{n}.rules", b"x") for n in range(2100)]), "P-bomb"
    yield "a bomb of one entry", zipped([*files, ("games/b.rules", b"0" * 10**7)], zipfile.ZIP_DEFLATED), "P-bomb"
    yield "a bomb by ratio", zipped([*files, ("games/b.rules", b"0" * 60_000)], zipfile.ZIP_DEFLATED), "P-bomb"
    many = [(f"games/a{n}.rules", bytes(range(33, 97)) * 1000) for n in range(300)]
    yield "a bomb of many entries", zipped([*files, *many], zipfile.ZIP_STORED), "P-size"


def zipped_with_comment(files: list[tuple[str, bytes]]) -> bytes:
    """A zip with a comment at its end."""
    held = io.BytesIO(zipped(files))
    with zipfile.ZipFile(held, "a") as archive:
        archive.comment = b"take me"
    return held.getvalue()


def _manifests() -> Iterator[tuple[str, bytes, str]]:
    yield "a manifest that is no text", set_manifest(b"\xff\xfe{}"), "P-json"
    yield "a manifest that is no JSON", set_manifest(b"{'a': 1}"), "P-json"
    yield "a manifest of brackets", set_manifest(b"[" * 100_000), "P-json"
    yield "a huge number", set_manifest(b'{"version": ' + b"9" * 5000 + b"}"), "P-json"
    yield "a number with an exponent", set_manifest(b'{"version": 1e999}'), "P-json"
    yield "not a number", set_manifest(b'{"version": NaN}'), "P-json"
    yield "a name twice", set_manifest(b'{"format": "a", "format": "b"}'), "P-json"
    yield "a list for a manifest", set_manifest(b"[]"), "P-field"
    yield "another format", with_manifest(lambda manifest: manifest.update(format="other")), "P-field"
    yield "a later version", with_manifest(lambda manifest: manifest.update(version=2)), "P-version"
    yield "a field that is not known", with_manifest(lambda manifest: manifest.update(run="rm")), "P-field"
    yield "no title", with_manifest(lambda manifest: manifest.pop("title") and None), "P-field"
    yield "a title with a control letter", with_manifest(lambda m: m.update(title="a\x1b[2J")), "P-field"
    yield "a title that runs backwards", with_manifest(lambda m: m.update(title="a\u202eb")), "P-field"
    yield "half a letter", with_manifest(lambda m: m.update(title="\ud800")), "P-field"
    yield "a long title", with_manifest(lambda m: m.update(title="a" * 121)), "P-field"
    yield "an entry twice", with_manifest(lambda m: m["items"].append(dict(m["items"][0]))), "P-twice"
    for key, value, code in (
        ("sha256", "0" * 64, "P-hash"),
        ("sha256", "0" * 63, "P-field"),
        ("content", "0" * 64, "P-hash"),
        ("bytes", 5, "P-hash"),
        ("bytes", -1, "P-field"),
        ("bytes", 10**11, "P-field"),
        ("bytes", True, "P-field"),
        ("name", "Fell Gate Two", "P-hash"),
        ("name", "", "P-field"),
        ("about", "Something else.", "P-hash"),
        ("credit", ["Somebody else"], "P-hash"),
        ("credit", "Somebody", "P-field"),
        ("licence", "CC0-1.0", "P-hash"),
        ("licence", "a licence", "P-field"),
        ("kind", "modifier", "P-content"),
        ("kind", "remix", "P-field"),
        ("kind", "script", "P-field"),
        ("file", "../fell-gate.rules", "P-field"),
        ("file", "games/other.rules", "P-manifest"),
        ("history", ["x"], "P-field"),
        ("history", ["0" * 64] * 201, "P-field"),
        ("lineage", {}, "P-field"),
        ("lineage", {"base": {"name": "x", "content": None}, "modifiers": []}, "P-field"),
    ):
        yield f"an item whose {key} is {str(value)[:20]}", set_item(key, value), code


def _rules() -> Iterator[tuple[str, bytes, str]]:
    def game(old: str, new: str) -> bytes:
        return with_rules(FELL_GATE.replace(old, new).encode())

    yield "rules that are no text", with_rules(b"\x80\x81" * 50), "P-content"
    yield "rules with a zero", with_rules(b"game A\0\n"), "P-content"
    yield "rules that say nothing", with_rules(b"\n"), "P-content"
    yield "two games in a file", with_rules((FELL_GATE + FELL_GATE.replace("Fell", "Dell")).encode()), "P-content"
    yield "a sentence that is none", game("players roll", "players teleport"), "P-content"
    yield "rules by the thousand", game("care\n", "care\n" + '  "Mind the wall."\n' * 1000), "P-size"
    yield "a line without end", game("Stop the ball", "Stop " * 1000), "P-content"
    yield "a huge number of balls", game("2 foam balls", "2" * 300 + " foam balls"), "P-content"
    yield "a huge number of players", game("4 to 10 players", "4 to 10000000 players"), "P-content"
    sides = " and ".join([", ".join(f"s{'abcdefghij'[n // 10]}{'abcdefghij'[n % 10]}" for n in range(49)), "szz"])
    many = FELL_GATE.replace("ewes and rams", sides).replace("2 foam balls", "50 foam balls")
    yield "fifty sides", with_rules(many.encode()), "P-huge"
    kit = "".join(f"  200 b{'abcdefghij'[n]} balls, like a foam ball\n" for n in range(6))
    placed = "".join(f"  b{'abcdefghij'[n]} balls in the middle\n" for n in range(6))
    letters = "abcdefghijkl"
    kinds = "".join(f"  5 b{n} balls, like a foam ball\n" for n in letters)
    lying = "".join(f"  b{n} balls in the middle\n" for n in letters)
    skills, aims = "roll, kick, strike or underarm throw", "at the cones or the players of the other side"
    tries = "".join(f"  players {skills} a b{n} ball {aims}\n" for n in letters)
    tangled = FELL_GATE.replace("kit\n", "kit\n" + kinds).replace("set-up\n", "set-up\n" + lying)
    tangled = tangled.replace("  players roll", tries + "  players roll").replace("ewes and", "ewes, kids, calves and")
    tangled = tangled.replace("2 foam balls", "4 foam balls")
    yield "everybody with everything at everything", with_rules(tangled.encode()), "P-huge"
    huge = FELL_GATE.replace("kit\n", "kit\n" + kit).replace("set-up\n", "set-up\n" + placed)
    yield "more situations than atoms", with_rules(huge.encode()), "P-huge"
    yield "a name with signs", game("game Fell Gate", "game Fell <b>Gate"), "P-content"
    yield "another name in the rules", game("game Fell Gate", "game Dell Gate"), "P-hash"


@cache
def hostile() -> dict[str, tuple[bytes, str]]:
    """All tricks by what they are: the pack, and the code of its refusal."""
    tricks = [*_zips(), *_names(), *_manifests(), *_rules()]
    return {label: (pack, code) for label, pack, code in tricks}
