"""Points by target → rules: what is knocked, or sent through a ring, scores for the side of whoever did it."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from grammar.core.guards import Compare, Relation, ThingsAt
from grammar.core.reading.consequences.when_lines import rules_of_line
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Whose, whose
from grammar.core.rules import Add, Happening, Rule
from grammar.core.values import Posture, Sort, Thing
from grammar.said import write
from grammar.sentences import attempting, events, then, when
from grammar.sentences.base import Name, Np, SideOf
from grammar.sentences.points import SetPoints, TargetPoints, Worth

ACTORS_SIDE = SideOf("the", "thrower's")
BALL = Np("a", None, None, Name("ball"))


def read_target_points(reader: Reader, sentence: TargetPoints, line: int) -> Iterator[Rule]:
    """One rule for each kind of target, and for each thing that is brought somewhere."""
    for worth in sentence.worths:
        event: events.Event = events.Knocked(worth.what, "is")
        if reader.kinds_meant(worth.what, Sort.RING) or _sent_into(reader, worth.what):
            event = events.GoesInto(BALL, "goes", worth.what)
        if kinds := reader.kinds_meant(worth.what, Sort.LOAD, Sort.BALL):
            if not set(kinds) <= reader.taken | reader.brought:
                title = "`{said}`: nobody takes them from place to place."
                raise Senseless(worth.what, title, "Say in play: players take one from the middle to their base")
            event = events.Arrives(evolve(worth.what, determiner="a"))
        elif reader.kinds_meant(worth.what, Sort.BODY):
            title = "`{said}`: what is so large does not fall, and nobody brings it home."
            raise Senseless(worth.what, title, "Take it out here; what is worth points at home moves on a track.")
        yield from rules_of_line(reader, _scoring(event, worth), line)


def _sent_into(reader: Reader, what: Np) -> bool:
    """Whether balls are thrown into such things, not at them."""
    said = [each for line in reader.game.all_of("play", attempting.Attempt) for each in line.aims]
    into = [each.what for each in said if isinstance(each, attempting.AimInto)]
    at = [each.what for each in said if isinstance(each, attempting.AimAt)]
    kinds, knocked = (
        {kind for phrase in phrases for kind in reader.kinds_meant(phrase, Sort.TARGET)} for phrases in (into, at)
    )
    return bool({*reader.kinds_meant(what, Sort.TARGET)} & (kinds - knocked))


def _scoring(event: events.Event, worth: Worth | SetPoints) -> when.When:
    scores = then.Scores(ACTORS_SIDE, "scores", worth.points, "points")
    return when.When(event, None, (scores,), span=worth.span)


def read_set_points(reader: Reader, sentence: SetPoints, line: int) -> Iterator[Rule]:
    """Whoever knocks the last that stands has these points besides what it is worth by itself."""
    _refuse_no_set(reader, sentence.what)
    for rule in rules_of_line(reader, _scoring(events.Knocked(sentence.what, "is"), sentence), line):
        assert isinstance(rule.trigger, Happening)
        for owner in sorted(rule.trigger.against, key=repr):
            things = frozenset(to for to in rule.trigger.to if isinstance(to, Thing) and to.owner == owner)
            if any(reader.sort(thing.kind) is not Sort.TARGET for thing in things):
                raise Senseless(sentence.what, "`{said}` never all fall.", "Name targets of the kit.")
            last = Compare(ThingsAt(things, frozenset({Posture.UP})), Relation.EQUAL, 1)
            trigger = evolve(rule.trigger, against=frozenset({owner}), to=things)
            more = tuple(evolve(effect, more=True) if isinstance(effect, Add) else effect for effect in rule.effects)
            yield evolve(rule, trigger=trigger, guard=last, effects=more)


def _refuse_no_set(reader: Reader, what: Np) -> None:
    """Raises Senseless where a phrase is not all that one side has: those of several sides are no set."""
    several = whose(reader.game, what).whose in (Whose.ANY, Whose.ONE_EACH)
    if several or what.determiner not in (None, "the", "all", "every"):
        title = "`{said}`: what is all down is what one side has."
        raise Senseless(what, title, write(f"all {what.name.text} of the other side down"))
