"""The names of a sheet while they are gathered, and the words that every sheet knows."""

from __future__ import annotations

from collections.abc import Mapping

from attrs import define, field

from grammar.finding import Correction, Finding, mistake
from grammar.meanings import (
    AREA_KINDS,
    AgentMeaning,
    CategoryMeaning,
    FrozenMeaning,
    KitMeaning,
    MateMeaning,
    Meaning,
    PlaceMeaning,
    PlayerMeaning,
    SideMeaning,
    TeacherMeaning,
)
from grammar.mistakes.near_names import near_names
from grammar.said import Value, perhaps_meant, quoting, said
from grammar.sentences.base import FROZEN, Name
from grammar.span import Span
from grammar.words import plural, singulars

COUNT_LIMIT = 200
AREA_FORMS = frozenset(form for kind in AREA_KINDS for form in (kind, plural(kind)))


@define
class Vocabulary:
    """The names of one sheet while they are gathered, and what is wrong with them."""

    meanings: dict[str, Meaning]
    places: dict[str, Span] = field(factory=dict)
    findings: list[Finding] = field(factory=list)

    def declare(self, forms: tuple[str, ...], meaning: Meaning, name: Name) -> bool:
        """Give a name and its other forms one meaning; False, and a mistake, where one of them has one."""
        if _stands_under_its_own_place(self.meanings, forms, meaning):
            return True
        for form in forms:
            if form in self.places and self.places[form] != name.span:
                title = quoting("`{form}` is declared twice.", form=form)
                hint = "Give one of the two another name, or keep one line."
                finding = mistake("G-twice", title, name.span, hint, self.places[form])
                self.findings.append(finding)
                return False
            if form not in self.places and _of_the_language(self.meanings.get(form), meaning):
                self.wrong(
                    "G-name",
                    quoting("`{form}` is a word of the language.", form=form),
                    name.span,
                    "Give it another name.",
                )
                return False
        for form in forms:
            self.meanings[form] = meaning
            self.places[form] = name.span
        return True

    def know_frozen_ones(self) -> None:
        """Whoever has a name may freeze; a name that the sheet itself gives stays."""
        for word, meaning in list(self.meanings.items()):
            if isinstance(meaning, PlayerMeaning):
                self.meanings.setdefault(FROZEN + word, FrozenMeaning(meaning.side, meaning.role))
            elif isinstance(meaning, MateMeaning):
                self.meanings.setdefault(FROZEN + word, FrozenMeaning())

    def wrong(self, code: str, title: Value, span: Span, hint: Value, corrections: tuple[Correction, ...] = ()) -> None:
        """One more mistake of meaning."""
        self.findings.append(mistake(code, title, span, hint, corrections=corrections))


def _stands_under_its_own_place(known: Mapping[str, Meaning], forms: tuple[str, ...], wanted: Meaning) -> bool:
    """Whether furniture is called as the one place of that kind is for short: the benches of the kit make the far
    bench, and the bench of a rule stays that place."""
    furniture = isinstance(wanted, KitMeaning) and wanted.category == "furniture"
    return furniture and all(form in AREA_FORMS and isinstance(known.get(form), PlaceMeaning) for form in forms)


def _of_the_language(known: Meaning | None, wanted: Meaning) -> bool:
    """Whether a name has a meaning in every sheet that the sheet must not take away; people may be called keepers."""
    if isinstance(known, AgentMeaning):
        return not isinstance(wanted, PlayerMeaning | SideMeaning)
    if isinstance(known, CategoryMeaning):
        return not (isinstance(wanted, KitMeaning) and wanted.category == known.category and not known.skills)
    return isinstance(known, PlaceMeaning | PlayerMeaning | TeacherMeaning | MateMeaning)


def singular(written: str, number: int, catalogue: Mapping[str, str]) -> str:
    """The singular of a kit name as written; regular English, the catalogue's own words first."""
    if number == 1 or written in catalogue:
        return written
    known = next((one for one in catalogue if plural(one) == written), None)
    if known:
        return known
    return next((one for one in singulars(written) if plural(one) == written), written)


_A_BALL = (
    "Name a ball of its size and weight: a tennis ball, a foam ball, a light ball or a medicine ball; a big one that "
    "is pushed or carried is like a gym ball."
)
_A_THING = (
    "What stands and falls is like a cone, a plastic pin or a box; what balls go into like an open box or a pole goal, "
    "through like a hoop; what is thrown or carried home like a beanbag; what is worn or laid out like a bib or a mat."
)


def not_in_the_kit(like: str, catalogue: Mapping[str, str]) -> tuple[Value, Value]:
    """What to say of a thing that the library's kit does not have, and what to do about it."""
    near = [name for name, _ in near_names(like, catalogue)]
    of_a_kind = _A_BALL if like.rsplit(maxsplit=1)[-1] in ("ball", "balls") else _A_THING
    more = quoting("{of_a_kind} `ruleweave kit` lists all, with their sizes.", of_a_kind=said(of_a_kind))
    hint = perhaps_meant(like, near) or more
    return quoting("The library's kit has no `{like}`.", like=like), hint


def category_of(name: str, catalogue: Mapping[str, str]) -> str | None:
    """The category of a thing: as the catalogue says, else by the last word of its name."""
    if name in catalogue:
        return catalogue[name]
    last = name.rsplit(maxsplit=1)[-1]
    return {"ball": "ball", "balls": "ball", "ring": "ring"}.get(last)
