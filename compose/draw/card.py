"""Game, floor and notes → the card: everything that a teacher needs on one page, as plain values."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Literal

from attrs import field, frozen

from compose.draw.authors import as_written
from compose.draw.plan import plan_of
from compose.draw.rules_in import Rules, rules_in
from compose.draw.shapes import Drawing
from compose.draw.speak import sentence
from compose.draw.units import METRIC, Units, in_units
from compose.modifiers.remix import REMIX
from compose.staging.floor.values import Floor
from compose.telling.wording import ENGLISH, Wording
from grammar.game import Game
from grammar.sentences.finish import After, FirstTo, LoseWhen, MoreWins, WinWhen
from grammar.sentences.head import Caution, Licence, Skills
from library.records import Hall, KitItem

LAST_WORD = "Local safety rules and the teacher in charge come first: they decide over everything on this card."


@frozen
class CardNotes:
    """What other stages have to say: modifiers as (name, what it did), lines of what is known of the game.

    Lines of what is known are in the language of the card already, and so are the names of modifiers; what
    is quoted of authors is as it was written.
    """

    modifiers: tuple[tuple[str, str], ...] = ()
    known: tuple[str, ...] = ()
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
    """A card. `facts` are short pairs such as ("Ages", "8 to 12"); `footer` is credit, licence, lineage.

    `subtitle` is the title in the language of the card, where that is another one; `colon` stands behind a label.
    """

    title: str
    about: str
    facts: tuple[tuple[str, str], ...]
    sections: tuple[CardSection, ...]
    footer: tuple[str, ...]
    author: str
    plan: Drawing = field(repr=False)
    language: str = "en-GB"
    subtitle: str = ""
    colon: str = ":"

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
    units: Units = METRIC,
    wording: Wording = ENGLISH,
    large: bool = False,
) -> Card:
    """The card of a game; `catalogue` is the library's kit by name, whose cautions then stand on the card too.

    `large` draws the plan for large print: with bigger words, and its legend below it.
    """
    said, rules = notes or CardNotes(), rules_in(game, wording)
    sections = _sections(game, rules, said, catalogue or {}, wording)
    credit = "; ".join(game.told("credit"))
    look: tuple[Literal["below", "beside"], float] = ("below", 1.25) if large else ("beside", 1.35)
    plan = plan_of(game, floor, hall, legend=look[0], letters=look[1], units=units, wording=wording)
    card = Card(
        title=game.title,
        about=about_of(game, wording),
        facts=_facts(game, rules, wording),
        sections=tuple(part for part in sections if part.lines),
        footer=_footer(game, said, catalogue or {}, wording),
        author=credit,
        plan=plan,
        language=wording.language,
        subtitle=subtitle_of(game, wording),
        colon=wording.say(":"),
    )
    return in_units(card, units)


def about_of(game: Game, wording: Wording) -> str:
    """What the game is about."""
    return sentence(" ".join(wording.author(text) for text in game.told("about")))


def subtitle_of(game: Game, wording: Wording) -> str:
    """What the title means in the language, where it is known there; the title itself stays the name of the game."""
    base = game.title.removesuffix(REMIX)
    said = wording.author(base)
    if said == base:
        return ""
    return said if base == game.title else wording.say("{game}, changed", game=said)


def _sections(
    game: Game, rules: Rules, said: CardNotes, catalogue: Mapping[str, KitItem], wording: Wording
) -> tuple[CardSection, ...]:
    """Every section a card may have, in order; those without lines are not shown."""
    say = wording.say
    return (
        CardSection(say("You need"), tuple(sentence(line)[:-1] for line in rules.kit)),
        CardSection(say("Set up"), _lines(rules.setup)),
        CardSection(say("How to play"), _lines(rules.play)),
        CardSection(say("What happens when"), _lines(rules.when)),
        CardSection(_finish_heading(game, wording), _lines(rules.finish)),
        CardSection(say("Choices for the class"), _lines(rules.choices)),
        CardSection(say("Say to the class"), _lines(sentence(wording.author(cue)) for cue in game.told("cue"))),
        CardSection(say("What is changed"), tuple(_changed(*one, wording) for one in said.modifiers)),
        CardSection(say("Take care"), (*_cautions(game, said, catalogue, wording), say(LAST_WORD)), "care"),
        CardSection(say("Checked and forecast"), tuple(sentence(line) for line in said.known), "proof"),
    )


def _finish_heading(game: Game, wording: Wording) -> str:
    won = any(
        isinstance(line, WinWhen | LoseWhen | FirstTo)
        or (isinstance(line, After) and any(isinstance(result, MoreWins) for result in line.results))
        for line in game.sentences("finish")
    )
    return wording.say("How to win" if won else "How it ends")


def _lines(lines: Iterable[str]) -> tuple[str, ...]:
    """Each line once, empty ones left out."""
    return tuple(dict.fromkeys(line for line in lines if line))


def _changed(name: str, did: str, wording: Wording) -> str:
    if not did:
        return sentence(name)
    told = wording.author(did).rstrip(".")
    return f"{wording.say('{name}: {rule}', name=sentence(name)[:-1], rule=told)}."


def _cautions(game: Game, notes: CardNotes, catalogue: Mapping[str, KitItem], wording: Wording) -> tuple[str, ...]:
    """The author's cautions, those of the modifiers, those of the kit."""
    told = (*(line.text for line in game.all_of("care", Caution)), *game.told("caution"), *notes.cautions)
    kit = [_of_kit(line.plural, catalogue[line.like].caution, wording) for line in game.kit if line.like in catalogue]
    return _lines(sentence(line) for line in (*(wording.author(text) for text in told), *kit))


def _of_kit(name: str, caution: str, wording: Wording) -> str:
    if not caution:
        return ""
    said = wording.author(caution)
    return wording.say("{name}: {rule}", name=wording.named(name), rule=f"{said[0].lower()}{said[1:]}")


def _facts(game: Game, rules: Rules, wording: Wording) -> tuple[tuple[str, str], ...]:
    low, high = game.ages_years
    say = wording.say
    facts = [(say("Ages"), say("{low} to {high}", low=f"{low:g}", high=f"{high:g}")), (say("Players"), rules.players)]
    facts += [(say("Round"), time) for time in rules.times]
    long, wide = (wording.figure(metres) for metres in game.court_m)
    facts.append((say("Court"), say("{long} m by {wide} m", long=long, wide=wide)))
    skills = [skill.text for line in game.all_of("head", Skills) for skill in line.practised]
    if skills:
        facts.append((say("Practises"), ", ".join(wording.known("skill", skill) or skill for skill in skills)))
    return tuple(facts)


def _footer(game: Game, notes: CardNotes, catalogue: Mapping[str, KitItem], wording: Wording) -> tuple[str, ...]:
    credit = "; ".join(wording.author(text) for text in game.told("credit"))
    licence = next((line.identifier for line in game.all_of("head", Licence)), "")
    say, outcomes = wording.say, "; ".join(wording.author(text) for text in game.told("outcomes"))
    more = (*notes.cautions, *(did for _name, did in notes.modifiers))
    lines = [
        say("Credit: {credit}.", credit=credit) if credit else "",
        say("Licence: {licence}.", licence=licence) if licence else "",
        say("Outcomes: {outcomes}.", outcomes=outcomes) if outcomes else "",
        say("Made from: {parts}.", parts=" > ".join(notes.lineage)) if notes.lineage else "",
        as_written(game, more, catalogue, wording),
    ]
    return tuple(line.replace("..", ".") for line in lines if line)
