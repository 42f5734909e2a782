"""The library in another language: every name and every text of it is there, and nothing that it does not say."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import attrs
import pytest

from grammar.class_told import class_told
from grammar.parse import parse
from grammar.sentences.base import Node
from grammar.sentences.head import Switch
from grammar.sentences.modifier import Takes
from grammar.sentences.sides import Kit, Role, SideBySide, Sides
from grammar.sentences.space import Area, Track
from grammar.words import called_by_players, player_of
from library import own_hall, word_lists
from library.lesson_words import skill_words
from library.load import class_paths, game_paths, halls, kit_catalogue, kit_names, modifier_paths, remix_paths
from library.reading import DataError
from library.word_lists import word_list

LANGUAGES = sorted(path.name for path in (Path(word_lists.__file__).parent / "words").iterdir())
# Lines whose quotes are names of other sheets, or a hash: nothing that is printed for a class.
NO_TEXT = re.compile(r"^\s*(?:note:|with \"|based on|clashes with|turn o|in the hall)")


@cache
def sheets():
    """Every sheet of games, modifiers and remixes with its text."""
    found = []
    for path in (*game_paths(), *modifier_paths(), *remix_paths()):
        text = path.read_text(encoding="utf-8")
        read = parse(text, path.name)
        assert read.value is not None, path
        found += [(each, text) for each in (*read.value.games, *read.value.modifiers, *read.value.remixes)]
    return tuple(found)


def nodes(value):
    """Every sentence, and part of one, inside a value."""
    if isinstance(value, Node):
        yield value
    if attrs.has(type(value)):
        for part in attrs.fields(type(value)):
            yield from nodes(getattr(value, part.name))
    elif isinstance(value, tuple):
        for each in value:
            yield from nodes(each)


def told_halls():
    """The halls that the library's classes tell of themselves."""
    for path in class_paths():
        rules = parse(path.read_text(encoding="utf-8"), path.name).value
        told = [class_told(sheet).own_hall for sheet in rules.classes]
        yield from (own_hall(each).value for each in told if each.says_something)


@cache
def names():
    """The names that sheets give and that the kit goes by, each in the singular."""
    found = set()
    for name, item in kit_names().items():
        found.add(item.name if name == item.plural else name)
    for sheet, _text in sheets():
        for node in nodes(sheet):
            if isinstance(node, Area | Track | Role):
                found.add(node.name.text)
            elif isinstance(node, Sides):
                found |= {player_of(side.text) if called_by_players(side.text) else side.text for side in node.names}
            elif isinstance(node, SideBySide):
                found.add(node.what.text.removesuffix("s"))
            elif isinstance(node, Kit):
                item = kit_names().get(node.name.text)
                found.add(item.name if item else node.name.text.removesuffix("s"))
    return frozenset(found)


@cache
def texts():
    """The texts that are quoted in sheets and in the kit, titles, names of modifiers, switches, values and halls."""
    found = {item.caution for item in kit_catalogue().values() if item.caution}
    found |= {text for words in skill_words().values() for text in (words.ask, *(way.text for way in words.ways))}
    drawn = (*halls().values(), *told_halls())
    found |= {hall.name for hall in drawn} | {fixed.name for hall in drawn for fixed in hall.obstacles}
    for sheet, text in sheets():
        found.add(sheet.title)
        for line in text.splitlines():
            if not NO_TEXT.match(line):
                found |= set(re.findall(r'"([^"]+)"', line))
        for node in nodes(sheet):
            if isinstance(node, Switch):
                found.add(node.name.text)
            elif isinstance(node, Takes):
                found.add(node.parameter)
    return frozenset(found)


def test_sheets_say_much():
    assert len(texts()) > 250 and len(names()) > 120
    assert {"heron", "lantern queue", "Aim low."} & names() == {"heron"}


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_name_has_its_word(language):
    assert sorted(names() - word_list(language).words.keys()) == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_text_has_its_translation(language):
    assert sorted(texts() - word_list(language).texts.keys()) == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_nothing_is_translated_that_nobody_says(language):
    assert sorted(word_list(language).texts.keys() - texts()) == []
    assert sorted(word_list(language).words.keys() - names()) == []


def test_words_know_the_plural_that_sheets_write():
    words = word_list("fr").words
    assert words["ball on cone"].names == "balls on cones"
    assert words["boatman"].names == "boatmen"
    assert (words["lantern"].one, words["lantern"].many, words["lantern"].feminine) == ("lanterne", "lanternes", True)


def test_no_french_word_begins_with_a_mute_h():
    """Such an h would have to be elided, which nothing does. These are not mute."""
    with_h = {word.one for word in word_list("fr").words.values() if word.one[0] in "hH"}
    assert with_h <= {"héron"}


def test_a_language_without_words_has_an_empty_list():
    assert not word_list("xx").words and not word_list("xx").texts


@pytest.mark.parametrize(
    ("wrong", "told"),
    [
        ('[words]\n"stone" = { one = "caillou", many = "cailloux", gender = "x" }', "`x` is none of m, f"),
        ('[words]\n"stone" = { one = "caillou", gender = "m" }', "must be a text"),
        ('[words]\n"stone" = { one = "caillou", many = "cailloux", gender = "m" }', "stands otherwise in another file"),
        ('[texts]\n"Aim low." = "Vise haut."', "stands otherwise in another file"),
        ('[names]\n"stone" = "pierre"', "not a key here"),
    ],
)
def test_a_wrong_list_says_where(tmp_path, monkeypatch, wrong, told):
    folder = tmp_path / "words" / "zz"
    folder.mkdir(parents=True)
    right = '[words]\n"stone" = { one = "pierre", many = "pierres", gender = "f" }\n[texts]\n"Aim low." = "Vise bas."'
    (folder / "a.toml").write_text(right, encoding="utf-8")
    (folder / "b.toml").write_text(wrong, encoding="utf-8")
    monkeypatch.setattr(word_lists, "HERE", tmp_path)
    with pytest.raises(DataError, match=told):
        word_lists.word_list.__wrapped__("zz")
