"""How to win and how it ends, in another language than English."""

from __future__ import annotations

from collections.abc import Iterator

from compose.draw.phrases import Phrases
from grammar.sentences import finish
from grammar.sentences.base import Node


def finish_in(phrases: Phrases) -> Iterator[str]:
    """Ways to win, then the clock."""
    for line in phrases.game.sentences("finish"):
        yield phrases.sentence(finish_said(phrases, line))


def finish_said(phrases: Phrases, line: Node) -> str:
    """A sentence of the finish."""
    say = phrases.say
    match line:
        case finish.WinWhen():
            condition = phrases.condition(line.condition, phrases.pronoun(line.side))
            one, many = "{side} wins when {condition}", "{side} win when {condition}"
            return phrases.does(line.side, one, many, condition=condition)
        case finish.LoseWhen():
            condition = phrases.condition(line.condition, phrases.pronoun(line.side))
            one, many = "{side} loses when {condition}", "{side} lose when {condition}"
            return phrases.does(line.side, one, many, condition=condition)
        case finish.FirstTo():
            points = phrases.wording.counted(line.points.value, "point", "points")
            return say("the first side to {points} wins", points=points)
        case finish.After():
            return _after(phrases, line)
        case finish.EndsWhen():
            result = f" ; {_result(phrases, line.result)}" if line.result else ""
            return say("the round ends when {condition}", condition=phrases.condition(line.condition)) + result
        case finish.BothAtOnce():
            return say("if this happens for both sides at once, {result}", result=_result(phrases, line.result))
        case finish.OpenEnded():
            return say("play goes on until the clock stops")
        case finish.Halves():
            return say("play two halves: {change} at half-time", change=say(line.change))
        case finish.BestOf():
            rounds = phrases.wording.counted(line.rounds.value, "round", "rounds")
            return say("play the best of {rounds}", rounds=rounds)
        case finish.ChangeEnds():
            return f"{say(line.change)} {say(line.when)}"
    return line.words()


def _after(phrases: Phrases, line: finish.After) -> str:
    first, *rest = line.results
    pattern = "after {time} the round is over: {result}"
    if isinstance(first, finish.MoreWins):
        pattern = "after {time}, {result}"
    said = phrases.say(pattern, time=phrases.amount(line.time), result=_result(phrases, first))
    for order, result in enumerate(rest):
        again = "if that is level too, {result}" if order else "if that is level, {result}"
        said += f" ; {phrases.say(again, result=_result(phrases, result))}"
    return said


def _result(phrases: Phrases, result: finish.Result) -> str:
    say = phrases.say
    match result:
        case finish.MoreWins():
            pattern = "the side with fewer {things} wins"
            if result.more == "more":
                pattern = "the side with more {things} wins"
            return say(pattern, things=phrases.thing_counted(result.counted, None))
        case finish.Draw():
            return say("it is a draw")
        case finish.SideWins():
            return phrases.does(result.side, "{side} wins", "{side} win")
        case finish.NobodyWins():
            return say("nobody wins")
