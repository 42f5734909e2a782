"""The commands of paper, as typed: what they write, what they say, and with which exit code they end."""

from __future__ import annotations

import json
from io import BytesIO
from xml.etree import ElementTree

import pytest
from pypdf import PdfReader

from tests.terminal.running import typed


@pytest.fixture
def run():
    return typed


def test_plan_is_written_and_not_written_over(run, tmp_path):
    file = tmp_path / "plan.svg"
    assert run("plan", "lantern row", "--out", file).exit_code == 0
    ElementTree.fromstring(file.read_bytes())
    again = run("plan", "lantern row", "--out", file)
    assert again.exit_code == 2
    assert "there already" in again.output
    assert run("plan", "lantern row", "--out", file, "--force").exit_code == 0


def test_plan_says_by_how_much_a_hall_is_too_small(run):
    told = run("plan", "homestead", "--hall", "tarn head school hall")
    assert told.exit_code == 1
    assert "6.0 m too small" in told.output
    in_feet = run("plan", "homestead", "--hall", "tarn head school hall", "--units", "feet", "--json")
    assert in_feet.exit_code == 1
    found = json.loads(in_feet.output)["findings"]
    assert any("19.5 ft too small" in each["title"] for each in found)


@pytest.mark.parametrize(
    "words",
    [
        ("plan", "lantern row", "--hall", "nowhere"),
        ("plan", "lantern row", "--units", "ells"),
        ("plan", "lantern row", "--language", "xx"),
        ("plan", "lantern row", "--out", "plan.bmp"),
        ("strip", "lantern row", "--finding", "Z-none"),
        ("strip", "lantern row", "--out", "strip.pdf"),
        ("lesson", "lantern row", "heron and pike", "--quick", "--minutes", "20"),
        ("booklet", "--out", "cards.svg"),
    ],
)
def test_wrong_use_ends_with_two_and_a_hint(run, words):
    told = run(*words)
    assert told.exit_code == 2, told.output
    assert "nothing was done" in told.output


def test_strip_is_the_same_for_the_same_seed(run, tmp_path):
    for order in (1, 2):
        assert run("strip", "millrace roll", "--seed", 7, "--out", tmp_path / f"{order}.svg").exit_code == 0
    assert (tmp_path / "1.svg").read_bytes() == (tmp_path / "2.svg").read_bytes()
    told = json.loads(run("strip", "millrace roll", "--pictures", 5, "--json").output)
    assert 2 <= len(told["pictures"]) <= 5


def test_lesson_is_planned_within_its_minutes(run):
    told = json.loads(run("lesson", "lantern row", "heron and pike", "--quick", "--minutes", 45, "--json").output)
    assert sum(slot["minutes"] for slot in told["slots"]) == pytest.approx(45)
    assert {"name": "plastic pins", "most": 10, "by_game": [10, 6]} in told["kit"]


def test_booklet_holds_the_cards_asked_for(run, tmp_path):
    file = tmp_path / "cards.pdf"
    told = run("booklet", "lantern row", "toll stone", "--out", file, "--language", "fr", "--title", "Jeux")
    assert told.exit_code == 0, told.output
    reader = PdfReader(BytesIO(file.read_bytes()))
    assert len(reader.pages) == 3
    assert "Table des matières" in reader.pages[0].extract_text()


def test_booklet_in_large_print_has_two_pages_a_card(run, tmp_path):
    file = tmp_path / "large.pdf"
    told = run("booklet", "lantern row", "cloud drift", "--large", "--class", "beck class", "--out", file)
    assert told.exit_code in (0, 1), told.output
    assert len(PdfReader(BytesIO(file.read_bytes())).pages) == 1 + 2 * 2


def test_a_strip_shows_all_courts_before_the_round_on_the_first(run, tmp_path):
    for ending in ("svg", "html"):
        out = tmp_path / f"strip.{ending}"
        run("strip", "toll stone", "--pupils", "24", "--out", out)
        drawn = out.read_text(encoding="utf-8")
        assert all(f">{number}</text>" in drawn for number in range(1, 13)) and "court 1 of 12" in drawn
