"""Lines that say several sentences at once: a list of subjects, or of what the subject does."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from grammar.class_turns import lines_of_a_class
from grammar.core.skills import Skill
from grammar.heard.how_many_turns import PLACE_BY_PLACE, places
from grammar.heard.saying import WHAT
from grammar.words import singulars

_LISTED = re.compile(r"\s*,\s*(?:and |or )?|\s+(?:and|or)\s+")
_ALL_OF_THEM = re.compile(r"\s*,\s*(?:and )?|\s+and\s+")
_ANY_OF_THEM = re.compile(r"\s*,\s*(?:or )?|\s+or\s+")
_SKILLS = "|".join(skill.value for skill in Skill)
_VERBS = "|".join(("stay", "fetch", "free", "change every", *(skill.value for skill in Skill)))
_SUBJECT = re.compile(rf"(.+?) ((?:{_VERBS})\b.*)$", re.IGNORECASE)
_VERB = re.compile(rf"(?:,? and |, )(?=(?:{_VERBS})\b)", re.IGNORECASE)
_EVENT = re.compile(r"(.+?) (is (?:knocked|hit|touched|caught|missed)\b.*)$", re.IGNORECASE)
_WITH_BALLS = re.compile(
    rf"(.+? (?:{_SKILLS}) )((?:an?|the) (?:(?! from ).)+?)( (?:at|through|past|to) .*)$", re.IGNORECASE
)
_EVERY = r"every (?P<number>\d+(?:\.\d+)?) ?(?P<unit>min|s)"
_TIMES = r"(?:only |at most )?(?P<times>\d+) times"
_SO_OFTEN = (
    re.compile(rf"{_EVERY}(?:, | ?\(| ){_TIMES}\)?: (?P<what>.+)$", re.IGNORECASE),
    re.compile(rf"{_EVERY}: (?P<what>.+?),? {_TIMES}$", re.IGNORECASE),
)
_UNTIL = re.compile(
    r"(?P<waits>.+ (?P<way>in|on|to) the (?P<where>[^:]+?)),? until (?:(?:their|its|his|her|that|the|a) )?(?:own )?"
    r"(?:side|team-mates?|mates?) (?P<does>knock|catch)(?:s|es)? (?:down |over )?(?:an? |the )?(?P<what>.+?)"
    r"(?: down| over)?$",
    re.IGNORECASE,
)
_ONLY_FETCH = re.compile(
    rf"(?:only|nobody but|nobody except|no[ -]one but) ((?:the )?{WHAT}) (fetch(?:es)?) (.+? from [^,]+)(,.*)?$",
    re.IGNORECASE,
)
_OR_BY_THE_CLOCK = re.compile(r"(the round ends when .+?),? or (after \d+ (?:min|s)),? (.+)", re.IGNORECASE)
_PLACED = re.compile(r"(.+?) ((?:on|in|behind|before|beside) .*)$", re.IGNORECASE)
_SO_MANY = re.compile(rf"(\d+(?: to \d+)?) ({WHAT})")
_PLACES_OF_ROUNDS = re.compile(
    rf"(?:we play )?(\d+) rounds(?: are played)?[:,] (?P<places>{PLACE_BY_PLACE})$", re.IGNORECASE
)
_BY_NUMBER = re.compile(r"(?:,? and|,) (?=\d)")
_TASK = r"\d+ (?:(?!lives|life|points?\b|,| and ).)+"
_TASKS = re.compile(rf"each side has ({_TASK}(?:(?:,? and|,) {_TASK})+)")
MOST_PARTS = 8


def apart(section: str, text: str) -> Iterator[tuple[str, ...]]:
    """The ways in which a line can be several sentences of its section."""
    for parts in _WAYS.get(section, lambda _: iter(()))(text):
        if 1 < len(parts) <= MOST_PARTS:
            yield parts


def _whole_lists(text: str) -> Iterator[tuple[str, ...]]:
    """ "8 foam balls, 6 cones and 2 rings"."""
    yield tuple(re.split(r"\s*,\s*(?:and )?(?=\d)|\s+and\s+(?=\d)", text))


def _sides(text: str) -> Iterator[tuple[str, ...]]:
    """ "2 taggers and 10 to 24 runners", "each side has 2 keepers and 3 fetchers"."""
    tasks = _TASKS.fullmatch(text)
    if tasks:
        yield tuple(_task(each) for each in _BY_NUMBER.split(tasks[1]))
    said = [_SO_MANY.fullmatch(each) for each in _BY_NUMBER.split(text)]
    yield tuple(f"{each[2]}, {each[1]} players" for each in said if each)[: len(said) if all(said) else 0]


def _task(said: str) -> str:
    number, called = said.split(" ", 1)
    who = called if number == "1" else next(iter(singulars(called)), called)
    return f"role {who}: {number} {'player' if number == '1' else 'players'} of each side"


def _placings(text: str) -> Iterator[tuple[str, ...]]:
    yield from _whole_lists(text)
    yield from _subjects(_PLACED, text, _ALL_OF_THEM)


def _play(text: str) -> Iterator[tuple[str, ...]]:
    yield from _subjects(_SUBJECT, text, _ALL_OF_THEM)
    match = _SUBJECT.match(text)
    if match:
        said = _VERB.split(match[2])
        yield tuple(f"{match[1]} {each}" for each in said)
    alone = _ONLY_FETCH.match(text)
    if alone:  # beside those who do, nobody does
        verb = "fetches" if alone[1].lower().endswith("teacher") else alone[2]
        yield f"{alone[1]} {verb} {alone[3]}{alone[4] or ''}", f"nobody fetches {alone[3]}"
    balls = _WITH_BALLS.match(text)
    if balls:  # each with each kind of ball: "throw a foam ball or a yarn ball at the cones"
        yield tuple(f"{balls[1]}{each}{balls[3]}" for each in _LISTED.split(balls[2]))


def _events(text: str) -> Iterator[tuple[str, ...]]:
    yield from _subjects(_EVENT, text, _ANY_OF_THEM)
    for match in filter(None, (pattern.match(text) for pattern in _SO_OFTEN)):
        times, number = int(match["times"]), Fraction(match["number"])
        if times <= MOST_PARTS:
            yield tuple(f"after {float(number * at):g} {match['unit']}: {match['what']}" for at in range(1, times + 1))
    until = _UNTIL.match(text)
    if until:  # whoever waits till their side does something: that brings back all of that side who wait there
        within = "in" if until["way"].lower() == "in" else "on"
        event, doer = ("is caught", "catcher") if until["does"].lower() == "catch" else ("is knocked", "thrower")
        back = f"a {until['what']} {event}: all {within} the {doer}'s {until['where']} return"
        yield until["waits"], back


def _ends(text: str) -> Iterator[tuple[str, ...]]:
    """ "the round ends when there are no logs in the middle or after 5 min, more points wins"; what is played, and what
    each place of it is worth: "4 rounds: the first gets 3 points, the second 2"."""
    said = _OR_BY_THE_CLOCK.fullmatch(text)
    if said:
        yield f"{said[1]}, {said[3]}", f"{said[2]}: {said[3]}"
    match = _PLACES_OF_ROUNDS.match(text)
    if match:
        yield f"{match[1]} rounds are played, more points over all wins", places(match)


def _subjects(pattern: re.Pattern[str], text: str, listed: re.Pattern[str]) -> Iterator[tuple[str, ...]]:
    match = pattern.match(text)
    if match:
        yield tuple(f"{each} {match[2]}" for each in listed.split(match[1]))


_WAYS = {
    "sides": _sides, "kit": _whole_lists, "set-up": _placings, "play": _play, "when": _events,
    "finish": _ends, "class": lines_of_a_class,
}  # fmt: skip
