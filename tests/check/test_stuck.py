"""Findings about rounds that cannot end: a wrong game that is caught, a sound one that is not."""

from __future__ import annotations

from compose.check import check
from compose.check.space import Budget
from grammar.finding import Basis, Severity
from tests.benchmarks.lantern_net import lantern_row
from tests.check.build import Builder
from tests.check.cases import bell, checked, found, lost_balls, one_ball_duel, race, rally, told


def test_dead_end() -> None:
    [finding] = found(one_ball_duel(balls_must_go_too=True, may_be_lost=True), "C-dead-end")
    assert finding.severity is Severity.WARNING and finding.basis is Basis.PROVED
    assert dict(finding.numbers) == {"dead ends": 2.0, "states": 6.0}
    assert [step.words for step in finding.witness] == ["the round starts", "north hits"]
    assert finding.witness[-1].transition == 0
    assert "nobody of south is in any more" in finding.hint
    assert '"north wins when the other side has no players in"' in finding.hint
    assert finding.place.line == 1
    assert not found(one_ball_duel(balls_must_go_too=False), "C-dead-end")


def test_dead_end_before_a_bell_is_still_a_warning_in_other_words() -> None:
    [finding] = found(one_ball_duel(balls_must_go_too=True, may_be_lost=True, clock=True), "C-dead-end")
    assert finding.severity is Severity.WARNING
    assert "until the bell" in finding.title


def test_play_that_gets_stuck_because_nothing_ever_ends_it_is_told_once() -> None:
    [finding] = told(one_ball_duel(balls_must_go_too=True))
    assert finding.code == "C-no-end" and finding.severity is Severity.WARNING
    assert [step.words for step in finding.witness] == ["the round starts", "north hits"]
    assert "gets stuck instead: no north ball, no south in." in finding.hint


def test_endless() -> None:
    [finding] = found(rally(way_out=False), "C-endless")
    assert finding.severity is Severity.WARNING
    assert [step.words for step in finding.witness] == ["the round starts", "play on"]
    assert [step.words for step in finding.loop] == ["to", "fro"]
    assert not found(rally(way_out=True), "C-endless")
    assert not found(rally(way_out=False), "C-dead-end")


def test_endless_with_a_bell_is_a_note_or_meant() -> None:
    [finding] = found(rally(way_out=False, clock=True), "C-endless")
    assert finding.severity is Severity.NOTE and "bell" in finding.title
    assert not found(rally(way_out=False, clock=True, open_ended=True), "C-endless")


def test_tries_without_effect_are_endless_and_no_dead_end() -> None:
    for effective in (True, False):
        play = Builder()
        play.place("target", 2, 2, "target")
        told = play.rule("throw")
        play.may("hit", play.shift("target", -1, told), guard=play.at_least("target", 1 if effective else 2))
        play.may("miss", rules=(told,))
        play.end("all down", None, play.at_most("target", 0), told)
        play.may("give up", play.assign("target", 0, told), guard=play.at_least("target", 2))
        net = play.net()
        assert len(found(net, "C-endless")) == (0 if effective else 1)
        assert not found(net, "C-dead-end")
        if not effective:
            assert [step.words for step in found(net, "C-endless")[0].loop] == ["miss"]
            assert "nothing that is tried" in found(net, "C-endless")[0].title


def test_no_end() -> None:
    [finding] = found(race(to=5, capacity=4), "C-no-end")
    assert finding.severity is Severity.WARNING
    assert "never at least 5 north" in finding.hint
    assert not found(race(to=5, capacity=4), "C-endless"), "said once is enough"
    assert not found(race(to=5, capacity=5), "C-no-end")
    [by_clock] = found(race(to=5, capacity=4, clock=True, bell_draws=False), "C-no-end")
    assert by_clock.severity is Severity.WARNING and "before the bell" in by_clock.title


def test_where_nobody_can_ever_win_that_says_why_nothing_ends_the_round() -> None:
    [by_clock] = told(race(to=5, capacity=4, clock=True))
    assert by_clock.code == "C-unwinnable" and "never at least 5 north" in by_clock.hint


def test_no_end_is_not_said_of_play_by_the_clock() -> None:
    play = Builder("north", "south")
    play.place("north", 0, 3)
    told = play.rule("points")
    play.may("a point", play.shift("north", 1, told))
    assert found(play.net(), "C-no-end")
    assert not found(play.net(bell(play)), "C-no-end")


def test_stranded_balls() -> None:
    [finding] = found(lost_balls(fetched=False, wind=True), "C-stranded")
    assert "ball behind the line" in finding.title
    assert [step.words for step in finding.witness] == ["the round starts", "lost"]
    assert not found(lost_balls(fetched=True, wind=True), "C-stranded")
    assert not found(lost_balls(fetched=False, final=True), "C-stranded")


def test_balls_that_lie_in_every_dead_end_are_told_with_it() -> None:
    assert not found(lost_balls(fetched=False), "C-stranded")
    [finding] = found(lost_balls(fetched=False), "C-dead-end")
    assert "nobody may ever fetch the ball behind the line" in finding.hint.lower()
    [finding] = found(lost_balls(fetched=False, final=True), "C-dead-end")
    assert "ever fetch" not in finding.hint


def test_stranded_from_some_point_on() -> None:
    """Balls are fetched only while the one fetcher is there; the game goes on with those left."""
    for fetcher_leaves in (True, False):
        play = Builder()
        play.place("ball", 2, 2, "ball")
        play.place("lost ball", 0, 2, "ball")
        play.place("fetcher", 1, 1, "player")
        play.place("home", 0, 1, "player", final=True)
        play.place("target", 6, 6, "target")
        told = play.rule("throw, fetch, leave")
        play.may("hit", play.shift("target", -1, told), rate=play.rate("ball"))
        play.may(
            "lose",
            play.move("ball", "lost ball", told),
            rate=play.rate("ball"),
            guard=play.at_least("ball", 2),
        )
        play.may("fetch", play.move("lost ball", "ball", told), rate=play.rate("lost ball", "fetcher"))
        if fetcher_leaves:
            play.may("leave", play.move("fetcher", "home", told), rate=play.rate("fetcher"))
        play.end("all down", None, play.at_most("target", 0), told)
        hits = found(play.net(), "C-stranded")
        assert len(hits) == (1 if fetcher_leaves else 0)
        if fetcher_leaves:
            assert hits[0].title.startswith("From here on")
            assert "Give whoever may play them a way back" in hits[0].hint
            assert {step.words for step in hits[0].witness[1:]} == {"lose", "leave"}


def test_sound_game_has_no_findings_but_holding_the_balls() -> None:
    assert [finding.code for finding in checked(lantern_row(3, 2, 2)).findings] == ["C-stall"]


def test_incomplete_space_claims_no_absence() -> None:
    result = check(lantern_row(14, 6, 8), Budget(states=1000))
    assert [finding.code for finding in result.findings] == ["C-budget"]
    assert result.facts is not None and result.facts.ends_surely is None and result.facts.longest is None


def test_too_large_to_number() -> None:
    many = Builder()
    told = many.rule("points")
    for number in range(8):
        many.place(f"points {number}", 0, 999)
        many.may("a point", many.shift(f"points {number}", 1, told))
    result = check(many.net())
    assert [finding.code for finding in result.findings] == ["C-too-large"]
    assert result.space is None and result.facts is None
