"""Rules only for what somebody does: "a player is touched by a gull", "a cone is knocked by its own side"."""

from __future__ import annotations

from grammar.core.reading.events.events import Moment
from grammar.core.reading.sheet.naming import names_in
from grammar.core.reading.sheet.pairs import among_mates
from grammar.core.reading.sheet.reader import Reader, with_which
from grammar.core.reading.sheet.whose import Claimed, Senseless, Spoken, Whose, is_keeper, whose_side
from grammar.core.rules import ON_A_PLAYER, Happening, Result
from grammar.core.values import RoleId, SideId
from grammar.frozen import evolve
from grammar.meanings import CategoryMeaning, KitMeaning, MateMeaning
from grammar.said import quoting, write
from grammar.sentences import blocking, events, when
from grammar.sentences.ball import Intercepted
from grammar.sentences.base import Np
from grammar.sentences.determiners import ALL
from grammar.sentences.when import Doer, OwnSide

BY_A_BALL = (Result.KNOCKED, Result.HIT, Result.HIGH)
OF_SOMEBODY = (Result.KNOCKED, Result.THROUGH, *ON_A_PLAYER)


def event_of(reader: Reader, sentence: when.When) -> events.Event:
    """The event that a line speaks of: a pass that is caught by others is intercepted."""
    event, doer = sentence.event, sentence.doer
    if not isinstance(event, events.Caught) or doer is None or not among_mates(reader, event):
        return event
    if _is_mate(reader, doer):
        return event
    _of_one_side(reader, doer)
    if event.where is not None:
        title = quoting("Who catches a pass there is a team-mate: not by {doer}.", doer=doer.words())
        raise Senseless(doer, title, "Leave out by whom, or leave out where.")
    return Intercepted(event.what, "is", span=event.span)


def done_by(reader: Reader, doer: Doer, moment: Moment) -> Moment | None:
    """The moment narrowed to those who do it, or catch it; None where these have no part in it. Raises Senseless."""
    trigger = moment.trigger
    if not isinstance(trigger, Happening):
        raise Senseless(doer, "`by {doer}`: nobody does this.", "Leave that out.", doer=doer.words())
    if isinstance(doer, Np) and doer.determiner in ALL:
        hint = write(f"by a {doer.name.text}")
        raise Senseless(doer, "`by {doer}`: one of them does it at a time.", hint, doer=doer.words())
    if isinstance(doer, Np) and isinstance(reader.game.meaning(doer.name), KitMeaning | CategoryMeaning):
        return _by_a_ball(reader, doer, moment, trigger)
    if trigger.result is Result.PASSED:
        return moment  # a team-mate catches it: who else is said is intercepted
    if trigger.result is Result.BLOCKED:
        return _blocked(reader, doer, moment)
    said, role = _said(reader, doer)
    side = moment.concerned if trigger.result is Result.CAUGHT else moment.actor
    sides = _sides(reader, doer, said, moment, trigger) & {side}
    who = frozenset(reader.of_role(sides, role))
    named = trigger.named + (said.whose is not Whose.UNSAID) + (role is not None)
    if trigger.result is Result.CAUGHT:
        caught = evolve(trigger, to=who if role is not None else frozenset(), named=named)
        return evolve(moment, trigger=caught, spoken=_of_the_keeper(reader, doer, moment, side)) if who else None
    by = trigger.by & who
    spoken = _of_the_keeper(reader, doer, moment, side)
    return evolve(moment, trigger=evolve(trigger, by=by, named=named), spoken=spoken) if by else None


def _of_the_keeper(reader: Reader, doer: Doer, moment: Moment, side: SideId | None) -> Spoken:
    """What is done by a keeper of the sheet: that one is "the keeper" then, not who guards what it is done to."""
    if side is None or not isinstance(doer, Np) or not is_keeper(reader.game.meaning(doer.name)):
        return moment.spoken
    return evolve(moment.spoken, parts={**moment.spoken.parts, Whose.KEEPER: frozenset({side})})


def _of_one_side(reader: Reader, doer: Doer) -> None:
    """Raises Senseless where each side has such players: a pass may come to one's own or to the others'."""
    said, role = _said(reader, doer)
    of = {who.side for who in reader.of_role(reader.side_ids, role)}
    if said.whose is Whose.UNSAID and role is not None and len(of) > 1:
        hint = write(f"a pass is intercepted by a {role.key}. Of one's own say where: a pass is caught on the bench")
        raise Senseless(
            doer, quoting("`by {doer}`: one of their own, or one of the other side?", doer=doer.words()), hint
        )


def _is_mate(reader: Reader, doer: Doer) -> bool:
    return isinstance(doer, Np) and isinstance(reader.game.meaning(doer.name), MateMeaning)


def _said(reader: Reader, doer: Doer) -> tuple[Claimed, RoleId | None]:
    """Whose players are meant, and in which role. A team-mate of whose it is, its own side: one's own."""
    if isinstance(doer, OwnSide) or _is_mate(reader, doer):
        return Claimed(Whose.OWN, doer), None
    return reader.player_phrase(doer) if isinstance(doer, Np) else (whose_side(reader.game, doer), None)


def _sides(reader: Reader, doer: Doer, said: Claimed, moment: Moment, trigger: Happening) -> frozenset[SideId]:
    """The sides of whom somebody may have done it: "the other side" is against the one to whom it happens; a ball is
    caught by one against whoever sent it."""
    owner = next((each for each in trigger.against if isinstance(each, SideId)), None)
    caught = trigger.result is Result.CAUGHT
    if said.whose in (Whose.UNSAID, Whose.NAMED):
        return moment.spoken.meant(said, reader.all_sides)
    if said.whose in (Whose.OWN, Whose.THAT) and trigger.result in OF_SOMEBODY and len(reader.sides) > 1:
        return frozenset({owner} if owner is not None else ())
    if said.whose is Whose.OTHER and (caught or trigger.result in OF_SOMEBODY) and len(reader.sides) > 1:
        against = moment.actor if caught else owner
        return reader.all_sides if against is None else reader.others(against)
    by_a_mate = caught and said.whose in (Whose.OWN, Whose.THAT)
    if said.whose in (Whose.OWN, Whose.THAT) and trigger.result in OF_SOMEBODY:
        title = "`by {doer}`: where each plays for themselves nobody aims at what is their own."
        own = "Accidents are not reckoned with: leave the line out, or put it in quotes under `care`, for people."
        raise Senseless(doer, title, own, doer=doer.words())
    hint = write("a pass is caught") if by_a_mate else "Leave that out, or name a role."
    raise Senseless(doer, "`by {doer}`: that says nothing of who did it.", hint, doer=doer.words())


def _by_a_ball(reader: Reader, doer: Np, moment: Moment, trigger: Happening) -> Moment:
    if trigger.result not in BY_A_BALL:
        hint = "Name the ball before, such as: a ball is caught"
        raise Senseless(doer, "`by {doer}`: no ball does this.", hint, doer=doer.words())
    skills, balls = with_which(reader, doer)
    named = trigger.named + names_in(reader, doer)
    return evolve(moment, trigger=evolve(trigger, skills=trigger.skills & skills, balls=balls, named=named))


def _blocked(reader: Reader, doer: Doer, moment: Moment) -> Moment:
    """Who blocks is said in play: that it is they says no more."""
    said = [_said(reader, each.who) for each in reader.game.all_of("play", blocking.Blocks)]
    meant = _said(reader, doer)
    if any(role != meant[1] for _, role in said) or meant[0].whose is not Whose.UNSAID:
        raise Senseless(
            doer, "`by {doer}`: whoever blocks, it is a block.", write("a ball is blocked"), doer=doer.words()
        )
    return moment
