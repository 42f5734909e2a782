"""How to play, what happens when, how to win: the rules as full sentences."""

from __future__ import annotations

from collections.abc import Iterator

from compose.draw.speak import amount, claim_words, condition_words, counted_words, one_of, sentence, side_words
from grammar.game import Game
from grammar.sentences import finish, play, when
from grammar.sentences.base import Node, Quantity
from grammar.sentences.head import Switch
from grammar.words import count, listing

SKILLS = {"overarm throw": "throw overarm", "underarm throw": "throw underarm"}


def play_lines(game: Game) -> Iterator[str]:
    """The rules of play that hold; what only tells the forecast how often or how well is left out."""
    for line in game.sentences("play"):
        if not isinstance(line, play.SucceedAsOften | play.TakeAsLong):
            yield sentence(play_words(game, line))


def when_lines(game: Game) -> Iterator[str]:
    """What follows from what."""
    for line in game.whens:
        yield sentence(when_words(game, line))


def finish_lines(game: Game) -> Iterator[str]:
    """Ways to win, then the clock, in the order of the sheet."""
    for line in game.sentences("finish"):
        yield sentence(finish_words(game, line))


def choice_lines(game: Game) -> Iterator[str]:
    """What each switch of the game changes, and how it is usually set."""
    for switch in game.all_of("head", Switch):
        parts = [sentence(any_words(game, line)) for line in game.hanging_on(switch)]
        yield f"{sentence(f'{switch.name.words()} ({switch.usually})')[:-1]}: {' '.join(parts)}"


def any_words(game: Game, line: Node) -> str:
    """A sentence of the play, the when or the finish."""
    if isinstance(line, when.When):
        return when_words(game, line)
    return finish_words(game, line) if type(line).__module__ == finish.__name__ else play_words(game, line)


def play_words(game: Game, line: Node) -> str:
    """A sentence of the play."""
    match line:
        case play.Attempt():
            return _attempt(game, line)
        case play.HoldLimit():
            return f"{line.ball.words()} is held for at most {amount(line.limit)}"
        case play.Free() | play.StandUp():
            paced = f" {_often(line.pace.times)}" if line.pace else ""
            doing = f"frees {line.queued.words()}" if isinstance(line, play.Free) else f"stands up {line.what.words()}"
            return f"{line.who.words()} {doing}{paced}"
        case play.Fetch():
            place = " ".join(part for part in (line.preposition, line.where.words()) if part)
            paced = f" {_often(line.pace.times)}" if line.pace else ""
            return f"{line.who.words()} {line.verb} {line.what.words()} from {place}{paced}"
        case play.GuardLimit():
            one = line.most.value == 1
            who = count(line.most.value, one_of(game, line.who.name))
            return f"at most {who} {'guards' if one else 'guard'} {line.what.words()}"
        case play.ComesBack():
            return f"whoever waits in {line.where.words()} comes back after {amount(line.time)}"
        case play.SaidRule():
            return line.text
    return line.words()


def _often(times: Quantity) -> str:
    return {1.0: "once a minute", 2.0: "twice a minute"}.get(times.value, f"{times.words()} times a minute")


def _attempt(game: Game, line: play.Attempt) -> str:
    """ "players throw a foam ball overarm at the lanterns of the other side"."""
    ball = line.ball.words() if line.ball else ""
    if len(line.skills) == 1 and line.skills[0] in SKILLS:
        verb, manner = SKILLS[line.skills[0]].split()
        doing = f"{verb} {ball} {manner}"
    else:
        doing = f"{listing((SKILLS.get(skill, skill) for skill in line.skills), 'or')} {ball}"
    aims = line.aims[0].words()
    for before, aim in zip(line.aims, line.aims[1:], strict=False):
        same = isinstance(before, play.AimAt) and isinstance(aim, play.AimAt)
        aims += f" or {aim.words().removeprefix('at ') if same else aim.words()}"
    aims = aims.replace(" in order", " in their order").replace(" standing or not", ", standing or not")
    details = ""
    for detail in line.details:
        if isinstance(detail, play.FromWhere):
            details += f", from {detail.distance.words()} away"
        elif isinstance(detail, play.OnlyWhen):
            details += f", but only when {condition_words(game, detail.condition)}"
    return f"{line.who.words()} {doing} {aims}{details}"


def when_words(game: Game, line: when.When) -> str:
    """ "When a lantern is knocked, it stays down"."""
    event = _event(game, line.event)
    if line.condition:
        event += f" while {condition_words(game, line.condition, 'its side')}"
    follows = [_follows(one) for one in line.consequences]
    if isinstance(line.event, when.Knocked):
        # Further on "it" could be anything spoken of since: the thing that was knocked gets its name again.
        known = f"the {one_of(game, line.event.what.name)} "
        follows[1:] = [known + said.removeprefix("it ") if said.startswith("it ") else said for said in follows[1:]]
    return f"when {event}, {listing(follows)}"


def _event(game: Game, event: when.Event) -> str:
    match event:
        case when.HeldLong():
            return f"{event.what.words()} is held for longer than {amount(event.limit)}"
        case when.EveryoneHolds():
            return f"everyone has held a ball for {amount(event.time)}"
        case when.Becomes():
            return claim_words(game, event.claim)
    return event.words()


def _follows(one: when.Consequence) -> str:
    if isinstance(one, when.Returns):
        return f"{one.words()} to play"
    if isinstance(one, when.Out):
        return f"{one.words()} for the rest of the round"
    return one.words()


def finish_words(game: Game, line: Node) -> str:
    """A sentence of the finish."""
    match line:
        case finish.WinWhen() | finish.LoseWhen():
            verb = "wins" if isinstance(line, finish.WinWhen) else "loses"
            return f"{side_words(line.side)} {verb} when {condition_words(game, line.condition)}"
        case finish.After():
            return _after(game, line)
        case finish.EndsWhen():
            result = f"; {_result(game, line.result)}" if line.result else ""
            return f"the round ends when {condition_words(game, line.condition)}{result}"
        case finish.BothAtOnce():
            return f"if this happens for both sides at once, {_result(game, line.result)}"
        case finish.Halves():
            return f"play two halves: {line.change} at half-time"
        case finish.BestOf():
            return f"play the best of {count(line.rounds.value, 'round')}"
    return line.words()


def _after(game: Game, line: finish.After) -> str:
    lead = f"after {amount(line.time)}"
    first, *rest = line.results
    if isinstance(first, finish.MoreWins):
        said = f"{lead}, {_result(game, first)}"
    else:
        said = f"{lead} the round is over: {_result(game, first)}"
    for order, result in enumerate(rest):
        said += f"; if that is level{' too' if order else ''}, {_result(game, result)}"
    return said


def _result(game: Game, result: finish.Result) -> str:
    match result:
        case finish.MoreWins():
            return f"the side with {result.more} {counted_words(game, result.counted, 2)} wins"
        case finish.Draw():
            return "it is a draw"
        case finish.SideWins():
            return f"{side_words(result.side)} wins"
        case finish.NobodyWins():
            return "nobody wins"
