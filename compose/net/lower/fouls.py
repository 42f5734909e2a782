"""Fouls of a population: moves that its side may leave alone, for nobody has to foul."""

from __future__ import annotations

from collections.abc import Iterator

from compose.net.lower.attempts import case_effects, case_guard
from compose.net.lower.builder import Builder, at_least
from compose.net.lower.dispatch import cases_of
from compose.net.lower.last_life import settled
from compose.net.lower.runs import rows_begun_anew
from compose.net.lower.services import act
from compose.net.lower.tokens import in_play
from compose.net.net import All, Rate, Transition
from compose.net.outcome import Moment, fires
from compose.net.told import FouledSo
from grammar.core.rules import Rule
from grammar.core.values import Population


def fouls(builder: Builder, who: Population) -> Iterator[Transition]:
    """What follows when one of them fouls, where the sheet says anything of it; of several other sides each is fouled
    as often (an assumption), where it matters which."""
    others = builder.play.others(who.side)
    moments = [Moment(who, other, other) for other in others] or [Moment(who, None, who.side)]
    found = [[rule for rule in builder.play.rules if fires(rule.trigger, moment)] for moment in moments]
    if all(rules == found[0] for rules in found):
        yield from _against(builder, moments[0], found[0], 1.0)
        return
    for moment, rules in zip(moments, found, strict=True):
        yield from _against(builder, moment, rules, 1 / len(moments))


def _against(builder: Builder, moment: Moment, rules: list[Rule], part: float) -> Iterator[Transition]:
    """What follows from the foul of one against one side."""
    who, players = moment.by, in_play(builder, moment.by)
    for each in cases_of(builder.play, rules) if rules else ():
        for case, cast in settled(builder, moment, each) if each.effects else ():
            yield Transition(
                FouledSo(who, case.done, moment.concerned if part < 1.0 else None),
                who.side.key,
                False,
                act(builder, "foul", rules[0].lines, None),
                "always",
                Rate((players,), cast.share),
                All((at_least(players), *case_guard(builder, case), *cast.guard)),
                (*case_effects(builder, case, moment, cast), *rows_begun_anew(builder, who.side, case)),
                tuple(builder.rule(lines) for lines in case.lines),
                part=part,
            )
