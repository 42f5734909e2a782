"""Draws what players try, and writes the lines of play that say it."""

from __future__ import annotations

from tests.interpreter.drawn.records import NOBODY, PLAIN, Crew, Draft, Offer
from tests.interpreter.drawn.whom import Whose, actors, crews_of, helpers, mostly, owned

THROWS = ("underarm throw", "overarm throw", "kick", "roll", "strike")
AGENTS = {
    "underarm throw": "thrower",
    "overarm throw": "thrower",
    "kick": "kicker",
    "roll": "roller",
    "strike": "striker",
    "tow": "carrier",
    "push": "pusher",
    "pass": "passer",
    "carry": "carrier",
    "run": "runner",
}


def draw_tasks(draft: Draft) -> None:
    """One to three lines of play, for all sides or for one; and one for the role where it has a task of its own."""
    if draft.halved:
        draft.say("play", draft.one_of("players stay in their half", "players of each side stay in their half"))
    elif draft.in_one_of(2):
        draft.say("play", "players stay on the court")
    one_by_one = len(draft.sides) == 2 and draft.in_one_of(4)
    for acting in [(side,) for side in draft.sides] if one_by_one else [draft.sides]:
        phrase = draft.dice.choice(actors(draft)[acting])
        _line(draft, phrase, crews_of(draft, acting), acting, draft.dice.randrange(10))
    if draft.in_one_of(3):
        acting = draft.dice.choice(sorted(actors(draft)))
        phrase = draft.dice.choice(actors(draft)[acting])
        _line(draft, phrase, crews_of(draft, acting), acting, draft.dice.randrange(10))
    if draft.role and draft.role_has_own_task:
        acting = draft.role_sides
        phrase = draft.dice.choice(helpers(draft)[acting])
        _line(draft, phrase, [Crew(side, draft.role) for side in acting], acting, draft.dice.randrange(8))
    if not draft.solo and draft.in_one_of(8):
        _ways(draft)
    for line in (
        "a ball is held at most 10 s",
        "attempts succeed 70 % as often",
        f"at most 1 player may guard each {draft.targets[0].kind}",
    ):
        if draft.in_one_of(4):
            draft.say("play", line)


def skill_of(draft: Draft) -> str:
    return draft.dice.choice(THROWS)


def _ball(draft: Draft, crews: list[Crew]) -> tuple[str, dict[Crew, tuple[str, ...]]]:
    """A phrase for a ball, with the kinds that each crew uses: the role its own, whatever the line says."""
    kind = draft.dice.choice(sorted(draft.balls))
    if len(draft.balls) == 1 or draft.in_one_of(2):
        phrase, kinds = draft.one_of("a ball", "any ball", "the balls"), tuple(draft.balls)
    else:
        phrase, kinds = draft.one_of(f"a {kind}", f"the {kind}", f"any {kind}"), (kind,)
    own = draft.role_ball
    return phrase, {crew: ((own,) if own and crew.role != PLAIN else kinds) for crew in crews}


def _line(draft: Draft, who: str, crews: list[Crew], acting: tuple[str, ...], way: int) -> None:
    if way == 9 and len(draft.sides) == 2 and draft.players > 1:
        _pass(draft, who, crews)
    elif way == 8 and draft.ring is not None:
        _at(draft, who, crews, acting, "ring")
    elif way == 7 and not draft.solo:
        _past(draft, who, crews, acting)
    elif way == 6 and draft.track:
        _track(draft, who, crews)
    elif way in (3, 4, 5):
        _at(draft, who, crews, acting, "both" if way == 5 else "player")
    else:
        _at(draft, who, crews, acting, "target")


def _at(draft: Draft, who: str, crews: list[Crew], acting: tuple[str, ...], what: str) -> None:
    skill = skill_of(draft)
    ball, kinds = _ball(draft, crews)
    aims: list[str] = []
    if what == "ring":
        meant, phrase = mostly(draft, owned(draft, acting, draft.sides, "gates"), _others(draft, acting, False))
        _offer(draft, crews, skill, kinds, "ring", "gate", meant)
        aims.append(f"through {phrase}")
    if what in ("target", "both"):
        aims.append(f"at {_things(draft, crews, acting, skill, kinds)}")
    if what in ("player", "both"):
        phrase = _players(draft, crews, acting, skill, kinds)
        aims.append(phrase if aims else f"at {phrase}")
    details = draft.one_of(
        "", "", ", 1 in 2 succeed", ", 6 times a minute", ", from 5 m away", ", 1 in 4 of the attempts"
    )
    if what == "player" and not draft.solo and draft.in_one_of(6):
        details += _stray(draft, crews, acting, skill, kinds)
    elif what == "target" and not draft.solo and draft.in_one_of(5):
        details += _only(draft)
    draft.say("play", f"{who} {skill} {ball} {' or '.join(aims)}{details}")


def _stray(
    draft: Draft, crews: list[Crew], acting: tuple[str, ...], skill: str, kinds: dict[Crew, tuple[str, ...]]
) -> str:
    things = draft.dice.choice(draft.targets)
    if NOBODY in things.owners or not draft.of_all(things.kind):
        return ""
    meant = tuple((side, draft.others(side)) for side in acting)
    before = set(draft.offers)
    _offer(draft, crews, skill, kinds, "target", things.kind, meant)
    draft.later |= draft.offers - before
    return f", 1 in 3 of the misses hit the {things.kinds} of the other side"


def _only(draft: Draft) -> str:
    """A condition that holds at the start."""
    side = draft.dice.choice(draft.sides)
    verb = "have" if draft.by_players else "has"
    claims = [
        "it has at least 1 player in",
        "the other side has at least 1 player in",
        f"{side} {verb} at least 1 player in",
    ]
    return f", only when {draft.dice.choice(claims)}"


def _others(draft: Draft, acting: tuple[str, ...], shared: bool) -> dict[str, tuple[str, ...]]:
    return {side: (NOBODY,) if shared else draft.others(side) for side in acting}


def _things(
    draft: Draft, crews: list[Crew], acting: tuple[str, ...], skill: str, kinds: dict[Crew, tuple[str, ...]]
) -> str:
    things = draft.dice.choice(draft.targets)
    owners = tuple(owner for each in draft.targets if each.kind == things.kind for owner in each.owners)
    bank = owned(draft, acting, owners, things.kinds)
    if not bank:
        acting_now = {crew.side for crew in crews}
        owners = tuple(owner for owner in owners if owner not in acting_now) or owners
        bank = owned(draft, acting, owners, things.kinds)
    usual = {side: tuple(o for o in (*draft.others(side), NOBODY) if o in owners) for side in acting}
    meant, phrase = mostly(draft, bank, usual)
    _offer(draft, crews, skill, kinds, "target", things.kind, meant)
    order = draft.one_of("", "", "", " standing or not", " in order") if things.number > 1 else ""
    return phrase + order


def _players(
    draft: Draft, crews: list[Crew], acting: tuple[str, ...], skill: str, kinds: dict[Crew, tuple[str, ...]]
) -> str:
    """The players of some sides, or those with the role; who is spared is aimed at only by name."""
    named = bool(draft.role) and draft.in_one_of(5)
    if draft.solo:
        meant: Whose = ((draft.sides[0], draft.sides),)
        phrase = draft.one_of("the other settlers", "the settlers", "the other players")
    else:
        sides = draft.role_sides if named else draft.sides
        bank = owned(draft, acting, sides, "aides" if named else "players")
        if named and len(sides) == 1:
            bank = {key: [each for each in phrases if each in ("aides", "the aides")] for key, phrases in bank.items()}
            bank = {key: phrases for key, phrases in bank.items() if phrases}
        if not bank:
            return _players(draft, crews, acting, skill, kinds)
        meant, phrase = mostly(draft, bank, _others(draft, acting, False))
    for role in (PLAIN, draft.role) if draft.role else (PLAIN,):
        if (role == draft.role and role and named) or (not named and not (role and draft.role_is_spared)):
            _offer(draft, crews, skill, kinds, "player", role, meant)
    return phrase


def _offer(
    draft: Draft, crews: list[Crew], skill: str, kinds: dict[Crew, tuple[str, ...]], aim: str, kind: str, whose: Whose
) -> None:
    for crew in crews:
        for ball in kinds.get(crew, ("",)):
            for owner in dict(whose).get(crew.side, ()):
                if aim != "player" or kind == PLAIN or owner in draft.role_sides:
                    draft.offers.add(Offer(crew, skill, ball, aim, kind, owner))


def _past(draft: Draft, who: str, crews: list[Crew], acting: tuple[str, ...]) -> None:
    ball, kinds = _ball(draft, crews)
    line = draft.one_of("back line", "back line", "side line")
    skill = draft.one_of("roll", "kick")
    bank = owned(draft, acting, draft.sides, line)
    bank = {key: [each for each in phrases if each != line] for key, phrases in bank.items()}
    meant, phrase = mostly(draft, {key: each for key, each in bank.items() if each}, _others(draft, acting, False))
    _offer(draft, crews, skill, kinds, "line", line, meant)
    draft.say("play", f"{who} {skill} {ball} past {phrase}")


def _track(draft: Draft, who: str, crews: list[Crew]) -> None:
    skill = skill_of(draft)
    ball, kinds = _ball(draft, crews)
    whose = tuple((side, (NOBODY,)) for side in draft.sides)
    _offer(draft, crews, skill, kinds, "target", "cloud", whose)
    draft.say("play", f"{who} {skill} {ball} at {draft.one_of('the clouds', 'clouds', 'any cloud')}")


def _ways(draft: Draft) -> None:
    """Somebody runs, or carries a log of the own side, from place to place."""
    acting = draft.dice.choice(sorted(actors(draft)))
    crews = crews_of(draft, acting)
    who = draft.dice.choice(actors(draft)[acting])
    skill = draft.one_of("run", "carry", "tow")
    way = draft.one_of("from wall to wall", "from their back line to the middle", "from the back line to the middle")
    if skill == "run":
        goal = ("wall", True) if "wall" in way else ("middle", False)
        draft.offers |= {Offer(crew, skill, "", "way", goal[0], crew.side if goal[1] else NOBODY) for crew in crews}
        draft.say("play", f"{who} run {way}")
    else:
        draft.logs = True
        draft.say("kit", f"1 log for {draft.one_of('each side', 'every side')}, like a cone")
        draft.say("set-up", "logs on the back line of their side")
        draft.offers |= {Offer(crew, skill, "", "way", "log", crew.side) for crew in crews}
        draft.say("play", f"{who} {skill} a log {way}")
    if draft.in_one_of(2):
        draft.may_score |= set(draft.sides)
        draft.say("when", f"{draft.one_of('a player arrives', 'a carrier arrives')}: the carrier's side scores 1 point")


def _pass(draft: Draft, who: str, crews: list[Crew]) -> None:
    """To a mate in play, or to one on the bench, which somebody is then put on."""
    ball, kinds = _ball(draft, crews)
    whose = tuple((side, (side,)) for side in draft.sides)
    mate = draft.one_of("a team-mate", "any team-mate")
    if draft.bench and draft.in_one_of(2):
        _offer(draft, crews, "pass", kinds, "mate", draft.bench, whose)
        place = draft.one_of(f"on the {draft.bench}", f"on their {draft.bench}")
        draft.say("play", f"{who} pass {ball} to {mate} {place}")
    else:
        _offer(draft, crews, "pass", kinds, "mate", "", whose)
        draft.say("play", f"{who} pass {ball} to {mate}")
