"""Packs: made the same byte for byte, read back whole, open to usual tools, true to the published schema."""

from __future__ import annotations

import hashlib
import io
import json
import zipfile
from pathlib import Path

import attrs
import jsonschema
import pytest
from hostile_packs import opened, with_manifest, zipped
from hypothesis import given
from hypothesis import strategies as st
from shared_games import FELL_GATE, TOLL_BRIDGE, everything, game_item, kicked_gate, modifier_item, pack_of
from shelves import pack

import compose.share.pack.manifest as manifests
from compose.modifiers.parents import Lineage, Used
from compose.share.pack.manifest import manifest_from
from compose.share.pack.pack import make_pack, read_pack
from compose.share.refusal import RefusedError

SCHEMA = json.loads(Path(manifests.__file__).with_name("pack.schema.json").read_text(encoding="utf-8"))
EVERYTHING = pack_of(*everything())


def test_what_goes_in_comes_out() -> None:
    read = read_pack(EVERYTHING, "all.zip").value
    assert read is not None
    assert set(read.items) == set(everything())
    assert (read.title, read.origin) == ("Tarn Valley games", "Tarn Head school (invented)")
    assert [item.kind for item in read.items] == ["game", "game", "remix", "modifier", "modifier"]


def test_the_same_things_give_the_same_bytes_in_any_order() -> None:
    assert pack_of(*reversed(everything())) == EVERYTHING


def test_the_bytes_do_not_change_from_release_to_release() -> None:
    assert hashlib.sha256(pack_of(game_item())).hexdigest() == (
        "bc61174440b3c0a9770ec7d9e3f1b58bd037b918698fe78cf4d0e9126f7b0e9c"
    )


def test_a_pack_can_be_opened_by_hand() -> None:
    with zipfile.ZipFile(io.BytesIO(EVERYTHING)) as archive:
        assert archive.testzip() is None
        assert archive.namelist()[0] == "manifest.json"
        assert archive.read("games/fell-gate.rules").decode() == FELL_GATE
        assert 'based on "Fell Gate"' in archive.read("remixes/fell-gate-kicked.rules").decode()
        lines = archive.read("manifest.json").decode().splitlines()
    assert max(map(len, lines)) < 140


@pytest.mark.parametrize("method", [zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED])
def test_a_pack_zipped_again_by_hand_is_read(method: int) -> None:
    files = [("games/", b""), *reversed(opened(EVERYTHING))]
    read = read_pack(zipped(files, method), "again.zip")
    assert read.value is not None and set(read.value.items) == set(everything())


def test_a_zip_written_as_a_stream_is_read() -> None:
    class Stream(io.RawIOBase):
        def __init__(self) -> None:
            self.held = bytearray()

        def writable(self) -> bool:
            return True

        def write(self, data: object) -> int:
            self.held += bytes(data)  # type: ignore[call-overload]
            return len(bytes(data))  # type: ignore[call-overload]

    stream = Stream()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in opened(EVERYTHING):
            archive.writestr(name, data)
    assert b"PK\7\x08" in stream.held
    read = read_pack(bytes(stream.held), "stream.zip")
    assert read.value is not None and set(read.value.items) == set(everything())


def test_a_pack_made_here_is_never_one_that_is_refused() -> None:
    twice = make_pack([game_item(), game_item(FELL_GATE.replace("14 m", "15 m"))], "t", "o")
    assert twice.value is None and [finding.code for finding in twice.findings] == ["P-twice"]
    backwards = make_pack([game_item()], "t\u202e", "o")
    assert backwards.value is None and [finding.code for finding in backwards.findings] == ["P-field"]


def test_a_remix_and_a_game_of_one_name_do_not_travel_together() -> None:
    renamed = attrs.evolve(kicked_gate(), name="Fell Gate")
    made = make_pack([game_item(), renamed], "t", "o")
    assert made.value is None and [finding.code for finding in made.findings] == ["P-twice"]


def test_the_manifest_is_what_the_schema_says() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    for made in (EVERYTHING, pack_of(), pack_of(modifier_item())):
        jsonschema.validate(json.loads(opened(made)[0][1]), SCHEMA)


VALUES = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(-2, 10**12),
    st.text(max_size=5),
    st.sampled_from(["game", "remix", "0" * 64, "x" * 61, "games/a.rules", "CC0-1.0", "3 m", "a\x00b"]),
    st.lists(st.sampled_from(["0" * 64, "n", ""]), max_size=3),
    st.dictionaries(st.sampled_from(["name", "content", "value"]), st.sampled_from(["n", "0" * 64]), max_size=3),
)


@given(st.data())
def test_what_this_program_takes_the_schema_takes(data: st.DataObject) -> None:
    """The reader may be stricter (letters that cannot be seen, numbers beyond 12 digits), never laxer."""
    manifest = json.loads(opened(EVERYTHING)[0][1])
    for _ in range(data.draw(st.integers(1, 2))):
        spot = manifest
        while True:
            keys = list(spot) if isinstance(spot, dict) else list(range(len(spot)))
            key = data.draw(st.sampled_from(keys)) if keys else None
            deeper = key is not None and isinstance(spot[key], dict | list)
            if not deeper or data.draw(st.integers(0, 4)) == 0:
                break
            spot = spot[key]
        if isinstance(spot, dict):
            spot[key if key is not None else "new"] = data.draw(VALUES)
        elif key is not None:
            spot[key] = data.draw(VALUES)
    try:
        manifest_from(json.dumps(manifest).encode())
    except RefusedError:
        return
    jsonschema.validate(manifest, SCHEMA)


@pytest.mark.parametrize(
    ("key", "value"),
    [("kind", "script"), ("sha256", "0"), ("bytes", 0), ("lineage", {}), ("licence", "no one"), ("history", ["x"])],
)
def test_the_schema_refuses_what_this_program_refuses(key: str, value: object) -> None:
    bad = with_manifest(lambda manifest: manifest["items"][0].__setitem__(key, value))
    assert not jsonschema.Draft202012Validator(SCHEMA).is_valid(json.loads(opened(bad)[0][1]))
    assert read_pack(bad, "bad.zip").value is None


def test_a_remix_says_what_it_is_made_of() -> None:
    read = pack(EVERYTHING)
    [remix] = [item for item in read.items if item.kind == "remix"]
    assert remix.lineage == Lineage(
        "Fell Gate", game_item().content, (Used("kick on"), Used("more cones", (("n", "2"),)))
    )
    assert remix.lineage.words() == "Fell Gate with kick on, then more cones (n 2)"
    [told] = [item for item in json.loads(opened(EVERYTHING)[0][1])["items"] if item["kind"] == "remix"]
    assert told["lineage"] == {
        "base": {"name": "Fell Gate", "content": game_item().content},
        "modifiers": [
            {"name": "kick on", "values": []},
            {"name": "more cones", "values": [{"name": "n", "value": "2"}]},
        ],
    }


def test_credit_and_licence_travel() -> None:
    read = read_pack(pack_of(game_item(TOLL_BRIDGE)), "one.zip").value
    assert read is not None
    assert (read.items[0].credit, read.items[0].licence) == (("Fellgate school (invented)",), "CC-BY-SA-4.0")
