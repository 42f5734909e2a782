"""Which words have one form: of a determiner, of whose something is, of a name. Two of one form may mean the same."""

from __future__ import annotations

from grammar.meanings import ACTORS, CATEGORY_WORDS, SHOT_WORDS
from grammar.words import plural
from tests.grammar.exchanges import Names

_CLASSES = (
    ("", "a", "an", "the", "any"),
    ("each", "every", "all"),
    ("their", "its"),
)
# In an event these can be one side: the one concerned is the other one, that of the keeper or of who caught.
CONCERNED = ("other", "that", "keeper", "catcher")


def class_of(word: str) -> str:
    """The form of a determiner: "every" is "each", none at all is "a"."""
    return next((each[0] for each in _CLASSES if word in each), word)


def owner_of(phrase: str, names: Names) -> str:
    """The form of a phrase that says whose something is, or which side is meant."""
    words = phrase.replace("'s", "").split()
    plain = " ".join(word for word in words if word not in ("the", "side"))
    if "other" in words:
        return "other"
    if plain in (*ACTORS, *map(plural, ACTORS)):
        return "thrower"
    if plain in ("it", "that", "their", "its", ""):
        return "that"
    if plain in ("each", "every", "all"):
        return "each"
    return "a" if plain in ("a", "any") else plain


def owners_alike(was: str, now: str, section: str) -> bool:
    """Whether two forms can be of one side: in an event that which is concerned has several."""
    alike = was == now or {was, now} in ({"a", "each"}, {"a", "that"})
    return alike or (section == "when" and was in CONCERNED and now in CONCERNED)


def names_alike(was: str, now: str, names: Names) -> bool:
    """One and many of a name; a thing, and the category of which it is the only one; a pass, and the ball of it."""
    if was in (now, plural(now)) or now == plural(was) or names.meanings.get(was, was) == names.meanings.get(now, now):
        return True
    return one_of_all({was, now}, names) or one_is_wide(was, now)


def one_of_all(both: set[str], names: Names) -> bool:
    """Whether both are people of a game in which each plays for themselves: no number tells one from another."""
    people = {*names.people, *(plural(one) for one in names.people), *names.sides}
    return len(names.sides) == 1 and both <= people


def one_is_wide(was: str, now: str) -> bool:
    """Whether one of both is wide, as "ball" or "shot" is."""
    return any(each in (was, now) or plural(each) in (was, now) for each in (*CATEGORY_WORDS, *SHOT_WORDS))
