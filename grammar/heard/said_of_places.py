"""Rules of play that the language says where a place is laid out: who is safe there, who may not go or guard there."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence

import attrs

from grammar.heard.words import in_words_of_the_language
from grammar.lines import TextLine
from grammar.words import plural

_Headed = tuple[str, TextLine, tuple[TextLine, ...]]
_NOBODY = (
    r"(?:(?:nobody|no one|no player)(?: (?:may|can|is allowed to))?|"
    r"players (?:(?:may|can|must) not|are not allowed to))"
)
_PLACE = r"(?:the |their |its |an? |any |each )*(?P<place>[\w -]+?)"
_THERE = _PLACE.replace("place>", "there>")
_NO_CHASE = "nobody is touched there"
_TIME = r"(?P<time>\d+(?:\.\d+)? (?:s|min))"
_RULES = tuple(
    (re.compile(pattern, re.IGNORECASE), there)
    for pattern, there in (
        (rf"{_NOBODY} (?:be|is|gets) (?:touched|tagged|caught) (?:in|on) {_PLACE}", _NO_CHASE),
        (rf"(?:there is )?no (?:tagging|touching|catching|chasing) (?:in|on) {_PLACE}", _NO_CHASE),
        (rf"{_NOBODY} (?:be|is|gets) hit (?:in|on) {_PLACE}", "nobody is hit there"),
        (rf"{_NOBODY} (?:stands?|stays?|remains?|is|be) (?:in|on) {_PLACE} (?:for )?(?:longer|more) than {_TIME}", ""),
        (rf"(?:at most|only|no more than) (?P<number>\d+) (?:[\w-]+ )?(?:(?:may|can) )?(?:fit|stand|stay|be|are)s? "
         rf"(?:in|on) {_PLACE}(?:,? (?:for )?at most {_TIME})?", "at most {number} players there"),
        (rf"{_NOBODY} (?:guards?|stands? (?:in|on)|stays? (?:in|on)|camps? in) {_PLACE}", "nobody guards there"),
        (rf"no (?:guarding|camping)(?: (?:in|of|on))? {_PLACE}", "nobody guards there"),
        (rf"{_NOBODY} (?:enters?|(?:goe?s?|steps?|runs?) (?:into|onto|on)) {_PLACE}", "nobody enters there"),
    )
)
_SAFE = re.compile(rf"(?:players|runners|everyone|everybody|you|whoever is|[\w-]+) (?:(?:is|are) )?safe (?:in|on) "
           rf"{_PLACE}")
_MAY_SAY = re.compile(  # asked of every line
    r"\bno(?:body|t)?\b|\bno one\b|n['’]t\b|\bonly\b|\bsafe\b|\bat most\b", re.IGNORECASE
)
_LONGER = re.compile(r"\b(?:longer|more) than\b", re.IGNORECASE)
_TIME_ALONE = re.compile(r"at most \d+(?:\.\d+)? (?:s|min) there")
_SAFE_THERE = re.compile(r"\bis (?:touched|hit) there", re.IGNORECASE)
_CHASED = re.compile(r"\b(?:touch|tag|chase|catch)\w* ", re.IGNORECASE)
_ONLY = re.compile(
    r"only (?:the )?(?P<who>[\w-]+(?: (?!may\b|can\b)[\w-]+)?) (?:(?:may|can) )?"
    rf"(?:enters?|be in|goe?s? into|stands? in) {_PLACE}"
)
_NOT = re.compile(rf"(?:the )?(?P<who>(?!players\b)[\w-]+) (?:may|can|must) not (?:enter|go (?:into|in|on|onto)) "
           rf"{_PLACE}|no (?P<none>(?!players?\b|one\b)[\w-]+) (?:may (?:be|go|stand) )?(?:in|into|on) {_THERE}")


def with_rules_at_places(
    sections: Sequence[_Headed], names: Sequence[str], is_sentence: Callable[[str, TextLine], bool]
) -> tuple[_Headed, ...]:
    """The sections; where a line of play is no sentence but says something of a place, it stands with that place."""
    placed = [line for name, _, body in sections if name == "space" for line in body]
    moved: dict[TextLine, TextLine] = {}
    taken: set[TextLine] = set()
    rules = [line for name, _, body in sections if name in ("space", "play", "when") for line in body]
    chased = any(_CHASED.search(line.text) for line in rules)
    rules.sort(key=lambda line: bool(_LONGER.search(line.text)))  # for how long comes after who is safe there
    for line in rules if placed else ():
        if not _MAY_SAY.search(line.text) or (line in placed and ":" in line.text):
            continue
        said = _said(in_words_of_the_language("play", line.text, names), chased)
        called = [each for each in placed if said and _is_called(each, said[0])]
        area = called[0] if len(called) == 1 else None
        if said is None or area is None or is_sentence("play", line):
            continue
        before = moved.get(area, area)
        if _TIME_ALONE.fullmatch(said[1]) and not _SAFE_THERE.search(before.text):
            continue  # of no other place is a time read, and that is told at the line that says it
        joined = before if _says(before, said[1]) else attrs.evolve(before, text=f"{before.text}, {said[1]}")
        if is_sentence("space", joined):
            moved[area] = joined
            taken.add(line)
    return tuple(
        (name, heading, tuple(moved.get(line, line) for line in body if line not in taken))
        for name, heading, body in sections
    )


def _said(text: str, chased: bool) -> tuple[str, str] | None:
    """Of which place a line says what; None where it says nothing of one."""
    for pattern, there in _RULES:
        if match := pattern.fullmatch(text):
            return match["place"], _there(there, match.groupdict())
    if match := _SAFE.fullmatch(text):
        return match["place"], _NO_CHASE if chased else "nobody is hit there"
    if match := _ONLY.fullmatch(text):
        return match["place"], f"only {_several(match['who'])} enter there"
    if match := _NOT.fullmatch(text):
        return match["place"] or match["there"], f"no {_several(match['who'] or match['none'])} there"
    return None


def _there(there: str, said: Mapping[str, str | None]) -> str:
    """What holds there, and for how long anybody may be there, where that is said."""
    at_most = f"at most {said['time']} there" if said.get("time") else ""
    return ", ".join(each for each in (there.format(**said), at_most) if each)


def _says(area: TextLine, rule: str) -> bool:
    """Whether an area says so already, be it in other words: "only keepers stand there"."""
    begins = rule.removesuffix(" there").removesuffix(" enter").lower()
    parts = [each.strip().lower() for each in area.text.split(",")]
    return any(each.startswith(f"{begins} ") and each.endswith("there") for each in parts)


def _several(who: str) -> str:
    return who if who.endswith("s") else plural(who)


def _is_called(area: TextLine, place: str) -> bool:
    """Whether a place is meant by its name, with or without the word that says what it is, or by its last word."""
    declared = area.text
    if ":" not in declared:
        from grammar.heard.declared import as_declared  # loaded only where a sheet has such a line

        declared = as_declared("space", declared)[0]
    name = declared.partition(":")[0].strip().lower() if ":" in declared else ""
    short = name.rpartition(" ")[0]
    said = (name, short, short.rpartition(" ")[2])
    return bool(name) and place.lower() in {each for one in said if one for each in (one, plural(one))}
