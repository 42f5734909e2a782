"""Draws what else follows: catches, misses, rings, lines, balls kept too long, counts come true; and who comes back."""

from __future__ import annotations

from tests.interpreter.drawn.records import Draft
from tests.interpreter.drawn.rules import agent_of, condition, scoring


def draw_more(draft: Draft) -> None:
    """Each sort of rule for itself, mostly where something can bring it about."""
    aims = {offer.aim for offer in draft.offers}
    agent = agent_of(draft)
    if aims & {"target", "player", "ring"} and not draft.catcher_unclear and draft.in_one_of(3):
        _caught(draft, agent)
    if draft.in_one_of(5):
        _missed(draft, agent, "mate" in aims)
    if draft.in_one_of(8):
        _left(draft, agent, "mate" in aims)
    if "ring" in aims:
        _through(draft, agent_of(draft, "ring"))
    for line in sorted({offer.kind for offer in draft.offers if offer.aim == "line"}):
        text = scoring(draft, agent_of(draft, "line"))
        who = draft.one_of("", "", f" of {draft.dice.choice(draft.sides)}", " of the other side")
        draft.say("when", f"a ball crosses the {line}{who}: {text}")
    if "mate" in aims and draft.in_one_of(2):
        _passed(draft)
    if draft.in_one_of(8) and len(draft.sides) == 2:
        _held(draft)
    if draft.queue and draft.in_one_of(10):
        text = f"all players change places with all in the {draft.queue}"
        draft.may_stop_playing |= set(draft.sides)
        draft.say("when", f"everyone holds a ball for 5 s: {draft.one_of(text, 'everything starts again')}")
        draft.starts_again = True
    if draft.in_one_of(6):
        _becomes(draft)


def _back(draft: Draft, whose: str) -> list[str]:
    """Who comes back out of a queue: the first, the last or all, out of whose queue is said."""
    queue = draft.queue
    if not queue:
        return []
    named = queue if draft.queue_is_shared else f"{whose} {queue}"
    return [
        f"the first in the {named} returns",
        f"all in the {named} return",
        f"the last in the {named} returns",
        f"the first in the {queue} returns",
    ]


def _caught(draft: Draft, agent: str) -> None:
    draft.caught = True
    skills = {offer.skill for offer in draft.offers}
    what = "a ball"
    if skills <= {"underarm throw", "overarm throw", "kick"}:
        what = draft.one_of("a ball", "a ball", "a throw", "a kick", "a shot")
    choices = ["play goes on", f"the {agent} is out", *_back(draft, "catcher's")]
    if draft.queue:
        choices.append(f"the {agent} waits in the {draft.queue}")
        choices.append(f"all players wait in the {draft.queue}")
        choices.append(f"the {agent} changes places with the first in the {draft.queue}")
    if draft.halved:
        choices.append("the ball goes to the half of the other side")
    if not draft.solo:
        choices.append("the catcher's side scores 1 point")
    text = draft.dice.choice(choices)
    draft.points_wanted |= "scores" in text
    draft.may_score |= set(draft.sides) if "scores" in text else set()
    draft.may_stop_playing |= set(draft.sides) if not text.endswith(("returns", "return", "goes on")) else set()
    guard = f" while {condition(draft, agent)}" if draft.in_one_of(5) else ""
    draft.say("when", f"{what} is caught{guard}: {text}")


def _missed(draft: Draft, agent: str, passed: bool) -> None:
    choices = [f"the {agent} is out"]
    if draft.queue:
        choices += [f"the {agent} waits in the {draft.queue}", *_back(draft, f"{agent}'s")]
        choices.append(f"the {agent} changes places with the first in the {draft.queue}")
    text = draft.dice.choice(choices)
    if draft.in_one_of(2):
        text = scoring(draft, agent, concerned=not passed)
    elif "returns" not in text and "return" not in text:
        draft.may_stop_playing |= set(draft.sides)
    guard = f" while {condition(draft, agent)}" if draft.in_one_of(5) and not passed else ""
    what = draft.dice.choice(["ball", *(sorted(draft.balls) if len(draft.balls) > 1 else [])])
    draft.say("when", f"a {what} is missed{guard}: {text}")


def _left(draft: Draft, agent: str, passed: bool) -> None:
    if draft.halved and draft.in_one_of(2):
        text = draft.one_of("the ball goes to the half it left", "the ball goes to the half it came from")
    else:
        text = scoring(draft, agent, concerned=not passed)
    draft.say("when", f"a ball leaves the court: {text}")


def _through(draft: Draft, agent: str) -> None:
    score = scoring(draft, agent)
    text = draft.dice.choice([score, *_back(draft, f"{agent}'s")])
    side = draft.dice.choice(draft.sides)
    ring = draft.one_of("a gate", "the gate", "any gate", "a ring", f"the gate of {side}", "the gate of the other side")
    draft.say("when", f"a ball goes through {ring}: {text}")
    if draft.in_one_of(4):
        draft.may_win |= set(draft.sides)
        draft.say("when", f"a ball goes through {ring} while {condition(draft, agent)}: the {agent}'s side wins")


def _passed(draft: Draft) -> None:
    on_bench = any(offer.aim == "mate" and offer.kind for offer in draft.offers)
    choices = ["the passer's side scores 1 point"]
    if draft.bench:
        choices.append(f"the passer joins the {draft.bench}")
        draft.may_stop_playing |= set(draft.sides)
    if on_bench and draft.waits_at == draft.bench:
        choices.append("the passer changes places with the catcher")
        draft.may_stop_playing |= set(draft.sides)
    text = draft.dice.choice(choices)
    draft.points_wanted |= "scores" in text
    draft.may_score |= set(draft.sides)
    where = f" on the {draft.bench}" if on_bench and draft.bench and draft.in_one_of(2) else ""
    draft.say("when", f"a pass is caught{where}: {text}")


def _held(draft: Draft) -> None:
    choices = ["the other side scores 1 point"]
    if draft.halved:
        choices += ["the ball goes to the half of the other side"] * 3
    text = draft.dice.choice(choices)
    draft.points_wanted |= "scores" in text
    draft.may_score |= set(draft.sides) if "scores" in text else set()
    draft.say("when", f"a ball is held longer than 10 s: {text}")


def _becomes(draft: Draft) -> None:
    things = draft.targets[0]
    counts = ["no players in", "at most 1 player in"]
    if draft.of_all(things.kind):
        counts = [f"no {things.kinds} standing", f"at most 1 {things.kind} standing", "no players in"]
    effects = ["everything starts again"]
    if not draft.solo:
        effects += ["it scores 1 point", "its side scores 1 point"]
    if len(draft.sides) == 2:
        effects.append("the other side scores 1 point")
    if draft.queue and not draft.solo:
        effects += [f"all in its {draft.queue} return", f"all in the {draft.queue} return"]
    if draft.halved:
        counts.append("no balls in its half")
        effects += ["all balls go to its half"] * (len(draft.balls) == 1)
    who = draft.one_of("a side", "a side", *draft.sides) if not draft.solo else "a side"
    verb = "have" if draft.by_players and who in draft.sides else "has"
    text = draft.dice.choice(effects)
    draft.starts_again |= "starts again" in text
    draft.points_wanted |= "scores" in text
    draft.may_score |= set(draft.sides) if "scores" in text else set()
    if "balls go" in text:
        draft.lies |= {f"half of {side}" for side in draft.sides}
    draft.say("when", f"{who} {verb} {draft.dice.choice(counts)}: {text}")


def draw_returns(draft: Draft) -> None:
    """The teacher, players or time bring back who waits."""
    if not draft.queue or draft.in_one_of(4):
        return
    queue = draft.queue
    choices = [f"the teacher frees the first in {each} {queue}" for each in ("each", "the", "every")]
    choices += [f"the teacher frees all in each {queue}", f"the teacher frees the last in each {queue}"]
    choices.append(f"whoever waits in the {queue} comes back after 30 s")
    if not draft.queue_is_shared:
        side = draft.sides[0]
        choices += [
            f"players free the first in their {queue}",
            f"players of {side} free the first in their {queue}",
            f"the teacher frees the first in the {queue} of {side}",
        ]
        choices = [
            each.replace("players free", "players frees").replace(f"of {side} free ", f"of {side} frees ")
            for each in choices
        ]
    line = draft.dice.choice(choices)
    draft.say("play", line + (", 2 times a minute" if "comes back" not in line and draft.in_one_of(3) else ""))
    if any("stays down" in each for each in draft.lines["when"]) and draft.in_one_of(4):
        draft.say("play", f"the teacher stands up a {draft.targets[0].kind}, 2 times a minute")
