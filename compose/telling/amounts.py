"""Shares and times in the words of a language."""

from __future__ import annotations

from compose.telling.wording import Wording
from grammar.amounts import SELDOM, minutes, percent


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


def ages_said(youngest: float, oldest: float, wording: Wording) -> str:
    """Such as "8 to 12", "9": where another language says what is counted, in years."""
    low, high = wording.figure(youngest), wording.figure(oldest)
    said = low if youngest == oldest else wording.say("{low} to {high}", low=low, high=high)
    return said if wording.english else wording.say("{ages} years", ages=said)
