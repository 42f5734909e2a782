"""Bytes of a foreign zip to its files, refused where anything in it is out of the ordinary.

Usual readers forgive: data before, between and behind the entries, entries that overlap, two lists of
contents, names that differ between the list and the entry. All of this is a way to hide something, so
this reader takes only a zip that is read the same by everyone: entries one behind the other from the first
byte, the list of contents right behind them, the end record last. Layout: ZIP file format specification
6.3.10 (PKWARE 2022), sections 4.3.7 (entry), 4.3.9 (descriptor), 4.3.12 (contents), 4.3.16 (end).
"""

from __future__ import annotations

import stat
import struct
import zlib
from collections import Counter
from collections.abc import Callable

from compose.share.bounds import MOST_ENTRIES, MOST_PACK_BYTES, MOST_RATIO, MOST_UNPACKED_BYTES
from compose.share.refusal import RefusedError, shown
from grammar.frozen import frozen

_END = struct.Struct("<4s4H2LH")
_LISTED = struct.Struct("<4s6H3L5H2L")
_LOCAL = struct.Struct("<4s5H3L2H")
_DESCRIPTOR = struct.Struct("<3L")
_STORED, _DEFLATED = 0, 8
_ENCRYPTED, _SIZES_BEHIND, _SQUEEZE, _UTF8 = 0x0001, 0x0008, 0x0006, 0x0800
_MOST_NAME_BYTES = 200
_MOST_EXTRA_BYTES = 100
_RENAMING_EXTRAS = (0x0001, 0x7075)


@frozen
class _Listed:
    """An entry as the list of contents has it."""

    name: str
    flags: int
    method: int
    crc: int
    packed: int
    size: int
    offset: int


def unzipped(data: bytes, allowed: Callable[[str], int]) -> dict[str, bytes]:
    """The files of a zip by name; raises RefusedError. `allowed` gives how many bytes a name may have at most, or
    raises RefusedError for a name that may not be there."""
    if len(data) > MOST_PACK_BYTES:
        raise RefusedError("P-size", f"The pack is larger than {MOST_PACK_BYTES >> 20} MiB.")
    listed, contents_at = _contents(data)
    folders = [entry for entry in listed if entry.name.endswith("/")]
    files = [entry for entry in listed if not entry.name.endswith("/")]
    for entry in files:
        _within(entry, allowed(entry.name))
    for entry in folders:
        allowed(entry.name)
        if entry.size:
            raise RefusedError("P-zip", f"The folder {shown(entry.name)} in the pack holds bytes of its own.")
    total = sum(entry.size for entry in files)
    if total > MOST_UNPACKED_BYTES:
        most = MOST_UNPACKED_BYTES >> 20
        raise RefusedError("P-bomb", f"The pack unpacks to {total:,} bytes; at most {most} MiB are read.")
    spans = {entry.name: _span(data, entry) for entry in listed}
    _one_behind_the_other([(entry.offset, spans[entry.name][2]) for entry in listed], contents_at)
    return {entry.name: _unpacked(data, entry, *spans[entry.name][:2]) for entry in files}


def _one_behind_the_other(spans: list[tuple[int, int]], contents_at: int) -> None:
    at = 0
    for start, end in [*sorted(spans), (contents_at, contents_at)]:
        if start != at:
            title = "The pack is not a plain zip: its entries overlap, or something lies between them."
            raise RefusedError("P-zip", title)
        at = end


def _contents(data: bytes) -> tuple[list[_Listed], int]:
    """The list of contents and where it begins."""
    if len(data) < _END.size or not data.startswith(b"PK"):
        raise RefusedError("P-zip", "This is not a pack: a pack is a zip file.")
    mark, disk, first, here, total, size, start, comment = _END.unpack_from(data, len(data) - _END.size)
    if mark != b"PK\5\6" or comment:
        raise RefusedError("P-zip", "The pack is cut short, or something hangs behind its end.")
    if disk or first or here != total:
        raise RefusedError("P-zip", "The pack is one part of a zip in several parts.")
    if total > MOST_ENTRIES:
        raise RefusedError("P-bomb", f"The pack lists {total} files; at most {MOST_ENTRIES} are read.")
    if start + size != len(data) - _END.size:
        raise RefusedError("P-zip", "The pack's list of contents is not where it should be.")
    listed: list[_Listed] = []
    at, end = start, start + size
    for _ in range(total):
        entry, at = _listed(data, at, end)
        listed.append(entry)
    if at != end:
        raise RefusedError("P-zip", "The pack's list of contents is longer than it says.")
    for name, times in Counter(entry.name.casefold() for entry in listed).items():
        if times > 1:
            raise RefusedError("P-twice", f"The pack holds {shown(name)} twice.")
    return listed, start


def _listed(data: bytes, at: int, end: int) -> tuple[_Listed, int]:
    if at + _LISTED.size > end:
        raise RefusedError("P-zip", "The pack's list of contents is cut short.")
    found = _LISTED.unpack_from(data, at)
    mark, _, _, flags, method, _, _, crc, packed, size, name_size, extra_size = found[:12]
    comment_size, disk, _, outside, offset = found[12:]
    after = at + _LISTED.size + name_size + extra_size
    if mark != b"PK\1\2" or after > end or disk or comment_size:
        raise RefusedError("P-zip", "The pack's list of contents is damaged.")
    name = _name(data[at + _LISTED.size : at + _LISTED.size + name_size])
    if flags & _ENCRYPTED:
        raise RefusedError("P-locked", f"{shown(name)} in the pack is locked with a password; packs are open.")
    if flags & ~(_SIZES_BEHIND | _SQUEEZE | _UTF8) or method not in (_STORED, _DEFLATED):
        raise RefusedError("P-zip", f"{shown(name)} in the pack is packed in a way that packs do not use.")
    kind = stat.S_IFMT(outside >> 16)
    if kind not in (0, stat.S_IFREG) and not (kind == stat.S_IFDIR and name.endswith("/")):
        raise RefusedError("P-link", f"{shown(name)} in the pack is a link or a device, not a file.")
    _extra(data[after - extra_size : after], name)
    return _Listed(name, flags, method, crc, packed, size, offset), after


def _name(raw: bytes) -> str:
    if not 0 < len(raw) <= _MOST_NAME_BYTES:
        raise RefusedError("P-name", f"A name in the pack has {len(raw)} bytes.")
    try:
        return raw.decode("ascii")
    except UnicodeDecodeError:
        title = f"A name in the pack has letters outside plain ASCII: {shown(raw.decode('utf-8', 'replace'))}."
        raise RefusedError("P-name", title) from None


def _extra(extra: bytes, name: str) -> None:
    """Refuse extra fields that give another name or other sizes; times and owners are passed over."""
    at = 0
    while at < len(extra):
        tag, size = struct.unpack_from("<2H", extra, at) if at + 4 <= len(extra) else (0x0001, 0)
        if tag in _RENAMING_EXTRAS or len(extra) > _MOST_EXTRA_BYTES:
            raise RefusedError("P-zip", f"{shown(name)} in the pack carries data beside its contents.")
        at += 4 + size


def _within(entry: _Listed, most: int) -> None:
    if entry.size > most:
        title = f"{shown(entry.name)} in the pack unpacks to {entry.size:,} bytes; at most {most:,} are read."
        raise RefusedError("P-bomb", title)
    if entry.size > MOST_RATIO * entry.packed + 1024:
        raise RefusedError("P-bomb", f"{shown(entry.name)} in the pack unpacks to over {MOST_RATIO} times its size.")


def _span(data: bytes, entry: _Listed) -> tuple[int, int, int]:
    """Where an entry's packed bytes begin and end, and where all of the entry ends."""
    wrong = RefusedError("P-zip", f"{shown(entry.name)} in the pack does not agree with the list of contents.")
    if entry.offset + _LOCAL.size > len(data):
        raise wrong
    mark, _, flags, method, _, _, crc, packed, size, name_size, extra_size = _LOCAL.unpack_from(data, entry.offset)
    start = entry.offset + _LOCAL.size + name_size + extra_size
    end = start + entry.packed
    name = data[entry.offset + _LOCAL.size : start - extra_size]
    same = mark == b"PK\3\4" and flags == entry.flags and method == entry.method
    if not same or name != entry.name.encode() or end > len(data):
        raise wrong
    _extra(data[start - extra_size : start], entry.name)
    told = (crc, packed, size)
    if not flags & _SIZES_BEHIND:
        if told != (entry.crc, entry.packed, entry.size):
            raise wrong
        return start, end, end
    for lead in (b"PK\7\x08", b""):
        behind = end + len(lead)
        described = data[behind : behind + _DESCRIPTOR.size]
        if data[end:behind] == lead and described == _DESCRIPTOR.pack(entry.crc, entry.packed, entry.size):
            return start, end, behind + _DESCRIPTOR.size
    raise wrong


def _unpacked(data: bytes, entry: _Listed, start: int, end: int) -> bytes:
    raw = data[start:end]
    damaged = RefusedError("P-damaged", f"{shown(entry.name)} in the pack is damaged.")
    if entry.method == _DEFLATED:
        unpacker = zlib.decompressobj(-zlib.MAX_WBITS)
        try:
            raw = unpacker.decompress(raw, entry.size + 1)
        except zlib.error:
            raise damaged from None
        if not unpacker.eof or unpacker.unused_data or unpacker.unconsumed_tail:
            raise damaged
    if len(raw) != entry.size or zlib.crc32(raw) != entry.crc:
        raise damaged
    return raw
