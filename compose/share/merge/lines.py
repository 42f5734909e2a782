"""Three-way merge of the lines of one section: by what each line is about, not by where it stands in a text.

A line of the earlier state is found again in a later one by its words, else by its topic, else by being
the likest line of its kind. What only one side changed is taken from it; what both changed is a conflict,
unless they changed it to the same words.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from difflib import SequenceMatcher

import attrs

from grammar.frozen import frozen
from grammar.topics import Topic, topic
from grammar.tree import Line

LIKE_ENOUGH = 0.6
Key = tuple[str, int]


@frozen
class Slot:
    """One line of a merged section, or a conflict about it. None stands for no line.

    `clear` is True where `line` is settled; then `ours` or `theirs` is there only where that side alone
    added or changed the line.
    """

    clear: bool
    line: Line | None
    base: Line | None = None
    ours: Line | None = None
    theirs: Line | None = None


def said(line: Line | None) -> str:
    """All that a line says, with the lines of its block; "" for no line."""
    if line is None:
        return ""
    return "; ".join([line.sentence.words(), *(said(inner) for inner in line.block)])


def merged_lines(base: Sequence[Line], ours: Sequence[Line], theirs: Sequence[Line]) -> tuple[Slot, ...]:
    """The slots of a merged section in their order; slots that came out empty are left out."""
    in_ours, in_theirs = _found_again(base, ours), _found_again(base, theirs)
    slots: dict[Key, Slot] = {}
    for number, line in enumerate(base):
        mine = ours[in_ours[number]] if number in in_ours else None
        other = theirs[in_theirs[number]] if number in in_theirs else None
        slots["base", number] = _settled(line, mine, other)
    our_keys, their_keys = _keys(ours, in_ours, "ours"), _keys(theirs, in_theirs, "theirs")
    slots |= {key: Slot(True, ours[key[1]], ours=ours[key[1]]) for key in our_keys if key[0] == "ours"}
    slots |= {key: Slot(True, theirs[key[1]], theirs=theirs[key[1]]) for key in their_keys if key[0] == "theirs"}
    _meet(slots, ours, theirs)
    order = _order([key for key in slots if key[0] == "base"], our_keys, their_keys)
    return tuple(slot for key in order if (slot := slots.get(key)) and not (slot.clear and slot.line is None))


def _found_again(base: Sequence[Line], later: Sequence[Line]) -> dict[int, int]:
    """Which line of the later state each line of the earlier one has become."""
    found: dict[int, int] = {}
    for same in (said, _topic_alone(base, later)):
        waiting: dict[object, list[int]] = {}
        for at, line in enumerate(later):
            if at not in found.values():
                waiting.setdefault(same(line), []).append(at)
        for number, line in enumerate(base):
            here = waiting.get(same(line))
            if number not in found and here:
                found[number] = here.pop(0)
    likest = sorted(_likeness(base, later, found), reverse=True)
    for _, number, at in ((ratio, -number, -at) for ratio, number, at in likest):
        if number not in found and at not in found.values():
            found[number] = at
    return found


def _topic_alone(base: Sequence[Line], later: Sequence[Line]) -> Callable[[Line], object]:
    """The topic of a line where no state has two lines of it; else something that is never the same."""
    counts = [Counter(topic(line.sentence) for line in lines) for lines in (base, later)]

    def alone(line: Line) -> object:
        about: Topic = topic(line.sentence)
        return about if all(count[about] < 2 for count in counts) else id(line)

    return alone


def _likeness(base: Sequence[Line], later: Sequence[Line], found: dict[int, int]) -> Iterator[tuple[float, int, int]]:
    """Likeness, and the two places negated, so that of two alike pairs the earlier is taken."""
    for number, line in enumerate(base):
        for at, other in enumerate(later):
            if number in found or at in found.values() or type(line.sentence) is not type(other.sentence):
                continue
            ratio = SequenceMatcher(None, said(line), said(other), autojunk=False).ratio()
            if ratio >= LIKE_ENOUGH:
                yield ratio, -number, -at


def _settled(base: Line, ours: Line | None, theirs: Line | None) -> Slot:
    if said(ours) == said(theirs):
        return Slot(True, ours and theirs and _with_notes(base, ours, theirs))
    if said(ours) == said(base):
        return Slot(True, ours and theirs and _with_notes(base, theirs, ours), theirs=theirs)
    if said(theirs) == said(base):
        return Slot(True, ours and theirs and _with_notes(base, ours, theirs), ours=ours)
    return Slot(False, None, base, ours, theirs)


def _with_notes(base: Line | None, line: Line, other: Line) -> Line:
    return attrs.evolve(line, notes=merged_notes(base.notes if base else (), line.notes, other.notes))


def merged_notes(base: tuple[str, ...], ours: tuple[str, ...], theirs: tuple[str, ...]) -> tuple[str, ...]:
    """Notes of one place: those of the side that changed them, or what both kept and what either added."""
    if ours == base:
        return theirs
    kept = (note for note in ours if note in theirs or note not in base)
    return (*kept, *(note for note in theirs if note not in (*base, *ours)))


def _keys(lines: Sequence[Line], found: dict[int, int], side: str) -> list[Key]:
    back = {at: number for number, at in found.items()}
    return [("base", back[at]) if at in back else (side, at) for at in range(len(lines))]


def _meet(slots: dict[Key, Slot], ours: Sequence[Line], theirs: Sequence[Line]) -> None:
    """Lines new on both sides: once where they are the same, a conflict where they are about the same."""
    ours_twice, theirs_twice = (Counter(topic(line.sentence) for line in lines) for lines in (ours, theirs))
    new_ours = [key for key, slot in slots.items() if slot.clear and slot.line and slot.ours]
    new_theirs = [key for key, slot in slots.items() if slot.clear and slot.line and slot.theirs]
    for mine in new_ours:
        for other in new_theirs:
            if other not in slots:
                continue
            one, two = slots[mine].line, slots[other].line
            assert one is not None and two is not None
            about = topic(one.sentence)
            if said(one) == said(two):
                slots[mine] = Slot(True, _with_notes(None, one, two))
                del slots[other]
                break
            if about == topic(two.sentence) and ours_twice[about] < 2 and theirs_twice[about] < 2:
                slots[mine] = Slot(False, None, None, one, two)
                del slots[other]
                break


def _order(base: Sequence[Key], ours: Sequence[Key], theirs: Sequence[Key]) -> list[Key]:
    """The order of whoever changed it, ours first; lines that it lacks come behind the line they came behind."""
    kept_ours = [key for key in ours if key[0] == "base"]
    kept_base = [key for key in base if key in set(kept_ours)]
    first, second = (theirs, ours) if kept_ours == kept_base else (ours, theirs)
    order = list(first)
    for others in (second, base):
        for at, key in enumerate(others):
            if key in order:
                continue
            behind = next((each for each in reversed(others[:at]) if each in order), None)
            order.insert(order.index(behind) + 1 if behind is not None else 0, key)
    return order
