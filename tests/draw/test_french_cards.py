"""What is printed in French of the library, and of its remixes, holds no English; what nobody translated is told."""

from __future__ import annotations

import re
from functools import cache, partial

import pytest
from attrs import evolve
from drawn_games import NAMES, card_for, game_of, laid_out, lanterns, library_game
from french_sentences import NAMED, SENTENCES
from test_strip import sampled

import library
from compose.draw.card.authors import names_of, texts_of
from compose.draw.card.card import CardNotes
from compose.draw.card.of_remix import Look, card_of_remix
from compose.draw.card.text import text_of
from compose.draw.lesson.sheet import lesson_card
from compose.draw.lesson.timetable import Planned, lesson_table
from compose.draw.signs.shapes import Label
from compose.draw.strip.html import strip_html_of
from compose.draw.strip.moments import Told, moments_of
from compose.draw.strip.strip import drawing_of, strip_of
from compose.modifiers.apply import remix
from compose.modifiers.from_sheet import modifier_of
from compose.modifiers.modifier import Use
from compose.modifiers.remix import Remix
from compose.staging.resolved import resolved
from compose.staging.school_class import InCupboard, some_class
from compose.staging.staging import stage
from compose.telling.counts import counts_told
from compose.telling.french import joined
from compose.telling.moves import Happenings
from compose.telling.voice import Voice
from compose.telling.wording import ENGLISH, wording_of
from compose.terminal.stages import remixed
from grammar.parse import parse
from grammar.span import nowhere
from library.load import game_paths, kit_catalogue, kit_names, modifier_paths, remix_paths

FRENCH = wording_of("fr")
TITLES = sorted((library_game(name).title for name in NAMES), key=len, reverse=True)
STAYS = "Les mots des auteurs"  # how the line begins that says that something was not translated
# Words that English has and French has not, of the patterns and of the library's own texts.
ENGLISH_WORDS = re.compile(
    r"\b(?:the|of|when|players?|each|other|their|wins?|loses?|stays?|standing|with|from|while|nobody|half|halves|"
    r"sides?|balls?|starts?|waits?|returns?|whoever|everyone|round|lasts|turns|spends|checked|nothing|mend|can|"
    r"aim|throws?|queue|strip|bench|and|or|is|are|to|at|it|Tarn Valley schools|invented)\b",
    re.IGNORECASE,
)
# What French takes over as it is, or spells the same.
BOTH = re.compile(r"\bor\b|\bcairns?\b|CC-BY-4.0")


def english_in(text, titles):
    """The English words of a text, but for the titles, which are names."""
    for title in (*titles, *TITLES, "Tarn Valley"):
        text = re.sub(re.escape(title), "", text, flags=re.IGNORECASE)
    return sorted({found.group().lower() for found in ENGLISH_WORDS.finditer(BOTH.sub("", text))})


def said_of(game):
    """The author's names and texts that are not the same in French."""
    names = (name for name in names_of(resolved(game)) if name and FRENCH.named(name) != name)
    return {*names, *(text for text in texts_of(resolved(game)) if FRENCH.author(text) != text)}


def assert_french(card, game, titles=()):
    text = text_of(card)
    assert english_in(text, (card.title, *titles)) == []
    assert not re.search(r"\b(?:(?:de|à) les?\b|l[ea] [aeéi]\w|ne a|que il|se é)", text)
    words = " ".join(text.split()).lower()
    for title in (card.title, *titles, *TITLES):
        words = words.replace(title.lower(), "")
    for own in said_of(game):
        assert not re.search(rf"(?<![\w’-]){re.escape(own.lower())}(?![\w’-])", words), own
    drawn = " ".join(shape.text for shape in card.plan.shapes if isinstance(shape, Label))
    assert english_in(f"{drawn} {card.plan.description}", (card.title, *titles)) == []
    assert STAYS not in text


@pytest.mark.parametrize("name", NAMES)
def test_cards_of_the_library_hold_no_english(name):
    game = library_game(name)
    made = card_for(game, catalogue=kit_names(), wording=FRENCH)
    assert made.language == "fr" and made.subtitle and made.title == game.title
    assert_french(made, game)
    assert made.section("Attention").lines[-1].startswith("Les règles de sécurité")


@pytest.mark.parametrize("name", [path.stem for path in remix_paths()])
def test_remixes_of_the_library_hold_no_english(name):
    made, _said = remixed(name, ())
    card = card_of_remix(made, stage(made.game, library.norms(), kit_names()), Look(wording=FRENCH))
    assert_french(card, made.game, (made.base.title,))
    assert any(line.startswith("Fait à partir de\u00a0: ") for line in card.footer)


def numbers_in(line):
    """The figures of a line; times as seconds, for French says 1 minute of 60 s."""
    line = re.sub(r"(?<=\d),(?=\d)", ".", line)
    times = {60 * int(found) for found in re.findall(r"(\d+) min(?:utes?)?\b", line)}
    times |= {60} if "minute" in line else set()
    return {float(found) for found in re.findall(r"\d+(?:\.\d+)?", line)} | times


def assert_same_facts(made, staging):
    """Both languages have the same sections with a line for each line, and no figure is lost on the way; 1 may be a
    word, and from 0 on is no least."""
    english, french = (card_of_remix(made, staging, Look(wording=each)) for each in (ENGLISH, FRENCH))
    assert [len(part.lines) for part in english.sections] == [len(part.lines) for part in french.sections]
    assert len(english.facts) == len(french.facts)
    for one, other in zip(english.sections, french.sections, strict=True):
        for line, its in zip(one.lines, other.lines, strict=True):
            assert numbers_in(line) - numbers_in(its) <= {0, 1}, (line, its)


@pytest.mark.parametrize("name", NAMES)
def test_a_card_says_the_same_in_french_line_by_line(name):
    game = library_game(name)
    assert_same_facts(Remix(game, game), stage(game, library.norms(), kit_names()))
    group = evolve(some_class(24), cupboard=(InCupboard("foam ball", 3, "foam ball", nowhere()),))
    of_class = stage(game, library.norms(), kit_names(), group)
    if not of_class.refused:
        assert_same_facts(Remix(game, game), of_class)


@pytest.mark.parametrize("name", [path.stem for path in remix_paths()])
def test_a_remix_says_the_same_in_french_line_by_line(name):
    made, _said = remixed(name, ())
    assert_same_facts(made, stage(made.game, library.norms(), kit_names()))


@cache
def modifiers():
    sheets = [parse(path.read_text(encoding="utf-8"), path.name).value.modifiers[0] for path in modifier_paths()]
    return tuple(modifier_of(sheet).value for sheet in sheets)


@pytest.mark.sample(12)
@pytest.mark.parametrize("modifier", modifiers(), ids=lambda each: each.name)
def test_every_modifier_is_french_on_a_card(modifier):
    values = {each.parameter: each.usually for each in modifier.takes}
    tried = (remix(library_game(name), [Use(modifier, values)], kit_names()) for name in NAMES)
    made = next(outcome.value for outcome in tried if outcome.value is not None)
    card = card_of_remix(made, stage(made.game, library.norms(), kit_names()), Look(wording=FRENCH))
    assert_french(card, made.game, (made.base.title,))
    assert_same_facts(made, stage(made.game, library.norms(), kit_names()))
    changed = card.section("Ce qui est changé").lines[0].lower()
    assert changed.startswith(FRENCH.author(modifier.name).lower())


def test_what_nobody_translated_stands_as_written_and_is_told():
    game = lanterns(kit="1 zorb, like a giant ball", set_up="zorb on the court", head='cue "Mind the zorb."')
    made = card_for(game, catalogue=kit_catalogue(), wording=FRENCH)
    text = text_of(made)
    assert "- 1 zorb (comme un ballon géant)\n" in text
    assert "- Mettre le zorb sur le terrain.\n" in text
    assert "- Mind the zorb.\n" in text and STAYS in text
    english = card_for(game)
    assert not [line for line in english.footer if "translated" in line]


def test_a_modifier_that_nobody_translated_is_told():
    game = library_game("lantern-row")
    notes = CardNotes(modifiers=(("more zorbs", "Zorbs fly everywhere."),))
    assert STAYS in text_of(card_for(game, notes, wording=FRENCH))


@pytest.mark.parametrize("text", sorted(FRENCH.texts.values()))
def test_texts_are_set_as_french_is(text):
    assert joined(text) == text
    assert "'" not in text and " ;" not in text and " :" not in text and '"' not in text


@pytest.mark.parametrize(("name", "section", "line"), SENTENCES)
def test_sentences(name, section, line):
    game = library_game(name)
    assert line in card_for(game, catalogue=kit_names(), wording=FRENCH).section(section).lines


@pytest.mark.parametrize(("name", "said", "instead", "french"), NAMED)
def test_a_side_that_was_named_is_he_or_they(name, said, instead, french):
    path = next(path for path in game_paths() if path.stem == name)
    text = path.read_text(encoding="utf-8")
    assert said in text
    made = card_for(game_of(text.replace(said, instead)), wording=FRENCH)
    assert french in made.section("Comment gagner").lines


@pytest.mark.sample(8)
@pytest.mark.parametrize("name", NAMES)
def test_rounds_in_pictures_hold_no_english(name):
    net, sample = sampled(name)
    game, happenings = library_game(name), Happenings(Voice(resolved(library_game(name)), FRENCH), net)
    before, moves = net.start(), []
    for event in sample.events:
        words = happenings.told(net.transitions[event.transition], before, event.marking)
        moves.append(Told(words, event.marking, event.minutes))
        before = event.marking
    assert len(moves) > 5
    assert english_in(" ".join(move.words for move in moves), (game.title,)) == []
    end = happenings.ended(sample.end, sample.unfinished)
    moments = moments_of(net, moves, end, wording=FRENCH, counts=partial(counts_told, happenings.voice))
    made = strip_of(game, laid_out(game), net, moments, game.title, "", FRENCH)
    drawn = " ".join(shape.text for shape in drawing_of(made).shapes if isinstance(shape, Label))
    assert english_in(drawn, (game.title,)) == []
    page = re.sub(r"<(style|script)\b.*?</\1>|<[^>]+>", " ", strip_html_of(made, FRENCH), flags=re.DOTALL)
    assert english_in(page, (game.title,)) == []


def planned(game):
    """The game with as few players as it may have, in a long lesson."""
    group = evolve(some_class(sum(side.least for side in game.sides)), lesson_min=90)
    return Planned(game, stage(game, library.norms(), kit_names(), group), 5.0, 0.5)


def test_a_lesson_holds_no_english():
    games = [library_game(name) for name in NAMES if name not in ("toll-stone", "homestead")][:4]
    games_planned = [planned(game) for game in games]
    card = lesson_card(lesson_table(games_planned, library.norms()), "Lundi", FRENCH)
    titles = [game.title for game in games]
    assert english_in(text_of(card), titles) == []
    assert english_in(card.plan.description, titles) == []


def test_a_lesson_contracts_what_stands_beside_each_other():
    games = [library_game(name) for name in ("lantern-row", "quarry-row")]
    games_planned = [planned(game) for game in games]
    card = lesson_card(lesson_table(games_planned, library.norms()), "Lundi", FRENCH)
    assert "10 lanternes servent maintenant d’ardoises." in card.section("2. Quarry Row").lines
