"""Packs on the terminal: make one, look into it, verify it, take it in, and undo that."""

from __future__ import annotations

import textwrap
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from compose.modifiers.parents import sheet_of_uses
from compose.share.bounds import MOST_PACK_BYTES
from compose.share.item import Item, Sheet, item_of
from compose.share.making import Sheets, parts_of, played
from compose.share.naming import slug
from compose.share.pack import Pack, make_pack, read_pack, sha256
from compose.share.taking_in import Arrival, Choice, State, arrivals, take_in
from compose.share.told import outcome_of
from compose.share.whole_files import read_plain
from compose.terminal.answer import FINE, TO_MEND, finding_json, refuse, say, say_json
from compose.terminal.finding_games import ENDING
from compose.terminal.shelf_door import at_hand, given, own_shelf, shelf_folder, thing, today
from compose.terminal.writing import write
from grammar.tree import GameSheet, RemixSheet
from grammar.words import count, listing


def make(
    names: Sequence[str],
    modifiers: Sequence[str],
    title: str,
    origin: str,
    out: Path,
    force: bool,
    shelf: Path | None,
    as_json: bool,
) -> int:
    """Make a pack of named things, with modifiers also of what they make of each game; the exit code."""
    found = [thing(name, shelf, as_json) for name in names]
    sheets: list[Sheet] = [sheet for _, sheet in found]
    items = [item for item, _ in found]
    if modifiers:
        sheets += _own_modifiers(modifiers, shelf, as_json)
        for name, (item, _) in zip(names, found, strict=True):
            if item.kind != "modifier":
                remix = _remix_sheet(name, item, modifiers, shelf, as_json)
                sheets.append(remix)
                items.append(item_of(remix))
    known = {item.content for item in items}
    parts = [item_of(part) for part in parts_of(sheets, Sheets(tuple(sheets), at_hand(shelf)))]
    items += [part for part in parts if part.content not in known]
    _only_what_can_be_made(sheets, Sheets(tuple(sheets), at_hand(shelf)), as_json)
    unique = list({item.content: item for item in items}.values())
    data = given(make_pack(unique, title or items[0].name, origin), as_json)
    write(out, data, force, as_json)
    unlicensed = [item.name for item in unique if item.licence is None]
    if as_json:
        told = {"file": str(out), "sha256": sha256(data), "items": [_item_json(item) for item in unique]}
        say_json(told | {"without_licence": unlicensed})
        return FINE
    say(f"{out} carries {listing(_called(item) for item in unique)}.")
    if unlicensed:
        _wrapped(f"No licence is named by {listing(unlicensed)}: nobody can tell whether it may be passed on.")
    return FINE


def _own_modifiers(modifiers: Sequence[str], shelf: Path | None, as_json: bool) -> list[Sheet]:
    """The modifiers of a call that are given as files, so that whoever takes the pack has them, too."""
    files = (written.partition(",")[0].strip() for written in modifiers)
    return [thing(file, shelf, as_json)[1] for file in files if file.endswith(ENDING)]


def _only_what_can_be_made(sheets: Sequence[Sheet], around: Sheets, as_json: bool) -> None:
    """Ends the command where a game or remix of a pack could not be made by whoever takes it."""
    for sheet in sheets:
        outcome = played(sheet, around) if isinstance(sheet, GameSheet | RemixSheet) else None
        if outcome is not None and outcome.value is None:
            first = outcome.findings[0]
            refuse(f"{sheet.title} cannot be made, so it is not packed: {first.title}", first.hint, as_json)


def _remix_sheet(name: str, item: Item, modifiers: Sequence[str], shelf: Path | None, as_json: bool) -> RemixSheet:
    from compose.modifiers.remix_sheet import remix_title
    from compose.terminal.stages import remixed

    on_shelf = shelf_folder(shelf) / item.path
    is_file = name.endswith(ENDING) or "/" in name
    made, _ = remixed(str(on_shelf) if on_shelf.is_file() and not is_file else name, modifiers, as_json)
    return sheet_of_uses(made.base, made.uses, remix_title(made))


def read(path: Path, as_json: bool) -> Pack:
    """The pack in a file; ends the command with one line where it is refused."""
    data = given(outcome_of(path, lambda: read_plain(path, MOST_PACK_BYTES)), as_json)
    return given(read_pack(data, str(path)), as_json)


def look(path: Path, shelf: Path | None, as_json: bool) -> int:
    """Tell what a pack carries, and how that stands to the shelf; the exit code."""
    pack = read(path, as_json)
    standing = _standing(pack, shelf, as_json)
    if as_json:
        items = [_item_json(each.item) | {"on_your_shelf": each.state.value} for each in standing]
        say_json({"title": pack.title, "from": pack.origin, "sha256": pack.sha256, "items": items})
        return FINE
    say(f"{pack.title or path.name}, from {pack.origin or 'somebody unnamed'}: {count(len(standing), 'thing')}")
    for each in standing:
        say()
        say(f"{_called(each.item)}, {each.item.licence or 'no licence named'}")
        _wrapped(each.item.about)
        for line in each.item.credit:
            _wrapped(f"Credit: {line}")
        if each.item.lineage:
            _wrapped(f"Made of {each.item.lineage.words()}.")
        _wrapped(each.words())
    return FINE


def _standing(pack: Pack, shelf: Path | None, as_json: bool) -> tuple[Arrival, ...]:
    """How each thing stands to the shelf; no shelf is made for that."""
    if not shelf_folder(shelf).is_dir():
        return tuple(Arrival(item, State.NEW) for item in pack.items)
    with own_shelf(shelf, as_json) as opened:
        return given(arrivals(opened, pack.items), as_json)


def verify(path: Path, shelf: Path | None, as_json: bool) -> int:
    """Verify a pack: its structure, its hashes, its sheets, and whether its remixes can be made; the exit code."""
    pack = read(path, as_json)
    around = Sheets(pack.sheets, at_hand(shelf))
    games = {sheet.title: played(sheet, around) for sheet in pack.sheets if isinstance(sheet, GameSheet | RemixSheet)}
    broken = {title: outcome.findings for title, outcome in games.items() if outcome.value is None}
    if as_json:
        told = {title: [finding_json(finding) for finding in findings] for title, findings in broken.items()}
        say_json({"sha256": pack.sha256, "items": len(pack.items), "cannot_be_made": told})
        return TO_MEND if broken else FINE
    say(f"{path} is in order: {count(len(pack.items), 'thing')}, every hash is right.")
    for title, findings in broken.items():
        _wrapped(f"{title} cannot be made here: {findings[0].title} {findings[0].hint}")
    return TO_MEND if broken else FINE


def take(
    path: Path, keep: str | None, choose: Sequence[str], only_look: bool, shelf: Path | None, as_json: bool
) -> int:
    """Take a pack onto the shelf, or only tell what that would do; the exit code."""
    pack = read(path, as_json)
    choices, otherwise = chosen(keep, choose, pack, as_json)
    return taken_in(pack, str(path), choices, otherwise, only_look, shelf, as_json)


def chosen(
    keep: str | None, choose: Sequence[str], pack: Pack, as_json: bool
) -> tuple[dict[tuple[bool, str], Choice], Choice | None]:
    """What was chosen for single things, and for all others."""
    return _choices(choose, pack.items, as_json), _choice(keep, as_json) if keep else None


def taken_in(
    pack: Pack,
    came_in: str,
    choices: Mapping[tuple[bool, str], Choice],
    otherwise: Choice | None,
    only_look: bool,
    shelf: Path | None,
    as_json: bool,
) -> int:
    """Take a verified pack onto the shelf; nothing is taken where a choice is missing. The exit code.

    `came_in` is where `merge` finds what it brings."""
    standing = _standing(pack, shelf, as_json)
    missing = [each for each in standing if each.needs_choice and not choices.get(each.item.key, otherwise)]
    if only_look or missing:
        return _told_before(standing, missing, came_in, as_json)
    with own_shelf(shelf, as_json) as opened:
        taken = given(take_in(opened, pack, choices, otherwise, today()), as_json)
    if as_json:
        say_json(
            {
                "taken": [
                    {"name": arrival.item.name, "state": arrival.state.value, "kept_as": name or None}
                    for arrival, name in taken.kept
                ]
            }
        )
        return FINE
    for arrival, name in taken.kept:
        kept = "" if name in ("", arrival.item.name) else f" Theirs is kept as {name}."
        _wrapped(arrival.words() + kept)
    kept_number = sum(bool(name) for _, name in taken.kept)
    say(f"{count(kept_number, 'thing').capitalize()} taken in." if kept_number else "Nothing was changed.")
    return FINE


def _told_before(standing: Sequence[Arrival], missing: Sequence[Arrival], came_in: str, as_json: bool) -> int:
    if as_json:
        told = [{"name": each.item.name, "state": each.state.value, "to_choose": each in missing} for each in standing]
        say_json({"taken": [], "would_take": told})
        return TO_MEND if missing else FINE
    for each in standing:
        _wrapped(each.words())
    if missing:
        names = listing(each.item.name for each in missing)
        _wrapped(f"Nothing was taken in. Say what becomes of {names}: --keep ours, theirs or both;")
        say(f'or one by one: --choose "{missing[0].item.name}=both"')
        _wrapped("To choose line by line, lay them together first:")
        say(f'  ruleweave merge "{missing[0].item.name}" "{came_in}"')
    return TO_MEND if missing else FINE


def _choice(word: str, as_json: bool) -> Choice:
    try:
        return Choice(word.strip().lower())
    except ValueError:
        refuse(f"`{word}` is no choice.", f"Say {listing([each.value for each in Choice], 'or')}.", as_json)


def _choices(written: Sequence[str], items: Sequence[Item], as_json: bool) -> dict[tuple[bool, str], Choice]:
    found: dict[tuple[bool, str], Choice] = {}
    for each in written:
        name, _, word = each.rpartition("=")
        keys = [item.key for item in items if item.slug == slug(name)]
        if not keys:
            refuse(f"The pack has nothing called `{name}`.", 'Write it such as "Lantern Row=both".', as_json)
        found |= dict.fromkeys(keys, _choice(word, as_json))
    return found


def undo(shelf: Path | None, as_json: bool) -> int:
    """Undo the last change of the shelf; the exit code."""
    with own_shelf(shelf, as_json) as opened:
        change = given(opened.undo(), as_json)
    if as_json:
        say_json({"undone": change.label.removeprefix("undoing "), "files": [path for path, _, _ in change.files]})
    else:
        say(f"Undone: {change.label.removeprefix('undoing ')}.")
    return FINE


def _called(item: Item) -> str:
    return item.name if item.kind == "game" else f"{item.name} ({item.kind})"


def _item_json(item: Item) -> dict[str, Any]:
    lineage = item.lineage.words() if item.lineage else None
    told = {"kind": item.kind, "name": item.name, "content": item.content, "licence": item.licence}
    return told | {"credit": list(item.credit), "made_of": lineage}


def _wrapped(text: str) -> None:
    for line in textwrap.wrap(text, 78, initial_indent="  ", subsequent_indent="  "):
        say(line)
