"""What check and forecast say on a card, in the language asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from compose.draw.french import side_name, side_players
from compose.draw.wording import Wording
from compose.forecast.wording import SELDOM, minutes, percent
from compose.net.lower.tokens import does, is_plural
from grammar.finding import Finding

if TYPE_CHECKING:
    from compose.check import Facts
    from compose.forecast.answers import Answers

FINDING = "finding"  # the context of the catalogue that says findings by their codes
MOST_TOLD = 2  # our choice: a card has room for so many findings


def check_lines(
    players: Mapping[str, int], to_mend: Sequence[Finding], facts: Sequence[str], wording: Wording
) -> tuple[str, ...]:
    """Whom the check was for, what is to mend, else the first of the facts."""
    if not to_mend:
        return (wording.say("Checked for {people}: nothing to mend", people=people(players, wording)), *facts[:1])
    things = wording.counted(len(to_mend), "thing", "things")
    head = wording.say("Checked for {people}: {things} to mend", people=people(players, wording), things=things)
    return head, *(wording.known(FINDING, each.code) or each.title for each in to_mend[:MOST_TOLD])


def people(players: Mapping[str, int], wording: Wording) -> str:
    """ "11 herons and 11 pikes"."""
    if wording.english:
        return wording.listed(f"{number} {side}" for side, number in players.items())
    return wording.listed(side_players(wording, side, number) for side, number in players.items())


def fact_lines(facts: Facts, bell_minutes: float | None, wording: Wording, halves: bool = False) -> Iterator[str]:
    """What the check found out besides its findings, but how much it looked at; in `halves` groups can win."""
    if facts.can_win:
        sides = wording.listed(side if wording.english else side_name(wording, side) for side in facts.can_win)
        yield wording.say("Can win over both halves: {sides}." if halves else "Can win: {sides}.", sides=sides)
    if facts.shortest is not None:
        moves = wording.counted(facts.shortest, "move", "moves")
        yield wording.say("The shortest round takes {moves}.", moves=moves)
    if facts.ends_surely and facts.held_up_by:
        sides = wording.listed(side if wording.english else side_name(wording, side) for side in facts.held_up_by)
        yield wording.say(
            "If all sides play on, the round ends sooner or later (with probability 1); "
            "a side that does not want it to can hold it up: {sides}.",
            sides=sides,
        )
    elif facts.ends_surely:
        yield wording.say("The round ends in every line of play, sooner or later (with probability 1).")
    if bell_minutes is not None:
        time = f"{wording.figure(bell_minutes)}\u00a0min" if not wording.english else f"{bell_minutes:g} min"
        yield wording.say("The clock ends it after {time} at the latest.", time=time)


def forecast_lines(found: Answers, wording: Wording) -> tuple[str, str]:
    """How long a round lasts, how often it is a pupil's turn, and who wins."""
    say = wording.say
    length = say("A round lasts {time} on average", time=time_said(found.minutes.value, wording))
    if found.stopped.value > SELDOM:
        stopped = say("the clock stops {share} of the rounds", share=share_said(found.stopped.value, wording))
        length = say("{one}; {other}", one=length, other=stopped)
    turns = say("A pupil gets {number} turns a minute", number=wording.figure(found.turns.value, 1))
    if found.idle.value > SELDOM:
        turns += say(" and spends {share} of the round not playing", share=share_said(found.idle.value, wording))
    if any(chance.value > SELDOM for _, chance in found.wins):
        wins = wording.listed(_wins(side, chance.value, wording) for side, chance in found.wins)
        turns = say("{one}; {other}", one=turns, other=say("{wins} of the rounds", wins=wins))
    return say("{length} (forecast).", length=length), f"{turns}."


def _wins(side: str, chance: float, wording: Wording) -> str:
    share = share_said(chance, wording)
    if wording.english:
        return f"{does(side, 'wins', 'win')} {share}"
    pattern = "{side} win {share}" if is_plural(side) else "{side} wins {share}"
    return wording.say(pattern, side=side_name(wording, side), share=share)


def share_said(share: float, wording: Wording) -> str:
    """Such as "45 %"; what may be seen now and then is not rounded to never, nor what may fail to always."""
    if wording.english:
        return percent(share)
    if SELDOM < share < 0.005:
        return wording.say("under {share}", share=wording.percent(0.01))
    if 0.995 < share < 1 - SELDOM:
        return wording.say("over {share}", share=wording.percent(0.99))
    return wording.percent(share)


def time_said(value: float, wording: Wording) -> str:
    """Such as "4.5 min", "40 s", "12 min", "for ever"."""
    shown = minutes(value)
    if wording.english:
        return shown
    number, _space, unit = shown.partition(" ")
    if unit not in ("s", "min"):
        return wording.say(shown)
    return f"{wording.figure(float(number), 1 if '.' in number else 0)}\u00a0{unit}"
