"""Core, plan and notes → the card: everything that a teacher needs on one page, as plain values."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from compose.care.of_staging import care_of
from compose.draw.card.authors import as_written
from compose.draw.card.before import author_said
from compose.draw.signs.shapes import Drawing
from compose.draw.units import METRIC, Units, in_units
from compose.modifiers.remix import REMIX
from compose.staging.cautions import cautions_of
from compose.staging.staging import Staging
from compose.telling.amounts import ages_said
from compose.telling.care import with_cautions
from compose.telling.cautions import cautions_told
from compose.telling.for_class import odd_ball_lines, team_lines, time_line
from compose.telling.needed import kit_lines
from compose.telling.rules import Rules, rules_of
from compose.telling.sentences import sentence
from compose.telling.wording import ENGLISH, Wording
from grammar.core.game import Core
from grammar.frozen import field, frozen
from library.records import KitItem

LAST_WORD = "Local safety rules and the teacher in charge come first: they decide over everything on this sheet."


@frozen
class CardNotes:
    """What other stages have to say: modifiers as (name, what it did), lines of what is known of the game.

    Lines of what is known are in the language of the card already, and so are the names of modifiers; what
    is quoted of authors is as it was written. `before` are texts of the game that this one was made of, which may no
    longer hold.
    """

    modifiers: tuple[tuple[str, str], ...] = ()
    known: tuple[str, ...] = ()
    lineage: tuple[str, ...] = ()
    before: frozenset[str] = frozenset()


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
    plan_pt: float = 0.0

    def section(self, heading: str) -> CardSection | None:
        """The section under a heading, if the card has it."""
        return next((part for part in self.sections if part.heading == heading), None)


def card_of(
    core: Core,
    plan: Drawing,
    notes: CardNotes | None = None,
    *,
    staging: Staging | None = None,
    catalogue: Mapping[str, KitItem] | None = None,
    units: Units = METRIC,
    wording: Wording = ENGLISH,
) -> Card:
    """The card of a game; `catalogue` is the library's kit by name, whose cautions then stand on the card too."""
    said, rules = notes or CardNotes(), rules_of(core, wording)
    odd = tuple(odd_ball_lines(staging, wording)) if staging is not None and staging.courts else ()
    kit = tuple(kit_lines(staging, wording)) if staging is not None and _for_all(staging) else rules.kit
    of_class = CardSection(_class_heading(staging, wording), tuple(_for_class(staging, wording)))
    of_game = staging.cautions if staging is not None else cautions_of(core, (), catalogue or {})
    found = care_of(staging) if staging is not None else ()
    care = with_cautions(found, cautions_told(of_game, wording), wording)
    sections = (of_class, *_sections(core, rules, (kit, odd), said, care, wording))
    card = Card(
        title=core.title,
        about=about_of(core, said.before, wording),
        facts=_facts(core, rules, wording),
        sections=tuple(part for part in sections if part.lines),
        footer=_footer(core, said, catalogue or {}, wording),
        author="; ".join(core.told.credit),
        plan=plan,
        language=wording.language,
        subtitle=subtitle_of(core.title, wording),
        colon=wording.say(":"),
    )
    return in_units(card, units)


def _for_class(staging: Staging | None, wording: Wording) -> Iterator[str]:
    """What is particular of the class; nothing for the usual pupils of whom nothing is known."""
    if staging is not None and staging.particular:
        yield from team_lines(staging, wording)
        if staging.courts:
            yield time_line(staging, wording)


def _for_all(staging: Staging) -> bool:
    """Whether the kit is counted for this class: for the usual pupils a card says what each of them has."""
    return staging.particular and bool(staging.courts)


def about_of(core: Core, before: frozenset[str], wording: Wording) -> str:
    """What the game is about, or was before it was changed."""
    return sentence(" ".join(author_said(text, before, wording) for text in core.told.about))


def cues_of(core: Core, before: frozenset[str], wording: Wording) -> tuple[str, ...]:
    """What to say to the class, a sentence each, or what was said before the game was changed."""
    return tuple(sentence(author_said(cue, before, wording)) for cue in core.told.cues)


def subtitle_of(title: str, wording: Wording) -> str:
    """What the title means in the language, where it is known there; the title itself stays the name of the game."""
    base = title.removesuffix(REMIX)
    said = wording.author(base)
    if said == base:
        return ""
    return said if base == title else wording.say("{game}, changed", game=said)


def _sections(
    core: Core,
    rules: Rules,
    of_staging: tuple[tuple[str, ...], tuple[str, ...]],
    said: CardNotes,
    care: tuple[str, ...],
    wording: Wording,
) -> tuple[CardSection, ...]:
    """Every section a card may have, in order; those without lines are not shown. `of_staging` is the kit, and who
    gets the odd ball."""
    say, (kit, odd) = wording.say, of_staging
    return (
        CardSection(say("You need"), tuple(sentence(line).removesuffix(".") for line in kit)),
        CardSection(say("Set up"), (*_lines(rules.setup), *odd)),
        CardSection(say("How to play"), _lines(rules.play)),
        CardSection(say("What happens when"), _lines(rules.when)),
        CardSection(say("How to win" if rules.won else "How it ends"), _lines(rules.finish)),
        CardSection(say("Choices for the class"), _lines(rules.choices)),
        CardSection(say("Say to the class"), _lines(cues_of(core, said.before, wording))),
        CardSection(say("What is changed"), tuple(_changed(*one, wording) for one in said.modifiers)),
        CardSection(say("Take care"), (*care, say(LAST_WORD)), "care"),
        CardSection(say("Checked and forecast"), tuple(sentence(line) for line in said.known), "proof"),
    )


def _lines(lines: Iterable[str]) -> tuple[str, ...]:
    """Each line once, empty ones left out."""
    return tuple(dict.fromkeys(line for line in lines if line))


def _changed(name: str, did: str, wording: Wording) -> str:
    if not did:
        return sentence(name)
    told = wording.author(did).rstrip(".")
    return f"{wording.say('{name}: {rule}', name=sentence(name)[:-1], rule=told)}."


def _class_heading(staging: Staging | None, wording: Wording) -> str:
    """For whom the card is: the class by its name, with how many pupils it has."""
    if staging is None or not staging.school_class.name:
        return wording.say("For this class")
    pupils = wording.counted(staging.school_class.pupils, "pupil", "pupils")
    return wording.say("For {name}: {pupils}", name=wording.author(staging.school_class.name), pupils=pupils)


def _round_told(core: Core, time: str, wording: Wording) -> str:
    """How long a round takes by its clock, which may not be what ends it."""
    if core.play.bell is not None and core.play.bell.goes_on:
        return wording.say("{time}, longer if level", time=time)
    return wording.say("at most {time}", time=time) if core.play.ends else time


def _facts(core: Core, rules: Rules, wording: Wording) -> tuple[tuple[str, str], ...]:
    low, high = map(float, core.facts.ages_years)
    say = wording.say
    facts = [(say("Ages"), ages_said(low, high, wording)), (say("Players"), rules.players)]
    facts += [(say("Round"), _round_told(core, time, wording)) for time in rules.times]
    court = core.play.court
    long, wide = (wording.figure(float(metres)) for metres in (court.length_m, court.width_m))
    facts.append((say("Court"), say("{long} m by {wide} m", long=long, wide=wide)))
    if core.facts.skills:
        skills = (wording.known("skill", skill) or skill for skill in core.facts.skills)
        facts.append((say("Practises"), ", ".join(skills)))
    return tuple(facts)


def _footer(core: Core, notes: CardNotes, catalogue: Mapping[str, KitItem], wording: Wording) -> tuple[str, ...]:
    credit = "; ".join(wording.author(text) for text in core.told.credit)
    say, outcomes = wording.say, "; ".join(wording.author(text) for text in core.told.outcomes)
    more = tuple(did for _name, did in notes.modifiers)
    lines = [
        say("Credit: {credit}.", credit=credit) if credit else "",
        say("Licence: {licence}.", licence=core.told.licence) if core.told.licence else "",
        say("Outcomes: {outcomes}.", outcomes=outcomes) if outcomes else "",
        say("Made from: {parts}.", parts=" > ".join(notes.lineage)) if notes.lineage else "",
        as_written(core, more, catalogue, wording),
    ]
    return tuple(line.replace("..", ".") for line in lines if line)
