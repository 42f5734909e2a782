"""Merging on the terminal: what both schools changed is asked about, sentence by sentence."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from compose.modifiers.content_hash import content_hash
from compose.share.bounds import read_rules
from compose.share.making import played
from compose.share.merge.merge import Conflict, Merge, Side, blank, common_base, merge
from compose.share.pack.item import ENDING, Item, Sheet, item_of
from compose.share.together.folder import packed_from
from compose.terminal.answer import FINE, TO_MEND, WIDTH, WRONG, finding_json, refuse, say, say_findings, say_json
from compose.terminal.sharing.packing import read
from compose.terminal.sharing.shelf_door import at_hand, given, own_shelf, shelf_folder, thing
from compose.terminal.writing import write
from grammar.finding import Finding
from grammar.tree import ModifierSheet
from grammar.words import count, listing


def show_merge(
    ours: str,
    theirs: str,
    base: str | None,
    choose: Sequence[str],
    rest: str | None,
    out: Path | None,
    force: bool,
    shelf: Path | None,
    as_json: bool,
) -> int:
    """Merge two states of a thing; without --out it becomes the shelf's. The exit code."""
    our_item, our_sheet = thing(ours, shelf, as_json)
    their_item, their_sheet = _theirs(theirs, our_item, shelf, as_json)
    if our_item.kind != their_item.kind:
        refuse(f"{our_item.name} is a {our_item.kind}, {their_item.name} a {their_item.kind}.", "", as_json)
    before = _base(base, our_item, their_item, shelf, as_json)
    choices = _choices(choose, as_json)
    otherwise = _side(rest, as_json) if rest else None
    made = merge(before if before is not None else blank(our_sheet), our_sheet, their_sheet, choices, otherwise)
    unknown = [str(number) for number in choices if number not in {each.number for each in made.conflicts}]
    if unknown:
        refuse(f"There is no conflict {listing(unknown, 'or')}.", f"There are {len(made.conflicts)}.", as_json)
    findings = _mistakes(made, shelf)
    done = not made.open and not findings
    if done:
        _keep(made, our_item, their_item, out, force, shelf, as_json)
    if as_json:
        say_json(_merge_json(made, before is not None, done, findings))
    else:
        if before is None:
            say("No state is known that both came from: lines that only one has are kept.")
        elif content_hash(before) == our_item.content != their_item.content:
            say("Yours is as it came: all that theirs changed is taken.")
        _tell(made, our_item, done, findings, out)
    return WRONG if findings and not made.open else FINE if done else TO_MEND


def _theirs(written: str, ours: Item, shelf: Path | None, as_json: bool) -> tuple[Item, Sheet]:
    """A thing by its name or file, or that of our name in a pack, in a common shelf, or in our own shelf's past."""
    past = re.fullmatch(r"past(?: (\d{1,3}))?", written.strip(), re.IGNORECASE)
    if past:
        return _before(ours, int(past[1] or 1), shelf, as_json)
    path = Path(written)
    if path.suffix == ENDING or not path.exists():
        return thing(written, shelf, as_json)
    pack = given(packed_from(path, [ours.name]), as_json) if path.is_dir() else read(path, as_json)
    found = next((pair for pair in zip(pack.items, pack.sheets, strict=True) if pair[0].key == ours.key), None)
    if found is None:
        hint = f"It has {listing(each.name for each in pack.items)}."
        refuse(f"`{written}` brings nothing called `{ours.name}`.", hint, as_json)
    return found


def _before(ours: Item, back: int, shelf: Path | None, as_json: bool) -> tuple[Item, Sheet]:
    """What a thing of the shelf said before, counted from its last state backwards."""
    with own_shelf(shelf, as_json) as opened:
        kept = [text for content in reversed(ours.history) if (text := given(opened.past(content), as_json))]
    if back > len(kept) or back < 1:
        there = f"The shelf has {count(len(kept), 'state')} of it from before." if kept else "It never was otherwise."
        refuse(f"`{ours.name}` has no past {back}.", there, as_json)
    sheet = read_rules(kept[back - 1], f"{ours.name}, past {back}")
    return item_of(sheet), sheet


def _base(written: str | None, ours: Item, theirs: Item, shelf: Path | None, as_json: bool) -> Sheet | None:
    if written:
        return thing(written, shelf, as_json)[1]
    if not shelf_folder(shelf).is_dir():
        return None
    with own_shelf(shelf, as_json) as opened:
        found = common_base(opened, ours, theirs)
        return given(found, as_json) if found.findings else found.value


def _mistakes(made: Merge, shelf: Path | None) -> tuple[Finding, ...]:
    """What is wrong with the two together, where each alone was right."""
    if made.open or isinstance(made.sheet, ModifierSheet):
        return ()
    outcome = played(made.sheet, at_hand(shelf))
    return outcome.findings if outcome.value is None else ()


def _keep(
    made: Merge, ours: Item, theirs: Item, out: Path | None, force: bool, shelf: Path | None, as_json: bool
) -> None:
    item = item_of(made.sheet, (*ours.history, ours.content, *theirs.history, theirs.content))
    if out is not None:
        write(out, item.text.encode(), force, as_json)
        return
    with own_shelf(shelf, as_json) as opened:
        given(opened.replace(item), as_json)


def _side(word: str, as_json: bool) -> Side:
    try:
        return Side(word.strip().lower())
    except ValueError:
        refuse(f"`{word}` is no side.", f"Say {listing([each.value for each in Side], 'or')}.", as_json)


def _choices(written: Sequence[str], as_json: bool) -> dict[int, Side]:
    found: dict[int, Side] = {}
    for each in written:
        number, _, word = each.partition("=")
        if not number.strip().isdecimal() or len(number) > 5:
            refuse(f"`{each}` is no choice.", 'Write the number of a conflict and a side, such as "1=theirs".', as_json)
        found[int(number)] = _side(word, as_json)
    return found


def _tell(made: Merge, ours: Item, done: bool, findings: tuple[Finding, ...], out: Path | None) -> None:
    for conflict in made.conflicts:
        settled = "" if conflict in made.open else " (settled)"
        text = f"{conflict.number}. {conflict.words()}{settled}"
        say("\n".join(textwrap.wrap(text, WIDTH, subsequent_indent="   ")))
    if made.open:
        first = made.open[0].number
        say(f"{count(len(made.open), 'conflict')} open; nothing was written.".capitalize())
        say(f'Choose for each: --choose "{first}=ours", theirs or base; or for all that are left: --rest theirs')
    elif findings:
        say("Together they are no game that can be played; nothing was written.")
        say_findings(findings, to_error=True)
    if done and content_hash(made.sheet) == ours.content and out is None:
        say(f"{ours.name} has all that theirs says; it is as it was.")
    elif done:
        say(f"{ours.name} is merged" + (f" and written to {out}." if out else " on your shelf; undo takes it back."))


def _merge_json(made: Merge, has_base: bool, done: bool, findings: tuple[Finding, ...]) -> dict[str, Any]:
    return {
        "merged": done,
        "base_known": has_base,
        "conflicts": [_conflict_json(each, each in made.open) for each in made.conflicts],
        "text": item_of(made.sheet).text,
        "findings": [finding_json(finding) for finding in findings],
    }


def _conflict_json(conflict: Conflict, is_open: bool) -> dict[str, Any]:
    return {
        "number": conflict.number,
        "section": conflict.section,
        "base": conflict.base,
        "ours": conflict.ours,
        "theirs": conflict.theirs,
        "words": conflict.words(),
        "open": is_open,
    }
