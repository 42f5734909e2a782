"""Findings about winning: a wrong game that is caught, a sound one that is not."""

from __future__ import annotations

from attrs import evolve

from compose.check import Budget, check
from compose.net.match import Match
from compose.net.net import All, Bell, Net
from compose.telling.english.findings import findings_told
from grammar.core.ends import Meeting
from grammar.finding import Severity
from tests.check.build import ALWAYS, NEVER, Builder
from tests.check.cases import bell, checked, found, hold_the_balls, last_targets, race


def test_unwinnable() -> None:
    [finding] = found(race(to=3, capacity=3, south_throws=False), "C-unwinnable")
    assert finding.title.startswith("South can never win")
    assert "never at least 3 south" in finding.hint
    assert finding.place.line == 2
    assert not found(race(to=3, capacity=3), "C-unwinnable")
    facts = checked(race(to=3, capacity=3, south_throws=False)).facts
    assert facts is not None and facts.can_win == ("north",)


def test_unwinnable_for_want_of_a_sentence() -> None:
    for sides, count in ((("north", "south"), 1), (("north",), 0)):
        play = Builder(*sides)
        play.place("north", 0, 2)
        told = play.rule("first to two wins")
        play.may("a point", play.shift("north", 1, told))
        play.end("north wins", "north", play.at_least("north", 2), told)
        hits = found(play.net(), "C-unwinnable")
        assert len(hits) == count
        if hits:
            assert "No sentence lets south win" in hits[0].hint


def test_who_has_no_end_of_their_own_is_shown_those_of_the_others() -> None:
    """Not one that nobody wins, where somebody wins another."""
    for winner, shown in (("north", 2), (None, 1)):
        play = Builder("north", "south")
        play.place("north", 0, 2)
        level, first = play.rule("one point is for nobody"), play.rule("two points end it")
        play.may("a point", play.shift("north", 2, first))
        play.end("level", None, play.exactly("north", 1), level)
        play.end("two points", winner, play.at_least("north", 2), first)
        result = Bell(360.0, (play.result("south leads", "south", NEVER, first),), first)
        hits = found(play.net(result), "C-unwinnable")
        assert {hit.place.line for hit in hits} == {shown}


def test_one_point_of_one_half_wins_a_game_in_which_the_tasks_change() -> None:
    play = Builder("north", "south")
    for side in ("north", "south"):
        play.place(side, 0, 1, "points", side)
    score = play.rule("whoever runs scores once")
    play.may("a run", play.shift("north", 1, score), side="north")
    play.may("back again", play.shift("north", -1, score), side="south")
    for change, sides in ((True, ("north", "south")), (False, ("north",))):
        facts = checked(play.net(bell(play), match=Match(halves=True, tasks_change=change))).facts
        assert facts is not None and facts.can_win == sides


def test_winning_at_the_bell_counts() -> None:
    play = Builder("north", "south")
    play.place("north", 0, 2)
    play.place("south", 0, 2)
    told = play.rule("points")
    play.may("a point", play.shift("north", 1, told))
    play.end("south wins", "south", play.at_least("south", 2), told)
    assert {f.title[:5] for f in found(play.net(), "C-unwinnable")} == set()  # no end at all is said instead
    assert found(play.net(), "C-no-end")
    with_bell = found(play.net(bell(play, draw=False)), "C-unwinnable")
    assert [finding.title[:5] for finding in with_bell] == ["South"]


def test_two_winners() -> None:
    [finding] = found(last_targets(tie_rule=False), "C-two-winners")
    assert finding.severity is Severity.WARNING
    assert [step.words for step in finding.witness] == ["the round starts", "a throw that fells both"]
    assert not found(last_targets(tie_rule=True), "C-two-winners")
    assert not found(last_targets(tie_rule=False, ricochet=False), "C-two-winners")


def test_results_at_the_bell_are_told_in_order() -> None:
    """ "More points, else more steps, else a draw": that two leads differ is no finding."""
    play = Builder("north", "south")
    play.place("north", 0, 1)
    play.place("south", 0, 1)
    told = play.rule("points, else steps")
    for side in ("north", "south"):
        play.may("a point", play.shift(side, 1, told))
    clock = bell(play)
    results = (
        play.result("north has one", "north", play.at_least("north", 1), told),
        play.result("south has one", "south", play.at_least("south", 1), told),
        play.result("draw", None, All(), told),
    )
    assert not found(play.net(Bell(clock.after_s, results, told)), "C-two-winners")


def test_started_over() -> None:
    [finding] = found(race(to=3, capacity=3, start=3), "C-started-over")
    assert "north wins" in finding.title and len(finding.witness) == 1
    assert not found(race(to=3, capacity=3), "C-started-over")


def test_stall() -> None:
    both = found(hold_the_balls(hold_limit=False), "C-stall")
    assert [finding.title.split()[0] for finding in both] == ["North", "South"]
    assert all(finding.severity is Severity.WARNING for finding in both)
    assert "held at most" in both[0].hint
    assert not found(hold_the_balls(hold_limit=True), "C-stall")


def test_stall_of_twins_is_said_once() -> None:
    [finding] = found(hold_the_balls(hold_limit=False, mirrored=True), "C-stall")
    assert "and likewise south" in finding.title


def test_stall_with_a_bell_is_a_note_that_says_who_gains() -> None:
    finding = found(hold_the_balls(hold_limit=False, clock=True), "C-stall")[0]
    assert finding.severity is Severity.NOTE
    assert "win by it at the bell" in finding.title, "with both balls in hand south can no longer draw level"
    assert dict(finding.numbers)["of them ahead at the bell for good"] > 0
    assert [step.words for step in finding.witness[1:]] == ["north hits", "south misses", "south misses"]


def test_race_cannot_be_stalled() -> None:
    assert not found(race(to=3, capacity=3), "C-stall")


def no_way_back(way_back: bool) -> Net:
    """South's only thrower may twist an ankle; then north plays on alone, slowly."""
    play = Builder("north", "south")
    play.place("thrower", 1, 1, "player", "south")
    play.place("sitting", 0, 1, "player", "south", final=True)
    play.place("north", 0, 6)
    play.place("south", 0, 6)
    told = play.rule("points, sitting out")
    play.may("north scores", play.shift("north", 1, told), side="north")
    play.may("south scores", play.shift("south", 1, told), side="south", rate=play.rate("thrower"))
    play.may("sits", play.move("thrower", "sitting", told), rate=play.rate("thrower"))
    if way_back:
        play.may("back", play.move("sitting", "thrower", told), rate=play.rate("sitting"))
    for side in ("north", "south"):
        play.end(f"{side} wins", side, play.at_least(side, 6), told)
    return play.net()


def test_point_of_no_return() -> None:
    [finding] = found(no_way_back(way_back=False), "C-no-return")
    assert finding.severity is Severity.NOTE
    assert finding.title.startswith("South can lose every chance")
    assert [step.words for step in finding.witness] == ["the round starts", "sits"]
    assert dict(finding.numbers)["moves still to play"] == 6.0
    assert not found(no_way_back(way_back=True), "C-no-return")
    for match, what in ((Match(), "win"), (Match(best_of=3), "win a round")):
        [finding] = found(evolve(no_way_back(way_back=False), match=match), "C-no-return")
        assert f"every chance to {what} while" in finding.title


def test_facts() -> None:
    facts = check(race(to=3, capacity=3)).facts
    assert facts is not None
    assert (facts.shortest, facts.longest, facts.ends_surely) == (3, 5, True)
    assert facts.can_win == ("north", "south")
    for sides, net in (((), race(to=3, capacity=3)), (("north", "south"), hold_the_balls(False))):
        whole, part = (check(net, budget).facts for budget in (Budget(), Budget(states=1)))
        assert whole is not None and whole.complete and whole.held_up_by == sides
        assert part is not None and not part.complete and part.held_up_by is None
    with_misses = check(race(to=3, capacity=3, misses=True)).facts
    assert with_misses is not None and with_misses.longest is None and with_misses.ends_surely


def test_best_of_rounds_that_nobody_can_win() -> None:
    for winner, count in ((None, 1), ("north", 0)):
        play = Builder("north", "south")
        play.place("steps", 0, 1)
        told = play.rule("a step ends it")
        play.may("a step", play.shift("steps", 1, told))
        play.end("over", winner, play.at_least("steps", 1), told)
        for match in (
            Match(best_of=3),
            Match(halves=True, parts=3, of_rounds=True),
            Match(groups=3, meeting=Meeting.WINNER_STAYS, rounds=6),
        ):
            net = evolve(play.net(), match=evolve(match, lines=("best of 3 rounds",)))
            assert len(found(net, "C-best-of-nothing")) == count
            cut_off = check(net, Budget(states=1))
            assert [each.code for each in cut_off.findings].count("C-best-of-nothing") == count
        for_its_own_sake = evolve(play.net(), match=Match(groups=3, meeting=Meeting.ALL_MEET_ALL))
        assert not found(for_its_own_sake, "C-best-of-nothing")
        assert not found(play.net(), "C-best-of-nothing"), "one round may be for its own sake"


def test_a_bell_at_which_nobody_can_lead() -> None:
    for scores, count in ((False, 1), (True, 0)):
        play = Builder("north", "south")
        for side in ("north", "south"):
            play.place(side, 0, 1, "points", side)
            play.place(f"{side} flag", 1, 1, "target", side)
        told, clock = play.rule("take the flag"), play.rule("more points wins")
        for side, other in (("north", "south"), ("south", "north")):
            play.may(f"{side} takes it", play.shift(f"{other} flag", -1, told), side=side)
            if scores:
                play.may(f"{side} scores", play.shift(side, 1, told), side=side)
            play.end(f"{side} wins", side, play.at_most(f"{other} flag", 0), told)
        results = [
            play.result(f"{a} leads", a, play.more(a, b), clock) for a, b in (("north", "south"), ("south", "north"))
        ]
        hits = found(
            play.net(Bell(60.0, (*results, play.result("a draw", None, ALWAYS, clock)), clock)), "C-level-bell"
        )
        assert len(hits) == count and all(hit.place.line == 2 and "never more north" in hit.hint for hit in hits)


def test_open_ended_play_that_something_ends() -> None:
    for open_ended in (True, False):
        hits = found(evolve(race(to=2, capacity=2, clock=True), open_ended=open_ended), "C-ended-before")
        assert len(hits) == open_ended
        assert all(len(hit.witness) == 3 for hit in hits), "two points after the start"


def test_that_nobody_can_win_is_said_once() -> None:
    net = evolve(race(to=3, capacity=2, clock=False), bell=None)
    assert not found(net, "C-unwinnable"), "that nothing ends it is said instead"
    play = Builder("north", "south")
    for side in ("north", "south"):
        play.place(side, 0, 1, "points", side)
    play.place("steps", 0, 1)
    told, win = play.rule("a step ends it"), play.rule("first to 1 point")
    play.may("a step", play.shift("steps", 1, told))
    play.end("over", None, play.at_least("steps", 1), told)
    for side in ("north", "south"):
        play.end(f"{side} wins", side, play.at_least(side, 1), win)
    said = findings_told(checked(play.net()).findings, play.net())
    [finding] = [each for each in said if each.severity is Severity.WARNING]
    assert finding.code == "C-unwinnable" and finding.title == "Nobody can ever win, whatever happens in play."
