"""The rules of a game line by line: in English as the author wrote them, else as they were understood."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from compose.staging.benches import BENCH
from compose.staging.floor.areas import benches_in
from compose.telling.french import joined
from compose.telling.gaps import who_tries_nothing
from compose.telling.needed import benches_told, unlisted_told
from compose.telling.read_back import Said, all_told, choice_name, values_told
from compose.telling.sentences import sentence, told_sentence
from compose.telling.topics import Topic
from compose.telling.voice import Voice
from compose.telling.wording import Wording
from grammar.core.area_kind import AreaKind
from grammar.core.ends import Best, Most, Won
from grammar.core.game import Core
from grammar.frozen import frozen
from library import kit_names

UNREAD = "not read by the check"
ANYWAY = "so in every game"


@frozen
class Rules:
    """Each line as a sentence; `times` are the clocks, `players` says how many play, `won` whether a side can win."""

    kit: tuple[str, ...]
    setup: tuple[str, ...]
    play: tuple[str, ...]
    when: tuple[str, ...]
    finish: tuple[str, ...]
    choices: tuple[str, ...]
    players: str
    times: tuple[str, ...]
    won: bool


def rules_of(core: Core, wording: Wording) -> Rules:
    """All of them in the order of the sheet."""
    voice = Voice(core, wording)
    every = list(all_told(core, wording))
    told = _by_line(said for topic, said in every if topic is not Topic.CHOICES and said.lines and not said.granted)
    lines = {
        section: tuple(dict.fromkeys(_section(core, wording, section, told)))
        for section in ("space", "set-up", "sides", "play", "when", "finish")
    }
    bell = core.play.bell
    return Rules(
        kit=tuple(kit_told(voice)),
        setup=(*lines["space"], *lines["set-up"], *lines["sides"]),
        play=lines["play"],
        when=lines["when"],
        finish=lines["finish"],
        choices=tuple(_choices(core, wording, [said.text for topic, said in every if topic is Topic.CHOICES])),
        players=players_told(voice),
        times=(voice.time(bell.after_s),) if bell is not None else (),
        won=_can_win(core),
    )


def _by_line(every: Iterable[Said]) -> dict[int, list[str]]:
    """What each line of the sheet says; of what several lines say together each has its own, if there are as many."""
    together: dict[tuple[int, ...], list[str]] = {}
    for said in every:
        together.setdefault(said.lines, []).append(said.text)
    told: dict[int, list[str]] = {}
    for lines, texts in together.items():
        for number, text in zip(lines if len(lines) == len(texts) else lines[:1] * len(texts), texts, strict=True):
            told.setdefault(number, []).append(text)
    return told


def _choices(core: Core, wording: Wording, whole: list[str]) -> Iterator[str]:
    """What is left to the class; the rules of a choice that is made stand among the others already."""
    for choice, told in zip(core.play.choices, whole, strict=True):
        yield told_sentence(wording, choice_name(wording, choice)) if choice.on else told


def _section(core: Core, wording: Wording, section: str, told: dict[int, list[str]]) -> Iterator[str]:
    """The lines of a section that hold; what is told elsewhere, or is for the forecast alone, is left out."""
    play, quotes = core.play, dict(core.told.quotes)
    off = {choice.id for choice in play.choices if not choice.on}
    left_out = {line for side in play.sides for line in side.lines}
    left_out |= {line for factor in play.factors for line in factor.lines}
    for line in core.lines:
        out = line.number in left_out or (line.switch is not None and (line.switch in off) != line.without)
        if line.section != section or line.granted or out:
            continue
        if line.number in quotes:
            note = ANYWAY if line.number in core.told.anyway else UNREAD
            yield f"{sentence(wording.author(quotes[line.number]))} ({wording.say(note)})"
        elif wording.english:
            yield sentence(line.words)
        elif line.number in told:
            yield " ".join(dict.fromkeys(told[line.number]))  # what one line says stays one line
        elif section == "play":
            yield from (told_sentence(wording, text) for text in who_tries_nothing(Voice(core, wording)))


def kit_told(voice: Voice) -> Iterator[str]:
    """The kit of one court with its counts, then benches where it lists none, bibs and marks."""
    core, wording, play = voice.core, voice.wording, voice.play
    for _, said in values_told(core, wording, play.supplies):
        yield said.text.removesuffix(".")
    listed = any(kit_names()[kind.like.key].name == BENCH for kind in play.kinds)
    benches = sum(
        area.places * benches_in(play, area) for area in play.areas if area.kind is AreaKind.BENCH and not listed
    )
    if benches:
        yield benches_told(voice, benches)
    yield from unlisted_told(voice)


def joined_if(wording: Wording, text: str) -> str:
    """French contracts what stands side by side."""
    return text if wording.english else joined(text)


def players_told(voice: Voice) -> str:
    """How many players: "2 sides of 6 to 14", "12 to 32", "1 against 1"."""
    sides = voice.play.sides
    spans = dict.fromkeys((side.least, side.most) for side in sides)
    if len(sides) == 1:
        return _span(voice, *next(iter(spans)))
    if len(spans) == 1:
        least, most = next(iter(spans))
        if most == 1:
            return f" {voice.say('against')} ".join("1" for _side in sides)
        teams = voice.wording.counted(len(sides), "side", "sides")
        said = voice.say("{sides} of {players}", sides=teams, players=_span(voice, least, most))
        return joined_if(voice.wording, said)
    return ", ".join(f"{voice.nouns.label(side.id)} {_span(voice, side.least, side.most)}" for side in sides)


def _span(voice: Voice, least: int, most: int) -> str:
    return str(least) if least == most else voice.say("{low} to {high}", low=str(least), high=str(most))


def _can_win(core: Core) -> bool:
    bell = (core.play.bell.verdicts,) if core.play.bell is not None else ()
    verdicts = [verdict for each in (*(end.verdicts for end in core.play.ends), *bell) for verdict in each]
    return any(isinstance(verdict, Won | Most | Best) for verdict in verdicts)
