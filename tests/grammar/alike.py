"""Which words may mean the same in one slot: the fixed list of synonyms, and the defaults that a word may spell out.

Only these excuse an exchange that changes nothing. What a slot means where nothing is said may also be said in words.
"""

from __future__ import annotations

from grammar.meanings import AgentMeaning, KitMeaning, PlayerMeaning, side_named
from grammar.sentences.attempting import Attempt
from grammar.sentences.play import Take
from grammar.sentences.resting import Rest
from grammar.sentences.when import When
from grammar.words import plural
from tests.grammar.exchanges import Exchange, Names
from tests.grammar.forms import CONCERNED, class_of, names_alike, one_is_wide, one_of_all, owner_of, owners_alike

# Words for people, which no number can tell: none of play, when or finish but lines in quotes.
FOR_PEOPLE = frozenset(
    (
        "Told.text",
        "Practice.text",
        "Skills.practised",
        "Licence.identifier",
        "NeedsLanguage.number",
        "Caution.text",
        "SaidRule.text",
        "SideBySide.what",
    )
)
_SAID_OR_NOT = ("evenly spaced", "each", "in one piece", "a draw")
_ON_THE_FLOOR = (
    {"back line", "wall"},
    {"back line", "half"},
    {"middle", "middle line"},
    {"before", "along"},
    {"beside", "behind"},
)
_TWO_WORDS = (
    {"halved across", "in equal parts"},
    {"minute", "60 s"},
    {"it stands up again", "it stays as it is"},  # of a ring
)
_HERE = ("in", "on", "")
_SINGLE_SLOTS = ("Sides.names", "Area.name", "Track.name", "Role.name", "Kit.name", "Headcount.of")
_WITHOUT_SAYING = ("it stays down", "it stays as it is", "the ball goes to the other side")


def may_be_alike(exchange: Exchange, names: Names, section: str) -> bool:
    """Whether both words may mean the same where they stand."""
    was, now, field = exchange.was, exchange.now, exchange.slot.partition(".")[2]
    if section == "when" and (_of_who_did_it(exchange) or _same_in_an_event(exchange, names)):
        return True
    if exchange.slot == "Kit.singular" and "" in (was, now):  # odd plurals that are known
        return plural(was or now) in exchange.sentence.words()
    if _same_of_one(exchange, names) or _same_for_who_acts(exchange, names, section):
        return True
    if field == "determiner":
        dealt = section == "set-up" and {class_of(was), class_of(now)} == {"each", "their"}  # balls of nobody: to each
        return dealt or "" in (class_of(was), class_of(now)) or class_of(was) == class_of(now)
    if field == "preposition":
        bench = "bench: " in exchange.sentence.words()  # along a line it stands behind it
        return {was, now} <= {*_HERE} or (bench and {was, now} == {"along", "behind"})
    if exchange.slot == "OwnerName.name" and section in ("set-up", "play"):  # the logs of the guards are their side's
        meant = (names.meanings.get(each) for each in (was, now))
        return len({each.side if isinstance(each, PlayerMeaning) else side_named(each) for each in meant} - {None}) == 1
    if field in ("owner", "possessive", "other"):
        if section in ("set-up", "kit", "space") and "that" in (owner_of(was, names), owner_of(now, names)):
            return True  # what belongs to one named side is theirs
        named = exchange.sentence.words().split()[0] in names.sides  # of whom "the other side" is one by name
        return "" in (was, now) or named or owners_alike(owner_of(was, names), owner_of(now, names), section)
    if field in ("side", "towards"):
        # Who arrives, and who has had so many in a row, is of the side that is concerned.
        if any(each in exchange.sentence.words() for each in ("arrives", " in a row: ")):
            owners = owner_of(was, names), owner_of(now, names)
            return set(owners) == {"that", "thrower"} or owners[0] == owners[1]
        return owners_alike(owner_of(was, names), owner_of(now, names), section)
    if field in ("name", "what", "of", "ball", "singular", "like") or exchange.slot in _SINGLE_SLOTS:
        crate = section == "set-up" and "half" in (was, now)  # what lies in a crate of theirs lies in their half
        kit = [each for each in (was, now) if isinstance(names.meanings.get(each), KitMeaning)]
        return names_alike(was, now, names) or {was, now} == {"middle", "middle line"} or (crate and bool(kit))
    if field == "quantity":  # "the stone" is said of one: of several it is refused
        reached = section == "finish" and was.removeprefix("at least ") == now.removeprefix("at least ")
        return reached or class_of(was) == class_of(now) or "the" in (was, now)
    if field == "which":  # a ball leaves a half for another, or the court from the half to which it was sent
        return "half it left" in (was, now)
    return {was, now} in [*_TWO_WORDS, *({"", word} for word in _SAID_OR_NOT)]


def _same_of_one(exchange: Exchange, names: Names) -> bool:
    """Whether whose something is cannot matter: there is one place of that name, one side, one ball of all."""
    field, said = exchange.slot.partition(".")[2], exchange.sentence.words()
    if field not in ("owner", "determiner", "possessive", "other"):
        return False
    return any(place in said for place in names.lone) or len(names.sides) == 1


def _same_for_who_acts(exchange: Exchange, names: Names, section: str) -> bool:
    """Whether both mean the same to whoever acts: a mate, whom alone they can meet, the others from whom they take."""
    both, field = {exchange.was, exchange.now}, exchange.slot.partition(".")[2]
    if section == "finish":  # "its base" is that of the side spoken of, and a side named twice is the same
        return (field == "determiner" and {class_of(each) for each in both} == {"their", "that"}) or (
            field == "side" and exchange.sentence.words().split()[0] in names.sides
        )
    if section != "play":
        return False
    if isinstance(exchange.sentence, Take) and field == "owner":  # nobody takes from where they bring to
        return {owner_of(each, names) for each in both} <= {"other", "each", "a"}
    if isinstance(exchange.sentence, Attempt) and field == "determiner":
        return {class_of(each) for each in both} == {"", "each"}  # one at a time, whichever of them
    if isinstance(exchange.sentence, Rest) and field == "owner":  # who caught it is of the side to which it was sent
        return {owner_of(each, names) for each in both} <= {*CONCERNED}
    mates = "team-mate" in both and bool({"player", "players"} & both)
    people = {*names.sides, *(plural(one) for one in names.people), *names.people}
    return mates or (field == "name" and bool({"player", "players"} & both) and both <= people)


def spells_out(exchange: Exchange) -> bool:
    """Whether one of both says nothing: a default that covers all there is may be said in words, or left to say."""
    both = {exchange.was, exchange.now}
    if both in ({"its", "that"}, {"its", "the"}) or (both == {"a", "the"} and exchange.slot == "Np.determiner"):
        return True  # of one ball "a ball" is "the ball"
    fields = ("owner", "possessive", "other", "determiner", "state", "count")
    return "" in (exchange.was, exchange.now) and exchange.slot.partition(".")[2] in fields


def same_on_the_floor(exchange: Exchange) -> bool:
    """Whether both name one place of the floor, behind which or before which the same lies; one thing has no order."""
    both = {exchange.was, exchange.now}
    said = exchange.sentence.words()
    middle = both == {"middle", "court"} and "across the" in said
    bench = both == {"along", "beside"} and "bench: " in said  # which lies along the line that it stands beside
    return both in _ON_THE_FLOOR or middle or bench or exchange.slot == "Placing.spread"


def same_in_one_game(exchange: Exchange, names: Names, section: str) -> bool:
    """Whether both can come to the same in one game though they say different things.

    A wide word and a narrow one, where nothing else can happen or all else has a line of its own; two words for the
    side concerned, where they differ only if it were one's own; and what holds where nothing is said. It is an excuse
    only where the second reader, who reads every word by itself, finds no difference either.
    """
    both, field = {exchange.was, exchange.now}, exchange.slot.partition(".")[2]
    if section == "set-up":  # all others of that sort have a line of their own
        return field == "name" and one_is_wide(exchange.was, exchange.now)
    if field == "quantity":  # all that there are in this class, or so many
        counts = {each.removeprefix("at least ") for each in both}
        return any(each.isdigit() for each in counts) and any(each.startswith("all") for each in counts)
    if section == "play":  # a place at which none of the mates ever is; a ring on a court on which all go anywhere
        said, owners = exchange.sentence.words(), {owner_of(each, names) for each in both}
        mates = " to a " in said and bool(owners & {"a", "each"})
        return isinstance(exchange.sentence, Attempt) and field == "owner" and (mates or " through the " in said)
    if section != "when":
        return False
    if _of_who_did_it(exchange):
        return True
    if field == "name":
        same = _same_who_arrives(exchange, names) or _same_person(exchange, names)
        return same or one_of_all(both, names) or one_is_wide(exchange.was, exchange.now)
    if exchange.slot == "Touched.load":  # whoever carries, where others are not touched
        return "" in both
    if field in ("owner", "side", "possessive"):
        owners = {owner_of(each, names) for each in both}
        wide = field == "owner" and bool({"a", "each"} & owners)
        if len(names.sides) == 1 and owners <= {"that", "thrower"}:
            return True  # of many alike it is all one to the count who scores
        return wide or owners <= {*CONCERNED} or _same_who_arrives(exchange, names)
    dropped = exchange.slot == "When.consequences" and "" in both
    return dropped and any(each in _WITHOUT_SAYING or each.endswith(" goes back") for each in both)


def _same_in_an_event(exchange: Exchange, names: Names) -> bool:
    """Whether both mean the same person, side or half of what happened."""
    both, field = (exchange.was, exchange.now), exchange.slot.partition(".")[2]
    said = exchange.sentence.words()
    if exchange.slot == "Joins.what":  # who is hit joins those who threw
        return {owner_of(each, names) for each in both} <= {*CONCERNED, "thrower"}
    if field == "name":
        return _same_person(exchange, names) or _same_who_arrives(exchange, names)
    if field == "determiner":
        return {class_of(each) for each in both} == {"their", "that"}
    if field in ("side", "possessive") and said.startswith("a pass is caught"):  # by a team-mate
        return {owner_of(each, names) for each in both} <= {"thrower", "catcher", "that"}
    if field == "place" and said.startswith("a ball leaves the court"):
        return any("half it left" in each for each in both)
    return _same_who_arrives(exchange, names)


def _of_who_did_it(exchange: Exchange) -> bool:
    """Whether the word says by whom or by which ball: who alone can do it, what alone there is, need not be said."""
    sentence = exchange.sentence
    doer = sentence.doer.words() if isinstance(sentence, When) and sentence.doer is not None else ""
    return exchange.slot == "When.doer" or (bool(exchange.now) and exchange.now in doer)


def _same_who_arrives(exchange: Exchange, names: Names) -> bool:
    """Whether both name who arrives: what is brought, whoever brings it, or the side of whom alone that can be."""
    if "arrives" not in exchange.sentence.words():
        return False
    field = exchange.slot.partition(".")[2]
    if field == "name":
        sides = {side_named(names.meanings.get(each)) for each in (exchange.was, exchange.now)}
        return len(sides - {None}) < 2
    if field in ("side", "possessive"):
        owners = owner_of(exchange.was, names), owner_of(exchange.now, names)
        return "thrower" in owners and bool({"that", *names.sides} & {*owners})
    return False


def _same_person(exchange: Exchange, names: Names) -> bool:
    """Whether both name one person: any player and one of the side of whom alone it can be, or whose the thing is."""
    both = exchange.was, exchange.now
    if not all(isinstance(names.meanings.get(each), PlayerMeaning | AgentMeaning) for each in both):
        return "player" in both and bool({*both} & {*names.sides})
    return "player" in both or f" its {exchange.now} " in exchange.sentence.words()
