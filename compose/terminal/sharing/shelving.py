"""The own shelf on the terminal: keep things, find them, note them, log rounds, give out and delete one's data."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import attrs

from compose.modifiers.content_hash import content_hash
from compose.share.pack.item import KINDS
from compose.share.shelf import own_data
from compose.share.shelf.files import Note
from compose.share.shelf.find import Found, Wanted, find
from compose.share.shelf.rounds import NO_NAMES, ObservedRound, observed
from compose.share.strict_json import json_bytes
from compose.terminal.answer import FINE, TO_MEND, WIDTH, finding_json, refuse, say, say_findings, say_json
from compose.terminal.sharing.shelf_door import given, own_shelf, shelf_folder, thing, today
from compose.terminal.writing import ends_with, write
from grammar.words import count, listing


def show(rebuild: bool, shelf: Path | None, as_json: bool) -> int:
    """Tell where the shelf is, what is on it, and which of its files cannot be read; the exit code."""
    with own_shelf(shelf, as_json) as opened:
        if rebuild:
            given(opened.rebuild(), as_json)
        everything = given(find(opened, Wanted()), as_json).fitting
        troubles = opened.troubles()
    if as_json:
        told = {"folder": str(shelf_folder(shelf)), "things": [_found_json(each) for each in everything]}
        say_json(told | {"findings": [finding_json(finding) for finding in troubles]})
        return TO_MEND if troubles else FINE
    say(f"The shelf in {shelf_folder(shelf)} has {count(len(everything), 'thing')}.")
    for each in everything:
        _show_found(each)
    say_findings(troubles)
    return TO_MEND if troubles else FINE


def wanted(
    words: str,
    skill: str,
    age: float | None,
    players: int | None,
    kit: Sequence[str],
    space: str,
    kind: str,
    sound: bool,
    as_json: bool,
) -> Wanted:
    """The wishes as they were written on the command line."""
    if kind and kind not in KINDS:
        refuse(f"There is no kind `{kind}`.", f"Say {listing(KINDS, 'or')}.", as_json)
    floor = re.fullmatch(r"\s*(\d{1,3}(?:\.\d+)?)\s*m?\s*(?:by|x)\s*(\d{1,3}(?:\.\d+)?)\s*m?\s*", space)
    if space and floor is None:
        refuse(f"`{space}` is no floor.", 'Write it such as "18 by 9", in metres.', as_json)
    room = (float(floor.group(1)), float(floor.group(2))) if floor else None
    return Wanted(kind, skill, age, tuple(kit), room, players, words, sound)


def search(wanted: Wanted, shelf: Path | None, as_json: bool) -> int:
    """Find things on the shelf; the nearest where nothing fits, and then exit code 1."""
    with own_shelf(shelf, as_json) as opened:
        if wanted.sound:
            # The check is loaded only where it is asked for: the shelf opens faster without.
            from compose.share.shelf.verdicts import judge

            given(judge(opened), as_json)
        found = given(find(opened, wanted), as_json)
    if as_json:
        told = {
            "fitting": [_found_json(each) for each in found.fitting],
            "nearest": [_found_json(each) for each in found.nearest],
            "did_you_mean": found.spelling or None,
        }
        say_json(told)
        return FINE if found.fitting else TO_MEND
    for each in found.fitting:
        _show_found(each)
    if found.fitting:
        return FINE
    say("Nothing on the shelf fits." + (f" Did you mean `{found.spelling}`?" if found.spelling else ""))
    if found.nearest:
        say("The nearest:")
    for each in found.nearest:
        _show_found(each)
    return TO_MEND


def keep(names: Sequence[str], newer: bool, shelf: Path | None, as_json: bool) -> int:
    """Put things on the shelf by file or by the library's name; the exit code."""
    items = [thing(name, shelf, as_json)[0] for name in names]
    with own_shelf(shelf, as_json) as opened:
        for item in items:
            there = opened.of_key(item)
            changes = newer and there is not None and there[1] != item.content
            given(opened.replace(item) if changes else opened.put(item), as_json)
    if as_json:
        say_json({"kept": [item.name for item in items]})
    else:
        say("\n".join(f"{item.name} is on the shelf." for item in items))
    return FINE


def drop(name: str, shelf: Path | None, as_json: bool) -> int:
    """Take a thing off the shelf; the exit code."""
    with own_shelf(shelf, as_json) as opened:
        gone = given(opened.take_off(name), as_json)
    _answer({"taken_off": gone.item.name}, f"{gone.item.name} is off the shelf; undo puts it back.", as_json)
    return FINE


def note(name: str, text: str, shelf: Path | None, as_json: bool) -> int:
    """Note something of a thing; the exit code."""
    with own_shelf(shelf, as_json) as opened:
        stored = given(opened.note(name, Note(today(), text)), as_json)
    _answer({"name": stored.item.name, "notes": [attrs.asdict(each) for each in stored.notes]}, "Noted.", as_json)
    return FINE


def played(
    name: str, modifiers: Sequence[str], minutes: float, seen: ObservedRound, shelf: Path | None, as_json: bool
) -> int:
    """Keep a round that was played; the exit code. `seen` still lacks its length and its game."""
    from compose.terminal.stages import remixed

    folder = shelf_folder(shelf)
    item, _ = thing(name, shelf, as_json)
    if item.kind == "modifier":
        refuse(f"{item.name} is a modifier; nobody plays it alone.", "Name a game.", as_json)
    on_shelf = folder / item.path
    made, _ = remixed(str(on_shelf) if on_shelf.is_file() else name, modifiers, as_json)
    whole = attrs.evolve(seen, length_s=round(60 * minutes, 1), content=content_hash(made.game.sheet))
    checked = given(observed(whole, [side.name for side in made.game.sides]), as_json)
    with own_shelf(shelf, as_json) as opened:
        number = given(opened.observe(item.name, checked), as_json)
    words = f"Kept: {count(number, 'round')} of {item.name} so far. {NO_NAMES}"
    _answer({"game": item.name, "rounds": number, "kept": attrs.asdict(checked)}, words, as_json)
    return FINE


def rounds(name: str, shelf: Path | None, as_json: bool) -> int:
    """Show the rounds of a game that were kept; the exit code."""
    with own_shelf(shelf, as_json) as opened:
        kept = given(opened.rounds(name), as_json)
    if as_json:
        say_json({"game": name, "rounds": [attrs.asdict(each) for each in kept]})
        return FINE
    say(f"{count(len(kept), 'round')} of {name}".capitalize() + ":" if kept else f"No round of {name} was kept.")
    for each in kept:
        whose = f"class {each.class_code}, " if each.class_code else ""
        length = f"{each.length_s / 60:.3g} min"
        say(f"  {each.day}: {whose}{each.pupils} pupils, {length}, won by {each.winner}, {each.waited} waited")
    return FINE


def give_out(out: Path, force: bool, shelf: Path | None, as_json: bool) -> int:
    """Write all of one's own data into a file; the exit code."""
    ends_with(out, (".json",), as_json)
    with own_shelf(shelf, as_json) as opened:
        data = given(own_data.own_data(opened), as_json)
    write(out, json_bytes(data), force, as_json)
    _answer({"file": str(out)}, f"Everything that the shelf knows beside the rule sheets is in {out}.", as_json)
    return FINE


def forget(what: str, game: str, class_code: str, sure: bool, shelf: Path | None, as_json: bool) -> int:
    """Delete rounds, notes or everything; the exit code."""
    if what not in ("rounds", "notes", "everything"):
        refuse(f"`{what}` cannot be forgotten.", "Say rounds, notes or everything.", as_json)
    if not sure:
        refuse("This cannot be undone.", "Say --sure if you mean it; `shelf export` gives it out first.", as_json)
    with own_shelf(shelf, as_json) as opened:
        if what == "rounds":
            outcome = own_data.forget_rounds(opened, game, class_code)
        else:
            outcome = own_data.forget_notes(opened) if what == "notes" else own_data.forget_everything(opened)
        gone = given(outcome, as_json)
    noun = {"rounds": "round", "notes": "note", "everything": "thing"}[what]
    _answer({"deleted": gone, "what": what}, f"Deleted: {count(gone, noun)}.", as_json)
    return FINE


def _answer(told: dict[str, Any], words: str, as_json: bool) -> None:
    if as_json:
        say_json(told)
    else:
        say("\n".join(textwrap.wrap(words, WIDTH)))


def _found_json(found: Found) -> dict[str, Any]:
    return attrs.asdict(found)


def _show_found(found: Found) -> None:
    facts = [found.kind]
    if found.ages_years:
        facts.append("ages {:g} to {:g}".format(*found.ages_years))
    if found.players:
        facts.append("{} to {} pupils".format(*found.players))
    if found.rounds:
        facts.append(f"{count(found.rounds, 'round')} kept")
    say(f"{found.name}  ({', '.join(facts)})")
    made_of = f"Made of {found.lineage}." if found.lineage else ""
    came = f"It came {found.origin}." if found.origin else ""
    for line in (found.about, made_of, came, *(f"But it {each}." for each in found.lacks)):
        for part in textwrap.wrap(line, 76, initial_indent="  ", subsequent_indent="  "):
            say(part)
