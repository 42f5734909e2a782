"""Draws what follows when things are knocked and players are hit, and writes the lines of when that say it."""

from __future__ import annotations

from tests.interpreter.drawn.records import NOBODY, PLAIN, Crew, Draft, Fate
from tests.interpreter.drawn.tasks import AGENTS

SCORED = "scored"  # what becomes of who is hit where a line tells points alone


def agent_of(draft: Draft, aim: str = "") -> str:
    """What the rules call whoever acts: by the skill of some offer."""
    skills = sorted({offer.skill for offer in draft.offers if aim in ("", offer.aim)}) or ["underarm throw"]
    return AGENTS[skills[0]]


def scoring(draft: Draft, agent: str, concerned: bool = True) -> str:
    """A consequence that gives points; who may get some is noted."""
    number = draft.dice.choice((1, 1, 2))
    points = f"{number} point{'s' if number > 1 else ''}"
    draft.points_wanted = True
    everybody = draft.sides
    choices = [(f"the {agent}'s side scores {points}", everybody)]
    if concerned and len(draft.sides) == 2:
        choices.append((f"the other side scores {points}", everybody))
    if not draft.solo:
        side = draft.dice.choice(draft.sides)
        choices.append((f"{'the ' if draft.by_players else ''}{side} scores {points}", (side,)))
        choices.append((f"each side scores {points}", everybody))
    text, who = draft.dice.choice(choices[:1] * 3 + choices)
    draft.may_score |= set(who)
    return text


def condition(draft: Draft, agent: str) -> str:
    """A claim for "while": of the side concerned, of who acted, of some or of every side."""
    things = draft.targets[0]
    claims = [
        f"the {agent}'s side has at least 1 player in",
        f"the {agent}'s side has at most 1 player in",
        "a side has no players in",
        "each side has at least 1 player in",
    ]
    if len(draft.sides) == 2 and draft.of_all(things.kind):
        claims += [
            f"the other side has at least 1 {things.kind} standing",
            f"that side has no {things.kinds} down",
            f"its side has at most 1 {things.kind} standing",
        ]
    return draft.dice.choice(claims)


def draw_falls(draft: Draft) -> None:
    """For each kind at which somebody aims: what becomes of it, for all owners or for one otherwise."""
    for kind in sorted({offer.kind for offer in draft.offers if offer.aim == "target" and offer.kind != "cloud"}):
        owners = sorted({offer.owner for offer in draft.offers if offer.kind == kind and offer.aim == "target"})
        agent, granted = agent_of(draft, "target"), "up" if kind in draft.fixed else "down"
        if draft.in_one_of(6):
            draft.fates |= {(kind, owner): Fate(granted) for owner in owners}
            continue
        text, fate = _fate(draft, agent, owners)
        word = draft.one_of(f"a {kind}", f"the {kind}", "a target") if len(draft.targets) == 1 else f"a {kind}"
        draft.say("when", f"{word} is knocked: {text}")
        draft.fates |= {(kind, owner): Fate(fate.what or granted) for owner in owners}
        if len(owners) > 1 and draft.in_one_of(3):
            _exception(draft, agent, kind, owners, text)
        elif draft.in_one_of(4):
            draft.guarded.add(kind)
            other, _ = _fate(draft, agent, owners)
            draft.say("when", f"{word} is knocked while {condition(draft, agent)}: {other}")


def _exception(draft: Draft, agent: str, kind: str, owners: list[str], usual: str) -> None:
    """One owner's things fare otherwise: the narrower line settles what it speaks of, the wider the rest."""
    owner = draft.dice.choice([each for each in owners if each != NOBODY] or [""])
    if not owner:
        return
    phrases = [f"a {kind} of {owner}", *([f"{owner}'s {kind}"] if not owner.endswith("s") else [])]
    before = draft.fates[kind, owner]
    text, fate = _fate(draft, agent, owners)
    if text == usual:
        return
    draft.say("when", f"{draft.dice.choice(phrases)} is knocked: {text}")
    draft.fates[kind, owner] = Fate(fate.what or before.what)


def _fate(draft: Draft, agent: str, owners: list[str]) -> tuple[str, Fate]:
    """Text and meaning of what becomes of a thing; "" where the line does not speak of its standing."""
    score = scoring(draft, agent) if draft.in_one_of(2) else ""
    way = draft.dice.randrange(6)
    if way == 0 and NOBODY not in owners and len(draft.sides) == 2:
        return _joined(f"it joins the {agent}'s side", score), Fate("taken")
    if way in (1, 2):
        return _joined(draft.one_of("it stands up again", "it stays as it is"), score), Fate("up")
    if way == 3 and score:
        return score, Fate("")
    return _joined("it stays down", score), Fate("down")


def _joined(first: str, second: str) -> str:
    return f"{first} and {second}" if second else first


def draw_hits(draft: Draft) -> None:
    """What becomes of players who are hit: all alike, or one side or the role otherwise."""
    crews = {Crew(offer.owner, offer.kind) for offer in draft.offers if offer.aim == "player"}
    if not crews or draft.in_one_of(8):
        draft.hit |= dict.fromkeys(crews, "in")
        return
    agent = agent_of(draft, "player")
    text, fate = _hit(draft, agent)
    draft.say("when", f"{draft.one_of('a player', 'the player', 'any player')} is hit: {text}")
    draft.hit |= dict.fromkeys(crews, "in" if fate == SCORED else fate)
    if draft.in_one_of(3) and not draft.solo:
        side = draft.dice.choice(draft.sides)
        who, meant = draft.dice.choice(
            [
                (f"a player of {side}", [each for each in crews if each.side == side]),
                *([("an aide", [each for each in crews if each.role != PLAIN])] if draft.role else []),
            ]
        )
        text, fate = _hit(draft, agent)
        draft.say("when", f"{who} is hit: {text}")
        if fate != SCORED:  # points alone come on top of what becomes of all
            draft.hit |= dict.fromkeys(meant, fate)


def _hit(draft: Draft, agent: str) -> tuple[str, str]:
    """Text and meaning of what becomes of who is hit."""
    who = draft.one_of("that player", "the player")
    choices = [(f"{who} is out", "out"), ("play goes on", "in")]
    if draft.queue:
        queue = draft.queue
        mine = queue if draft.queue_is_shared else draft.one_of(queue, queue)
        choices += [(f"{who} waits in the {mine}", "queue"), (f"{who} goes to the {mine}", "queue")]
        if not draft.queue_is_shared:
            choices += [
                (f"{who} waits in their {queue}", "queue"),
                (f"{who} changes places with the first in the {queue}", "swap"),
            ]
    if draft.role and set(draft.role_sides) == set(draft.sides):
        choices.append((f"{who} becomes an aide", "in"))
    if draft.bench:
        choices.append((f"{who} joins the {draft.bench}", "bench"))
    across = any(offer.aim == "player" and offer.owner != offer.crew.side for offer in draft.offers)
    if len(draft.sides) == 2 and not draft.role and across:
        choices.append((f"{who} joins {draft.one_of('the other side', f'the {agent}' + chr(39) + 's side')}", "side"))
    text, fate = draft.dice.choice(choices)
    if draft.in_one_of(3):
        score = scoring(draft, agent)
        draft.guarded.add("hit")
        text = f"{text} and {score}" if text != "play goes on" else score
        fate = fate if text != score else SCORED
    draft.may_change_sides |= fate == "side"
    return text, fate


def draw_track(draft: Draft) -> None:
    """Things on the track move towards or away from who acts, and go back when they are home."""
    if any(offer.kind == "cloud" for offer in draft.offers):
        agent = agent_of(draft, "target")
        way = draft.one_of("towards", "away from")
        to = draft.one_of(f"the {agent}", f"the {agent}", draft.sides[0])
        draft.say("when", f"a cloud is knocked: it moves 1 step {way} {to}")
        if draft.in_one_of(2):
            draft.points_wanted = True
            draft.may_score |= set(draft.sides)
            scorer = draft.one_of("it scores 1 point", "the other side scores 1 point")
            draft.say("when", f"a side has a cloud at home: {scorer} and the cloud goes to step 1 of the drift track")
