"""A when-line → rules: one for each side that acts and each who is concerned, joined where they say the same."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from attrs import evolve

from grammar.core.clock import TakeEffect
from grammar.core.fouls import Fouled
from grammar.core.guards import ALWAYS, Guard
from grammar.core.play import ComeBack
from grammar.core.precedence import slots
from grammar.core.reading.consequences.effects import effects_of
from grammar.core.reading.consequences.freeing import after_s, comings_back
from grammar.core.reading.events.events import Moment
from grammar.core.reading.events.whence import moments_of
from grammar.core.reading.phrases.claims import read_condition
from grammar.core.reading.phrases.clock import first_time, in_rule
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless
from grammar.core.rules import Add, Becomes, Effect, Go, Happening, LifeOf, Nothing, Person, PlayOn, Rule
from grammar.core.values import At, Spot
from grammar.sentences import then, when
from grammar.sentences.time import TheFirstTime


def read_when(reader: Reader, sentence: when.When, line: int) -> Iterator[Rule | ComeBack]:
    """All rules of a line, and who comes back by it with the next point, or after a time. Raises Senseless."""
    yield from rules_of_line(reader, sentence, line)
    for waits in (each for each in sentence.consequences if isinstance(each, then.Waits) and each.until is not None):
        spots = dict.fromkeys(_waited_at(reader, sentence, waits))
        yield from comings_back(reader, spots, after_s(reader, waits.until), line)


def rules_of_line(reader: Reader, sentence: when.When, line: int) -> Iterator[Rule]:
    """All rules of a line. Raises Senseless."""
    found: list[Rule] = []
    for moment in moments_of(reader, sentence):
        rule = _rule(reader, sentence, moment, line)
        if not found or not _joined(found, rule):
            found.append(rule)
    if not found:
        raise Senseless(sentence.event, "Nobody can do this here.", "Say under play who may try it, or leave it out.")
    if not any(rule.effects for rule in found) and not all(isinstance(c, then.PlaysOn) for c in sentence.consequences):
        raise Senseless(sentence, "Nothing would change by this.", "Say what else follows, or leave the line out.")
    yield from found


def _waited_at(reader: Reader, sentence: when.When, waits: then.Waits) -> Iterator[Spot]:
    """Where somebody waits only so long."""
    for moment in moments_of(reader, sentence):
        for effect in effects_of(reader, waits, moment):
            if isinstance(effect, Go) and isinstance(effect.to, At):
                yield effect.to.spot


def _rule(reader: Reader, sentence: when.When, moment: Moment, line: int) -> Rule:
    guard: Guard = ALWAYS
    if sentence.condition is not None:
        guard = read_condition(reader, sentence.condition, moment.spoken, isinstance(moment.trigger, Becomes))
    guard = in_rule(reader, sentence, guard, line)
    effects: list[Effect] = []
    for consequence in sentence.consequences:
        effects.extend(effects_of(reader, consequence, moment))
    if isinstance(sentence.span_of_time, TheFirstTime):
        effects.append(TakeEffect(first_time(reader, line)))
    if not reader.granted and all(isinstance(each, then.PlaysOn) for each in sentence.consequences):
        effects.append(Nothing())
    if LifeOf(Person.OBJECT, -1) in effects:
        effects = [PlayOn.LESS_A_LIFE if effect is PlayOn.PLAY_ON else effect for effect in effects]
    times = Counter(slot for effect in effects if not isinstance(effect, Add) for slot in slots(effect))
    if any(count > 1 for count in times.values()):
        raise Senseless(sentence, "This line says two things of one and the same.", "Keep one of them.")
    return Rule(moment.trigger, guard, tuple(effects), (line,), reader.granted)


def _joined(found: list[Rule], rule: Rule) -> bool:
    """Whether the rule could be joined with one that differs only in who is concerned."""
    trigger = rule.trigger
    for number, other in enumerate(found):
        before = other.trigger
        if (other.guard, other.effects) != (rule.guard, rule.effects):
            continue
        if isinstance(before, Fouled) and isinstance(trigger, Fouled) and before.who == trigger.who:
            found[number] = evolve(other, trigger=evolve(before, against=before.against | trigger.against))
            return True
        if not isinstance(before, Happening) or not isinstance(trigger, Happening):
            continue
        if evolve(before, against=trigger.against, to=trigger.to) == trigger:
            joined = evolve(before, against=before.against | trigger.against, to=before.to | trigger.to)
            found[number] = evolve(other, trigger=joined)
            return True
    return False
