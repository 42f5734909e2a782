"""Two schools changed the same game: each sentence on which they do not agree is chosen."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from compose.page.answers.said import in_words
from compose.page.call import Call, Go, Reply, Shown, address
from compose.page.screens.remix import no_such_game
from compose.share.folder_at_hand import FolderAtHand
from compose.share.making import played
from compose.share.merge.merge import Merge, Side, blank, common_base, merge
from compose.share.pack.item import Item, Sheet, item_of
from compose.share.shelf.open_shelf import open_shelf
from compose.share.shelf.shelf import Shelf
from grammar.frozen import frozen
from grammar.tree import ModifierSheet


@frozen
class Two:
    """The two states of a thing, and the last one that both came from (None where nobody knows it)."""

    ours: Item
    our_sheet: Sheet
    theirs: Item
    their_sheet: Sheet
    base: Sheet | None

    def merged(self, choices: dict[int, Side]) -> Merge:
        """The two made one, as chosen."""
        before = self.base if self.base is not None else blank(self.our_sheet)
        return merge(before, self.our_sheet, self.their_sheet, choices)


def show(call: Call) -> Reply:
    """The sentences to choose from."""
    with _two(call) as found:
        if found is None:
            return no_such_game(call)
        _, two = found
        return _shown(call, two, two.merged({}), "")


def _shown(call: Call, two: Two, made: Merge, wrong: str) -> Reply:
    values = {"two": two, "made": made, "wrong": wrong, "pack": call.one("pack"), "item": call.one("item")}
    return Shown("merge.html", values, 422 if wrong else 200)


def settle(call: Call) -> Reply:
    """Make one of the two as chosen, and keep it in the place of ours."""
    with _two(call) as found:
        if found is None:
            return no_such_game(call)
        shelf, two = found
        made = two.merged(_choices(call))
        if made.open:
            return _shown(call, two, made, call.wording.say("Choose for each sentence."))
        if not isinstance(made.sheet, ModifierSheet):
            outcome = played(made.sheet, FolderAtHand(call.desk.shelf))
            if outcome.value is None:
                return _shown(call, two, made, in_words(outcome.findings[0], call.wording))
        history = (*two.ours.history, two.ours.content, *two.theirs.history, two.theirs.content)
        kept = shelf.replace(item_of(made.sheet, history))
        if kept.value is None:
            return _shown(call, two, made, in_words(kept.findings[0], call.wording))
    return Go(address("/share/pack", pack=call.one("pack"), merged=two.ours.name))


def _choices(call: Call) -> dict[int, Side]:
    found = {}
    for name, values in call.form.items():
        number = name.removeprefix("choice-")
        if number != name and number.isdecimal() and len(number) < 5 and values[0] in (each.value for each in Side):
            found[int(number)] = Side(values[0])
    return found


@contextmanager
def _two(call: Call) -> Iterator[tuple[Shelf, Two] | None]:
    pack, path = call.desk.arrived.get(call.one("pack")), call.one("item")
    both = zip(pack.items, pack.sheets, strict=True) if pack else ()
    theirs = next((each for each in both if each[0].path == path), None)
    opened = open_shelf(call.desk.shelf).value if theirs and call.desk.shelf.is_dir() else None
    if theirs is None or opened is None:
        yield None
        return
    with opened as shelf:
        stored, around = shelf.named(theirs[0].name).value, FolderAtHand(call.desk.shelf)
        name = theirs[0].name
        sheet = around.modifier(name) if theirs[0].kind == "modifier" else around.base(name)
        if stored is None or sheet is None or stored.item.kind != theirs[0].kind:
            yield None
            return
        base = common_base(shelf, stored.item, theirs[0]).value
        yield shelf, Two(stored.item, sheet, *theirs, base)
