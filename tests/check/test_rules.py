"""Findings about sentences: idle ones, and reactions that chase each other."""

from __future__ import annotations

from attrs import evolve

from compose.net.net import Net
from grammar.finding import Severity
from tests.check.build import ATTEMPT, NEVER, Builder
from tests.check.cases import checked, found, told


def catching(goes_out: bool) -> Net:
    """A catch brings somebody back; where nobody ever goes out, that sentence is idle."""
    play = Builder()
    play.place("in", 2, 2, "player")
    play.place("queue", 0, 2, "player")
    hit, back = play.rule("a player hit waits"), play.rule("a catch brings one back")
    if goes_out:
        play.may("hit", play.move("in", "queue", hit), rate=play.rate("in"))
    play.may("catch", play.move("queue", "in", back), rate=play.rate("in"))
    play.may("stop", play.assign("in", 0, hit))
    play.end("none in", None, play.at_most("in", 0), hit)
    return play.net()


def test_idle_effect() -> None:
    [finding] = found(catching(goes_out=False), "C-idle")
    assert finding.title == '"a catch brings one back" never takes effect.'
    assert finding.place.line == 2
    assert "never any queue" in finding.hint
    assert not found(catching(goes_out=True), "C-idle")


def test_idle_end_names_the_clause_that_is_never_true() -> None:
    for bound, count in ((3, 1), (2, 0)):
        play = Builder()
        play.place("points", 0, 2)
        play.place("steps", 0, 2)
        score, first, other = play.rule("score"), play.rule("two steps"), play.rule("many points")
        play.may("score", play.shift("points", 1, score))
        play.may("step", play.shift("steps", 1, score))
        play.end("walked", None, play.at_least("steps", 2), first)
        play.end("scored", None, play.at_least("points", bound), other)
        hits = found(play.net(), "C-idle")
        assert len(hits) == count
        if hits:
            assert (hits[0].place.line, hits[0].hint[:35]) == (3, "There are never at least 3 points. ")


def test_idle_attempt_says_what_is_never_there() -> None:
    for balls, count in ((0, 1), (1, 0)):
        play = Builder()
        play.place("ball", balls, 1, "ball")
        play.place("points", 0, 2)
        throw, walk = play.rule("players throw"), play.rule("players walk")
        play.may("throw", rate=play.rate("ball"), rules=(throw,))
        play.may("walk", play.shift("points", 1, walk))
        play.end("walked", None, play.at_least("points", 2), walk)
        hits = found(play.net(), "C-idle")
        assert [finding.hint[:26] for finding in hits] == ["There are never any ball. "] * count


def test_idle_kit() -> None:
    for fetched, count in ((False, 1), (True, 0)):
        play = Builder()
        play.place("ball in hand", 1, 3, "ball")
        play.place("ball in the middle", 2, 2, "ball")
        play.place("target", 2, 2, "target")
        throw = play.rule("throw")
        play.may("hit", play.shift("target", -1, throw), rate=play.rate("ball in hand"))
        if fetched:
            back = play.move("ball in the middle", "ball in hand", throw)
            play.may("fetch", back, rate=play.rate("ball in the middle"))
        play.end("all down", None, play.at_most("target", 0), throw)
        hits = found(play.net(), "C-idle-kit")
        assert [finding.title for finding in hits] == ["Nobody ever uses the 2 ball in the middle."] * count


def test_idle_guard_and_idle_reaction() -> None:
    play = Builder()
    play.place("points", 0, 2)
    score, never, follow = play.rule("score"), play.rule("never allowed"), play.rule("follows")
    play.may("score", play.shift("points", 1, score))
    play.may("not allowed", guard=NEVER, rules=(never,))
    play.when("at three", play.at_least("points", 3), play.assign("points", 0, follow))
    play.end("two", None, play.at_least("points", 2), score)
    assert [finding.place.line for finding in found(play.net(), "C-idle")] == [2, 3]


def test_a_sentence_to_which_nothing_leads() -> None:
    play = Builder()
    play.place("points", 0, 2)
    score = play.rule("score")
    play.rule("a cone is knocked: a point")
    play.may("score", play.shift("points", 1, score))
    play.end("two", None, play.at_least("points", 2), score)
    [finding] = told(play.net())
    assert (finding.code, finding.place.line) == ("C-idle", 2) and "nothing that can be tried" in finding.hint.lower()


def test_what_one_reason_keeps_idle_is_told_once() -> None:
    play = Builder()
    play.place("ball", 0, 1, "ball")
    play.place("points", 0, 2)
    throw, score, walk = play.rule("players throw"), play.rule("a point for a hit"), play.rule("players walk")
    play.may("throw", play.shift("points", 1, score), rate=play.rate("ball"), rules=(throw,))
    play.may("walk", play.shift("points", 1, walk))
    play.end("walked", None, play.at_least("points", 2), walk)
    [finding] = found(play.net(), "C-idle")
    assert finding.place.line == 1 and [span.line for span in finding.others] == [2]
    assert '"a point for a hit"' in finding.hint and "1 other line" in finding.title


def test_to_bring_back_what_never_goes_away_does_no_harm() -> None:
    for lost, skill, severity in ((0, "fetch", Severity.NOTE), (0, "roll", Severity.WARNING), (1, "fetch", None)):
        play = Builder()
        play.place("ball behind the line", lost, 1, "ball")
        play.place("ball", 1 - lost, 1, "ball")
        play.place("points", 0, 2)
        fetch, walk = play.rule("players fetch balls"), play.rule("players walk")
        back = play.move("ball behind the line", "ball", fetch)
        play.may("fetch", back, rate=play.rate("ball behind the line"), attempt=evolve(ATTEMPT, skill=skill))
        play.may("walk", play.shift("points", 1, walk))
        play.end("walked", None, play.at_least("points", 2), walk)
        assert [finding.severity for finding in found(play.net(), "C-idle")] == ([severity] if severity else [])


def test_chase() -> None:
    for other_way, count in ((True, 1), (False, 0)):
        play = Builder()
        play.place("up", 1, 1)
        told, down, up = (
            play.rule("knock"),
            play.rule("when none is up, put it up"),
            play.rule("when one is up, fell it"),
        )
        play.may("knock", play.shift("up", -1, told))
        play.when("put up", play.at_most("up", 0), play.assign("up", 1, down))
        if other_way:
            play.when("fell", play.at_least("up", 1), play.assign("up", 0, up))
        hits = found(play.net(), "C-chase")
        assert len(hits) == count
        if hits:
            assert "knock" in hits[0].title and hits[0].place.line == 2
            assert [line.line for line in hits[0].others] == [3], "the other of the two stands with it"


def test_reactions_of_one_moment_all_happen() -> None:
    """Two sentences for the same moment are both carried out, though the first makes it pass."""
    play = Builder()
    play.place("up", 2, 2)
    play.place("points", 0, 5)
    told = play.rule("knock")
    play.may("knock", play.shift("up", -1, told))
    play.when("stand up again", play.at_most("up", 0), play.assign("up", 2, told))
    play.when("a point", play.at_most("up", 0), play.shift("points", 1, told))
    play.end("five", None, play.at_least("points", 5), told)
    result = checked(play.net())
    assert result.facts is not None and result.facts.shortest == 10 and result.facts.states == 11
