"""What players try → offers: one for each population that acts and each ball that it may use."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sized
from fractions import Fraction

from grammar.core.guards import ALWAYS, Guard, every
from grammar.core.play import Attempt, Figures, Offer, Stray
from grammar.core.reading.phrases.aims import against, aims_of, goes_on_with_it, spoken_by
from grammar.core.reading.phrases.claims import read_condition
from grammar.core.reading.phrases.clock import within_span
from grammar.core.reading.phrases.rows import after_row
from grammar.core.reading.sheet.reader import Reader, exactly, metres
from grammar.core.reading.sheet.whose import Senseless, Spoken
from grammar.core.values import KindId, Laden, Owner, Part, Population, SideId, Skill, Sort, Spot, Thing
from grammar.said import Value, quoting, write
from grammar.sentences import attempting, play, runs
from grammar.sentences.base import Np, Quantity

Details = dict[type, attempting.Detail]
Trying = attempting.Attempt | play.Touch | play.Take
CARRYING = (Skill.CARRY, Skill.TOW, Skill.PUSH, Skill.RUN)


def acting(reader: Reader, who: Np) -> tuple[Population, ...]:
    """The populations that a subject means: of every side where it does not say whose."""
    said, role = reader.player_phrase(who)
    meant = reader.of_role(Spoken(reader.side_ids).meant(said, reader.all_sides), role)
    found = tuple(each for each in meant if not isinstance(each.role, Laden))  # their hands are full
    if not found:
        raise Senseless(who, "That side has no {name}.", "Name players of a side that has them.", name=who.name.text)
    return found


def with_own_task(reader: Reader, sentences: Iterable[Trying | play.Idle]) -> frozenset[Population]:
    """The populations of a role that a line of the play names: they play that and nothing else."""
    found: set[Population] = set()
    for sentence in sentences:
        if isinstance(sentence, attempting.Attempt) and sentence.where is not None:
            continue  # what they may do while they wait is no task in play
        try:
            found |= {each for each in acting(reader, sentence.who) if reader.player_phrase(sentence.who)[1]}
        except Senseless:
            continue  # told where the line itself is read
    return frozenset(found)


def read_attempt(
    busy: frozenset[Population], reader: Reader, sentence: attempting.Attempt, line: int
) -> Iterator[Offer]:
    """All offers of a line."""
    named = reader.player_phrase(sentence.who)[1] is not None
    details = details_of(sentence)
    if len(set(sentence.skills)) < len(sentence.skills):
        raise Senseless(sentence, "A skill of this line stands twice.", "Keep one of them.")
    _goes_or_sends(sentence)
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


def details_of(sentence: Trying) -> Details:
    """What a line says besides, each once."""
    details: Details = {type(each): each for each in sentence.details}
    if len(details) < len(sentence.details):
        raise Senseless(sentence, "A detail of this line stands twice.", "Keep one of them.")
    one_by_one = details.get(attempting.AtATime)
    if one_by_one is not None and isinstance(sentence, play.Touch):
        title = "Of those who touch it is not counted how many do so at a time."
        raise Senseless(one_by_one, title, "Leave it out, or give one of them a role of their own.")
    return details


def is_some(number: Quantity) -> bool:
    """Whether a number is a whole one from 1."""
    return bool(number.value == number.whole and number.whole >= 1)


def so_many_at_a_time(sentence: attempting.Attempt, details: Details, balls: Sized) -> int:
    """How many of a side try it while the others wait for their turn; 0: all. Raises Senseless."""
    said = details.get(attempting.AtATime)
    if not isinstance(said, attempting.AtATime):
        return 0
    on_the_way = sentence.ball is not None and any(
        isinstance(aim, attempting.AimBetween) or goes_on_with_it(sentence, aim) for aim in sentence.aims
    )
    if not is_some(said.number) or on_the_way or sentence.where is not None or len(balls) > 1:
        if on_the_way:
            title = "`{said}`: of those who carry, tow or push it is not counted how many are on the way."
            raise Senseless(said, title, "Leave that out of this line, and keep it as a rule of its own in quotes.")
        title = "`{said}` is read of some at a time, in play, with one kind of ball."
        raise Senseless(said, title, write("players roll a ball at the pins, only 1 player at a time"))
    return said.number.whole


def _goes_or_sends(sentence: attempting.Attempt) -> None:
    """To carry, tow or run is from place to place; to throw, roll, kick, strike or pass is at something."""
    for skill in sentence.skills:
        for aim in sentence.aims:
            on_the_way = isinstance(aim, attempting.AimBetween) or goes_on_with_it(sentence, aim)
            if Skill(skill) is not Skill.PUSH and (Skill(skill) in CARRYING) != on_the_way:
                title = (
                    "To {skill} does not go from place to place."
                    if on_the_way
                    else "To {skill} goes from place to place."
                )
                hint: Value = "Take another skill, or say at what they aim."
                if Skill(skill) is Skill.RUN and sentence.ball is not None and isinstance(aim, attempting.AimTo):
                    hint = write(f"carry {sentence.ball.words()} {aim.words()}")
                raise Senseless(aim, quoting(title, skill=skill), hint)


def _of(reader: Reader, sentence: attempting.Attempt, details: Details, who: Population, line: int) -> Iterator[Offer]:
    spoken = spoken_by(reader, who.side)
    skills = tuple(Skill(skill) for skill in sentence.skills)
    balls, load = _with_what(reader, sentence, who, spoken)
    aims = [aim for phrase in sentence.aims for aim in aims_of(reader, sentence, phrase, who, spoken, load)]
    if not aims:
        return
    if len(set(aims)) < len(aims):
        raise Senseless(sentence, "This line aims twice at the same.", "Keep one of them.")
    share = details.get(attempting.PartOf)
    only = only_of(reader, details, spoken)
    at = _waiting_at(reader, sentence, spoken)
    for ball in balls:
        attempts = tuple(Attempt(skill, ball, load, aim) for skill in skills for aim in aims)
        part = Fraction(share.times.whole, share.of.whole) if isinstance(share, attempting.PartOf) else None
        at_once = so_many_at_a_time(sentence, details, balls)
        yield Offer(who, attempts, only, figures_of(reader, details, spoken), part, (line,), at, at_once)


def _waiting_at(reader: Reader, sentence: attempting.Attempt, spoken: Spoken) -> frozenset[Spot]:
    """Where those of a line wait who act from outside; any place of that name where it does not say whose."""
    if sentence.where is None:
        return frozenset()
    spots = reader.spots(sentence.preposition, sentence.where, spoken, reader.all_sides, (Part.AT,))
    if not all(reader.waits_in(spot) for spot in spots):
        title = "`{said}` is part of the floor on which all play."
        raise Senseless(sentence.where, title, "Leave it out, or name an area of the sheet in which players wait.")
    if sentence.ball is None or not reader.kinds_meant(sentence.ball, Sort.BALL):
        raise Senseless(sentence, "Whoever waits goes nowhere.", "Name a ball, or leave out where they wait.")
    return frozenset(spots)


def _only_carried(reader: Reader, sentence: attempting.Attempt, what: Np) -> Senseless:
    """What is no ball is sent at nobody; a big body may still be pushed or carried to a place."""
    hint: Value = "Name a ball of the kit."
    if reader.kinds_meant(what, Sort.BODY):
        hint = quoting(
            "It is no ball to send: it is pushed or carried to a place and hits nobody. "
            "Write: push {what} from wall to wall. Or name a ball of the kit.",
            what=what.words(),
        )
    return Senseless(what, "Nobody can {skills} `{what}`.", hint, skills=sentence.skills[0], what=what.words())


def _with_what(
    reader: Reader, sentence: attempting.Attempt, who: Population, spoken: Spoken
) -> tuple[tuple[KindId | None, ...], frozenset[Thing]]:
    """The kinds of balls, or the load, of an attempt."""
    if sentence.ball is None:
        if any(Skill(skill) is not Skill.RUN for skill in sentence.skills):
            raise Senseless(sentence, "The line does not say with what.", "Name a ball or a thing of the kit.")
        return (None,), frozenset()
    if reader.kinds_meant(sentence.ball, Sort.BALL):
        own = next((role.uses for role in reader.roles if (role.side, role.id) == (who.side, who.role)), None)
        balls = reader.balls(sentence.ball)
        return ((own,) if own else balls), frozenset()
    if any(Skill(skill) not in CARRYING for skill in sentence.skills):
        raise _only_carried(reader, sentence, sentence.ball)
    own_side = frozenset({who.side})
    return (None,), frozenset(reader.thing_phrase(sentence.ball, spoken, own_side, Sort.TARGET, Sort.BODY))


def only_of(reader: Reader, details: Details, spoken: Spoken) -> Guard:
    """When alone it may be tried; "it" and "a side" are those who act."""
    asked, span = details.get(attempting.OnlyWhen), details.get(attempting.OnlyIn)
    only: Guard = ALWAYS
    if isinstance(asked, attempting.OnlyWhen):
        told = Spoken(reader.side_ids, own=spoken.own, that=spoken.own, other=spoken.other, parts=spoken.parts)
        only = read_condition(reader, asked.condition, told)
    row = details.get(runs.OnlyAfterRow)
    if isinstance(row, runs.OnlyAfterRow):
        assert spoken.own is not None
        only = every([only, after_row(reader, row, next(iter(spoken.own)))])
    return within_span(reader, span.span_of_time if isinstance(span, attempting.OnlyIn) else None, only)


def figures_of(reader: Reader, details: Details, spoken: Spoken) -> Figures:
    """The figures of a line."""
    chance, caught = details.get(attempting.SucceedChance), details.get(attempting.CaughtChance)
    bounced = details.get(attempting.BounceShare)
    pace, away, stray = details.get(attempting.Pace), details.get(attempting.FromWhere), details.get(attempting.Stray)
    return Figures(
        Fraction(chance.times.whole, chance.of.whole) if isinstance(chance, attempting.SucceedChance) else None,
        Fraction(caught.times.whole, caught.of.whole) if isinstance(caught, attempting.CaughtChance) else None,
        exactly(pace.times) if isinstance(pace, attempting.Pace) else None,
        metres(away.distance) if isinstance(away, attempting.FromWhere) else None,
        _stray(reader, stray, spoken) if isinstance(stray, attempting.Stray) else None,
        Fraction(bounced.times.whole, bounced.of.whole) if isinstance(bounced, attempting.BounceShare) else None,
    )


def _stray(reader: Reader, stray: attempting.Stray, spoken: Spoken) -> Stray:
    assert spoken.other is not None
    things = reader.thing_phrase(stray.what, spoken, spoken.other, Sort.TARGET)
    return Stray(Fraction(stray.times.whole, stray.of.whole), frozenset(things))


def pairs_of(offers: Iterable[Offer]) -> tuple[tuple[SideId, Owner], ...]:
    """The sides that act, each with everybody whose things or players it aims at, or hits by chance."""
    found: dict[tuple[SideId, Owner], None] = {}
    for offer in offers:
        for attempt in offer.attempts:
            found |= dict.fromkeys((offer.by.side, owner) for owner in against(attempt.aim, offer.by))
        for thing in offer.figures.stray.at if offer.figures.stray else ():
            found[offer.by.side, thing.owner] = None
    return tuple(found)
