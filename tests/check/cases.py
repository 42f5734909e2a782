"""Small invented games for the findings: each has a knob that turns the wrong game into the sound one."""

from __future__ import annotations

from attrs import evolve

from compose.check import CheckResult, check
from compose.net.net import All, Bell, Net
from compose.telling.english.findings import findings_told
from grammar.finding import Finding
from tests.check.build import ALWAYS, ATTEMPT, Builder


def told(net: Net) -> tuple[Finding, ...]:
    """All that the check says of a net, in words."""
    return findings_told(check(net).findings, net)


def found(net: Net, code: str) -> list[Finding]:
    """The findings with this code, in words."""
    return [finding for finding in findings_told(checked(net).findings, net) if finding.code == code]


def checked(net: Net) -> CheckResult:
    """The check of a net that is small enough for it."""
    result = check(net)
    assert result.space is not None and result.space.complete
    return result


def bell(builder: Builder, after_s: float = 360.0, draw: bool = True) -> Bell:
    """A clock, with a draw as the only result or with no result at all for a lead of south."""
    told = builder.rule("after 6 min: more points wins")
    if draw:
        return Bell(after_s, (builder.result("draw", None, ALWAYS, told),), told)
    return Bell(after_s, (builder.result("north leads", "north", builder.more("north", "south"), told),), told)


def one_ball_duel(balls_must_go_too: bool, clock: bool = False, may_be_lost: bool = False) -> Net:
    """One against one, a ball that changes sides with each throw, or is lost with it; whoever is hit is out."""
    duel = Builder("north", "south")
    for side, balls in (("north", 1), ("south", 0)):
        duel.place(f"{side} in", 1, 1, "player", side)
        duel.place(f"{side} out", 0, 1, "player", side, final=True)
        duel.place(f"{side} ball", balls, 1, "ball", side)
    duel.place("lost ball", 0, 1, "ball", final=True)
    throw, out, win = duel.rule("throw"), duel.rule("whoever is hit is out"), duel.rule("last one in wins")
    for side, other in (("north", "south"), ("south", "north")):
        ball = duel.move(f"{side} ball", f"{other} ball", throw)
        rate = duel.rate(f"{side} in", f"{side} ball")
        duel.may(f"{side} hits", ball, duel.move(f"{other} in", f"{other} out", out), side=side, rate=rate)
        duel.may(f"{side} misses", ball, side=side, rate=rate)
        if may_be_lost:
            lost = duel.move(f"{side} ball", "lost ball", throw)
            duel.may(f"{side} hits last", lost, duel.move(f"{other} in", f"{other} out", out), side=side, rate=rate)
        none_in, no_ball = duel.at_most(f"{other} in", 0), duel.at_most(f"{other} ball", 0)
        guard = All((none_in, no_ball)) if balls_must_go_too else none_in
        duel.end(f"{side} wins", side, guard, win)
    return duel.net(bell(duel) if clock else None)


def rally(way_out: bool, clock: bool = False, open_ended: bool = False) -> Net:
    """From a rally play ends or comes to a hold that goes to and fro, with or without a way out."""
    play = Builder()
    for name, start in (("rally", 1), ("hold", 0), ("other hold", 0), ("over", 0)):
        play.place(name, start, 1, "step")
    told = play.rule("to and fro")
    play.may("play on", play.move("rally", "hold", told), rate=play.rate("rally"))
    play.may("score", play.move("rally", "over", told), rate=play.rate("rally"))
    play.may("to", play.move("hold", "other hold", told), rate=play.rate("hold"))
    play.may("fro", play.move("other hold", "hold", told), rate=play.rate("other hold"))
    if way_out:
        play.may("let go", play.move("other hold", "rally", told), rate=play.rate("other hold"))
    play.end("over", None, play.at_least("over", 1), told)
    return play.net(bell(play) if clock else None, open_ended)


def race(
    to: int,
    capacity: int,
    *,
    south_throws: bool = True,
    clock: bool = False,
    bell_draws: bool = True,
    misses: bool = False,
    start: int = 0,
) -> Net:
    """Each side scores points; the first to so many wins, and at a bell it is a draw or north's who leads."""
    play = Builder("north", "south")
    for side in ("north", "south"):
        play.place(side, start, capacity, "points", side)
    score, win = play.rule("a ball in the ring is a point"), play.rule("first to so many wins")
    for side in ("north", "south"):
        if side == "north" or south_throws:
            play.may(f"{side} scores", play.shift(side, 1, score), side=side)
            if misses:
                play.may(f"{side} misses", side=side, rules=(score,))
        play.end(f"{side} wins", side, play.at_least(side, to), win)
    return play.net(bell(play, draw=bell_draws) if clock else None)


def lost_balls(fetched: bool, final: bool = False, wind: bool = False) -> Net:
    """Balls roll behind the line; three balls, ten targets to fell, so they may all be lost. Or the wind fells them."""
    play = Builder()
    play.place("ball in play", 3, 3, "ball")
    play.place("ball behind the line", 0, 3, "ball", final=final)
    play.place("target", 10, 10, "target")
    play.place("fallen", 0, 10, "target", final=True)
    throw, lost, fetch = play.rule("throw"), play.rule("a ball may be lost"), play.rule("fetch")
    fall = play.move("target", "fallen", throw)
    play.may("hit", fall, rate=play.rate("ball in play"))
    play.may("lost", fall, play.move("ball in play", "ball behind the line", lost), rate=play.rate("ball in play"))
    if wind:
        play.may("the wind", fall)
    if fetched:
        back = play.move("ball behind the line", "ball in play", fetch)
        play.may("fetch", back, rate=play.rate("ball behind the line"))
    play.end("all down", None, play.at_most("target", 0), throw)
    return play.net()


def last_targets(tie_rule: bool, ricochet: bool = True) -> Net:
    """One throw may fell the last target of both sides."""
    play = Builder("north", "south")
    for side in ("north", "south"):
        play.place(side, 1, 1, "target", side)
        play.place(f"{side} down", 0, 1, "target", side, final=True)
    fall, win, tie = play.rule("it falls"), play.rule("none left loses"), play.rule("both at once: draw")
    both = [play.move(side, f"{side} down", fall) for side in ("north", "south")]
    if ricochet:
        play.may("a throw that fells both", *both)
    for effect in both:
        play.may("a throw that fells one", effect)
    none = {side: play.at_most(side, 0) for side in ("north", "south")}
    if tie_rule:
        play.end("draw", None, All(tuple(none.values())), tie)
    play.end("north wins", "north", none["south"], win)
    play.end("south wins", "south", none["north"], win)
    return play.net()


def hold_the_balls(hold_limit: bool, clock: bool = False, mirrored: bool = False) -> Net:
    """Both sides need balls to fell targets; a throw gives the ball away; a limit makes throwing forced."""
    play = Builder("north", "south")
    for side in ("north", "south"):
        play.place(f"{side} ball", 1, 2, "ball", side)
        play.place(f"{side} target", 2, 2, "target", side)
        play.place(f"{side} fallen", 0, 2, "target", side, final=True)
    throw, win = play.rule("throw at the targets"), play.rule("none standing loses")
    for side, other in (("north", "south"), ("south", "north")):
        rate = play.rate(f"{side} ball")
        ball = play.move(f"{side} ball", f"{other} ball", throw)
        fall = play.move(f"{other} target", f"{other} fallen", throw)
        with_ball = evolve(ATTEMPT, ball="ball")
        play.may(f"{side} hits", ball, fall, side=side, forced=hold_limit, rate=rate, attempt=with_ball)
        play.may(f"{side} misses", ball, side=side, forced=hold_limit, rate=rate, attempt=with_ball)
        play.end(f"{side} wins", side, play.at_most(f"{other} target", 0), win)
    clock_rule = play.rule("after 6 min: more standing wins")
    leads = (
        play.result("north leads", "north", play.more("north target", "south target"), clock_rule),
        play.result("south leads", "south", play.more("south target", "north target"), clock_rule),
        play.result("draw", None, ALWAYS, clock_rule),
    )
    twins = ("north", "south") if mirrored else ()
    return play.net(Bell(360.0, leads, clock_rule) if clock else None, mirrored=twins)
