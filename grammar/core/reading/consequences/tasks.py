"""Who takes another task, or becomes a player of another side; whose side a task is named for."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from grammar.core.reading.consequences.movers import Mover, movers
from grammar.core.reading.events.events import Moment
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Whose, is_keeper, none_of
from grammar.core.rules import Becoming, Go, Happening, Result
from grammar.core.values import PLAIN, Plain, Presence, RoleId, SideId
from grammar.meanings import PlayerMeaning
from grammar.said import Value, quoting, write
from grammar.sentences import then
from grammar.sentences.base import Np, SideNamed


def with_a_task(reader: Reader, consequence: then.TurnsInto, moment: Moment) -> Iterator[Go]:
    """Everybody of whom a line says what they become. Raises Senseless."""
    for mover in movers(reader, consequence.who, moment):
        side = _another_side(reader, consequence.role, mover)
        task = Becoming(side=side) if side else Becoming(role=_role(reader, consequence.role, mover, moment))
        yield Go(mover.who, Presence.PLAYING, task)


def _another_side(reader: Reader, phrase: Np, mover: Mover) -> SideId | None:
    """The side that somebody joins who becomes one of its players: "that player becomes a pirate"."""
    meaning = reader.game.meaning(phrase.name)
    named = isinstance(meaning, PlayerMeaning) and meaning.role is None and phrase.determiner in ("a", "an")
    said = reader.player_phrase(phrase)[0] if named else None
    return said.side if said is not None and said.side != mover.side else None


def _role(reader: Reader, phrase: Np, mover: Mover, moment: Moment) -> RoleId | Plain:
    """The role of a phrase, of one's own side; "a player", or "a settler" of settlers, is one without a role. Raises
    Senseless."""
    said, role = reader.player_phrase(phrase)
    own_side = said.whose is Whose.UNSAID or (said.side is not None and said.side == mover.side)
    if role is None and own_side and phrase.determiner in ("a", "an", None):
        return PLAIN
    if role is None or mover.side is None:
        hint: Value = "Name a role that `sides` declares."
        if role is None and said.side is not None:
            hint = quoting("Who changes sides joins them, such as: that player joins {side}", side=said.side.key)
        raise Senseless(phrase, "`{said}` is no role.", hint)
    if said.side not in (None, mover.side) or not reader.of_role([mover.side], role):
        raise none_of(phrase, phrase.name.text, mover.side, "Name a role of that side.")
    own = frozenset({mover.side})
    spoken = evolve(moment.spoken, own=own, that=own, other=reader.others(mover.side) or None)
    if spoken.meant(said, own) != own:
        title = "`{said}`: who takes another task stays with their own side."
        raise Senseless(phrase, title, "Who changes sides joins them, such as: that player joins the other side")
    return role


def task_named(reader: Reader, phrase: SideNamed) -> RoleId | None:
    """The role of a phrase that stands for a side: "the fox scores 1 point"."""
    meaning = reader.game.meaning(phrase.name)
    if not isinstance(meaning, PlayerMeaning) or meaning.role is None or is_keeper(meaning):
        return None
    return RoleId(meaning.role)


def side_of_toucher(reader: Reader, phrase: SideNamed, task: RoleId, moment: Moment) -> SideId:
    """The side of whoever touched, where all who do have that task. Raises Senseless."""
    trigger = moment.trigger
    touched = isinstance(trigger, Happening) and trigger.result is Result.TOUCHED
    by = trigger.by & reader.touching if isinstance(trigger, Happening) else frozenset()
    if touched and moment.actor is not None and {who.role for who in by} == {task}:
        return moment.actor
    title = "`{said}`: points are a side's, and whose {name} is meant is not known here."
    raise Senseless(phrase, title, write("the thrower's side", "name a side."), name=phrase.name.text)
