"""What follows at once when a count becomes true: "a side has no balls in its half: ..."."""

from __future__ import annotations

from compose.net.lower.attempts import Table
from compose.net.lower.builder import Builder
from compose.net.lower.claims import lower_claim, lower_condition, speaks_of_every_side
from compose.net.lower.consequences import follow
from compose.net.lower.moment import Moment, rest_key
from compose.net.lower.tokens import ball_place, kit_meant
from compose.net.net import All, Condition, Effect, Move, Reaction
from grammar.sentences import when


def lower_becomes(builder: Builder, table: Table) -> None:
    """Rules that start with a count: they follow at once when it becomes true."""
    for rule in builder.game.whens:
        if not isinstance(rule.event, when.Becomes):
            continue
        claim = rule.event.claim
        sides = builder.side_names if speaks_of_every_side(claim.side) else builder.side_names[:1]
        for side in sides:
            guard: Condition = lower_claim(builder, claim, side, table.counted_to)
            if rule.condition:
                guard = All((guard, lower_condition(builder, rule.condition, side, table.counted_to)))
            other = (builder.others(side) or (side,))[0]
            moment = Moment(side, None, other, "none", "becomes")
            follows = follow(builder, rule, moment, table.result_place)
            words = f"{side}: {claim.words()}; {follows.words}"
            effects = follows.effects + _balls_moved(builder, rule, moment)
            builder.reactions.append(Reaction(words, guard, effects, (builder.rule(rule),)))


def _balls_moved(builder: Builder, rule: when.When, moment: Moment) -> tuple[Effect, ...]:
    """Such as "the balls go to ..." as a consequence of a count: all balls of the kind, wherever they lie."""
    effects: list[Effect] = []
    for consequence in rule.consequences:
        who = getattr(consequence, "who", None)
        if not isinstance(consequence, when.MovesTo) or who is None:
            continue
        key = rest_key(builder, consequence.place, moment)
        for line in kit_meant(builder, builder.game.meaning(who.name), "ball"):
            if line.category != "ball":
                continue
            target = ball_place(builder, line.name, key)
            amount = None if who.determiner == "all" else 1
            for source in builder.found(("ball", line.name)):
                if source != target:
                    effects.append(Move(source, target, amount, builder.rule(rule)))
    return tuple(effects)
