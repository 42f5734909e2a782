"""What check and forecast say on a card, in the language asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING

from compose.answer.answer import Answer, not_proved, to_mend
from compose.forecast.telling.wording import parts
from compose.net.match import Match
from compose.telling.amounts import share_said, time_said
from compose.telling.findings import finding_said
from compose.telling.for_class import teams_said
from compose.telling.french import side_name
from compose.telling.sides import subject, wins
from compose.telling.wording import Wording
from grammar.amounts import SELDOM
from grammar.words import called_by_players

if TYPE_CHECKING:
    from compose.forecast.answers import Answers

TOLD_FROM = 0.005  # our choice: a share of games without a winner that rounds to a percent
NOBODY_ALONE: Mapping[str, bool] = {}
MOST_TOLD = 3  # our choice: a card has room for so many findings
CAN_WIN = {
    "half": "Can win over both halves: {sides}.",
    "innings": "Can win over all innings: {sides}.",
    "round": "Can win over all rounds: {sides}.",
}
ENDED = {
    "half": "The clock ends each half after {time} at the latest.",
    "innings": "The clock ends each innings after {time} at the latest.",
    "round": "The clock ends each round after {time} at the latest.",
}


def answer_lines(answer: Answer, wording: Wording) -> tuple[str, ...]:
    """What is known of a game on its card: the gravest findings and how many there are, then what to expect."""
    told = (*check_lines(answer, wording), *looked_lines(answer, wording))
    if answer.numbers is None:
        return told
    return (*told, *forecast_lines(answer.numbers, answer.match, wording, answer.staged.net.solo))


def check_lines(answer: Answer, wording: Wording) -> Iterator[str]:
    """For whom and by which sets it was looked at, what is to mend, else the first of the facts."""
    who, wrong = teams_said(answer.staged.staging, wording), to_mend(answer.findings)
    things = wording.counted(len(wrong), "thing", "things")
    how = _how_known(answer, wording)
    nothing = wording.say("{how} for {people}: nothing to mend", how=how, people=who)
    yield wording.say("{how} for {people}: {things} to mend", how=how, people=who, things=things) if wrong else nothing
    titles = tuple(dict.fromkeys(finding_said(each, wording).title for each in wrong))  # two posts say the same
    yield from titles[:MOST_TOLD]
    if len(titles) > MOST_TOLD:
        more = wording.counted(len(titles) - MOST_TOLD, "thing", "things")
        yield wording.say("{things} more to mend: the commands check and forecast tell all of them", things=more)
    if not wrong and answer.facts is not None:
        yield from list(fact_lines(answer, wording))[:1]


def _how_known(answer: Answer, wording: Wording) -> str:
    """By which sets it was looked at, and whether at everything."""
    if not_proved(answer.findings):
        return wording.say("Looked at in part" if answer.added is None else "Looked at in part, and forecast,")
    return wording.say("Checked" if answer.added is None else "Checked and forecast")


def _winner(side: str, solo: Mapping[str, bool], wording: Wording) -> str:
    if side in solo:
        pattern = "those left of {side}" if solo[side] else "one of {side}"
        return wording.say(pattern, side=subject(side) if wording.english else side_name(wording, side))
    return side if wording.english else side_name(wording, side)


def looked_lines(answer: Answer, wording: Wording) -> Iterator[str]:
    """How much was looked at, where that was not everything."""
    if answer.facts is not None and not answer.whole:
        number = wording.figure(answer.facts.looked, 0)
        yield wording.say("{number} situations were looked at; there are more, so this is no proof", number=number)


def fact_lines(answer: Answer, wording: Wording) -> Iterator[str]:
    """What the check found out besides its findings, but how much it looked at."""
    facts, bell = answer.facts, answer.staged.net.bell
    if facts is None:
        return
    if facts.can_win:
        solo = answer.staged.net.solo
        sides = wording.listed(_winner(side, solo, wording) for side in facts.can_win)
        yield wording.say(CAN_WIN[answer.match.part] if answer.match.halves else "Can win: {sides}.", sides=sides)
    if facts.shortest is not None:
        moves = wording.counted(facts.shortest, "move", "moves")
        yield wording.say("The shortest round takes {moves}.", moves=moves)
    if facts.ends_surely and facts.held_up_by:
        sides = wording.listed(side if wording.english else side_name(wording, side) for side in facts.held_up_by)
        yield wording.say(
            "If all sides play on, the round ends sooner or later; "
            "a side that does not want it to can hold it up: {sides}.",
            sides=sides,
        )
    elif facts.ends_surely and facts.all_wait:
        yield wording.say("If anybody plays on, the round ends sooner or later; all can wait for one another.")
    elif facts.ends_surely:
        yield wording.say("The round ends in every line of play, sooner or later.")
    if bell is not None:
        minutes_ = bell.after_s / 60
        time = f"{wording.figure(minutes_)}\u00a0min" if not wording.english else f"{minutes_:g} min"
        pattern = "The clock ends it after {time} at the latest."
        yield wording.say(ENDED[answer.match.part] if answer.match.halves else pattern, time=time)


def forecast_lines(
    found: Answers, match: Match, wording: Wording, solo: Mapping[str, bool] = NOBODY_ALONE
) -> tuple[str, str]:
    """How long a round lasts, how often it is a pupil's turn, and who wins the game."""
    say = wording.say
    length = say("A round lasts {time} on average", time=time_said(found.minutes.value, wording))
    if found.stopped.value > SELDOM:
        stopped = say("the clock stops {share} of the rounds", share=share_said(found.stopped.value, wording))
        length = say("{one}; {other}", one=length, other=stopped)
    turns = turns_said(found, wording)
    if any(chance.value > SELDOM for _, chance in found.wins):
        nobody = max(0.0, 1 - sum(chance.value for _, chance in found.wins))
        chances = [*(chance.value for _, chance in found.wins), nobody]
        shares = parts(chances, tell=lambda share: share_said(share, wording))
        sides = zip((side for side, _ in found.wins), shares, strict=False)
        wins = wording.listed(_wins(side, share, wording, solo) for side, share in sides)
        odds = _of_games(wins, match, wording)
        if nobody >= TOLD_FROM:
            odds = say("{one}, and nobody {share}", one=odds, share=shares[-1])
        turns = say("{one}; {other}", one=turns, other=odds)
    return say("{length} (forecast).", length=length), f"{turns}."


def turns_said(found: Answers, wording: Wording) -> str:
    """How often it is a pupil's turn, and how long it does not play."""
    turns = wording.say("A pupil gets {number} turns a minute", number=wording.figure(found.turns.value, 1))
    if found.idle.value <= SELDOM:
        return turns
    idle = share_said(found.idle.value, wording)
    return turns + wording.say(" and spends {share} of the round not playing", share=idle)


def _of_games(wins: str, match: Match, wording: Wording) -> str:
    """What the odds are the odds of."""
    if match.meeting is not None:
        number, groups = wording.figure(match.rounds), wording.figure(match.groups)
        pattern = "{wins} of the games of {number} rounds between {groups} sides"
        return wording.say(pattern, wins=wins, number=number, groups=groups)
    if match.of_rounds:
        number = wording.figure(match.parts)
        return wording.say("{wins} of the games of {number} rounds", wins=wins, number=number)
    if match.of_innings:
        number = wording.figure(match.parts)
        pattern = "by the side that a group begins as, {wins} of the games of {number} innings"
        return wording.say(pattern, wins=wins, number=number)
    if match.halves:
        return wording.say("by the side that a group begins as, {wins} of the games of two halves", wins=wins)
    if match.best_of > 1:
        number = wording.figure(match.best_of)
        return wording.say("{wins} of the games of up to {number} rounds", wins=wins, number=number)
    return wording.say("{wins} of the rounds", wins=wins)


def _wins(side: str, share: str, wording: Wording, solo: Mapping[str, bool]) -> str:
    if wording.english:
        return f"{wins(side, solo)} {share}"
    if side in solo:
        pattern = "those left of {side} win {share}" if solo[side] else "one of {side} wins {share}"
        return wording.say(pattern, side=side_name(wording, side), share=share)
    pattern = "{side} win {share}" if called_by_players(side) else "{side} wins {share}"
    return wording.say(pattern, side=side_name(wording, side), share=share)
