"""What the code behind a finding means, on the terminal."""

from __future__ import annotations

import textwrap

from compose.terminal.answer import FINE, WIDTH, refuse, say, say_json
from compose.terminal.typed.appearance import wording_named
from grammar.words import did_you_mean
from library.finding_codes import Explanation, explanations


def tell_code(code: str, language: str, as_json: bool) -> int:
    """Tell what a code means, what to do, and an example; or in a line what each of all codes means."""
    told = explanations(wording_named(language, as_json).language)
    if not code:
        found = list(told.values())
    else:
        found = [each for each in told.values() if each.code.lower() == code.strip("[] .").lower()]
    if not found:
        refuse(f"There is no code `{code}`.", did_you_mean(code, told) or "`ruleweave means` alone lists all.", as_json)
    if as_json:
        say_json({"codes": [_fields(each) for each in found]})
        return FINE
    for each in found:
        _say(f"{each.code}: {each.means}", "")
        for line in each.lines if code else ():
            _say(line, "  ")
    return FINE


def _say(line: str, indent: str) -> None:
    # No break at hyphens: codes, commands and options are written as they are typed.
    say(textwrap.fill(line, WIDTH, initial_indent=indent, subsequent_indent=indent + "    ", break_on_hyphens=False))


def _fields(told: Explanation) -> dict[str, str]:
    return {"code": told.code, "means": told.means, "to_do": told.to_do, "example": told.example}
