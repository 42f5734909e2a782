"""Shares and times in the words of a language."""

from __future__ import annotations

from compose.staging.minutes import Rounds
from compose.telling.wording import Wording
from grammar.amounts import SELDOM, minutes, percent

NO_BREAK = "\u00a0"


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
    return f"{wording.figure(float(number), 1 if '.' in number else 0)}{NO_BREAK}{unit}"


def minutes_said(value: float, wording: Wording) -> str:
    """Such as "14.9 min": to the tenth, however many, so that sums of them agree."""
    return f"{wording.figure(round(value, 1))}{' ' if wording.english else NO_BREAK}min"


def rounds_said(rounds: Rounds, wording: Wording) -> str:
    """Such as "1 round of about 12 min", "3 rounds of about 4.5 min, 42 s between: 14.9 min": it can be added up."""
    number, each = wording.counted(rounds.number, "round", "rounds"), time_said(rounds.each, wording)
    if rounds.number < 2:
        return wording.say("{rounds} of about {time}", rounds=number, time=each)
    pattern = "{rounds} of about {time}, {pause} between: {minutes}"
    pause, whole = time_said(rounds.pause, wording), minutes_said(rounds.minutes, wording)
    return wording.say(pattern, rounds=number, time=each, pause=pause, minutes=whole)


def rounds_in_lesson(fitting: Rounds, warm: Rounds, wording: Wording) -> str:
    """The rounds that a lesson has time for, and those with a warm-up and a talk."""
    if not fitting.number:
        return wording.say("not one whole round of about {time}", time=time_said(fitting.each, wording))
    return wording.say(
        "{rounds}; with a warm-up and a talk {number} in {minutes}",
        rounds=rounds_said(fitting, wording),
        number=wording.figure(warm.number, 0),
        minutes=minutes_said(warm.minutes, wording),
    )


def ages_said(youngest: float, oldest: float, wording: Wording) -> str:
    """Such as "8 to 12", "9": where another language says what is counted, in years."""
    low, high = wording.figure(youngest), wording.figure(oldest)
    said = low if youngest == oldest else wording.say("{low} to {high}", low=low, high=high)
    return said if wording.english else wording.say("{ages} years", ages=said)
