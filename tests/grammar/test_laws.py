"""Laws of reading and writing that hold for every game, sound or spoiled."""

from __future__ import annotations

import re
from unicodedata import normalize

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import (
    games,
    hostile_files,
    library_texts,
    modifiers,
    plain_games,
    spoiled_bytes,
    spoiled_files,
    written,
)

from grammar.finding import Finding, Severity
from grammar.format import format_file, format_game
from grammar.game import Game
from grammar.mistakes.proofread import proofread
from grammar.mistakes.shown import framed
from grammar.parse import parse, parse_bytes
from grammar.resolve import resolve
from grammar.tree import Line, RuleFile
from library import kit_categories

sound_texts = st.one_of(games(), modifiers(), st.sampled_from(library_texts()))


def read(text: str) -> RuleFile:
    outcome = parse(text)
    assert outcome.value is not None, [(each.title, each.place) for each in outcome.findings]
    return outcome.value


def game_of(text: str) -> Game:
    outcome = resolve(read(text).games[0], kit_categories())
    assert outcome.value is not None, [(each.title, each.place) for each in outcome.findings]
    return outcome.value


def notes(rules: RuleFile) -> list[str]:
    """Every note of a file."""

    def of(lines: tuple[Line, ...]) -> list[str]:
        return [note for line in lines for note in (*line.notes, *of(line.block))]

    found: list[str] = []
    for game in rules.games:
        found += [*game.notes, *of(game.head), *game.closing_notes]
        found += [note for section in game.sections for note in (*section.notes, *of(section.lines))]
    for modifier in rules.modifiers:
        found += [*modifier.notes, *of(modifier.lines), *modifier.closing_notes]
    return sorted(found)


@given(sound_texts)
def test_formatting_twice_changes_nothing_more(text: str) -> None:
    once = format_file(read(text))
    assert format_file(read(once)) == once


@given(sound_texts)
def test_formatted_text_says_the_same(text: str) -> None:
    before, after = read(text), read(format_file(read(text)))
    assert (after.games, after.modifiers) == (before.games, before.modifiers)


@given(sound_texts)
def test_notes_are_kept(text: str) -> None:
    written_notes = [line.split(":", 1)[1].strip() for line in text.splitlines() if re.match(r"\s*note:", line)]
    rules = read(text)
    assert notes(rules) == sorted(written_notes)
    assert notes(read(format_file(rules))) == sorted(written_notes)


def test_a_letter_that_is_kept_with_its_mark_may_stand_in_a_title() -> None:
    text = library_texts()[0]
    title = read(text).games[0].title
    for letter in ("\u09dc", "e\u0301"):
        again = read(text.replace(f"game {title}", f"game {letter} {title}", 1))
        assert again.games[0].title == f"{normalize('NFC', letter)} {title}"
        assert read(format_file(again)).games[0].title == again.games[0].title


@given(games())
def test_formatted_game_means_the_same(text: str) -> None:
    before = game_of(text)
    after = game_of(format_game(before.sheet))
    assert after == before
    for part in ("ages_years", "court_m", "halved", "kit", "areas", "roles"):
        assert getattr(after, part) == getattr(before, part)


@given(plain_games(), st.data())
def test_order_of_sections_does_not_matter(sheet, data) -> None:  # type: ignore[no-untyped-def]
    before = read(written(sheet)).games[0]
    order = data.draw(st.permutations(list(sheet.lines)))
    sheet.lines = {section: sheet.lines[section] for section in order}
    assert read(written(sheet)).games[0] == before


@given(plain_games())
def test_capital_letters_do_not_matter(sheet) -> None:  # type: ignore[no-untyped-def]
    before = read(written(sheet)).games[0]
    for section, lines in sheet.lines.items():
        sheet.lines[section] = [line if '"' in line or "licence" in line else line.upper() for line in lines]
    assert read(written(sheet)).games[0] == before


def in_order(findings: tuple[Finding, ...], lines: list[str]) -> None:
    """Every finding is one that a teacher can use, and its frame fits a terminal."""
    for finding in findings:
        assert finding.title and finding.code
        assert 0 <= finding.place.line <= max(1, len(lines))
        assert finding.place.column <= finding.place.end
        if finding.severity is Severity.ERROR:
            assert finding.hint
        for line in framed(finding, lambda _, number: lines[number - 1] if 0 < number <= len(lines) else None):
            assert len(line) <= 80


@given(spoiled_files())
def test_spoiled_file_is_read_or_refused_with_reasons(text: str) -> None:
    outcome = parse(text)
    assert outcome.value is not None or outcome.findings
    findings = proofread(text.encode("utf-8", "surrogatepass"), "spoiled.rules", kit_categories())
    in_order(findings, re.split(r"\r\n|\r|\n", text))
    if outcome.value is not None:
        again = read(format_file(outcome.value))
        assert (again.games, again.modifiers) == (outcome.value.games, outcome.value.modifiers)


@given(spoiled_bytes())
def test_spoiled_bytes_are_read_or_refused_with_reasons(data: bytes) -> None:
    outcome = parse_bytes(data, "spoiled.rules")
    assert outcome.value is not None or outcome.findings
    in_order(outcome.findings, re.split(r"\r\n|\r|\n", data.decode("utf-8-sig", "replace")))


@given(st.one_of(st.text(max_size=400), st.binary(max_size=400).map(lambda data: data.decode("latin-1"))))
def test_any_text_is_read_or_refused_with_reasons(text: str) -> None:
    outcome = parse(text)
    assert outcome.value is not None or outcome.findings


@pytest.mark.sample(6)
@pytest.mark.parametrize("name", sorted(hostile_files()))
def test_hostile_file_is_bounded(name: str) -> None:
    data = hostile_files()[name]
    outcome = parse_bytes(data, "hostile.rules")
    assert outcome.value is not None or outcome.findings
    assert len(outcome.findings) <= 110
    in_order(outcome.findings, re.split(r"\r\n|\r|\n", data.decode("utf-8-sig", "replace")))
