"""A finding in the words of another language than English: of its values, or else of its code."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from compose.telling.amounts import share_said, time_said
from compose.telling.french import contracted, joined, side_name, side_players
from compose.telling.wording import Wording, with_sheets
from grammar.finding import Finding
from grammar.frozen import evolve
from grammar.said import (
    MORE,
    Capital,
    Chain,
    Figure,
    Listed,
    Many,
    Named,
    Percent,
    Players,
    Said,
    Side,
    Time,
    Value,
    Written,
    chained,
    rewritten,
)
from grammar.words import capital
from library.finding_codes import explanations

OF_SHEETS = ("L-", "G-", "M-", "F-", "C-", "N-", "P-")
_APART = "\ue000"  # a letter that no text has
FINDING = "finding"  # the context of the catalogue that says findings by their codes


def finding_said(finding: Finding, wording: Wording) -> Finding:
    """The finding in a language. Where its values say nothing, its code says what it is and what to do."""
    if wording.english:
        return finding
    title, hint = finding.said or (None, None)
    join = joined
    if title is not None and not (known(title, wording) and known(hint, wording)):
        wording, join = with_sheets(wording), contracted
    title = title if title is not None and known(title, wording) else None
    hint = hint if title is not None and known(hint, wording) else None
    told = explanations(wording.language).get(finding.code)
    general = wording.known(FINDING, finding.code)
    if title is not None:
        words = _told(title, wording, join)
    elif general is not None:
        words = f"{general.removesuffix('.')}."
    elif told is not None and finding.code.startswith(OF_SHEETS):
        words = told.means
    else:
        return finding  # wrong use, told as it was typed
    if hint is not None and not isinstance(hint, Named):
        mend = _told(hint, wording, join)
    else:
        mend = told.to_do if told is not None else ""
    return evolve(finding, title=words, hint=mend)


def _told(value: Value, wording: Wording, join: Callable[[str], str]) -> str:
    """The value told and its words joined, but for what stands so on the sheet."""
    told = told_in(rewritten(value, lambda text: f"{_APART}{text}{_APART}"), wording)
    return capital("".join(part if at % 2 else join(part) for at, part in enumerate(told.split(_APART))))


def known(value: Any, wording: Wording) -> bool:
    """Whether all of a value can be told in the language: patterns of the catalogue, and nothing of a net."""
    match value:
        case Said(pattern, fields):
            return _has(pattern, wording) and all(known(each, wording) for _, each in fields)
        case str():
            return _has(value, wording)
        case Listed(items) | Chain(items):
            return all(known(each, wording) for each in items)
        case Capital(what):
            return known(what, wording)
    return isinstance(value, Many | Figure | Percent | Time | Named | Written | Side | Players | int)


def _has(pattern: str, wording: Wording) -> bool:
    return not pattern or wording.known("", pattern) is not None


def told_in(value: Any, wording: Wording) -> str:
    """A value of `grammar.said` in words of the language."""
    match value:
        case Said(pattern, fields):
            return wording.say(pattern, **{name: told_in(each, wording) for name, each in fields}) if pattern else ""
        case str():
            return wording.say(value) if value else ""
        case Many(number, one, many):
            return wording.counted(number, one, many)
        case Figure(number, form):
            shown = format(number, form.removeprefix(","))
            return wording.figure(float(shown), int(form[1]) if form.endswith("f") else None)
        case Percent(share):
            return share_said(share, wording)
        case Time(minutes):
            return time_said(minutes, wording)
        case Named(text):
            return wording.author(wording.named(text))
        case Written(text):
            return text
        case Side(key):
            return side_name(wording, key)
        case Players(number, side):
            return side_players(wording, side, number)
        case Listed(items, last):
            return wording.listed([told_in(each, wording) for each in items], last)
        case Chain(items, between, most):
            joint, more = wording.known("", between) or between, wording.known("", MORE) or MORE
            return chained([told_in(each, wording) for each in items], joint, most, more)
        case Capital(what):
            return capital(told_in(what, wording))
    return wording.figure(value)
