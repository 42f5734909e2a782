"""The areas and tracks that a sheet declares."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from grammar.area_kinds import kind_of, likely_kinds, one_of_name
from grammar.finding import Correction
from grammar.frozen import evolve
from grammar.game import GameArea, GameTrack
from grammar.meanings import AREA_KINDS, PlaceMeaning, side_named
from grammar.resolve.vocabulary import Vocabulary
from grammar.said import listed, perhaps_meant, quoting
from grammar.sentences.determiners import EACH
from grammar.sentences.space import Area, NobodyThere, Track
from grammar.tree import GameSheet
from grammar.words import plural, singulars

_LIKELY, _LESS_LIKELY = 0.3, 0.2


def declare_areas(sheet: GameSheet, words: Vocabulary) -> tuple[GameArea, ...]:
    """The named areas of a sheet."""
    areas: list[GameArea] = []
    for line in sheet.lines("space"):
        sentence = line.sentence
        if not isinstance(sentence, Area):
            continue
        known = kind_of(sentence)
        kind = known or sentence.name.text.split()[-1]
        if known is None:
            hint = perhaps_meant(kind, AREA_KINDS) or quoting(
                "End its name with what it is: {kinds}.", kinds=listed(AREA_KINDS, "or")
            )
            words.wrong(
                "G-area-kind",
                quoting("`{name}` does not say what it is.", name=sentence.name.text),
                sentence.name.span,
                hint,
                tuple(_of_a_kind(sentence)),
            )
        name = sentence.name.text
        forms = (name, plural(name)) if known == name.split()[-1] else (name, plural(name), *singulars(name))
        words.declare(forms, PlaceMeaning(name), sentence.name)
        forbidden = tuple(rule.verb.removesuffix(" there") for rule in sentence.rules if isinstance(rule, NobodyThere))
        each = sentence.spot.determiner in EACH
        depth = sentence.depth.metres if sentence.depth else None
        areas.append(
            GameArea(
                sentence.name.text,
                kind,
                depth,
                sentence.preposition,
                sentence.spot.name.text,
                each,
                forbidden,
                sentence.span,
            )
        )
    for kind in AREA_KINDS:
        of_kind = [area for area in areas if area.kind == kind]
        if len(of_kind) == 1 and kind not in words.meanings:
            words.meanings[kind] = words.meanings[plural(kind)] = PlaceMeaning(of_kind[0].name)
    return tuple(areas)


def _of_a_kind(area: Area) -> Iterator[Correction]:
    """The same area with a kind that suits where it lies: the other lines may go on to call it as they do."""
    name = one_of_name(area.name.text)
    for cost, kind in enumerate(likely_kinds(area)):
        named = evolve(area, name=evolve(area.name, text=f"{name} {kind}"))
        yield Correction(area.span, named.words(), _LIKELY + cost * _LESS_LIKELY)


def know_without_their_kind(areas: Sequence[GameArea], words: Vocabulary) -> None:
    """A nest base is a nest, too, where no other area is, and whatever else is declared so wins."""
    short = [area.name.removesuffix(f" {area.kind}") for area in areas]
    for area, name in zip(areas, short, strict=True):
        if name and short.count(name) == 1:
            for form in (name, plural(name)):
                words.meanings.setdefault(form, PlaceMeaning(area.name))


def declare_tracks(sheet: GameSheet, words: Vocabulary) -> tuple[GameTrack, ...]:
    """The tracks of a sheet; both ends are homes of sides."""
    tracks: list[GameTrack] = []
    for track in sheet.all_of("space", Track):
        name = track.name.text
        for end in (track.start, track.goal):
            if side_named(words.meanings.get(end.text)) is None:
                hint = "A track runs from one side of the game to another."
                words.wrong("G-unknown", quoting("There is no side called `{end}`.", end=end.text), end.span, hint)
        if track.steps.value != int(track.steps.value) or not 2 <= track.steps.value <= 40:
            words.wrong(
                "G-count",
                quoting("A track cannot have {steps} steps.", steps=track.steps.words()),
                track.steps.span,
                "Write a whole number from 2 to 40.",
            )
            continue
        words.declare((name,), PlaceMeaning(name), track.name)
        tracks.append(GameTrack(name, track.steps.whole, track.start.text, track.goal.text, track.span))
    return tuple(tracks)
