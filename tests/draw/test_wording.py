"""The catalogues: every message has its translation, with the same fields; French sentences hold no English."""

from __future__ import annotations

import ast
from pathlib import Path
from string import Formatter

import pytest
from babel.messages.pofile import read_po
from drawn_games import card_for, lanterns, library_game

import compose.draw
import compose.telling
import compose.terminal
from compose.draw.card.authors import AS_WRITTEN
from compose.draw.card.card import LAST_WORD
from compose.draw.card.pdf import pdf_of
from compose.draw.lesson.minutes_bar import NAMES as NAMES_OF_SLOTS
from compose.draw.units import UNITS
from compose.modifiers.remix import OWN_EDITS
from compose.telling.french import joined
from compose.telling.moves import OUTCOMES, THROWN
from compose.telling.wording import ENGLISH, FOLDER, languages, wording_of
from compose.terminal.booklets import USUAL_TITLE as BOOKLET_TITLE
from compose.terminal.lessons import USUAL_TITLE as LESSON_TITLE
from library.records import BALL_SKILLS

HOME = Path(compose.draw.__file__).parent
TELLING = Path(compose.telling.__file__).parent
TERMINAL = Path(compose.terminal.__file__).parent
SAYING = ("say", "does")
# Words that the rules put into a pattern's name: one list for each, as the rule language knows them.
SKILLS = (*BALL_SKILLS, "carry", "tow", "push", "run")
WORDS = (
    *(f"{skill} {{ball}}" for skill in SKILLS),
    *("evenly spaced", "in a ring", "staggered", "in a triangle", "close together", "standing or not", "in order"),
    *(f"{way} the half it {how}" for way in ("in", "to") for how in ("was sent to", "came from", "left")),
    *(f"{state} (a ball)" for state in ("missed", "caught", "scored", "passed")),
    *(f"nobody {verb} there" for verb in ("guards", "enters", "acts")),
    *("the sides change tasks", "the sides change ends", "at half-time", "after each round"),
    *THROWN.values(),
    *OUTCOMES.values(),
    *NAMES_OF_SLOTS.values(),
    *(LAST_WORD, AS_WRITTEN, OWN_EDITS, LESSON_TITLE, BOOKLET_TITLE, "for ever"),
    *(
        f"an odd pupil {does}"
        for does in ("joins the first side", "keeps the score", "is the teacher's helper", "changes in each round")
    ),
)


def strings(node):
    """The texts that an expression may stand for: both branches of a choice, but not its condition."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return {node.value} - {""}
    if isinstance(node, ast.IfExp):
        return strings(node.body) | strings(node.orelse)
    if isinstance(node, ast.Subscript):
        return set()
    return set()


def says(function, path):
    """Whether a call says a pattern: at the terminal only through the wording, for its own `say` prints English."""
    if isinstance(function, ast.Attribute):
        return function.attr in SAYING
    return isinstance(function, ast.Name) and function.id == "say" and TERMINAL not in path.parents


def messages():
    """Every pattern that the code says: written in the call, or given a name in the same function."""
    found = set()
    for path in (*HOME.rglob("*.py"), *TELLING.rglob("*.py"), *TERMINAL.rglob("*.py")):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        for function in (node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)):
            named = {}
            for node in ast.walk(function):
                if isinstance(node, ast.Assign):
                    for target in node.targets:
                        pairs = (
                            zip(target.elts, node.value.elts, strict=False)
                            if isinstance(target, ast.Tuple) and isinstance(node.value, ast.Tuple)
                            else [(target, node.value)]
                        )
                        for name, value in pairs:
                            if isinstance(name, ast.Name):
                                named.setdefault(name.id, set()).update(strings(value))
            for node in ast.walk(function):
                if isinstance(node, ast.Call) and says(node.func, path):
                    for argument in node.args:
                        found |= strings(argument)
                        if isinstance(argument, ast.Name):
                            found |= named.get(argument.id, set())
    return found


@pytest.mark.parametrize("language", [tag for tag in languages() if tag != "en"])
def test_every_message_is_translated(language):
    wording = wording_of(language)
    said = messages() | set(WORDS)
    assert len(said) > 120
    assert sorted(text for text in said if ("", text) not in wording.messages) == []


@pytest.mark.parametrize("language", [tag for tag in languages() if tag != "en"])
def test_translations_have_the_fields_of_their_message(language):
    with (FOLDER / f"{language}.po").open("rb") as file:
        catalogue = read_po(file, locale=language)
    for message in catalogue:
        if not message.id:
            continue
        assert message.string and all(message.string), message.id
        assert not message.fuzzy
        if isinstance(message.id, str) and not message.context:
            fields = {name for _text, name, _spec, _how in Formatter().parse(message.id) if name}
            told = {name for _text, name, _spec, _how in Formatter().parse(message.string) if name}
            assert told <= fields, message.id
            assert fields - told <= {"ball"}, message.id


def test_numbers_and_plurals_agree():
    french = wording_of("fr")
    assert french.counted(0, "player", "players") == "0 joueur"
    assert french.counted(1, "player", "players") == "1 joueur"
    assert french.counted(1.5, "minute", "minutes") == "1,5 minute"
    assert french.counted(2, "side", "sides") == "2 équipes"
    assert french.counted(3, "lantern", "lanterns") == "3 lanternes"
    assert french.counted(3, "zorb", "zorbs") == "3 zorbs"
    assert french.listed(["a", "b", "c"]) == "a, b et c"
    assert french.listed(["a", "b"], "or") == "a ou b"
    assert (french.figure(1234.5), french.figure(5.0, 1)) == ("1\u00a0234,5", "5,0")
    assert french.percent(0.274) == "27\u00a0%"
    assert ENGLISH.counted(1, "player", "players") == "1 player"


@pytest.mark.parametrize(
    ("apart", "together"),
    [
        ("de le lanceur", "du lanceur"),
        ("de les carriers", "des carriers"),
        ("de le autre", "de l’autre"),
        ("la équipe", "l’équipe"),
        ("ne a plus de owls", "n’a plus d’owls"),
        ("à le mur", "au mur"),
        ("à côté de les bancs", "à côté des bancs"),
        ("le lanceur", "le lanceur"),
        ("ce élève", "cet élève"),
        ("sa équipe", "son équipe"),
        ("le Ouest", "l’Ouest"),
        ("il se éloigne de le Est", "il s’éloigne de l’Est"),
        ("le héron de les hérons", "le héron des hérons"),
    ],
)
def test_french_words_are_contracted(apart, together):
    assert joined(apart) == together


def test_french_sentences():
    game = lanterns(
        play="a ball is held at most 1 min\nplayers roll a foam ball past the back line of the other side, "
        "from 4 m away, only when it has at least 1 lanterns standing"
    )
    made = card_for(game, wording=wording_of("fr"))
    assert made.section("Comment jouer").lines == (
        "Les joueurs de chaque équipe restent dans leur moitié.",
        "Les joueurs de chaque équipe peuvent lancer un ballon en mousse par-dessus l’épaule en visant les lanternes "
        "de l’autre équipe.",
        "On garde un ballon en mousse au plus 1 minute.",
        "Les joueurs de chaque équipe peuvent faire rouler un ballon en mousse au-delà de la ligne de fond de l’autre "
        "équipe, à 4\u00a0m de distance, mais seulement quand leur équipe a au moins 1 lanterne debout.",
    )
    assert made.section("Comment gagner").lines[0] == (
        "Une équipe gagne quand l’autre équipe n’a plus de lanternes debout."
    )


def test_a_french_card_in_feet_is_printed():
    game = library_game("heron-and-pike")
    made = card_for(game, wording=wording_of("fr"), units=UNITS["feet"])
    assert ("Terrain", "66 ft sur 33 ft") in made.facts
    outcome = pdf_of(made)
    assert outcome.value is not None and not outcome.findings


def test_an_unknown_language_is_refused():
    with pytest.raises(KeyError):
        wording_of("xx")
