"""Packs that lie, break or explode: refused with one clear line, quickly, and nothing comes of them."""

from __future__ import annotations

import time

import pytest
from hostile_packs import hostile, with_rules
from pack_mutations import mutated
from shared_games import FELL_GATE, everything, game_item, modifier_item, pack_of

from compose.modifiers.content_hash import content_hash
from compose.share.pack.item import sheets_in
from compose.share.pack.pack import read_pack
from grammar.finding import Finding
from grammar.parse import parse

HOSTILE = hostile()
SMALL = pack_of(modifier_item())


def one_clear_line(findings: tuple[Finding, ...]) -> bool:
    """One finding, one sentence of one line, not too long to read."""
    if len(findings) != 1:
        return False
    title = findings[0].title
    return title.isprintable() and title.endswith((".", "?", "…")) and 10 < len(title) < 260


@pytest.mark.parametrize("trick", HOSTILE)
def test_each_trick_is_refused_for_what_it_is(trick: str) -> None:
    pack, code = HOSTILE[trick]
    started = time.perf_counter()
    outcome = read_pack(pack, "hostile.zip")
    assert outcome.value is None
    assert one_clear_line(outcome.findings), outcome.findings
    assert outcome.findings[0].code == code, outcome.findings[0].title
    assert time.perf_counter() - started < 5


def test_cut_short_at_every_byte() -> None:
    for length in range(len(SMALL)):
        outcome = read_pack(SMALL[:length], "cut.zip")
        assert outcome.value is None and one_clear_line(outcome.findings), length


def test_any_one_byte_changed_is_refused_or_changes_nothing() -> None:
    whole = read_pack(SMALL, "whole.zip").value
    assert whole is not None
    taken = 0
    for at in range(len(SMALL)):
        outcome = read_pack(SMALL[:at] + bytes([SMALL[at] ^ 0x41]) + SMALL[at + 1 :], "flipped.zip")
        if outcome.value is None:
            assert one_clear_line(outcome.findings), at
        else:
            taken += 1
            assert outcome.value.items == whole.items
    # The times of day, the versions and the attributes of the entries may say anything.
    assert taken < len(SMALL) / 10


def test_a_short_run_of_mutated_packs() -> None:
    """Seeded; the long run is tests/benchmarks/share_fuzz.py."""
    seeds = [pack_of(*everything()), pack_of(game_item()), SMALL]
    refused: dict[str, int] = {}
    for pack in mutated(seeds, 400, seed=7):
        outcome = read_pack(pack, "mutated.zip")
        if outcome.value is None:
            assert one_clear_line(outcome.findings), outcome.findings
            refused[outcome.findings[0].code] = refused.get(outcome.findings[0].code, 0) + 1
        else:
            assert all(_is_what_it_says(item.text, item.content) for item in outcome.value.items)
    assert sum(refused.values()) > 280 and len(refused) >= 8, refused


def _is_what_it_says(text: str, content: str) -> bool:
    rules = parse(text).value
    return rules is not None and content_hash(sheets_in(rules)[0]) == content


def test_a_large_class_is_not_refused() -> None:
    text = FELL_GATE.replace("4 to 10 players", "4 to 200 players")
    assert read_pack(with_rules(text.encode(), content=game_item(text).content), "large.zip").value is not None
