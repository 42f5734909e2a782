"""From what a teacher types to a game or a modifier: a file, or a name of the library."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path
from shlex import quote
from typing import TYPE_CHECKING

import library
from compose.terminal.answer import file_lines, refuse, say_to_error, stop
from compose.terminal.typed.at_hand import GAMES, at_hand, own
from grammar.finding import Finding, Outcome, Severity
from grammar.game import Game
from grammar.parse import Reading, parse_bytes
from grammar.resolve import resolve
from grammar.span import Span
from grammar.tree import GameSheet, RuleFile
from grammar.words import did_you_mean, listing
from library import KitItem

if TYPE_CHECKING:
    from compose.modifiers.modifier import Modifier, Use, Value

ENDING = ".rules"
COMMAND_LINE = Span("the command line", 0, 0, 0)


@cache
def kit() -> Mapping[str, KitItem]:
    """The library's kit by every name it goes by."""
    return library.kit_names()


@cache
def categories() -> Mapping[str, str]:
    """The category of everything in the kit, by its singular names."""
    return library.kit_categories()


def read(path: Path, as_json: bool) -> RuleFile:
    """The tree of a file; ends the command where there is none."""
    outcome = reading(path)
    if outcome.value is None:
        stop(outcome.findings, as_json)
    return outcome.value


def reading(path: Path) -> Outcome[RuleFile]:
    """The tree of a file, or all that is wrong with it."""
    try:
        if path.is_dir():
            return _unread(f"`{path}` is a folder, not a rule sheet.", "Name a file in it.")
        with path.open("rb") as file:
            data = file.read((1 << 20) + 1)
    except OSError as error:
        return _unread(f"`{path}` cannot be read: {(error.strerror or str(error)).lower()}.", "Check its name.")
    outcome = parse_bytes(data, shown_path(path))
    return outcome if outcome.value is not None else Outcome(None, _proofread(data, shown_path(path)))


def _unread(title: str, hint: str) -> Outcome[RuleFile]:
    return Outcome(None, (Finding("U-use", Severity.ERROR, title, COMMAND_LINE, hint),))


def _proofread(data: bytes, file: str) -> tuple[Finding, ...]:
    """Everything that is wrong with a file, with advice."""
    from grammar.mistakes.proofread import proofread  # only where something is wrong

    return proofread(data, file, categories(), meaning_of_others)


def meaning_of_others(reading: Reading) -> Iterator[Finding]:
    """What is wrong with the modifiers, classes and halls of a file, as far as all of their lines could be read."""
    from compose.modifiers.from_sheet import modifier_of
    from compose.staging.class_from_sheet import class_of
    from grammar.hall_told import hall_told

    for modifier in reading.rules.modifiers:
        yield from modifier_of(modifier).findings if modifier.span not in reading.unread else ()
    for each in reading.rules.classes:
        yield from class_of(each, library.halls(), categories()).findings if each.span not in reading.unread else ()
    for hall in reading.rules.halls:
        yield from library.own_hall(hall_told(hall)).findings if hall.span not in reading.unread else ()


def shown_path(path: Path) -> str:
    """How a file is called in what is printed: files of the library from there, others as given."""
    home = library.granted_path().parent
    return str(Path(home.name, path.relative_to(home))) if path.is_relative_to(home) else str(path)


def granted() -> GameSheet:
    """The sheet of rules that every game takes for granted."""
    return library.granted_sheet()


def slug(name: str) -> str:
    """The file name of a title: "Lantern Row" gives "lantern-row"."""
    return re.sub(r"[^\w]+", "-", name.lower()).strip("-")


def path_of(name: str, kinds: Sequence[str], what: str, as_json: bool) -> Path:
    """The file of a thing: by its path, or by a name of this folder, of the shelf or of the library."""
    if name.endswith(ENDING) or "/" in name or "\\" in name:
        return Path(name)
    by_slug = {each.slug: each.path for each in at_hand(kinds)}
    if slug(name) in by_slug:
        return by_slug[slug(name)]
    if Path(name).is_file():
        return Path(name)
    titles = [each.replace("-", " ") for each in by_slug]
    hint = did_you_mean(name.replace("-", " "), titles) or f"There are {listing(sorted(titles))}."
    refuse(f"There is no {what} called `{name}`.", hint, as_json)


def rules_of(name: str, as_json: bool = False) -> RuleFile:
    """The file of a game or remix, by its path or by the library's name; ends the command where it holds none."""
    path = path_of(name, GAMES, "game", as_json)
    rules = read(path, as_json)
    if not rules.games and not rules.remixes:
        refuse(f"`{path}` holds no game.", used_as(rules, path), as_json)
    return rules


def used_as(rules: RuleFile, path: Path) -> str:
    """What to do with a file that holds no game: a class, a hall and a modifier are used with one."""
    if rules.classes:
        return f"It holds a class: ruleweave games --class {quote(str(path))}"
    if rules.halls:
        return f'It holds a hall: ruleweave fit "lantern row" --pupils 24 --hall {quote(str(path))}'
    if rules.modifiers:
        return f'It holds a modifier: ruleweave check "lantern row" --with {quote(str(path))}'
    return "A game begins with a line such as: game Lantern Row"


def game(name: str, as_json: bool = False) -> Game:
    """A game, or what a remix makes of one; ends the command where a sheet has mistakes."""
    return game_of(rules_of(name, as_json), as_json)


def game_of(rules: RuleFile, as_json: bool = False) -> Game:
    """The game of a file, or what its remix makes of one; ends the command where a sheet has mistakes."""
    if not rules.games:
        from compose.terminal.remix_files import made_game

        return made_game(rules, as_json)
    outcome = resolve(rules.games[0], categories())
    if outcome.value is None:
        stop(_proofread("\n".join(file_lines(rules.file)).encode(), rules.file) or outcome.findings, as_json)
    return outcome.value


def modifiers_at_hand() -> tuple[Modifier, ...]:
    """Those of the folder and the shelf, then those of the library of other names. One of one's own with mistakes is
    left out, and that is said."""
    from compose.modifiers.of_library import library_modifiers

    found: list[Modifier] = []
    for each in own(("modifier",)):
        modifiers = _modifiers_in(each.path)
        if modifiers is None:
            say_to_error(f"{shown_path(each.path)} is left out: it has mistakes. Look at it with: show {each.path}")
        found += modifiers or ()
    names = {each.name for each in found}
    return (*found, *(each for each in library_modifiers() if each.name not in names))


def _modifiers_in(path: Path) -> tuple[Modifier, ...] | None:
    """The modifiers of a file; None where it cannot be read, or one has mistakes."""
    from compose.modifiers.from_sheet import modifier_of

    rules = reading(path).value
    outcomes = [modifier_of(sheet) for sheet in rules.modifiers] if rules is not None else []
    found = [outcome.value for outcome in outcomes if outcome.value is not None]
    return tuple(found) if rules is not None and len(found) == len(outcomes) else None


def use(written: str, as_json: bool = False) -> Use:
    """A modifier as written on the command line: "add balls", "add balls, n 3", "turn on hits count"."""
    from compose.modifiers.changes.switching import switching
    from compose.modifiers.from_sheet import modifier_of
    from compose.modifiers.modifier import Use

    turned = re.fullmatch(r"(turn on|turn off)\s+(.+)", written.strip(), re.IGNORECASE)
    if turned:
        return switching(turned.group(1).lower() == "turn on", turned.group(2), COMMAND_LINE)
    name, *values = (part.strip() for part in written.split(","))
    path = path_of(name, ("modifier",), "modifier", as_json)
    sheets = read(path, as_json).modifiers
    if not sheets:
        refuse(f"`{path}` holds no modifier.", "A modifier begins with a line such as: modifier add balls", as_json)
    outcome = modifier_of(sheets[0])
    if outcome.value is None:
        stop(outcome.findings, as_json)
    return Use(outcome.value, dict(_value(part, outcome.value, as_json) for part in values))


def _value(written: str, modifier: Modifier, as_json: bool) -> tuple[str, Value]:
    match = re.fullmatch(r"(\w+)\s*[= ]\s*(\d+(?:\.\d+)?)\s*(%|[a-z]*)", written)
    if match is None:
        example = f"{modifier.name}, n 3"
        refuse(f"`{written}` is not a value for {modifier.name}.", f'Write it such as "{example}".', as_json)
    name, number, unit = match.groups()
    return name, modifier.value(name, float(number), unit, COMMAND_LINE)
