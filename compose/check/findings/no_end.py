"""No end: play never reaches an end, whatever anybody does.

The finish says how the round ends, but no state that play can reach satisfies it. (In the words of
the Game Description Language specification, Stanford Logic Group LG-2006-01, 2008, no terminal state
is reachable, so the game cannot terminate.)
"""

from __future__ import annotations

from compose.check.findings.stranded import behind_dead_ends
from compose.check.found import Found, Value
from compose.check.never import why_never
from compose.check.pointing import missing_in
from compose.check.seen import everywhere
from compose.check.study import Study, once
from compose.check.witness import line_of_play
from grammar.finding import Severity
from grammar.said import Chain, said
from grammar.span import nowhere

CODE = "C-no-end"


@once
def no_end(study: Study) -> list[Found]:
    """One finding for the whole game, with the reason for each end."""
    net = study.net
    by_clock = net.bell is not None and (net.open_ended or not net.ends)
    if by_clock or study.ended.any():
        return []
    whys = [why_never(everywhere(study), end.guard, "an end before it holds as well each time") for end in net.ends]
    reasons = (said('"{end}" never comes: {why}', end=e, why=why.told) for e, why in zip(net.ends, whys, strict=True))
    lines = [end.rule.span for end in net.ends] + [line for why in whys for line in why.lines]
    places = tuple(dict.fromkeys(lines))
    clock = " before the bell" if net.bell is not None else ""
    return [
        Found(
            code=CODE,
            severity=Severity.WARNING,
            title=said("Nothing that can happen in play ever ends the round{clock}.", clock=clock),
            place=places[0] if places else nowhere(),
            hint=Chain((*reasons, _mend(study)), ". "),
            others=places[1:],
            witness=line_of_play(study.space, int(study.dead_ends[0])) if stuck(study) else (),
            numbers=(("states", float(study.space.states)),),
            about=frozenset[int]().union(*(why.still for why in whys)),
        )
    ]


def stuck(study: Study) -> bool:
    """Whether play gets stuck because nothing ever ends it, and not for want of what lies somewhere for good."""
    return bool(study.dead_ends.size) and not behind_dead_ends(study)


def _mend(study: Study) -> Value:
    if stuck(study):
        missing = missing_in(study, int(study.dead_ends[0]))
        if not missing.items:
            return "Play gets stuck instead. Ask for what can come, so that the round ends then."
        return said(
            "Play gets stuck instead: {missing}. Ask for what can come, so that the round ends then.", missing=missing
        )
    if study.net.bell is not None:
        return "Leave the sentence out, or change what has to happen for it."
    if not study.net.ends:
        return 'Add a finish, such as "after 6 min: ...".'
    return 'Change what has to happen for the finish, or add a clock: "after 6 min: ...".'
