"""Why a remix does not work: the play that leads to a finding, and what would mend it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import library
from compose.answer.answer import Answer, to_mend
from compose.answer.proving import proved
from compose.answer.staged import staged
from compose.check import Budget
from compose.draw.line_of_play import every_moment
from compose.draw.remix_card import titled
from compose.draw.strip import strip_of
from compose.draw.to_svg import svg_of
from compose.modifiers.apply import apply
from compose.modifiers.clash import clash
from compose.modifiers.modifier import Use
from compose.modifiers.remix import Remix
from compose.modifiers.remix_sheet import remix_title
from compose.page.answers.at_hand import modifiers, remixed
from compose.page.answers.for_class import fitted
from compose.page.answers.remixing import group_in, proved_of
from compose.page.answers.said import in_order, lines_of, said
from compose.page.answers.values import Asked, Mend, Picture, Why
from compose.page.wording import page_wording
from compose.page.work.worker import keep_going, raise_if_withdrawn
from compose.staging.laid_out import laid_out
from compose.telling.wording import Wording
from grammar.finding import Finding
from grammar.game import Game

MOST_MOVES = 60  # our choice: nobody steps through more
MOST_MENDS = 4
RULES, CLASS, UNSEEN = "rules", "class", "unseen"
IN_BOTH = (RULES, CLASS)
Codes = frozenset[str]
SMALL = Budget(states=60_000, megabytes=60.0, keep_going=keep_going)  # many remixes are looked at


def why(asked: Asked, place: str) -> Why | None:
    """The finding at a place of the list ("r0": the first of the rules, "c1": the second of the class)."""
    wording, made = page_wording(asked.language), remixed(asked.texts, asked.uses).value
    finding = _at(asked, place)
    if made is None or finding is None:
        return None
    answer = proved_of(asked)
    steps = finding.witness or finding.loop
    pictures = _pictures(made, answer, finding, wording) if steps and isinstance(answer, Answer) else ()
    told = said(finding, wording, lines_of(made.game))
    return Why(remix_title(made), told, pictures[: MOST_MOVES + 1], bool(finding.loop))


def _at(asked: Asked, place: str) -> Finding | None:
    made, number = remixed(asked.texts, asked.uses).value, int(place[1:])
    if made is None:
        return None
    if place[0] == "c":
        findings = fitted(made.game, group_in(asked)).findings
    else:
        answer = proved_of(asked)
        findings = answer.proved if isinstance(answer, Answer) else answer
    listed = in_order(findings)
    return listed[number] if number < len(listed) else None


def _pictures(made: Remix, answer: Answer, finding: Finding, wording: Wording) -> tuple[Picture, ...]:
    net, game = answer.staged.net, titled(made)
    moments = every_moment(made.game, net, finding, wording)[: MOST_MOVES + 1]
    strip = strip_of(game, laid_out(made.game, answer.staged.players), net, moments, "", "", wording)
    return tuple(
        Picture(svg_of(frame, key="moment-"), moment.sentence, moment.counts)
        for frame, moment in zip(strip.frames, moments, strict=True)
    )


def mends(asked: Asked, place: str) -> tuple[Mend, ...]:
    """What mends it: a modifier less, or one more with its usual values. Each was tried and looked at whole."""
    wording, finding = page_wording(asked.language), _at(asked, place)
    made = remixed(asked.texts, asked.uses).value
    if finding is None or made is None:
        return ()
    before = _codes(made.game, asked, IN_BOTH)
    ways = IN_BOTH if place[0] == "r" else IN_BOTH[::-1]  # what is cheap to see fail comes first
    found = []
    for mend, game in _tries(asked, made, wording):
        raise_if_withdrawn()
        if all(_better(game, asked, finding.code, before, way) for way in ways):
            found.append(mend)
        if len(found) == MOST_MENDS:
            break
    return tuple(found)


def _better(game: Game, asked: Asked, code: str, before: Codes, way: str) -> bool:
    after = _codes(game, asked, (way,))
    return UNSEEN not in after and code not in after and after <= before


def _tries(asked: Asked, made: Remix, wording: Wording) -> Iterator[tuple[Mend, Game]]:
    """Less before more: what a teacher has just put on is taken off first."""
    for number, use in reversed(list(enumerate(made.uses))):
        left = (*asked.uses[:number], *asked.uses[number + 1 :])
        other = remixed(asked.texts, left).value
        if other is not None:
            yield Mend(wording.say("Take {name} off", name=wording.author(use.modifier.name)), "", left), other.game
    there = {use.modifier.name for use in made.uses}
    for modifier in modifiers().values():
        use = Use(modifier)
        if modifier.name in there or any(clash(use, each) for each in made.uses):
            continue
        more = apply(made.game, use, library.kit_names()).value
        if more is not None and more[1]:
            words = wording.say("Add {name}", name=wording.author(modifier.name))
            yield Mend(words, wording.author(modifier.about), (*asked.uses, modifier.name)), more[0]


def _codes(game: Game, asked: Asked, ways: Sequence[str]) -> Codes:
    """The codes of all that is to mend in the rules, for the class, or both; UNSEEN where it cannot be seen whole."""
    found = fitted(game, group_in(asked))
    codes = {each.code for each in to_mend(found.findings)} if CLASS in ways else set()
    if RULES in ways:
        ready = staged(found.staging, library.granted_sheet()).value
        answer = proved(ready, SMALL) if ready is not None else None
        codes |= {each.code for each in to_mend(answer.proved)} if answer and answer.whole else {UNSEEN}
    return frozenset(codes)
