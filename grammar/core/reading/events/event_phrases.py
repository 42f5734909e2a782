"""Who and what the phrases of an event mean."""

from __future__ import annotations

from grammar.core.reading.phrases.aims import LINES
from grammar.core.reading.phrases.carrying import with_load
from grammar.core.reading.phrases.claims import where_players_are
from grammar.core.reading.phrases.frozen import frozen_places, is_frozen
from grammar.core.reading.sheet.reader import Reader
from grammar.core.reading.sheet.whose import Senseless, Spoken, Whose, whose
from grammar.core.values import SHARED, At, KindId, Landmark, Owner, Population, Presence, SideId, Sort, Spot, Thing
from grammar.meanings import BALL_ACTORS, AgentMeaning, PlaceMeaning, PlayerMeaning
from grammar.said import quoting, write
from grammar.sentences import events
from grammar.sentences.base import Np


def players_of_event(reader: Reader, phrase: Np, spoken: Spoken) -> tuple[Population, ...]:
    """Those to whom it happens."""
    said, role = reader.player_phrase(phrase)
    found = reader.of_role(spoken.meant(said, reader.all_sides), role)
    if not found:
        raise Senseless(
            phrase, "There are no such players: `{phrase}`.", "Name a side that has them.", phrase=phrase.words()
        )
    return found


def arriving(reader: Reader, phrase: Np, spoken: Spoken) -> frozenset[Population]:
    """Those who reach where they were going, or whoever brings such a thing there."""
    if reader.is_kit(phrase):
        return with_load(reader, frozenset(reader.populations(reader.side_ids)), phrase)
    meaning = reader.game.meaning(phrase.name)
    if isinstance(meaning, AgentMeaning):
        if meaning.part != "actor" or phrase.name.text in BALL_ACTORS:
            raise Senseless(
                phrase, "Nobody arrives as `{name}`.", "Say who goes there, such as: a runner", name=phrase.name.text
            )
        said = whose(reader.game, phrase)
        return frozenset(reader.populations(spoken.meant(said, reader.all_sides)))
    return frozenset(players_of_event(reader, phrase, spoken))


def carried_along(
    reader: Reader, phrase: Np, spoken: Spoken
) -> tuple[frozenset[KindId | None], frozenset[Thing]] | None:
    """The balls, or the other things, of a phrase that somebody goes with from place to place; None where it speaks of
    players, or of what whoever takes it up has till it is brought."""
    kinds = frozenset(reader.kinds_meant(phrase, *Sort)) if reader.is_kit(phrase) else frozenset()
    if not kinds & reader.brought:
        return None
    balls = frozenset(reader.balls(phrase)) if reader.kinds_meant(phrase, Sort.BALL) else frozenset()
    return balls, frozenset() if balls else frozenset(reader.thing_phrase(phrase, spoken, reader.all_sides, *Sort))


def reached(reader: Reader, where: Np | None, spoken: Spoken) -> frozenset[Spot]:
    """The places to which somebody must have come; without an owner any of that name. Nothing where none is said."""
    return frozenset(reader.spots(None, where, spoken, reader.all_sides)) if where else frozenset()


def lines_crossed(reader: Reader, phrase: Np, spoken: Spoken) -> tuple[Spot, ...]:
    """The lines that something gets past."""
    of = reader.place(phrase)
    if of not in LINES:
        raise Senseless(phrase, "`{said}` is no line to get past.", write("crosses the back line"))
    if of is Landmark.MIDDLE_LINE:
        return (Spot(Landmark.MIDDLE_LINE, SHARED),)
    return reader.spots(None, phrase, spoken, reader.all_sides)


def only_the_court(reader: Reader, where: Np) -> None:
    """Raises Senseless where a ball is said to leave anything but the court."""
    meaning = reader.game.meaning(where.name)
    court = isinstance(meaning, PlaceMeaning) and meaning.built_in and Landmark(meaning.place) is Landmark.COURT
    if not court or whose(reader.game, where, place=True).whose is not Whose.UNSAID:
        raise Senseless(
            where, "A ball leaves the court, not `{where}`.", write("a ball leaves the court"), where=where.words()
        )


def balls_of_event(reader: Reader, phrase: Np) -> frozenset[KindId | None]:
    """The balls of an event, of which none is a player."""
    if isinstance(reader.game.meaning(phrase.name), PlayerMeaning):
        raise Senseless(phrase, "A ball crosses, not a player.", "Who steps over a line fouls: write a player fouls")
    return frozenset(reader.balls(phrase))


def players_against(reader: Reader, against: Owner) -> tuple[Population, ...]:
    """The players of the owner who is concerned."""
    return reader.populations([against]) if isinstance(against, SideId) else ()


def mates_at(reader: Reader, event: events.Caught, spoken: Spoken) -> frozenset[Presence | At]:
    """Where the team-mate is who catches a pass."""
    assert event.where is not None
    if is_frozen(reader, event.where):
        if event.preposition != "by":
            title = quoting("`{where}` means players, and no place.", where=event.where.words())
            raise Senseless(event.where, title, write("by a frozen player"))
        if reader.player_phrase(event.where)[1] is not None:
            title = quoting("Of which task who caught it is, is not asked: `{where}`.", where=event.where.words())
            raise Senseless(event.where, title, write("by a frozen player"))
        return frozen_places(reader, event.where, spoken, spoken.parts[Whose.ACTOR])
    if event.preposition == "by":
        raise Senseless(event.where, "A pass is caught at a place.", write(f"in the {event.where.name.text}"))
    if reader.place(event.where) in (Landmark.HALF, Landmark.COURT):
        return frozenset({Presence.PLAYING})
    return where_players_are(reader, event.preposition, event.where, spoken)
