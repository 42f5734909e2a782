"""Packs on the terminal: look into one, verify it, take it in, and undo that."""

from __future__ import annotations

import textwrap
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from compose.share.bounds import MOST_PACK_BYTES
from compose.share.making import Sheets, played
from compose.share.naming import slug
from compose.share.pack.item import Item
from compose.share.pack.pack import Pack, read_pack
from compose.share.pack.taking_in import Arrival, Choice, State, arrivals, take_in
from compose.share.told import outcome_of
from compose.share.whole_files import read_plain
from compose.terminal.answer import FINE, TO_MEND, WIDTH, finding_json, refuse, say, say_json
from compose.terminal.sharing.shelf_door import at_hand, given, own_shelf, shelf_folder, today
from grammar.tree import GameSheet, RemixSheet
from grammar.words import count, listing


def read(path: Path, as_json: bool) -> Pack:
    """The pack in a file; ends the command with one line where it is refused."""
    data = given(outcome_of(path, lambda: read_plain(path, MOST_PACK_BYTES)), as_json)
    return given(read_pack(data, str(path)), as_json)


def look(path: Path, shelf: Path | None, as_json: bool) -> int:
    """Tell what a pack carries, and how that stands to the shelf; the exit code."""
    pack = read(path, as_json)
    standing = _standing(pack, shelf, as_json)
    if as_json:
        items = [item_json(each.item) | {"on_your_shelf": each.state.value} for each in standing]
        say_json({"title": pack.title, "from": pack.origin, "sha256": pack.sha256, "items": items})
        return FINE
    say(f"{pack.title or path.name}, from {pack.origin or 'somebody unnamed'}: {count(len(standing), 'thing')}")
    for each in standing:
        say()
        say(f"{called(each.item)}, {each.item.licence or 'no licence named'}")
        say_wrapped(each.item.about)
        for line in each.item.credit:
            say_wrapped(f"Credit: {line}")
        if each.item.lineage:
            say_wrapped(f"Made of {each.item.lineage.words()}.")
        say_wrapped(each.words())
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
        say_wrapped(f"{title} cannot be made here: {findings[0].title} {findings[0].hint}")
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
        say_wrapped(arrival.words() + kept)
    kept_number = sum(bool(name) for _, name in taken.kept)
    say(f"{count(kept_number, 'thing').capitalize()} taken in." if kept_number else "Nothing was changed.")
    return FINE


def _told_before(standing: Sequence[Arrival], missing: Sequence[Arrival], came_in: str, as_json: bool) -> int:
    if as_json:
        told = [{"name": each.item.name, "state": each.state.value, "to_choose": each in missing} for each in standing]
        say_json({"taken": [], "would_take": told})
        return TO_MEND if missing else FINE
    for each in standing:
        say_wrapped(each.words())
    if missing:
        names = listing(each.item.name for each in missing)
        say_wrapped(f"Nothing was taken in. Say what becomes of {names}: --keep ours, theirs or both;")
        say(f'or one by one: --choose "{missing[0].item.name}=both"')
        newer = [each.item.name for each in missing if each.state is State.NEWER]
        if newer:
            say_wrapped(f"With theirs you lose nothing of {listing(newer)}; undo takes it back.")
        say_wrapped("To choose line by line, lay them together first:")
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


def called(item: Item) -> str:
    """A thing by its name, with what it is."""
    return item.name if item.kind == "game" else f"{item.name} ({item.kind})"


def item_json(item: Item) -> dict[str, Any]:
    """A thing of a pack as JSON."""
    lineage = item.lineage.words() if item.lineage else None
    told = {"kind": item.kind, "name": item.name, "content": item.content, "licence": item.licence}
    return told | {"credit": list(item.credit), "made_of": lineage}


def say_wrapped(text: str) -> None:
    """Print a text over as many lines as it takes."""
    for line in textwrap.wrap(text, WIDTH, initial_indent="  ", subsequent_indent="  "):
        say(line)
