"""The catalogues: every message has its translation, with the same fields; French sentences hold no English."""

from __future__ import annotations

import ast
import re
from pathlib import Path
from string import Formatter

import pytest
from babel.messages.pofile import read_po
from drawn_games import NAMES, laid_out, lanterns, library_game

import compose.draw
from compose.draw.card import card_of
from compose.draw.card_pdf import pdf_of
from compose.draw.french import joined
from compose.draw.units import UNITS
from compose.draw.wording import ENGLISH, FOLDER, languages, wording_of
from library.records import BALL_SKILLS

HOME = Path(compose.draw.__file__).parent
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


def messages():
    """Every pattern that the code says: written in the call, or given a name in the same function."""
    found = set()
    for path in HOME.glob("*.py"):
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
                if isinstance(node, ast.Call):
                    called = getattr(node.func, "attr", getattr(node.func, "id", ""))
                    if called in SAYING:
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
    assert french.counted(3, "lantern", "lanterns") == "3 lanterns"
    assert french.listed(["a", "b", "c"]) == "a, b et c"
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
    ],
)
def test_french_words_are_contracted(apart, together):
    assert joined(apart) == together


ENGLISH_WORDS = re.compile(
    r"\b(?:the|of|when|players?|each|other|their|its|wins?|loses?|stays?|standing|with|from|while|nobody|half|halves|"
    r"minutes? (?:the|more)|sides?|ball is|starts?|waits?|returns?)\b"
)


@pytest.mark.parametrize("name", NAMES)
def test_french_cards_hold_no_english_but_what_the_author_wrote(name):
    game = library_game(name)
    made = card_of(game, laid_out(game), wording=wording_of("fr"))
    assert made.language == "fr"
    quoted = [line.words().strip('"') for line in game.sentences("play") if type(line).__name__ == "SaidRule"]
    names = sorted(
        {
            *(area.name for area in game.areas),
            *(line.name for line in game.kit),
            *(line.plural for line in game.kit),
            *(side.name for side in game.sides),
            *(line.like for line in game.kit),
        },
        key=len,
        reverse=True,
    )
    for part in made.sections:
        if part.heading in ("À dire à la classe", "Attention"):
            continue
        for line in part.lines:
            if any(line.startswith(text[:20]) for text in quoted):
                continue
            bare = line.lower()
            for own in names:
                bare = bare.replace(own.lower(), "")
            assert not ENGLISH_WORDS.search(bare), line
            assert not re.search(r"\b(?:de le|de les|à le|à les|le a|la é|ne a)\b", bare), line
    assert made.section("Attention").lines[-1].startswith("Les règles de sécurité")
    words = [shape.text for shape in made.plan.shapes if hasattr(shape, "text")]
    assert not [text for text in words if re.search(r"\b(?:players|clear floor|usual distance|Court)\b", text)]


def test_french_sentences():
    game = lanterns(
        play="a ball is held at most 1 min\nplayers roll a foam ball past the back line of the other side, "
        "from 4 m away, only when it has at least 1 lanterns standing"
    )
    made = card_of(game, laid_out(game), wording=wording_of("fr"))
    assert made.section("Comment jouer").lines == (
        "Les joueurs restent dans leur moitié.",
        "Les joueurs lancent un foam ball par-dessus l’épaule en visant les lanterns de l’autre équipe.",
        "On garde un ballon au plus 1 minute.",
        "Les joueurs font rouler un foam ball au-delà de la ligne de fond de l’autre équipe, à 4 m de distance, "
        "mais seulement quand elle a au moins 1 lantern debout.",
    )
    assert made.section("Comment gagner").lines[0] == (
        "Une équipe gagne quand l’autre équipe n’a plus de lanterns debout."
    )


def test_a_french_card_in_feet_is_printed():
    game = library_game("heron-and-pike")
    made = card_of(game, laid_out(game), wording=wording_of("fr"), units=UNITS["feet"])
    assert ("Terrain", "66 ft sur 33 ft") in made.facts
    outcome = pdf_of(made)
    assert outcome.value is not None and not outcome.findings


def test_an_unknown_language_is_refused():
    with pytest.raises(KeyError):
        wording_of("xx")
