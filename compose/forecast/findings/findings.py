"""What a forecast finds wanting, held against the lesson: each with its numbers and what would mend it.

The margins are rows of library/norms/lesson.toml (and the target of effort.toml), each with its source. Past
the outer end of a margin something asks to be mended, past the usual figure it is worth knowing. A simulated
number is past a margin only when its own margin of chance is too.
"""

from __future__ import annotations

from collections.abc import Callable

from compose.forecast.chances.duties import never_passed_on
from compose.forecast.chances.freeing import freed_faster
from compose.forecast.course import Figure
from compose.forecast.findings.held import Held
from compose.forecast.findings.levers import balls_sent, one_of
from compose.forecast.findings.of_length import long_round, out_of_reach, short_round
from compose.forecast.findings.spans import span_of_sending, span_of_tries, span_of_turns, span_of_wins
from compose.forecast.forecast import Forecast
from compose.forecast.standings import OUT, PLAYING, pupils_of, standing_of
from compose.net.net import Place
from grammar.amounts import percent
from grammar.core.declared import STOOD_ON
from grammar.core.values import AreaId, At, Presence, SideId
from grammar.finding import Finding, Severity
from grammar.said import Chain, Listed, Many, Named, Percent, Players, Side, Time, Value, said
from grammar.said import Figure as Written
from grammar.words import called_by_players
from library import Figure as Margin
from library import Norms


def forecast_findings(told: Forecast, norms: Norms) -> tuple[Finding, ...]:
    """All findings of a forecast, in a fixed order."""
    held = Held(told, norms)
    return tuple(finding for look in LOOKS for finding in look(held))


def lopsided(held: Held) -> list[Finding]:
    """Sides that the rules call mirrored, whose odds of the game differ."""
    told, net = held.told, held.told.net
    odds = [(side, chance) for side, chance in told.game.wins if side in net.mirrored]
    if len(odds) < 2:
        return []
    (more, high), (less, low) = max(odds, key=lambda o: o[1].value), min(odds, key=lambda o: o[1].value)
    gap = Figure(high.value - low.value, high.margin + low.margin)
    severity = _above(gap, held.margin("lesson odds", "difference"))
    if severity is None:
        return []
    sizes = {side: pupils_of(net, side) for side, _ in odds}
    even = len(set(sizes.values())) == 1
    numbers = {f"win odds of {side}": chance.value for side, chance in odds}
    pattern = "{more} win {high} of the {games}, {less} {low}"
    if not called_by_players(more):
        pattern = "{more} wins {high} of the {games}, {less} {low}"
    title = said(
        pattern,
        more=Side(more),
        high=Percent(high.value),
        games="rounds" if net.match.one_round else "games",
        less=Side(less),
        low=Percent(low.value),
    )
    if even:
        title = said("{odds}, although the sides are called mirrored.", odds=title)
        hint = "Look where their places, kit or distances differ; or let the sides change ends after each round."
    else:
        severity = Severity.NOTE
        people = Listed(tuple(Players(number, side) for side, number in sizes.items()))
        title = said("{odds}, with {people}.", odds=title, people=people)
        hint = "Let the odd pupil change sides after each round, or let the smaller side have more to play with."
    return held.found("F-lopsided", severity, title, hint, span_of_wins(held.told, more), numbers)


def freed(held: Held) -> list[Finding]:
    """A side that ought to be all out, though its pupils come back faster than they are hit."""
    net = held.told.net
    found = list(freed_faster(net, held.norms))
    if not found:
        return []
    worst = found[0]
    title = said(
        "with {waiting} of {all} of {side} waiting, {back} a minute come back and {sent} are sent to wait: "
        "hardly ever is nobody left.",
        waiting=worst.waiting,
        all=worst.of,
        side=Side(worst.side),
        back=Written(worst.back, ".1f"),
        sent=Written(worst.sent, ".1f"),
    )
    balls = ("use more balls",) if balls_sent(net) else ()
    hint = one_of(("let fewer come back at once or more seldom", *balls, "let the round finish when few are left"))
    severity = Severity.WARNING if net.bell is None else Severity.NOTE
    numbers = {"come back a minute": worst.back, "sent a minute": worst.sent}
    return held.found("F-freed-faster", severity, title, hint, worst.end.rule.span, numbers, played=False)


def long_wait(held: Held) -> list[Finding]:
    """Waits that last too long for too many."""
    wait = held.told.longest_wait
    severity = _above(wait.ninety, held.margin("lesson wait", "longest")) if wait else None
    if wait is None or severity is None:
        return []
    place = held.told.net.places[wait.place]
    pattern = "of the waits {where} one in ten lasts more than {most} (on average {mean})."
    hint = "Let more return at once, let them return after a time or for a task, or send out fewer."
    if wait.lasts_its_time:
        pattern = "of the waits {where} more than one in ten lasts {most}, and none is longer (on average {mean})."
        hint = "Let them return sooner, or send out fewer."
    title = said(pattern, where=_where(place), most=Time(wait.ninety.value), mean=Time(wait.mean.value))
    if place.standing is Presence.PLAYING:
        hint = "Let more try at once, or play in smaller groups side by side."
    numbers = {
        "mean minutes": wait.mean.value,
        "nine in ten, minutes": wait.ninety.value,
        "in a round": wait.in_a_round,
    }
    sent = span_of_sending(held.told, (wait.place,))
    return held.found("F-long-wait", severity, title, hint, sent, numbers, played=True)


def few_turns(held: Held) -> list[Finding]:
    """Pupils who hardly get to try."""
    each = held.told.turns.each
    severity = _below(each, held.margin("lesson turns", "each"))
    if severity is None:
        return []
    net = held.told.net
    title = said("a pupil gets {turns} turns a minute: {gap}.", turns=Written(each.value, ".1f"), gap=_gap(each.value))
    balls, pupils = balls_sent(net), pupils_of(net)
    hint: Value = "Play in smaller groups side by side, or shorten what a turn takes."
    if balls:
        hint = "Play in smaller groups side by side, bring balls back sooner, or shorten what a turn takes."
    if each.value == 0:
        hint = "The rules let nobody do anything: mend first what the check finds."
    elif 0 < balls < pupils:
        pattern = "There is {balls} for {pupils}: take more."
        if balls > 1:
            pattern = "There are {balls} for {pupils}: take more."
        more = said(pattern, balls=Many(balls, "ball", "balls"), pupils=Many(pupils, "pupil", "pupils"))
        hint = Chain((more, hint))
    return held.found("F-few-turns", severity, title, hint, span_of_tries(held.told), {"turns a minute": each.value})


def idle_pupils(held: Held) -> list[Finding]:
    """Pupils who spend much of the round beside it."""
    away = [each for each in held.told.standings if each.name != PLAYING]
    if not away:
        return []
    share = Figure(sum(each.share.value for each in away), sum(each.share.margin for each in away))
    severity = _above(share, held.margin("lesson idle", "pupils"))
    if severity is None:
        return []
    most = max(away, key=lambda each: each.share.value)
    title = said(
        "a pupil spends {share} of the round not playing, most of it {how}.", share=Percent(share.value), how=most.name
    )
    hint = "Give whoever does not play a task, or play in smaller groups."
    if any(each.name == OUT for each in away):
        hint = "Let whoever is out come back, give the waiting a task, or play in smaller groups."
    if most.name == OUT:
        hint = "Let whoever is out come back: in a queue, after a catch, or after a time."
    kinds = standing_of(held.told.net)
    places = tuple(place for place, kind in kinds.items() if kind == most.name)
    numbers = {each.name: each.share.value for each in away}
    place = span_of_sending(held.told, places)
    if not places:  # they wait for their turn where they play
        place, hint = (
            span_of_turns(held.told),
            "Let more go at a time, give the waiting a task, or play in smaller groups.",
        )
    return held.found("F-idle-pupils", severity, title, hint, place, numbers)


def inactive(held: Held) -> list[Finding]:
    """A lesson in which pupils move less than is asked for, by a whole per cent: less cannot be said nor mended."""
    active, asked = held.told.active, held.margin("effort target", "class time active").usual
    if active.usual >= asked or percent(active.usual) == percent(asked):
        return []
    severity = Severity.WARNING if active.high < asked else Severity.NOTE
    title = said(
        "with this game alone pupils are active in {share} of class time; {asked} is asked for ({counted}).",
        share=Percent(active.usual),
        asked=Percent(asked),
        counted=active.counted,
    )
    waiting = ("fewer waiting",) if any(each.name != PLAYING for each in held.told.standings) else ()
    balls = ("more balls",) if balls_sent(held.told.net) else ()
    ways = Chain((*waiting, *balls, "shorter talk and setting up"), ", ")
    hint = said("{ways}: each adds active minutes.", ways=ways)
    numbers = {"low": active.low, "usual": active.usual, "high": active.high}
    return held.found("F-inactive", severity, title, hint, span_of_tries(held.told), numbers)


def slow_duties(held: Held) -> list[Finding]:
    """A task passes on later than most rounds are over: in these it stays with whoever has it first."""
    usual = held.told.course.length.median.value
    duty = next(never_passed_on(held.told.net, usual), None)
    if duty is None:
        return []
    title = said(
        "half of the rounds are over after {time}, before another is {task}.", time=Time(usual), task=Named(duty.task)
    )
    hint = 'Let them change sooner, or every round: "... change every round".'
    return held.found("F-never-passed-on", Severity.WARNING, title, hint, duty.place, {"half, minutes": usual})


LOOKS: tuple[Callable[[Held], list[Finding]], ...] = (
    lopsided,
    long_round,
    freed,
    short_round,
    out_of_reach,
    long_wait,
    few_turns,
    idle_pupils,
    inactive,
    slow_duties,
)


def _above(figure: Figure, margin: Margin) -> Severity | None:
    """How a number that ought to be small counts."""
    least = figure.value - figure.margin
    return Severity.WARNING if least > margin.high else Severity.NOTE if least > margin.usual else None


def _below(figure: Figure, margin: Margin) -> Severity | None:
    """How a number that ought to be large counts."""
    most = figure.value + figure.margin
    return Severity.WARNING if most < margin.low else Severity.NOTE if most < margin.usual else None


def _where(place: Place) -> Value:
    """Where somebody waits, or for what."""
    if not isinstance(place.standing, At):
        return "for a turn" if place.standing is Presence.PLAYING else "out for the round"
    if place.standing.spot.is_frozen:
        return "frozen on the spot"
    of, owner = place.standing.spot.of, place.standing.spot.owner
    name = of.key if isinstance(of, AreaId) else of.value
    there = said("on the {area}" if place.area in STOOD_ON else "in the {area}", area=Named(name))
    if isinstance(owner, SideId) and owner.key != place.side:
        return said("{there} of {side}", there=there, side=Side(owner.key))
    return there


def _gap(per_minute: float) -> Value:
    return said("one every {time}", time=Time(1 / per_minute)) if per_minute > 0 else "none at all"
