"""Unwinnable: a side that no line of play lets win, though the game is one that somebody wins.

The negation of weak winnability (Game Description Language specification, Stanford Logic Group
LG-2006-01, 2008): for every side some sequence of everybody's moves reaches an end that it wins. Over two halves
this is asked of the groups, each of which may play either side.
"""

from __future__ import annotations

from compose.check.condition import holds
from compose.check.found import Found, Sides, Value
from compose.check.left_alone import stuck_alone
from compose.check.match import can_win, decides, whole_sides_change
from compose.check.needs_no_win import needs_no_win
from compose.check.never import why_never
from compose.check.pointing import told_as_one
from compose.check.scored import scores
from compose.check.seen import Seen, everywhere
from compose.check.study import Study, once
from compose.net.net import End, Net
from grammar.finding import Severity
from grammar.frozen import evolve, frozen
from grammar.said import Chain, Written, said
from grammar.span import nowhere

CODE = "C-unwinnable"
INNINGS = Written('"2 innings of 3 min, the sides change tasks"')


@frozen
class OverAll:
    """What is said where `one` side, or `nobody`, can win over all parts of a game, and what mends it."""

    one: str
    nobody: str
    hint: str


OVER_ALL = {
    "half": OverAll(
        "whoever begins as {side} can never win over both halves, whatever happens in play.",
        "Nobody can ever win over both halves: whatever happens in play, they come out level.",
        "The points of both halves count together: let something that can happen in play give some.",
    ),
    "innings": OverAll(
        "whoever begins as {side} can never win over all innings, whatever happens in play.",
        "Nobody can ever win over all innings: whatever happens in play, they come out level.",
        "The points of all innings count together: let something that can happen in play give some.",
    ),
    "round": OverAll(
        "{side} can never win over all rounds, whatever happens in play.",
        "Nobody can ever win over all rounds: they always come out level.",
        "The points of all rounds count together: let something that can happen in play give some.",
    ),
}


@once
def unwinnable(study: Study) -> list[Found]:
    """One finding for each side that cannot win, unless nobody is ever said to win; mirrored ones are told as one."""
    if not decides(study.net) or not (study.ended.any() or study.net.bell is not None):
        return []
    lost = unwinnable_sides(study)
    if study.net.match.halves:
        apart = [lost] if len(lost) == len(study.net.sides) else [[side] for side in lost]
        return [_over_halves(study, each) for each in apart if each] if _whole(study) else []
    lost = [side for side in lost if not _second_each_time(study, side)]
    found = lost_sides_told(everywhere(study), lost, (("states", float(study.space.states)),))
    return [evolve(each, when_alone=True) if _wins_alone(study, lost) else each for each in found]


def _wins_alone(study: Study, lost: list[str]) -> bool:
    """Whether no line lets one of two sides win, which is left alone where play gets stuck."""
    said_to_win = {end.winner for end in (*study.net.ends, *_at_bell(study.net))}
    return len(lost) == 1 and lost[0] not in said_to_win and stuck_alone(study) == tuple(lost)


def _second_each_time(study: Study, side: str) -> bool:
    """Whether each end of it comes, but only with another who has won by the same move: that is told as two winners."""
    torn = study.table[study.space.clash_of >= 0]
    own = [end for end in study.net.ends if end.winner == side]
    return bool(own) and all(holds(end.guard, torn).any() for end in own)


def lost_sides_told(seen: Seen, lost: list[str], numbers: tuple[tuple[str, float], ...] = ()) -> list[Found]:
    """One finding for each of these sides, with why no end and no result at the bell is theirs."""
    together = [lost] if len(lost) == len(seen.net.sides) else told_as_one(seen.net, lost)
    return [_finding(seen, alike, numbers, needs_no_win(seen.net, alike[0], lost)) for alike in together if alike]


def unwinnable_sides(study: Study) -> list[str]:
    """The sides for which no win was found."""
    return [side for side in study.net.sides if side not in can_win(study)]


def _whole(study: Study) -> bool:
    """Whether the other half was looked at to its end, too."""
    return study.turned is None or study.turned.space.complete


def _over_halves(study: Study, lost: list[str]) -> Found:
    """Two halves are a game of their own: groups that always come out level, or one that never comes out ahead."""
    words = OVER_ALL[study.net.match.part]
    title: Value = said(words.one, side=Sides(lost[0]))
    if len(lost) > 1:
        title = words.nobody
    return Found(
        code=CODE,
        severity=Severity.WARNING,
        title=title,
        place=study.net.match.place,
        hint=words.hint,
        numbers=(("states", float(study.space.states)),),
        sides=frozenset(lost),
        scores=_never_scoring(everywhere(study)),
    )


def _never_scoring(seen: Seen) -> frozenset[str]:
    """The sides whose points stay as they are at the start."""
    return frozenset(side for side, terms in scores(seen.net) if all(seen.still(place) for _, place in terms))


def _finding(seen: Seen, lost: list[str], numbers: tuple[tuple[str, float], ...], helping: bool) -> Found:
    side, net = lost[0], seen.net
    own, at_bell = ([end for end in ends if end.winner == side] for ends in (net.ends, _at_bell(net)))
    winning = [end for end in net.ends if end.winner is not None]
    shown = [*own, *at_bell] or winning or list(net.ends)
    whys = [why_never(seen, end.guard, "another end comes first each time") for end in own]
    whys += [why_never(seen.live, end.guard, "what counts before it decides each time") for end in at_bell]
    told = [
        said('"{end}" never comes: {why}', end=end, why=why.told)
        for end, why in zip([*own, *at_bell], whys, strict=True)
    ]
    hint = said('No sentence lets {side} win; add one to the finish: "... wins when ..."', side=Sides(side))
    if told:
        hint = said("{reasons}. Let play come to that, or ask for less there.", reasons=Chain(tuple(told), "; "))
    if helping:
        pattern = "No line gives {side} points or says how they win; whoever only chases or helps others needs none."
        hint = said(pattern, side=Sides(side))
    changing = whole_sides_change(net) and len(lost) < len(net.sides)
    if changing:
        pattern = "Points stay with {side}, whoever plays for it. To count those of each pupil, write: {line}"
        hint = said(pattern, side=Sides(side), line=INNINGS)
    lines = [end.rule.span for end in shown] + [line for why in whys for line in why.lines]
    lines += [end.rule.span for end in (*net.ends, *_at_bell(net)) if end.winner in lost]
    title = said("{side} can never win, whatever happens in play.", side=Sides(side, tuple(lost[1:])))
    if len(lost) == len(net.sides) > 1:
        title = said("nobody can ever win, whatever happens in play.")
    return Found(
        code=CODE,
        severity=Severity.NOTE if helping or changing else Severity.WARNING,
        title=title,
        place=lines[0] if lines else nowhere(),
        hint=hint,
        others=tuple(dict.fromkeys(lines[1:])),
        numbers=numbers,
        about=frozenset[int]().union(*(why.still for why in whys)),
        sides=frozenset(lost),
        scores=_never_scoring(seen),
    )


def _at_bell(net: Net) -> tuple[End, ...]:
    return net.bell.results if net.bell is not None else ()
