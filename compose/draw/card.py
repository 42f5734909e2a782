"""Game, floor and notes → the card: everything that a teacher needs on one page, as plain values."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from attrs import field, frozen

from compose.draw.plan import plan_of
from compose.draw.shapes import Drawing
from compose.draw.speak import amount, sentence
from compose.draw.speak_play import choice_lines, finish_lines, play_lines, when_lines
from compose.draw.speak_setup import kit_words, players_words, setup_lines
from compose.net.floor_values import Floor
from grammar.game import Game
from grammar.sentences.finish import After, FirstTo, LoseWhen, MoreWins, WinWhen
from grammar.sentences.head import Caution, Licence, Skills
from library.records import Hall, KitItem

LAST_WORD = "Local safety rules and the teacher in charge come first: they decide over everything on this card."


@frozen
class CardNotes:
    """What other stages have to say: modifiers as (name, what it did), lines of the check and the forecast."""

    modifiers: tuple[tuple[str, str], ...] = ()
    check: tuple[str, ...] = ()
    forecast: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    lineage: tuple[str, ...] = ()


@frozen
class CardSection:
    """A heading with its sentences. `tone` is "plain", "care" (what to mind) or "proof" (check and forecast)."""

    heading: str
    lines: tuple[str, ...]
    tone: str = "plain"


@frozen
class Card:
    """A card. `facts` are short pairs such as ("Ages", "8 to 12"); `footer` is credit, licence, lineage."""

    title: str
    about: str
    facts: tuple[tuple[str, str], ...]
    sections: tuple[CardSection, ...]
    footer: tuple[str, ...]
    author: str
    plan: Drawing = field(repr=False)
    language: str = "en-GB"

    def section(self, heading: str) -> CardSection | None:
        """The section under a heading, if the card has it."""
        return next((part for part in self.sections if part.heading == heading), None)


def card_of(
    game: Game,
    floor: Floor,
    notes: CardNotes | None = None,
    *,
    hall: Hall | None = None,
    catalogue: Mapping[str, KitItem] | None = None,
) -> Card:
    """The card of a game; `catalogue` is the library's kit by name, whose cautions then stand on the card too."""
    said = notes or CardNotes()
    sections = (
        CardSection("You need", tuple(sentence(line)[:-1] for line in kit_words(game))),
        CardSection("Set up", _lines(setup_lines(game))),
        CardSection("How to play", _lines(play_lines(game))),
        CardSection("What happens when", _lines(when_lines(game))),
        CardSection(_finish_heading(game), _lines(finish_lines(game))),
        CardSection("Choices for the class", _lines(choice_lines(game))),
        CardSection("Say to the class", _lines(sentence(cue) for cue in game.told("cue"))),
        CardSection("What is changed", tuple(_changed(*one) for one in said.modifiers)),
        CardSection("Take care", _cautions(game, said, catalogue or {}), "care"),
        CardSection("Checked and forecast", tuple(sentence(line) for line in (*said.check, *said.forecast)), "proof"),
    )
    credit = "; ".join(game.told("credit"))
    return Card(
        title=game.title,
        about=sentence(" ".join(game.told("about"))),
        facts=_facts(game),
        sections=tuple(part for part in sections if part.lines),
        footer=_footer(game, credit, said),
        author=credit,
        plan=plan_of(game, floor, hall, legend="beside", letters=1.35),
    )


def _finish_heading(game: Game) -> str:
    won = any(
        isinstance(line, WinWhen | LoseWhen | FirstTo)
        or (isinstance(line, After) and any(isinstance(result, MoreWins) for result in line.results))
        for line in game.sentences("finish")
    )
    return "How to win" if won else "How it ends"


def _lines(lines: Iterable[str]) -> tuple[str, ...]:
    """Each line once, empty ones left out."""
    return tuple(dict.fromkeys(line for line in lines if line))


def _changed(name: str, did: str) -> str:
    return f"{sentence(name)[:-1]}: {did.rstrip('.')}." if did else sentence(name)


def _cautions(game: Game, notes: CardNotes, catalogue: Mapping[str, KitItem]) -> tuple[str, ...]:
    """The author's cautions, those of the modifiers, those of the kit, and whose word is the last."""
    own = [line.text for line in game.all_of("care", Caution)]
    kit = [_of_kit(line.plural, catalogue[line.like].caution) for line in game.kit if line.like in catalogue]
    return (*_lines(sentence(line) for line in (*own, *game.told("caution"), *notes.cautions, *kit)), LAST_WORD)


def _of_kit(name: str, caution: str) -> str:
    return f"{name}: {caution[0].lower()}{caution[1:]}" if caution else ""


def _facts(game: Game) -> tuple[tuple[str, str], ...]:
    low, high = game.ages_years
    facts = [("Ages", f"{low:g} to {high:g}"), ("Players", players_words(game))]
    for clock in game.all_of("finish", After):
        facts.append(("Round", amount(clock.time)))
    facts.append(("Court", f"{game.court_m[0]:g} m by {game.court_m[1]:g} m"))
    skills = [skill.text for line in game.all_of("head", Skills) for skill in line.practised]
    if skills:
        facts.append(("Practises", ", ".join(skills)))
    return tuple(facts)


def _footer(game: Game, credit: str, notes: CardNotes) -> tuple[str, ...]:
    licence = next((line.identifier for line in game.all_of("head", Licence)), "")
    lines = [f"Credit: {credit}." if credit else "", f"Licence: {licence}." if licence else ""]
    outcomes = "; ".join(game.told("outcomes"))
    lines.append(f"Outcomes: {outcomes}." if outcomes else "")
    lines.append(f"Made from: {' > '.join(notes.lineage)}." if notes.lineage else "")
    return tuple(line.replace("..", ".") for line in lines if line)
