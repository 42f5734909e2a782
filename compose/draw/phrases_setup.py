"""The kit, the space, the sides and the set-up in another language than English."""

from __future__ import annotations

from collections.abc import Iterator

from attrs import evolve

from compose.draw.phrases import Phrases
from compose.draw.speak_setup import like_name
from compose.net.side_words import is_plural
from compose.telling.french import article, feminine, noun, side_label, side_noun, side_players
from compose.telling.wording import Wording
from grammar.game import GameKit
from grammar.meanings import KitMeaning
from grammar.sentences.base import Name, Node, Np, Owner, OwnerName
from grammar.sentences.sides import AimsFrom, NeverAimedAt, OddPupil, Placing, PlacingOnStep, Role, SideBySide, Uses
from grammar.sentences.space import Area, AtMostThere, Court, Track


def kit_in(phrases: Phrases) -> Iterator[str]:
    """The kit with its counts, then benches, bibs and marks."""
    game, say = phrases.game, phrases.say
    for line in game.kit:
        yield _kit_count(phrases, line)
    for area in game.areas:
        if area.kind == "bench":
            places = len(game.sides) if area.each else 1
            yield f"{phrases.wording.counted(places, 'bench', 'benches')} ({phrases.wording.named(area.name)})"
    if len(game.sides) > 1:
        sides = phrases.wording.listed(phrases.side_name(side.name) for side in game.sides)
        yield say("bibs or bands to tell {sides} apart", sides=sides)
    yield say("tape or cones to mark the lines")


def _kit_count(phrases: Phrases, line: GameKit) -> str:
    game, say, number = phrases.game, phrases.say, phrases.wording.counted
    total = line.count * (len(game.sides) if line.owner == "each" and not line.per_player else 1)
    said = []
    if line.per_player:
        everyone = line.owner == "each" or len(game.sides) == 1
        said.append(say("for each player") if everyone else _for_each(phrases, str(line.owner)))
    elif line.owner == "each":
        said.append(say("{count} for each side", count=str(line.count)))
    elif line.owner:
        said.append(say("for {side}", side=phrases.side_name(line.owner)))
    like = like_name(game, line)
    if like:
        said.append(say("like {what}", what=like_one(phrases.wording, like)))
    if line.scale != 1.0:
        said.append(say("{percent} % as big", percent=phrases.wording.figure(line.scale * 100)))
    if line.parts > 1:
        pattern = "each of {parts} parts" if total > 1 else "of {parts} parts"
        said.append(say(pattern, feminine(phrases.wording, line.name), parts=str(line.parts)))
    for several in game.all_of("sides", SideBySide):
        games = several.what.text
        said.append(
            say("for each of the {games}", feminine(phrases.wording, games), games=phrases.wording.named(games))
        )
    return number(total, line.name, line.plural) + (f" ({', '.join(said)})" if said else "")


def like_one(wording: Wording, like: str) -> str:
    """ "une quille": a thing of the library's kit that something is like."""
    text, female = noun(wording, like, False, like)
    return f"{article('a', female, False)} {text}"


def _for_each(phrases: Phrases, side: str) -> str:
    if is_plural(side):
        return phrases.say("for each {who}", who=side_noun(phrases.wording, side, False)[0])
    return phrases.say("for each player of {side}", side=phrases.side_name(side))


def players_in(phrases: Phrases) -> str:
    """How many players: "2 équipes de 6 à 14"."""
    sides = phrases.game.sides
    spans = dict.fromkeys((side.least, side.most) for side in sides)
    if len(sides) == 1:
        return _span(phrases, *next(iter(spans)))
    if len(spans) == 1:
        least, most = next(iter(spans))
        if most == 1:
            return f" {phrases.say('against')} ".join("1" for _side in sides)
        teams = phrases.wording.counted(len(sides), "side", "sides")
        return phrases.say("{sides} of {players}", sides=teams, players=_span(phrases, least, most))
    return ", ".join(
        f"{side_label(phrases.wording, side.name)} {_span(phrases, side.least, side.most)}" for side in sides
    )


def _span(phrases: Phrases, least: int, most: int) -> str:
    return str(least) if least == most else phrases.say("{low} to {high}", low=str(least), high=str(most))


def setup_in(phrases: Phrases) -> Iterator[str]:
    """Court, areas, kit, players, in the order of doing."""
    game = phrases.game
    for line in game.sentences("space"):
        yield phrases.sentence(_space(phrases, line))
    kit = [placing for placing in game.placings if not _people(phrases, placing)]
    for placing in kit:
        yield phrases.sentence(_placed(phrases, placing))
    for step in game.all_of("set-up", PlacingOnStep):
        fields = {"what": phrases.np(step.what), "step": step.step.words(), "track": phrases.np(step.track)}
        yield phrases.sentence(phrases.say("put {what} on step {step} of {track}", **fields))
    for placing in game.placings:
        if placing not in kit:
            yield phrases.sentence(_placed(phrases, placing))
    for line in game.sentences("sides"):
        if isinstance(line, Role | SideBySide | OddPupil):
            yield phrases.sentence(_sides(phrases, line))


def _people(phrases: Phrases, placing: Placing) -> bool:
    return type(phrases.game.meaning(placing.what.name)).__name__ not in ("KitMeaning", "CategoryMeaning")


def _space(phrases: Phrases, line: Node) -> str:
    say = phrases.say
    match line:
        case Court():
            size = {"long": phrases.amount(line.length), "wide": phrases.amount(line.width)}
            cut = ""
            if line.cut == "in equal parts":
                cut = say(" in {parts} equal parts", parts=str(len(phrases.game.sides)))
            elif line.cut:
                cut = say(" and halve it across" if line.cut == "halved across" else " in one piece")
            return say("mark a court {long} by {wide}", **size) + cut
        case Area():
            deep = f"{say('{depth} deep', depth=phrases.amount(line.depth))}, " if line.depth else ""
            rules = "".join(f" ; {_area_rule(phrases, rule)}" for rule in line.rules)
            name = phrases.wording.named(line.name.text)
            return f"{name} : {deep}{phrases.place(line.preposition, line.spot)}{rules}"
        case Track():
            steps = phrases.wording.counted(line.steps.value, "step", "steps")
            said = say(
                "{steps} from {start} to {goal}",
                steps=steps,
                start=phrases.side_name(line.start.text),
                goal=phrases.side_name(line.goal.text),
            )
            return f"{phrases.wording.named(line.name.text)} : {said}"
    return line.words()


def _area_rule(phrases: Phrases, rule: Node) -> str:
    if isinstance(rule, AtMostThere):
        return phrases.say("at most {who} there", who=phrases.counted(rule.most.value, rule.who.name))
    return phrases.say(rule.words())


def _placed(phrases: Phrases, placing: Placing) -> str:
    """ "mettre les lanternes de chaque équipe sur sa ligne de fond, à intervalles égaux"."""
    people = _people(phrases, placing)
    what = _what(phrases, placing)
    female = phrases.feminine(placing.what)
    spread = f", {phrases.say(placing.spread, female)}" if placing.spread else ""
    if placing.count is None and placing.where.determiner in ("each", "every") and not people:
        spread = f", {phrases.say('shared out evenly', female)}{spread}"
    where = phrases.place(placing.preposition, placing.where)
    own = _line(phrases, placing)
    owner = placing.where.owner
    if own is not None and own.owner == "each" and isinstance(owner, Owner) and owner.determiner == "their":
        where = phrases.place(placing.preposition, evolve(placing.where, determiner="its", owner=None))
    if not people:
        return phrases.say("put {what} {where}", what=what, where=where) + spread
    single = placing.count is not None and placing.count.value == 1 and not placing.all_but
    return phrases.say("{who} starts {where}" if single else "{who} start {where}", who=what, where=where) + spread


def _line(phrases: Phrases, placing: Placing) -> GameKit | None:
    meaning = phrases.game.meaning(placing.what.name)
    return phrases.game.kit_named(meaning.key) if isinstance(meaning, KitMeaning) else None


def _what(phrases: Phrases, placing: Placing) -> str:
    line = _line(phrases, placing)
    own = f" {phrases.say('of each side')}" if line is not None and line.owner == "each" else ""
    if placing.all_but and placing.count is not None:
        things = phrases.counted(placing.count.value, placing.what.name)
        return phrases.say("all but {things}", phrases.feminine(placing.what), things=things)
    if placing.count is not None:
        owner = f" de {phrases.owner(placing.what.owner)}" if placing.what.owner else ""
        return phrases.counted(placing.count.value, placing.what.name) + (own or owner)
    if line is not None:
        name = line.name if line.count == 1 and not line.per_player else line.plural
        return phrases.np(Np(placing.what.determiner, None, None, Name(name))) + own
    return phrases.np(placing.what)


def _sides(phrases: Phrases, line: Node) -> str:
    say = phrases.say
    match line:
        case Role():
            return _role(phrases, line) + "".join(f" ; {_detail(phrases, detail)}" for detail in line.details)
        case SideBySide():
            games = phrases.wording.named(line.what.text)
            return say("up to {count} {games} run side by side", count=line.most.words(), games=games)
        case OddPupil():
            return say(f"an odd pupil {line.does}")
    return ""


def _role(phrases: Phrases, line: Role) -> str:
    """ "gardien : 1 à 2 joueurs de chaque équipe", "garde : jusqu’à 16 porteurs"."""
    say = phrases.say
    least, most = line.headcount.least.whole, (line.headcount.most or line.headcount.least).whole
    name, owner = phrases.wording.named(line.name.text), line.owner
    if isinstance(owner, OwnerName) and is_plural(owner.name.text):
        players, pattern = side_players(phrases.wording, owner.name.text, most), "{name}: {players}"
    else:
        players, pattern = phrases.wording.counted(most, "player", "players"), "{name}: {players} of {side}"
    if least == 0:
        players = say("up to {players}", players=players)
    elif least != most:
        players = say("{low} to {high}", low=str(least), high=players)
    return say(pattern, name=name, players=players, side=phrases.owner(owner))


def _detail(phrases: Phrases, detail: Node) -> str:
    match detail:
        case AimsFrom():
            return phrases.say("aims from about {distance}", distance=phrases.amount(detail.distance))
        case Uses():
            return phrases.say("uses {what}", what=phrases.np(detail.what))
        case NeverAimedAt():
            return phrases.say("nobody aims at them")
    return detail.words()
