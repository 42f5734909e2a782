"""Whose it is: what the words around a name say of the side to which something belongs, before anybody decides."""

from __future__ import annotations

from typing import Union

from attrs import frozen

from grammar.sentences.base import AnySide, Np, Owner, OwnerName, SideNamed, SideOf, SideRef
from tests.interpreter.names import ACTING, Folk, Part
from tests.interpreter.remembered import remembered
from tests.interpreter.sheet import Sheet

UNSAID, OWN, OTHERS, EVERY, ANY, SPOKEN = "unsaid", "own", "others", "every", "any", "spoken of"


@frozen
class Of:
    """Of a side that is named."""

    side: str


Whose = Union[str, Of, Part]


@remembered
def whose(sheet: Sheet, phrase: Np) -> Whose:
    """What a phrase says of the owner: one of the words above, a side, or who took part."""
    if phrase.possessive:
        return _holder(sheet, phrase.possessive)
    if isinstance(phrase.owner, SideOf):
        return _holder(sheet, phrase.owner.possessive)
    if isinstance(phrase.owner, OwnerName):
        if phrase.owner.other:
            return OTHERS
        return _of_meant(sheet, sheet.meaning(phrase.owner.name)) or EVERY
    if isinstance(phrase.owner, Owner):
        return of_a_side(phrase.owner.determiner, phrase.owner.other)
    if phrase.other:
        return OTHERS
    return {"their": OWN, "its": OWN, "each": EVERY, "every": EVERY}.get(phrase.determiner or "", UNSAID)


def of_a_side(determiner: str, other: str | None) -> Whose:
    """Such as "the other side", "each side", "their side", "that side"."""
    if other:
        return OTHERS
    if determiner in ("their", "its"):
        return OWN
    if determiner in ("the", "that"):
        return SPOKEN
    return ANY if determiner in ("a", "an", "any") else EVERY


def _holder(sheet: Sheet, possessive: str) -> Whose:
    found = _of_meant(sheet, sheet.names[possessive[:-2]])
    assert found is not None, possessive
    return found


def _of_meant(sheet: Sheet, meant: object) -> Whose | None:
    if isinstance(meant, Part):
        return meant
    if isinstance(meant, Folk) and meant.role == "keeper":
        return Part("keeper")
    if isinstance(meant, Folk) and meant.role in ACTING:
        return Part("actor")
    side = meant.side if isinstance(meant, Folk) else sheet.side_meant(meant)
    return Of(side) if side is not None else None


def side_said(sheet: Sheet, phrase: AnySide) -> Whose:
    """What a phrase for a side says, in the same words."""
    if isinstance(phrase, SideNamed):
        meant = sheet.meaning(phrase.name)
        if isinstance(meant, Part):
            return meant
        side = sheet.side_meant(meant)
        if side is None and isinstance(meant, Folk):
            return Part("actor")  # a task by which somebody touches
        assert side is not None, phrase.name.text
        return Of(side)
    if isinstance(phrase, SideOf):
        return _holder(sheet, phrase.possessive)
    if isinstance(phrase, SideRef):
        return of_a_side(phrase.determiner, phrase.other)
    return OWN
