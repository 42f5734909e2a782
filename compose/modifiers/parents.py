"""What a remix says that it is made of, and the file that says so of a remix just made."""

from __future__ import annotations

from collections.abc import Sequence

from compose.modifiers.content_hash import content_hash
from compose.modifiers.heads import licence_in
from compose.modifiers.modifier import Use
from grammar.frozen import field, frozen
from grammar.game import Game
from grammar.sentences import remix as said
from grammar.sentences.head import Licence, Told
from grammar.span import Span, nowhere
from grammar.tree import Line, RemixSheet


@frozen
class Used:
    """A modifier of a remix, with the values given to it, in words."""

    name: str
    values: tuple[tuple[str, str], ...] = ()

    def words(self) -> str:
        """ "add balls (n 3)"."""
        given = ", ".join(f"{name} {value}" for name, value in self.values)
        return f"{self.name} ({given})" if given else self.name


@frozen
class Lineage:
    """What a remix is made of: a base by name and content hash (None where it does not say which state of the
    base it means), and modifiers in the order in which they are applied."""

    base_name: str
    base_content: str | None
    modifiers: tuple[Used, ...]
    span: Span = field(eq=False, factory=nowhere)

    def words(self) -> str:
        """ "Lantern Row with roll instead, then add balls (n 3)"."""
        uses = ", then ".join(used.words() for used in self.modifiers)
        return f"{self.base_name} with {uses}" if uses else self.base_name


def lineage_of(sheet: RemixSheet) -> Lineage | None:
    """What a remix says that it is made of, or None where it names no base."""
    sentences = [line.sentence for line in sheet.lines]
    base = next((each for each in sentences if isinstance(each, said.BasedOn)), None)
    return Lineage(base.base, base.content, used_in(sheet), base.span) if base else None


def used_in(sheet: RemixSheet) -> tuple[Used, ...]:
    """The modifiers that a remix names."""
    return tuple(
        Used(each.modifier, tuple((setting.parameter, setting.value.words()) for setting in each.settings))
        for each in (line.sentence for line in sheet.lines)
        if isinstance(each, said.Use)
    )


def sheet_of_uses(
    base: Game, uses: Sequence[Use], title: str, about: str | None = None, credit: str | None = None
) -> RemixSheet:
    """The file of a remix: base by name and content hash, modifiers in order with the values given.

    Switches that were turned, behind which no sheet of a modifier stands, become edits of its own, done last.
    """
    lines = [Line(said.BasedOn(base.title, content_hash(base.sheet)))]
    own: list[Line] = []
    for use in uses:
        if not use.modifier.span.line:
            own += use.modifier.changes
        else:
            settings = tuple(said.Setting(name, value) for name, value in use.values.items())
            lines.append(Line(said.Use(use.modifier.name, settings)))
    lines += [Line(Told(topic, text)) for topic, text in (("about", about), ("credit", credit)) if text]
    licence = licence_in(base.sheet.head)
    lines += [Line(Licence(licence))] if licence else []
    return RemixSheet(title, (*lines, *own), nowhere(title))
