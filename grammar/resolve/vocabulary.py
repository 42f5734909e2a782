"""Which names a sheet declares, with their plurals, and what each means."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import attrs
from attrs import define, field

from grammar.finding import Finding, Severity
from grammar.game import GameArea, GameKit, GameRole, GameSide, GameTrack
from grammar.meanings import (
    ACTORS,
    AREA_KINDS,
    BUILT_IN_PLACES,
    CATEGORY_WORDS,
    AgentMeaning,
    CategoryMeaning,
    KitMeaning,
    MateMeaning,
    Meaning,
    PlaceMeaning,
    PlayerMeaning,
    SideMeaning,
    TeacherMeaning,
    side_named,
)
from grammar.sentences.base import Name, Owner, OwnerName
from grammar.sentences.sides import AimsFrom, Kit, NeverAimedAt, Role, Sides, Uses
from grammar.sentences.space import Area, NobodyThere, Track
from grammar.span import Span
from grammar.tree import GameSheet
from grammar.words import did_you_mean, listing, plural

COUNT_LIMIT = 200


@define
class Vocabulary:
    """The names of one sheet while they are gathered, and what is wrong with them."""

    meanings: dict[str, Meaning]
    places: dict[str, Span] = field(factory=dict)
    findings: list[Finding] = field(factory=list)

    def declare(self, forms: tuple[str, ...], meaning: Meaning, name: Name) -> bool:
        """Give a name and its other forms one meaning; False, and a mistake, where one of them has one."""
        for form in forms:
            if form in self.places and self.places[form] != name.span:
                title = f"`{form}` is declared twice."
                hint = "Give one of the two another name, or keep one line."
                finding = Finding("G-twice", Severity.ERROR, title, name.span, hint, (self.places[form],))
                self.findings.append(finding)
                return False
        for form in forms:
            self.meanings[form] = meaning
            self.places[form] = name.span
        return True

    def wrong(self, code: str, title: str, span: Span, hint: str) -> None:
        """One more mistake of meaning."""
        self.findings.append(Finding(code, Severity.ERROR, title, span, hint))


def built_in() -> dict[str, Meaning]:
    """The names that every sheet knows."""
    found: dict[str, Meaning] = {}
    for word, category in CATEGORY_WORDS.items():
        found[word] = found[plural(word)] = CategoryMeaning(category)
    for place in BUILT_IN_PLACES:
        many = "halves" if place == "half" else plural(place)
        found[place] = found[many] = PlaceMeaning(place, built_in=True)
    for actor in ACTORS:
        found[actor] = AgentMeaning("actor")
    found["catcher"] = AgentMeaning("catcher")
    found["keeper"] = AgentMeaning("owner")
    found["player"] = found["players"] = PlayerMeaning()
    found["team-mate"] = found["team-mates"] = MateMeaning()
    found["teacher"] = TeacherMeaning()
    return found


def declare_sides(sheet: GameSheet, words: Vocabulary) -> tuple[tuple[GameSide, ...], tuple[GameRole, ...]]:
    """The sides and roles of a sheet."""
    sides: list[GameSide] = []
    roles: list[GameRole] = []
    for line in sheet.lines("sides"):
        sentence = line.sentence
        if isinstance(sentence, Sides):
            least, most = _headcount(sentence, words)
            for name in sentence.names:
                side = GameSide(name.text, least, most, "mirrored" in sentence.options, name.span)
                sides.append(side)
                _declare_side(name, words)
    for line in sheet.lines("sides"):
        sentence = line.sentence
        if isinstance(sentence, Role):
            roles.append(_declare_role(sentence, words))
    return tuple(sides), tuple(roles)


def _declare_side(name: Name, words: Vocabulary) -> None:
    text = name.text
    if text.rsplit(maxsplit=1)[-1] in ("side", "sides", "team", "teams", "group", "groups"):
        hint = "Give each side a name, such as: north and south, 6 to 14 players each, mirrored"
        words.wrong("G-name", f"`{text}` is no name of a side.", name.span, hint)
    called_by_players = text.endswith("men") or (text.endswith("s") and not text.endswith("ss"))
    if not words.declare((text,), PlayerMeaning(side=text) if called_by_players else SideMeaning(text), name):
        return
    players = PlayerMeaning(side=text)
    words.declare((f"{text} player", f"{text} players"), players, name)
    if called_by_players:
        words.declare((one_of(text),), players, name)


def one_of(side: str) -> str:
    """What one player of a side is called: "carriers" gives "carrier", "boatmen" gives "boatman"."""
    if side.endswith("men"):
        return side[:-3] + "man"
    return side[:-3] + "y" if side.endswith("ies") else side[:-1]


def _declare_role(sentence: Role, words: Vocabulary) -> GameRole:
    least, most = _headcount(sentence, words)
    name = sentence.name.text
    owner = sentence.owner
    side = None
    if not isinstance(owner, Owner):
        meaning = words.meanings.get(owner.name.text)
        side = side_named(meaning)
    words.declare((name, plural(name)), PlayerMeaning(side=side, role=name), sentence.name)
    aims = next((part.distance.metres for part in sentence.details if isinstance(part, AimsFrom)), None)
    uses = next((part.what.name.text for part in sentence.details if isinstance(part, Uses)), None)
    aimed_at = not any(isinstance(part, NeverAimedAt) for part in sentence.details)
    return GameRole(name, least, most, side, aims, sentence.span, uses, aimed_at)


def _headcount(sentence: Sides | Role, words: Vocabulary) -> tuple[int, int]:
    headcount = sentence.headcount
    fewest = 0 if isinstance(sentence, Role) else 1
    least, most = headcount.least, headcount.most or headcount.least
    for number in (least, most):
        if number.value != int(number.value) or not fewest <= number.value <= COUNT_LIMIT:
            words.wrong(
                "G-count",
                f"A side cannot have {number.words()} players.",
                number.span,
                f"Write a whole number from 1 to {COUNT_LIMIT}.",
            )
            return 1, 1
    if least.value > most.value:
        words.wrong(
            "G-range",
            f"{least.words()} to {most.words()} runs backwards.",
            least.span,
            f"Write {most.words()} to {least.words()}.",
        )
    return least.whole, most.whole


def declare_areas(sheet: GameSheet, words: Vocabulary) -> tuple[GameArea, ...]:
    """The named areas of a sheet."""
    areas: list[GameArea] = []
    for line in sheet.lines("space"):
        sentence = line.sentence
        if not isinstance(sentence, Area):
            continue
        kind = sentence.name.text.split()[-1]
        if kind not in AREA_KINDS:
            hint = did_you_mean(kind, AREA_KINDS) or f"End its name with what it is: {listing(AREA_KINDS, 'or')}."
            words.wrong("G-area-kind", f"`{sentence.name.text}` does not say what it is.", sentence.name.span, hint)
        words.declare((sentence.name.text, plural(sentence.name.text)), PlaceMeaning(sentence.name.text), sentence.name)
        forbidden = tuple(rule.verb.removesuffix(" there") for rule in sentence.rules if isinstance(rule, NobodyThere))
        each = sentence.spot.determiner in ("each", "every")
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


def declare_tracks(sheet: GameSheet, words: Vocabulary) -> tuple[GameTrack, ...]:
    """The tracks of a sheet; both ends are homes of sides."""
    tracks: list[GameTrack] = []
    for track in sheet.all_of("space", Track):
        name = track.name.text
        for end in (track.start, track.goal):
            if side_named(words.meanings.get(end.text)) is None:
                words.wrong(
                    "G-unknown", f"There is no side called `{end.text}`.", end.span, "A track runs between two sides."
                )
        if track.steps.value != int(track.steps.value) or not 2 <= track.steps.value <= 40:
            words.wrong(
                "G-count",
                f"A track cannot have {track.steps.words()} steps.",
                track.steps.span,
                "Write a whole number from 2 to 40.",
            )
            continue
        words.declare((name,), PlaceMeaning(name), track.name)
        tracks.append(GameTrack(name, track.steps.whole, track.start.text, track.goal.text, track.span))
    return tuple(tracks)


def declare_kit(sheet: GameSheet, words: Vocabulary, catalogue: Mapping[str, str]) -> tuple[GameKit, ...]:
    """The kit of a sheet; `catalogue` gives the category of every thing that the library knows."""
    kit: list[GameKit] = []
    for line in sheet.lines("kit"):
        sentence = line.sentence
        if isinstance(sentence, Kit):
            kit.extend(_kit_line(sentence, words, catalogue))
    return tuple(kit)


def _kit_line(sentence: Kit, words: Vocabulary, catalogue: Mapping[str, str]) -> Iterator[GameKit]:
    number = sentence.count
    if number.value != int(number.value) or not 1 <= number.value <= COUNT_LIMIT:
        words.wrong(
            "G-count",
            f"There cannot be {number.words()} of a thing in the kit.",
            number.span,
            f"Write a whole number from 1 to {COUNT_LIMIT}.",
        )
        number = attrs.evolve(number, value=float(COUNT_LIMIT))
    written = sentence.name.text
    if written.startswith("x ") and not sentence.singular:
        better = attrs.evolve(sentence, name=Name(written[2:]))
        words.wrong("G-name", "`x` has no place here.", sentence.name.span, f"Write: {better.words()}")
        written = written[2:]
    one = sentence.singular.text if sentence.singular else singular(written, number.whole, catalogue)
    many = written if written != one else plural(one)
    like = sentence.like.text if sentence.like else one
    category = category_of(like, catalogue)
    if sentence.like and sentence.like.text not in catalogue:
        near = did_you_mean(sentence.like.text, catalogue) or "The kit list of the library names what is known."
        words.wrong("G-unknown-kit", f"The library's kit has no `{sentence.like.text}`.", sentence.like.span, near)
    elif category is None:
        hint = f'Say what it is like, such as "{sentence.words()}, like a plastic pin".'
        words.wrong("G-unknown-kit", f"It is not known what a `{one}` is.", sentence.name.span, hint)
    owner = sentence.owner
    whose: str | None = None
    per_player = False
    if owner is not None:
        whose = "each" if isinstance(owner, Owner) else owner.name.text
        players = None if isinstance(owner, Owner) else words.meanings.get(owner.name.text)
        if isinstance(owner, OwnerName) and isinstance(players, PlayerMeaning) and owner.determiner == "each":
            per_player, whose = True, players.side or "each"
    if not words.declare((one, many), KitMeaning(one, category or "target"), sentence.name):
        return
    scale = sentence.percent.value / 100 if sentence.percent else 1.0
    parts = sentence.parts.whole if sentence.parts else 1
    yield GameKit(one, many, category or "target", number.whole, whose, like, sentence.span, scale, parts, per_player)


def singular(written: str, number: int, catalogue: Mapping[str, str]) -> str:
    """The singular of a kit name as written; regular English, the catalogue's own words first."""
    if number == 1 or written in catalogue:
        return written
    candidates = [written[:-1]] if written.endswith("s") else []
    candidates += [written[:-2]] if written.endswith("es") else []
    candidates += [written[:-3] + "y"] if written.endswith("ies") else []
    for candidate in candidates:
        if candidate in catalogue:
            return candidate
    regular = [candidate for candidate in candidates if plural(candidate) == written]
    return min(regular, key=len) if regular and not written.endswith("ses") else (regular or [written])[0]


def category_of(name: str, catalogue: Mapping[str, str]) -> str | None:
    """The category of a thing: as the catalogue says, else by the last word of its name."""
    if name in catalogue:
        return catalogue[name]
    last = name.rsplit(maxsplit=1)[-1]
    return {"ball": "ball", "balls": "ball", "ring": "ring"}.get(last)
