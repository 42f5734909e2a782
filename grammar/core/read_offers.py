"""What players try → offers: one for each population that acts and each ball that it may use."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from grammar.core.guards import ALWAYS, Guard
from grammar.core.play import (
    Aim,
    Along,
    AtPlayers,
    Attempt,
    AtThing,
    Figures,
    Offer,
    Order,
    Past,
    Stray,
    Through,
    ToMate,
)
from grammar.core.read_claims import read_condition, where_players_are
from grammar.core.reader import Reader, exactly, metres
from grammar.core.values import (
    SHARED,
    At,
    KindId,
    Landmark,
    Owner,
    Part,
    Population,
    Presence,
    SideId,
    Skill,
    Sort,
    Spot,
    Thing,
)
from grammar.core.whose import Senseless, Spoken, Whose, whose
from grammar.meanings import MateMeaning, PlayerMeaning
from grammar.sentences import play
from grammar.sentences.base import Np

LINES = (Landmark.BACK_LINE, Landmark.SIDE_LINE, Landmark.MIDDLE_LINE, Landmark.WALL)
CARRYING = (Skill.CARRY, Skill.TOW, Skill.PUSH, Skill.RUN)


def acting(reader: Reader, who: Np) -> tuple[Population, ...]:
    """The populations that a subject means: of every side where it does not say whose."""
    said, role = reader.player_phrase(who)
    found = reader.of_role(Spoken(reader.side_ids).meant(said, reader.all_sides), role)
    if not found:
        raise Senseless(who, f"That side has no {who.name.text}.", "Name players of a side that has them.")
    return found


def with_own_task(reader: Reader, sentences: Iterable[play.Attempt]) -> frozenset[Population]:
    """The populations of a role that a line of the play names: they play that and nothing else."""
    found: set[Population] = set()
    for sentence in sentences:
        try:
            found |= {each for each in acting(reader, sentence.who) if reader.player_phrase(sentence.who)[1]}
        except Senseless:
            continue  # told where the line itself is read
    return frozenset(found)


def spoken_by(reader: Reader, side: SideId) -> Spoken:
    """Who the words of a play line mean while a side acts."""
    own, others = frozenset({side}), reader.others(side)
    return Spoken(reader.side_ids, own=own, that=None, other=others or own, parts={Whose.ACTOR: own})


def read_attempt(busy: frozenset[Population], reader: Reader, sentence: play.Attempt, line: int) -> Iterator[Offer]:
    """All offers of a line."""
    named = reader.player_phrase(sentence.who)[1] is not None
    details = {type(each): each for each in sentence.details}
    if len(details) < len(sentence.details):
        raise Senseless(sentence, "A detail of this line stands twice.", "Keep one of them.")
    if len(set(sentence.skills)) < len(sentence.skills):
        raise Senseless(sentence, "A skill of this line stands twice.", "Keep one of them.")
    found = [
        offer
        for who in acting(reader, sentence.who)
        if named or who not in busy
        for offer in _of(reader, sentence, details, who, line)
    ]
    if not found:
        hint = "Say in another line what these players try, or aim at others."
        raise Senseless(sentence, "Nobody of whom this line speaks has anything to aim at.", hint)
    yield from found


def _of(
    reader: Reader, sentence: play.Attempt, details: dict[type, play.Detail], who: Population, line: int
) -> Iterator[Offer]:
    spoken = spoken_by(reader, who.side)
    skills = tuple(Skill(skill) for skill in sentence.skills)
    balls, load = _with_what(reader, sentence, who, spoken)
    aims = [aim for phrase in sentence.aims for aim in _aims(reader, sentence, phrase, who, spoken, load)]
    if not aims:
        return
    if len(set(aims)) < len(aims):
        raise Senseless(sentence, "This line aims twice at the same.", "Keep one of them.")
    share = details.get(play.PartOf)
    only: Guard = ALWAYS
    if isinstance(asked := details.get(play.OnlyWhen), play.OnlyWhen):
        told = Spoken(reader.side_ids, own=spoken.own, that=spoken.own, other=spoken.other, parts=spoken.parts)
        only = read_condition(reader, asked.condition, told)
    for ball in balls:
        attempts = tuple(Attempt(skill, ball, load, aim) for skill in skills for aim in aims)
        part = Fraction(share.times.whole, share.of.whole) if isinstance(share, play.PartOf) else None
        yield Offer(who, attempts, only, _figures(reader, details, spoken), part, (line,))


def _with_what(
    reader: Reader, sentence: play.Attempt, who: Population, spoken: Spoken
) -> tuple[tuple[KindId | None, ...], frozenset[Thing]]:
    """The kinds of balls, or the load, of an attempt."""
    if sentence.ball is None:
        if any(Skill(skill) is not Skill.RUN for skill in sentence.skills):
            raise Senseless(sentence, "With what do they do it?", "Name a ball or a thing of the kit.")
        return (None,), frozenset()
    if reader.kinds_meant(sentence.ball, Sort.BALL):
        own = next((role.uses for role in reader.roles if (role.side, role.id) == (who.side, who.role)), None)
        balls = reader.balls(sentence.ball)
        return ((own,) if own else balls), frozenset()
    if any(Skill(skill) not in CARRYING for skill in sentence.skills):
        raise Senseless(sentence.ball, f"Nobody can {sentence.skills[0]} that.", "Name a ball of the kit.")
    own_side = frozenset({who.side})
    return (None,), frozenset(reader.thing_phrase(sentence.ball, spoken, own_side, Sort.TARGET, Sort.BODY))


def _aims(
    reader: Reader,
    sentence: play.Attempt,
    aim: play.Aim,
    who: Population,
    spoken: Spoken,
    load: frozenset[Thing],
) -> Iterator[Aim]:
    match aim:
        case play.AimAt() if isinstance(reader.game.meaning(aim.what.name), PlayerMeaning):
            if aim.standing_or_not:
                raise Senseless(aim.what, f"Players are not {aim.standing_or_not}.", "Leave that out.")
            yield from _at_players(reader, aim.what, who, spoken)
        case play.AimAt():
            for thing in _aimed_at(reader, aim.what, who, spoken, Sort.TARGET, Sort.RING, Sort.BODY):
                ring = reader.sort(thing.kind) is Sort.RING
                if ring and aim.standing_or_not:
                    raise Senseless(aim.what, f"A ring is not {aim.standing_or_not}.", "Leave that out.")
                yield Through(thing) if ring else AtThing(thing, _order(aim.standing_or_not))
        case play.AimThrough():
            if not reader.kinds_meant(aim.what, Sort.RING):
                raise Senseless(aim.what, f"Nothing goes through `{aim.what.words()}`.", "Name a ring, or write at.")
            yield from (Through(thing) for thing in _aimed_at(reader, aim.what, who, spoken, Sort.RING))
        case play.AimPast():
            yield from (Past(line) for line in _lines(reader, aim.what, who.side, spoken))
        case play.AimTo():
            yield _to_mate(reader, aim, who, spoken)
        case play.AimBetween():
            yield _along(reader, aim, who.side, spoken, load)


def _order(said: str | None) -> Order:
    return Order(said) if said else Order.ANY_STANDING


def _aimed_at(reader: Reader, phrase: Np, who: Population, spoken: Spoken, *sorts: Sort) -> tuple[Thing, ...]:
    """The things at which a population aims; nobody aims at their own unless the line says so."""
    said = whose(reader.game, phrase)
    found = reader.thing_phrase(phrase, spoken, reader.others(who.side) or frozenset({who.side}), *sorts)
    if said.whose is Whose.NAMED and len(reader.sides) > 1:
        return tuple(thing for thing in found if thing.owner != who.side)
    return found


def _at_players(reader: Reader, phrase: Np, who: Population, spoken: Spoken) -> Iterator[AtPlayers]:
    said, role = reader.player_phrase(phrase)
    alone = len(reader.sides) == 1
    unsaid = reader.all_sides if alone else reader.others(who.side)
    sides = reader.all_sides if alone and said.whose is Whose.NAMED else spoken.meant(said, unsaid)
    for side in reader.side_ids:
        if side not in sides or (side == who.side and said.whose is Whose.NAMED and not alone):
            continue
        of = frozenset(
            each for each in reader.of_role([side], role) if role is not None or not _never_aimed_at(reader, each)
        )
        if of:
            yield AtPlayers(of)


def _never_aimed_at(reader: Reader, who: Population) -> bool:
    return any((role.side, role.id) == (who.side, who.role) and not role.aimed_at for role in reader.roles)


def _lines(reader: Reader, phrase: Np, side: SideId, spoken: Spoken) -> tuple[Spot, ...]:
    of = reader.place(phrase) if not reader.is_kit(phrase) and not _is_player(reader, phrase) else None
    if of not in LINES:
        raise Senseless(phrase, f"`{phrase.words()}` is no line to get past.", "Write: past the back line")
    others = reader.others(side) or frozenset({side})
    if of is Landmark.MIDDLE_LINE:
        return (Spot(Landmark.MIDDLE_LINE, SHARED),)
    return reader.spots(None, phrase, spoken, others)


def _is_player(reader: Reader, phrase: Np) -> bool:
    return isinstance(reader.game.meaning(phrase.name), PlayerMeaning)


def _to_mate(reader: Reader, aim: play.AimTo, who: Population, spoken: Spoken) -> ToMate:
    own = frozenset({who.side})
    meaning = reader.game.meaning(aim.what.name)
    if isinstance(meaning, MateMeaning):
        said, role = whose(reader.game, aim.what), None
    elif isinstance(meaning, PlayerMeaning):
        said, role = reader.player_phrase(aim.what)
    else:
        raise Senseless(aim.what, "A pass goes to a team-mate.", "Write: to a team-mate, with the place behind it.")
    if spoken.meant(said, own) != own:
        raise Senseless(aim.what, "A pass goes to a team-mate, not to the other side.", "Write: to a team-mate")
    of = frozenset(reader.of_role(own, role))
    if not of:
        raise Senseless(aim.what, f"{who.side.key} has no {aim.what.name.text}.", "Write: to a team-mate")
    at: frozenset[Presence | At] = frozenset({Presence.PLAYING})
    if aim.where is not None and not _where_they_play(reader, aim.where, who.side, spoken):
        at = where_players_are(reader, aim.preposition, aim.where, spoken)
    return ToMate(of, at)


def _where_they_play(reader: Reader, where: Np, side: SideId, spoken: Spoken) -> bool:
    """Whether a phrase is about the part of the court where the side plays: there mates are in play."""
    of = reader.place(where)
    if of not in (Landmark.HALF, Landmark.COURT):
        return False
    if of is Landmark.COURT:
        return True
    return reader.spots("in", where, spoken, frozenset({side}), (Part.AT,)) == (Spot(Landmark.HALF, side),)


def _along(reader: Reader, aim: play.AimBetween, side: SideId, spoken: Spoken, load: frozenset[Thing]) -> Along:
    """A way with its two ends. From a place to the like of it there is no end: what was brought can be taken again."""
    own, others = frozenset({side}), reader.others(side) or frozenset({side})
    start = reader.spots(None, aim.start, spoken, own)[0]
    again = reader.place(aim.start) == reader.place(aim.goal)
    unsaid = others if again else own
    goal = reader.spots(None, aim.goal, spoken, unsaid)[0]
    if start == goal and start.of is not Landmark.WALL:
        raise Senseless(aim.goal, "They would stay where they are.", "Name another place to go to.")
    return Along(start, goal, again)


def _figures(reader: Reader, details: dict[type, play.Detail], spoken: Spoken) -> Figures:
    chance, caught = details.get(play.SucceedChance), details.get(play.CaughtChance)
    pace, away, stray = details.get(play.Pace), details.get(play.FromWhere), details.get(play.Stray)
    return Figures(
        Fraction(chance.times.whole, chance.of.whole) if isinstance(chance, play.SucceedChance) else None,
        Fraction(caught.times.whole, caught.of.whole) if isinstance(caught, play.CaughtChance) else None,
        exactly(pace.times) if isinstance(pace, play.Pace) else None,
        metres(away.distance) if isinstance(away, play.FromWhere) else None,
        _stray(reader, stray, spoken) if isinstance(stray, play.Stray) else None,
    )


def _stray(reader: Reader, stray: play.Stray, spoken: Spoken) -> Stray:
    assert spoken.other is not None
    things = reader.thing_phrase(stray.what, spoken, spoken.other, Sort.TARGET)
    return Stray(Fraction(stray.times.whole, stray.of.whole), frozenset(things))


def carried_kinds(offers: Iterable[Offer]) -> frozenset[KindId]:
    """The kinds of loads that are brought somewhere for good."""
    return frozenset(
        thing.kind
        for offer in offers
        for attempt in offer.attempts
        if isinstance(attempt.aim, Along) and not attempt.aim.again
        for thing in attempt.load
    )


def against(aim: Aim, by: Population) -> Owner:
    """Whose things or players are aimed at; a pass and a way concern one's own side."""
    match aim:
        case AtThing() | Through():
            return aim.thing.owner
        case AtPlayers():
            return next(iter(aim.of)).side
        case Past():
            return aim.line.owner
        case ToMate() | Along():
            return by.side


def pairs_of(offers: Iterable[Offer]) -> tuple[tuple[SideId, Owner], ...]:
    """The sides that act, each with everybody whose things or players it aims at, or hits by chance."""
    found: dict[tuple[SideId, Owner], None] = {}
    for offer in offers:
        for attempt in offer.attempts:
            found[offer.by.side, against(attempt.aim, offer.by)] = None
        for thing in offer.figures.stray.at if offer.figures.stray else ():
            found[offer.by.side, thing.owner] = None
    return tuple(found)
