"""How long a round lasts in one line and who has won then in another, as teachers say it: both are one clock."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

import attrs

from grammar.heard.words import in_words_of_the_language
from grammar.lines import TextLine
from grammar.words import LIKE_ENOUGH, likeness

TellSlip = Callable[[TextLine, str], None]

_LASTS = re.compile(
    r"(?:(?:(?:the|a|each|every|1) )?(?:game|round|match|it) (?:lasts|takes|goes on for|(?:is over|ends|stops) after)|"
    r"(?:we |players )?play(?: for)?|time:?) (?P<time>\d+(?:\.\d+)? (?:min|s))",
    re.IGNORECASE,
)
_TIME = re.compile(r"(?<=\d )[a-z]{5,9}$", re.IGNORECASE)
_UNITS = ("minutes", "seconds")
_HALVES = re.compile(r"(?:we play )?(?:in )?2 (?:halves|innings)\b", re.IGNORECASE)
_ALL_POINTS = re.compile(  # which decides two halves anyway
    r"(?:the side with )?(?:the )?(?:most|more) points(?: (?:in all|in total|of both|over (?:both|all))(?: halve"
    r"s)?)? wins",
    re.IGNORECASE,
)
_MAY_SAY = re.compile(  # asked of every line
    r"\b(?:lasts|takes|goes on|play|over|ends|stops|time|halves)\b", re.IGNORECASE
)
_DECIDES = re.compile(
    r"(?:(?:at the end|then|after that|at the whistle|when (?:the )?time is (?:up|over)|when it is over),? )?"
    r"(?P<what>(?:(?:the side (?:with|that has|which has)|whoever has) )?(?:the )?(?:most|more|fewest|fewer|highest) "
    r".+? wins?\b.*)",
    re.IGNORECASE,
)


def with_one_clock(
    lines: Sequence[TextLine], names: Sequence[str], is_sentence: Callable[[TextLine], bool], tell_slip: TellSlip
) -> tuple[TextLine, ...]:
    """The lines of a finish; where one says how long it lasts and one who has won then, both are one, in that one's
    place. A line that is a sentence by itself stays as it is. A slip of a unit of time is told, and read as meant."""
    if not any(_MAY_SAY.search(line.text) for line in lines):
        return tuple(lines)
    meant = [_with_unit(line.text) for line in lines]
    said = [in_words_of_the_language("finish", text, names) for text in meant]
    if any(_HALVES.match(text) for text in said):
        return tuple(line for line, text in zip(lines, said, strict=True) if not _ALL_POINTS.fullmatch(text))
    lasting = [at for at, text in enumerate(said) if _LASTS.fullmatch(text)]
    deciding = [at for at, text in enumerate(said) if _DECIDES.fullmatch(text) and not is_sentence(lines[at])]
    if len(lasting) != 1 or len(deciding) != 1:
        return tuple(lines)
    time, what = _LASTS.fullmatch(said[lasting[0]]), _DECIDES.fullmatch(said[deciding[0]])
    assert time is not None and what is not None
    joined = attrs.evolve(lines[deciding[0]], text=f"after {time['time']}: {what['what']}")
    if not is_sentence(joined):
        return tuple(lines)
    if meant[lasting[0]] != lines[lasting[0]].text:
        tell_slip(lines[lasting[0]], meant[lasting[0]])
    return tuple(joined if at == deciding[0] else line for at, line in enumerate(lines) if at != lasting[0])


def _with_unit(text: str) -> str:
    """The line with the unit of time at its end that was meant, as "6 minuts" means minutes."""
    match = _TIME.search(text)
    unit = max(_UNITS, key=lambda each: likeness(match.group().lower(), each)) if match else ""
    near = match is not None and likeness(match.group().lower(), unit) >= LIKE_ENOUGH
    return text[: match.start()] + unit if match and near else text
