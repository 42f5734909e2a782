"""Parse tree of a sentence → node of grammar/sentences: the class is named after the rule."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

import attrs
from lark import Token, Tree
from lark.tree import Meta

from grammar.own_names import unmasked
from grammar.sentences import head
from grammar.sentences.attempting import Aim, AimAt, AimBetween, AimPast, AimThrough, AimTo, Attempt
from grammar.sentences.base import FROZEN, Name, Node, Np, Quantity, SideNamed, SideOf, SideRef
from grammar.sentences.claims import Exactly, ThereAre
from grammar.sentences.events import Caught
from grammar.sentences.finish import Places
from grammar.sentences.kinds import kind_of
from grammar.sentences.points import AtTheEnd, TargetPoints, Worth
from grammar.sentences.relays import HasRun
from grammar.sentences.resting import Rest, RestInside
from grammar.sentences.runs import CountedRuns
from grammar.sentences.sides import Headcount, Kit, Sides
from grammar.sentences.space import Area, Court
from grammar.sentences.then import MovesTo, Scores
from grammar.sentences.when import When
from grammar.span import Span
from grammar.words import small

_QUANTITIES = ("NUMBER", "LENGTH", "DURATION", "PERCENT")
_AIMS = (AimAt, AimThrough, AimPast, AimTo, AimBetween)


class _Also(AimAt):
    """What stands behind "or" without a word of its own for how it is aimed at."""


class Reader:
    """Makes nodes of one line, which stands at `line`; `columns` turns a column of the parsed text into
    one of the file (both from 1).

    `parameters` maps a column of the line (from 1) to the parameter of a modifier that stood there; `names` are those
    that were masked in it.
    """

    def __init__(
        self, line: Span, columns: Callable[[int], int], parameters: Mapping[int, str], names: Sequence[str] = ()
    ) -> None:
        self._line = line
        self._columns = columns
        self._parameters = parameters
        self._names = names

    def node(self, tree: Tree[Token] | Token | None) -> Any:
        """The node, text or None that a piece of the parse tree stands for."""
        if tree is None:
            return None
        if isinstance(tree, Token):
            return self._leaf(tree)
        children = [self.node(child) for child in tree.children]
        span = self._span(tree.meta)
        if tree.data in ("preposition", "within", "ball_state"):
            return children[0]
        if tree.data == "name":
            return Name(" ".join(children), span=span)
        if tree.data == "practice":
            return head.Practice(" ".join(children), span=span)
        if tree.data == "skill_name":
            return Name(children[0], of_an_attempt=True, span=span)
        if tree.data == "shot":
            return Np(children[0], None, None, Name(children[1], of_an_attempt=True, span=span), span=span)
        special = _SPECIAL.get(tree.data)
        if special:
            return attrs.evolve(special(children), span=span)
        return _construct(kind_of(tree.data), children, span)

    def _leaf(self, token: Token) -> Quantity | str:
        if token.type in _QUANTITIES:
            said = token.lower()
            digits = said.rstrip("abcdefghijklmnopqrstuvwxyz% \t")
            unit = said[len(digits) :].strip()
            span = self._token_span(token)
            return Quantity(float(digits), unit, parameter=self._parameters.get(token.column or 0), span=span)
        if token.type == "STRING":
            return token[1:-1].strip()
        if token.type == "LICENCE":
            return str(token)
        return unmasked(" ".join(small(token).replace("’", "'").split()), self._names)

    def _token_span(self, token: Token) -> Span:
        return self._stretch(token.column or 1, token.end_column or 1)

    def _span(self, meta: Meta) -> Span:
        return self._line if meta.empty else self._stretch(meta.column, meta.end_column)

    def _stretch(self, start: int, end: int) -> Span:
        return Span(
            self._line.file, self._line.line, self._columns(start), max(self._columns(end), self._columns(start) + 1)
        )


def _construct(kind: type[Node], children: list[Any], span: Span) -> Node:
    fields = [field for field in attrs.fields(kind) if field.name != "span" and not field.kw_only]
    if fields and fields[-1].metadata.get("rest"):
        fixed = len(fields) - 1
        children = [*children[:fixed], tuple(child for child in children[fixed:] if child is not None)]
    return kind(*children, span=span)


def _sides(children: list[Any]) -> Sides:
    names = tuple(child for child in children if isinstance(child, Name))
    headcount = next(child for child in children if isinstance(child, Headcount))
    return Sides(names, headcount, tuple(child for child in children if isinstance(child, str)))


def _attempt(children: list[Any]) -> Attempt:
    """who, where they stand, skills (None where the last "or" is missing), the ball or None, aims, details."""
    first_aim = next(number for number, child in enumerate(children) if isinstance(child, _AIMS))
    (who, preposition, where), ball = children[:3], children[first_aim - 1]
    skills = tuple(child for child in children[3 : first_aim - 1] if child)
    aims = _aims([child for child in children if isinstance(child, _AIMS)])
    return Attempt(who, skills, ball, aims, tuple(children[first_aim + len(aims) :]), preposition, where)


def _aims(said: list[Any]) -> tuple[Aim, ...]:
    """What stands behind "or" alone is aimed at as what stands before it: "into the pails or the rings"."""
    aims: list[Aim] = []
    for aim in said:
        before = aims[-1] if aims else None
        alone = isinstance(aim, _Also) and aim.load is None and aim.standing_or_not is None
        if alone and isinstance(before, AimThrough | AimPast):
            aims.append(type(before)(aim.what, span=aim.span))
        else:
            aims.append(
                AimAt(aim.what, aim.standing_or_not, aim.load, span=aim.span) if isinstance(aim, _Also) else aim
            )
    return tuple(aims)


def _when(children: list[Any]) -> When:
    span_of_time, event, doer, whence, bounced, condition, *consequences = children
    if isinstance(event, Caught) and event.where is None and isinstance(doer, Np) and doer.name.text.startswith(FROZEN):
        event, doer = attrs.evolve(event, preposition="by", where=doer), None  # it is said of where the mate is
    return When(event, condition, tuple(consequences), span_of_time, whence, bounced, doer)


def _aim_at(children: list[Any], kind: type[AimAt] = AimAt) -> AimAt:
    what, _linked, load, order = children
    return kind(what, order, load)


def _rest(children: list[Any]) -> Rest:
    """What stays with somebody has no verb of its own."""
    determiner, state, ball, *verb, place = children
    return Rest(determiner, state, ball, verb[0] if verb else "stays", place)


def _target_points(children: list[Any]) -> TargetPoints:
    return TargetPoints(tuple(child for child in children if isinstance(child, Worth)))


def _at_the_end(children: list[Any]) -> AtTheEnd:
    """The last child is for whom it counts."""
    first, *_ = children
    return AtTheEnd(first, tuple(child for child in children if isinstance(child, Worth)), children[-1])


def _change_skill(children: list[Any]) -> Node:
    from grammar.sentences.modifier import ChangeSkill

    words = [child for child in children if child not in ("change", "changes")]
    return ChangeSkill(tuple(words[:-1]), words[-1])


def _area(children: list[Any]) -> Area:
    name, depth, places, preposition, spot, *rules = children
    return Area(name, depth, places, preposition, spot, tuple(rule for rule in rules if rule is not None))


def _has_run(children: list[Any]) -> HasRun:
    side, verb, times, with_each = children
    return HasRun(side, verb, Exactly(Quantity(1) if times == "once" else times), CountedRuns(with_each))


def _scores(children: list[Any]) -> Scores:
    """ "That player" in what follows has points as "that side" has them."""
    side, verb, points, noun = children
    if isinstance(side, SideNamed) and (side.determiner, side.name.text) == ("that", "player"):
        side = SideRef("that", span=side.span)
    if isinstance(side, SideOf) and (side.determiner, side.possessive) == ("that", "player's"):
        side = SideRef("that", span=side.span)
    return Scores(side, verb, points, noun)


_SPECIAL: Mapping[str, Callable[[list[Any]], Node]] = {
    "sides": _sides,
    "attempt": _attempt,
    "when": _when,
    "rest": _rest,
    "target_points": _target_points,
    "worth": lambda children: Worth(children[0], children[2]),
    "at_the_end": _at_the_end,
    "places": lambda children: Places(tuple(child for child in children if isinstance(child, Quantity))),
    "next_worth": lambda children: Worth(*children),
    "stays_with": lambda children: MovesTo(children[0], "stays", children[1]),
    "stays_inside": lambda children: MovesTo(children[0], "stays", RestInside(span=children[0].span)),
    "aim_at": _aim_at,
    "also": lambda children: _aim_at(children, _Also),
    "court": lambda children: Court(*children[1:]),
    "kit": lambda children: Kit(*children[:-1]),
    "change_skill": _change_skill,
    "area": _area,
    "has_run": _has_run,
    "scores": _scores,
    "there_are": lambda children: ThereAre(SideRef("each"), *children),
}
