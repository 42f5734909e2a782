"""Remix files: read, kept tidy, made from their base, signed, and carried over when the base changes."""

from __future__ import annotations

from textwrap import dedent

import pytest
from mixtures import ROW, game_of, library_games, modifiers_by_name, resolved, rules_in, said

import library
from compose.modifiers.carry_over import Carried, carried_over
from compose.modifiers.content_hash import content_hash
from compose.modifiers.from_recipe import made
from compose.modifiers.lineage import lineage, lineage_lines, only_remixed
from compose.modifiers.recipe import Recipe, recipe_of
from grammar.finding import Finding, Severity
from grammar.format import format_file, format_plain
from grammar.game import Game
from grammar.parse import parse

REMIX = """
    note: Made on a wet day.
    remix Rolling Row
      based on "Row"
      with "roll instead"
      with "add balls", n 3
      about "Row on the floor."
      credit "Beckside (invented)"
      licence CC-BY-4.0
      note: Our own line.
      put in care
        "Mind the wet corner."
      replace in when
        a lantern is knocked: it stands up again
    """


def recipe(text: str = REMIX) -> Recipe:
    outcome = recipe_of(rules_in(text).remixes[0], modifiers_by_name())
    assert outcome.value is not None, [each.title for each in outcome.findings]
    return outcome.value


def wrong(text: str) -> tuple[Finding, ...]:
    outcome = recipe_of(rules_in(text).remixes[0], modifiers_by_name())
    assert outcome.value is None
    return outcome.findings


def remixed(text: str = REMIX, base: Game | None = None) -> Game:
    outcome = made(recipe(text), base or game_of(ROW), library.kit_names())
    assert outcome.value is not None, [each.title for each in outcome.findings]
    return outcome.value.game


def test_file_reads_back_as_it_is_written() -> None:
    rules = rules_in(REMIX)
    text = format_file(rules)
    assert text == dedent(REMIX).lstrip("\n").rstrip(" ")
    assert rules_in(text) == rules
    assert format_file(rules_in(text)) == text


def test_modifiers_come_first_and_own_edits_last() -> None:
    game = remixed()
    assert said(game, "kit")[0] == "11 foam balls"
    assert "players roll a foam ball at the lanterns or the players of the other side" in said(game, "play")
    assert '"Mind the wet corner."' in said(game, "care")
    assert "a lantern is knocked: it stands up again" in said(game, "when")


def test_remix_has_its_own_name_and_the_credits_of_all() -> None:
    game = remixed()
    assert game.title == "Rolling Row"
    assert game.told("credit") == ("Tarn Valley schools (invented)", "Beckside (invented)")
    assert game.told("about") == ("Row on the floor.",)
    assert said(game, "head").count("licence CC-BY-4.0") == 1


def test_base_that_has_changed_is_told_by_its_content() -> None:
    base = game_of(ROW)
    same = REMIX.replace('"Row"', f'"Row", whose content is "{content_hash(base.sheet)}"')
    assert not made(recipe(same), base, library.kit_names()).findings
    other = game_of(ROW.replace("8 foam balls", "10 foam balls").replace("4 foam balls", "5 foam balls"))
    (finding,) = made(recipe(same), other, library.kit_names()).findings
    assert finding.code == "M-base-changed" and finding.severity is Severity.WARNING


def test_notes_of_the_base_are_not_its_content() -> None:
    noted = game_of(ROW.replace("    space\n", "    note: By the lake.\n    space\n"))
    assert content_hash(noted.sheet) == content_hash(game_of(ROW).sheet)


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ('based on "Row"', 'credit "Nobody"', "M-base"),
        ('with "roll instead"', 'based on "Other"', "M-base"),
        ('with "roll instead"', 'with "rol instead"', "M-unknown"),
        ('"add balls", n 3', '"add balls", n 99', "M-value"),
        ('"add balls", n 3', '"add balls", m 3', "M-value"),
    ],
)
def test_what_is_wrong_with_a_file_has_its_place(old: str, new: str, code: str) -> None:
    findings = wrong(REMIX.replace(old, new))
    assert [each.code for each in findings] == [code]
    assert findings[0].place.line > 0 and findings[0].hint


def test_misspelled_modifier_is_guessed() -> None:
    assert "roll instead" in wrong(REMIX.replace('"roll instead"', '"rol instead"'))[0].hint


def test_syntax_of_a_remix_is_checked_line_by_line() -> None:
    outcome = parse(dedent(REMIX).replace('with "roll instead"', "with roll instead").replace("n 3", "n many"))
    assert outcome.value is None
    assert len(outcome.findings) == 2


def test_clash_within_a_file_is_an_error() -> None:
    twice = recipe(REMIX.replace("add balls", "kick instead").replace(", n 3", ""))
    outcome = made(twice, game_of(ROW), library.kit_names())
    assert outcome.value is None
    assert any(each.code == "M-clash" for each in outcome.findings)


@pytest.mark.parametrize(
    ("licence", "told"),
    [("CC-BY-4.0", []), ("CC-BY-SA-4.0", ["M-licence"]), ("CC-BY-ND-4.0", ["M-licence"])],
)
def test_licence_of_the_base_is_kept_in_mind(licence: str, told: list[str]) -> None:
    base = game_of(ROW.replace("CC-BY-4.0", licence))
    assert [each.code for each in made(recipe(), base, library.kit_names()).findings] == told


def test_licence_is_that_of_the_base_where_the_file_names_none() -> None:
    base = game_of(ROW.replace("CC-BY-4.0", "CC-BY-SA-4.0"))
    assert "licence CC-BY-SA-4.0" in said(remixed(REMIX.replace("      licence CC-BY-4.0\n", ""), base), "head")


def carried(base: str, before: str | None = ROW, text: str = REMIX) -> Carried:
    old = game_of(before) if before else None
    outcome = carried_over(recipe(text), game_of(base), library.kit_names(), old)
    assert outcome.value is not None, [each.title for each in outcome.findings]
    return outcome.value


def test_base_changed_elsewhere_makes_no_conflict() -> None:
    new = ROW.replace('"Aim low."', '"Aim very low."')
    result = carried(new)
    assert not result.conflicts
    assert content_hash(game_of(new).sheet) in format_plain(result.sheet)
    assert '"Aim very low."' in said(result.remix.game, "care")


def test_carried_file_makes_what_was_told_without_a_warning() -> None:
    new = ROW.replace("18 m by 9 m", "16 m by 8 m")
    result = carried(new)
    text = format_plain(result.sheet)
    outcome = made(recipe(text), game_of(new), library.kit_names())
    assert outcome.value is not None and outcome.value.game == result.remix.game
    assert not outcome.findings


def test_line_that_both_changed_is_told_with_all_three_wordings() -> None:
    new = ROW.replace("a lantern is knocked: it stays down", "a lantern is knocked: the thrower's side scores 1 point")
    new = new.replace("after 6 min: more lanterns standing wins", "after 6 min: more points wins")
    (finding,) = (each for each in carried(new).conflicts if "lantern is knocked" in each.title)
    assert finding.code == "M-both-changed"
    assert "now says: a lantern is knocked: the thrower's side scores 1 point" in finding.title
    assert "Before it said: a lantern is knocked: it stays down" in finding.title
    assert "`own edits` made of it: a lantern is knocked: it stands up again" in finding.title


def test_line_of_the_same_topic_is_told_and_no_other() -> None:
    rule = "a lantern is knocked: it stays down"
    for more in ("a ball is missed", "a ball leaves the court", "the first time, a lantern is knocked"):
        others = f"{more}: the thrower's side scores 1 point"
        new = ROW.replace(rule, f"{others}\n      a lantern is knocked: the thrower's side scores 1 point")
        [finding] = (each for each in carried(new).conflicts if "`own edits`" in each.title)
        assert "now says: a lantern is knocked: the thrower's side scores 1 point" in finding.title


def test_line_that_is_gone_is_told() -> None:
    skill = "players overarm throw a foam ball at the lanterns or the players of the other side"
    new = ROW.replace(skill, skill.replace("overarm throw", "kick"))
    titles = [each.title for each in carried(new).conflicts]
    assert any("no longer says: " in title or "now says: " in title for title in titles)


def test_change_that_the_base_made_itself_is_told() -> None:
    new = ROW.replace("a lantern is knocked: it stays down", "a lantern is knocked: it stands up again")
    titles = [each.title for each in carried(new).conflicts]
    assert any("now says itself what `own edits` made of it" in title for title in titles)


def test_modifier_that_no_longer_fits_is_left_out_and_told() -> None:
    text = REMIX.replace("add balls", "deeper strips").replace(", n 3", "")
    new = ROW.replace("      dim strip: 2 m deep, before each back line, nobody guards there\n", "")
    result = carried(new, text=text)
    (finding,) = (each for each in result.conflicts if each.code == "M-left-out")
    assert finding.title == "`deeper strips` is left out: Row has no strip."
    assert "deeper strips" not in format_plain(result.sheet) and "roll instead" in format_plain(result.sheet)


@pytest.mark.parametrize("path", library.remix_paths(), ids=lambda path: path.stem)
def test_library_remixes_are_made_and_up_to_date(path: object) -> None:
    """A warning here is mended by: carry FILE --out FILE --force."""
    from pathlib import Path

    assert isinstance(path, Path)
    rules = rules_in(path.read_text(encoding="utf-8"), path.name)
    assert format_file(rules) == path.read_text(encoding="utf-8")
    known = recipe_of(rules.remixes[0], modifiers_by_name()).value
    assert known is not None
    base = library_games()[known.base.lower().replace(" ", "-")]
    outcome = made(known, base, library.kit_names())
    assert outcome.value is not None
    assert not outcome.findings, [each.title for each in outcome.findings]


def test_lineage_is_a_tree_of_what_came_from_what() -> None:
    base = game_of(ROW)
    first = rules_in(REMIX.replace('"Row"', f'"Row", whose content is "{"0" * 64}"')).remixes[0]
    second = rules_in('remix Twice Removed\n  based on "Rolling Row"\n  with "hold limit", time 5 s').remixes[0]
    lost = rules_in('remix Lost\n  based on "Nowhere"\n  with "hold limit"').remixes[0]
    graph = lineage([base.sheet, library_games()["ferry-bench"].sheet], [second, first, lost])
    assert set(graph.edges) == {("Row", "Rolling Row"), ("Rolling Row", "Twice Removed"), ("Nowhere", "Lost")}
    assert graph.edges["Row", "Rolling Row"]["stale"] and not graph.edges["Rolling Row", "Twice Removed"]["stale"]
    assert graph.nodes["Nowhere"]["kind"] == "unknown"
    assert "Ferry Bench" in graph and "Ferry Bench" not in only_remixed(graph)
    lines = list(lineage_lines(only_remixed(graph)))
    assert lines[:4] == [
        "Row",
        "  └ with roll instead; add balls, n 3; 2 own edits  [its base has changed since]",
        "    Rolling Row",
        "      └ with hold limit, time 5 s",
    ]
    assert "Nowhere  (not at hand)" in lines


def test_remix_of_itself_is_seen() -> None:
    one = rules_in('remix One\n  based on "Two"\n  with "hold limit"').remixes[0]
    two = rules_in('remix Two\n  based on "One"\n  with "hold limit"').remixes[0]
    assert list(lineage_lines(lineage([], [one, two])))


def test_made_game_is_a_game_like_any_other() -> None:
    game = remixed()
    assert resolved(game.sheet) == game
