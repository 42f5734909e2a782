"""The bank of phrasings for who acts and whose things are meant: each phrase with the sides that it means, by hand."""

from __future__ import annotations

from tests.interpreter.drawn.records import NOBODY, PLAIN, Crew, Draft

Whose = tuple[tuple[str, tuple[str, ...]], ...]


def actors(draft: Draft) -> dict[tuple[str, ...], list[str]]:
    """Phrases for players without more words, by the sides that they mean."""
    found = {draft.sides: ["players", "players of each side", "players of every side", "players of any side"]}
    if draft.solo:
        return {draft.sides: ["players", "settlers"]}
    for side in draft.sides:
        found[(side,)] = [f"players of {side}", f"{side} players", *([side] if draft.by_players else [])]
    return found


def helpers(draft: Draft) -> dict[tuple[str, ...], list[str]]:
    """The same for those with the role."""
    found = {draft.role_sides: ["aides"]}
    if len(draft.role_sides) > 1:
        found[draft.role_sides] += ["aides of each side", "aides of every side"]
        found |= {(side,): [f"aides of {side}"] for side in draft.role_sides}
    else:
        found[draft.role_sides].append(f"aides of {draft.role_sides[0]}")
    return found


def crews_of(draft: Draft, sides: tuple[str, ...]) -> list[Crew]:
    """Who acts by a line for players: a role with a line of its own plays only that."""
    crews = [each for each in draft.crews() if each.side in sides]
    return [each for each in crews if each.role == PLAIN or not draft.role_has_own_task]


def owned(draft: Draft, acting: tuple[str, ...], owners: tuple[str, ...], thing: str) -> dict[Whose, list[str]]:
    """Phrases for things of some owners, by whose things each acting side aims at with them.

    What nobody owns is aimed at only where no owner is said. Only the line that names a side may leave that side
    with nothing to aim at.
    """
    if draft.solo:
        phrases = [f"the {thing}", thing, f"the {thing} of the other settlers"]
        return {((draft.sides[0], owners),): phrases}
    found: dict[Whose, list[str]] = {}

    def means(phrase: str, whose: dict[str, tuple[str, ...]], named: bool = False) -> None:
        key = tuple((side, tuple(owner for owner in whose[side] if owner in owners)) for side in acting)
        aimed = [bool(each) for _, each in key]
        if all(aimed) or (named and any(aimed)):
            found.setdefault(key, []).append(phrase)

    others = {side: draft.others(side) for side in acting}
    unsaid = {side: (*draft.others(side), NOBODY) for side in acting}
    for phrase in (f"the {thing}", thing, f"any {thing}"):
        means(phrase, unsaid)
    for phrase in (f"the {thing} of the other side", f"{thing} of the other side", f"the other {thing}"):
        means(phrase, others)
    for phrase in (f"their {thing}", f"the {thing} of their side"):
        means(phrase, {side: (side,) for side in acting})
    for phrase in (f"the {thing} of each side", f"the {thing} of every side", f"the {thing} of any side"):
        means(phrase, dict.fromkeys(acting, draft.sides))
    for named in draft.sides:
        only = {side: (named,) if named != side else () for side in acting}
        means(f"the {thing} of {named}", only, named=True)
        if not named.endswith("s"):
            means(f"{named}'s {thing}", only, named=True)
    return found


def drawn(draft: Draft, bank: dict[Whose, list[str]]) -> tuple[Whose, str]:
    """One meaning, and one of the phrases that say it."""
    meaning = draft.dice.choice(sorted(bank))
    return meaning, draft.dice.choice(bank[meaning])


def mostly(draft: Draft, bank: dict[Whose, list[str]], meaning: dict[str, tuple[str, ...]]) -> tuple[Whose, str]:
    """The usual meaning three times in four, where it can be said; else any."""
    for key in bank:
        if dict(key) == meaning and not draft.in_one_of(4):
            return key, draft.dice.choice(bank[key])
    return drawn(draft, bank)
