"""Share: drop a pack in and see what it brings, give a pack away, undo."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from itertools import count

from compose.page.answers.said import in_words
from compose.page.answers.values import Asked, Read
from compose.page.call import PATIENT, Call, Data, Go, Reply, Shown, address
from compose.page.planned import planned
from compose.page.sheets import shelf_items
from compose.share.bounds import read_rules
from compose.share.folder_at_hand import FolderAtHand
from compose.share.making import Sheets, parts_of
from compose.share.naming import slug
from compose.share.pack.item import Item, Sheet, item_of
from compose.share.pack.pack import Pack, make_pack
from compose.share.pack.taking_in import Arrival, Choice, State, arrivals, take_in
from compose.share.shelf.open_shelf import open_shelf
from grammar.finding import Outcome

ZIP = "application/zip"


def show(call: Call) -> Reply:
    """What lies on the shelf, and what can be done."""
    return _shown(call, done=call.one("done"), undone=call.one("undone"))


def _shown(call: Call, status: int = 200, **told: str) -> Reply:
    """The screen, with what was ticked and typed where something was wrong."""
    typed = {"ticked": set(call.form.get("item", ())), "title": call.one("title"), "origin": call.one("origin")}
    given = {"items": _to_give(call), "done": "", "undone": "", "wrong": ""}
    return Shown("share.html", {**given, **typed, **told}, status)


def _to_give(call: Call) -> list[tuple[str, Item]]:
    """What lies on the shelf and the remixes of the lesson, each once, with what its box says."""
    shelf, sheets = shelf_items(call.desk.shelf), call.desk.sheets()
    given, found = {each.slug for each in shelf}, dict[tuple[str, ...], tuple[str, Item]]()
    for place, each in enumerate(planned(call.desk.shelf, sheets)):
        asked = Asked(sheets[each.slug].texts, each.uses, call.desk.group, call.language)
        item = call.ask("sharing:remix_of_lesson", asked, "") if each.uses else None
        if item is None or (each.slug, *each.uses) in found:
            continue
        named = next(name for name in _names(item.name) if slug(name) not in given)
        item = item if named == item.name else call.ask("sharing:remix_of_lesson", asked, named)
        given.add(item.slug)
        found[(each.slug, *each.uses)] = f"lesson-{place}", item
    return [*((each.path, each) for each in shelf), *found.values()]


def _names(name: str) -> Iterator[str]:
    """A name, and others like it for what would else have the same."""
    yield name
    yield from (f"{name} {number}" for number in count(2))


def look(call: Call) -> Reply:
    """Read a pack and show what it brings; nothing is taken in."""
    upload = call.files.get("pack")
    read: Read = call.ask("sharing:read", upload.data if upload else b"", call.language, rank=PATIENT)
    if not isinstance(read.pack, Pack):
        return _again(call, read.wrong)
    call.desk.arrived.put(read.pack)
    return _standing(call, read.pack)


def _again(call: Call, wrong: str) -> Reply:
    return _shown(call, 422, wrong=wrong)


def look_again(call: Call) -> Reply:
    """The same pack once more, after one of its things was merged."""
    pack = call.desk.arrived.get(call.one("pack"))
    if pack is None:
        return _again(call, call.wording.say("Drop the pack in once more."))
    return _standing(call, pack, call.one("merged"))


def _standing(call: Call, pack: Pack, merged: str = "") -> Reply:
    outcome = arrived(call, pack)
    if outcome.value is None:
        return _again(call, in_words(outcome.findings[0], call.wording))
    groups = [(state, [each for each in outcome.value if each.state is state]) for state in State]
    choosing = any(each.needs_choice for each in outcome.value)
    shown = [(state.name, some) for state, some in groups if some]
    brings = any(each.state not in (State.SAME, State.OLDER) for each in outcome.value)
    told = {"pack": pack, "groups": shown, "choosing": choosing, "brings": brings, "merged": merged}
    return Shown("share-pack.html", told)


def arrived(call: Call, pack: Pack) -> Outcome[tuple[Arrival, ...]]:
    """How what a pack brings stands to the shelf."""
    if not call.desk.shelf.is_dir():
        return Outcome(tuple(Arrival(item, State.NEW) for item in pack.items))
    opened = open_shelf(call.desk.shelf)
    if opened.value is None:
        return Outcome(None, opened.findings)
    with opened.value as shelf:
        return arrivals(shelf, pack.items)


def take(call: Call) -> Reply:
    """Take the pack in as chosen; all of it or nothing."""
    pack = call.desk.arrived.get(call.one("pack"))
    if pack is None:
        return _again(call, call.wording.say("Drop the pack in once more."))
    choices = {}
    for item in pack.items:
        chosen = call.one(f"choice-{item.kind}-{item.slug}")
        if chosen == "merge":
            return Go(address("/share/merge", pack=pack.sha256, item=item.path))
        if chosen in (each.value for each in Choice):
            choices[item.key] = Choice(chosen)
    call.desk.shelf.mkdir(parents=True, exist_ok=True)
    opened = open_shelf(call.desk.shelf)
    if opened.value is None:
        return _again(call, in_words(opened.findings[0], call.wording))
    with opened.value as shelf:
        outcome = take_in(shelf, pack, choices, Choice.OURS, date.today().isoformat())
    if outcome.value is None:
        return _again(call, in_words(outcome.findings[0], call.wording))
    kept = sum(bool(name) for _, name in outcome.value.kept)
    return Go(address("/share", done=call.wording.counted(kept, "sheet", "sheets")))


def give(call: Call) -> Reply:
    """A pack of what was ticked, with what it is made of."""
    ticked = set(call.form.get("item", ()))
    items = [each for box, each in _to_give(call) if box in ticked]
    if not items:
        return _again(call, call.wording.say("Tick what the pack shall carry."))
    around = FolderAtHand(call.desk.shelf)
    sheets = [sheet for each in items if (sheet := _sheet(around, each)) is not None]
    parts = [item_of(each) for each in parts_of(sheets, Sheets(tuple(sheets), around))]
    unique = {each.content: each for each in (*items, *parts)}
    made = make_pack(unique.values(), call.one("title") or items[0].name, call.one("origin"))
    if made.value is None:
        return _again(call, in_words(made.findings[0], call.wording))
    return Data(made.value, ZIP, f"{items[0].slug}.pack.zip")


def _sheet(around: FolderAtHand, item: Item) -> Sheet | None:
    if item.kind == "modifier":
        return around.modifier(item.name)
    return around.base(item.name) or read_rules(item.text.encode(), item.path)


def undo(call: Call) -> Reply:
    """Undo the last change of the shelf."""
    opened = open_shelf(call.desk.shelf) if call.desk.shelf.is_dir() else None
    if opened is None or opened.value is None:
        return _again(call, call.wording.say("There is nothing to undo."))
    with opened.value as shelf:
        outcome = shelf.undo()
    if outcome.value is None:
        return _again(call, in_words(outcome.findings[0], call.wording))
    return Go(address("/share", undone="yes"))
