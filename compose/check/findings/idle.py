"""Idle rule: a sentence that never takes effect, in no line of play.

No transition of it ever fires, no effect of it ever changes anything, no end of it ever holds
(dead transitions: van der Aalst 1998, soundness; liveness L0 of Murata 1989). It is read out to the
class for nothing, or it is not what the teacher meant.
"""

from __future__ import annotations

from compose.check.never import why_never, why_not_fired
from compose.check.space import Happened
from compose.check.study import Study
from compose.net.net import Move, Net, Reaction, Rule, Transition
from grammar.finding import Basis, Finding, Severity

CODE = "C-idle"
_MEND = "Leave the sentence out, or change what has to happen for it."
TIE_RULE = "both at once"  # begins the sentence for a case that careful rules foresee and that may never come


def idle(study: Study) -> list[Finding]:
    """One finding for each sentence that has a part in the net and never takes effect."""
    return [found for rule in study.net.rules for found in _judge(study, rule)]


def _judge(study: Study, rule: Rule) -> list[Finding]:
    verdicts = [*_ends(study, rule), *_effects(study, rule)] or _transitions(study, rule)
    if not verdicts or None in verdicts:
        return []
    only_in_case = rule.text.startswith(TIE_RULE)
    reasons = list(dict.fromkeys(reason for reason in verdicts if reason))
    return [
        Finding(
            code=CODE,
            severity=Severity.NOTE if only_in_case else Severity.WARNING,
            title=f'"{rule.text}" never takes effect.',
            place=rule.span,
            hint=(reasons[0][0].upper() + reasons[0][1:] if reasons else "It never changes anything")
            + (". It does no harm." if only_in_case else f". {_MEND}"),
            basis=Basis.PROVED,
            numbers=(("states", float(study.space.states)),),
        )
    ]


def _ends(study: Study, rule: Rule) -> list[str | None]:
    """For each end of the rule the reason why it never holds, None where it holds somewhere."""
    verdicts: list[str | None] = [
        None if study.held[number] else why_never(study, end.guard)
        for number, end in enumerate(study.net.ends)
        if end.rule == rule
    ]
    bell = study.net.bell
    if bell is not None and (bell.rule == rule or any(result.rule == rule for result in bell.results)):
        verdicts.append(None)
    return verdicts


def _effects(study: Study, rule: Rule) -> list[str | None]:
    """For each effect of the rule the reason why it never changed anything, None where it did."""
    net, space = study.net, study.space
    acts: list[tuple[Transition | Reaction, Happened]] = [
        *zip(net.transitions, space.happened, strict=True),
        *zip(net.reactions, space.reacted, strict=True),
    ]
    verdicts: list[str | None] = []
    for act, happened in acts:
        for number, effect in enumerate(act.effects):
            pointless = isinstance(effect, Move) and effect.source == effect.target
            if effect.rule == rule and not pointless:
                verdicts.append(None if happened.changed[number] else _why(study, act, happened, number))
    return verdicts


def _transitions(study: Study, rule: Rule) -> list[str | None]:
    """For a rule without ends and effects of its own: why none of its transitions ever fired."""
    net, space = study.net, study.space
    verdicts: list[str | None] = [
        None if happened.fired else why_not_fired(study, transition)
        for transition, happened in zip(net.transitions, space.happened, strict=True)
        if rule in transition.rules
    ]
    verdicts += [
        None if happened.fired else why_never(study, reaction.guard)
        for reaction, happened in zip(net.reactions, space.reacted, strict=True)
        if rule in reaction.rules
    ]
    return verdicts


def _why(study: Study, act: Transition | Reaction, happened: Happened, number: int) -> str:
    if not happened.fired:
        return why_not_fired(study, act) if isinstance(act, Transition) else why_never(study, act.guard)
    effect = act.effects[number]
    if isinstance(effect, Move):
        if effect.rooms and (study.table[~study.ended, effect.source] > 0).any():
            return f"when it should, there is never room for more {_many(study.net, effect.target)}"
        return f"when it should, there are never any {_many(study.net, effect.source)}"
    return f"it never changes the {_many(study.net, effect.place)}"


def _many(net: Net, place: int) -> str:
    return net.places[place].many
