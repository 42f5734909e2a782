"""A net of moves and plain limits written as a CTMC in the PRISM language, for the side-by-side run.

Only what the lantern game needs: one comparison for each end, fixed amounts, no reactions.
"""

from __future__ import annotations

from collections.abc import Sequence

from compose.net.net import Comparison, Condition, Move, Net, Transition


def prism_text(net: Net, constants: Sequence[float]) -> str:
    """The model, with a label `end<number>` for each end and a reward `time`; raises TypeError on other nets."""
    over = " | ".join(_guard(end.guard) for end in net.ends)
    places = [f"  p{n} : [0..{place.capacity}] init {place.start};" for n, place in enumerate(net.places)]
    commands = [
        f"  [] !({over}) & {_command(t, constant)}" for t, constant in zip(net.transitions, constants, strict=True)
    ]
    labels = [f'label "end{n}" = {_guard(end.guard)};' for n, end in enumerate(net.ends)]
    return "\n".join(
        ["ctmc", "module play", *places, *commands, "endmodule", *labels, 'rewards "time" true : 1; endrewards']
    )


def _command(transition: Transition, constant: float) -> str:
    limits = ["+".join(f"p{place}" for place in limit) for limit in transition.rate.limits]
    enabled = " & ".join(f"({limit}) > 0" for limit in limits)
    rate = f"{constant!r} * min({', '.join(limits)})"
    updates = []
    for effect in transition.effects:
        if not isinstance(effect, Move) or effect.amount is None:
            raise TypeError(f"no PRISM text for {effect}")
        taken = f"min({effect.amount}, p{effect.source})"
        updates.append(f"(p{effect.source}' = p{effect.source} - {taken})")
        updates.append(f"(p{effect.target}' = p{effect.target} + {taken})")
    return f"{enabled} -> {rate} : {' & '.join(updates)};"


def _guard(condition: Condition) -> str:
    if not isinstance(condition, Comparison):
        raise TypeError(f"no PRISM text for {condition}")
    total = " + ".join(f"({coefficient}) * p{place}" for coefficient, place in condition.terms)
    return f"({total} {'=' if condition.relation == '==' else condition.relation} {condition.bound})"
