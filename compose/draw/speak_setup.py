"""The space, the sides and the set-up as full sentences."""

from __future__ import annotations

from collections.abc import Iterator

from compose.draw.speak import one_of, sentence, thing
from grammar.game import Game, GameKit
from grammar.meanings import CategoryMeaning, KitMeaning
from grammar.sentences.base import Node, Np, Owner
from grammar.sentences.sides import Kit, OddPupil, Placing, PlacingOnStep, Role, SideBySide
from grammar.sentences.space import Area, AtMostThere, Court, Track
from grammar.words import article, count, listing

PARTS = {2: "two", 3: "three", 4: "four", 5: "five", 6: "six"}


def setup_lines(game: Game) -> Iterator[str]:
    """Court, areas, kit, players: what to do before the class comes, in order."""
    for line in game.sentences("space"):
        yield sentence(_space(game, line))
    kit = [placing for placing in game.placings if _kit_line(game, placing)]
    for placing in kit:
        yield sentence(_placed(game, placing))
    for step in game.all_of("set-up", PlacingOnStep):
        verb = "starts" if step.what.name.text == one_of(game, step.what.name) else "start"
        yield sentence(f"{_the(step.what)} {verb} on step {step.step.words()} of {step.track.words()}")
    for placing in game.placings:
        if placing not in kit:
            yield sentence(_players(game, placing))
    for line in game.sentences("sides"):
        if isinstance(line, Role | SideBySide | OddPupil):
            yield sentence(_sides(game, line))


def _space(game: Game, line: Node) -> str:
    match line:
        case Court():
            cut = {"halved across": " and halve it across", "in one piece": " in one piece"}.get(line.cut or "", "")
            if line.cut == "in equal parts":
                parts = len(game.sides)
                cut = f" in {PARTS.get(parts, parts)} equal parts"
            return f"Mark a court {line.length.words()} by {line.width.words()}{cut}"
        case Area():
            deep = f"{line.depth.words()} deep, " if line.depth else ""
            rules = [
                f"at most {count(rule.most.value, one_of(game, rule.who.name))} there"
                if isinstance(rule, AtMostThere)
                else rule.words()
                for rule in line.rules
            ]
            return f"{line.name.words()}: {deep}{line.preposition} {line.spot.words()}" + "".join(
                f"; {rule}" for rule in rules
            )
        case Track():
            return f"{line.name.words()}: {line.steps.words()} steps from {line.start.words()} to {line.goal.words()}"
    return line.words()


def _kit_line(game: Game, placing: Placing) -> GameKit | str | None:
    meaning = game.meaning(placing.what.name)
    if isinstance(meaning, KitMeaning):
        return game.kit_named(meaning.key)
    return meaning.category if isinstance(meaning, CategoryMeaning) else None


def _the(phrase: Np) -> str:
    """A phrase with an article: "lanterns" gives "the lanterns"."""
    return phrase.words() if phrase.determiner else f"the {phrase.words()}"


def _verb(category: str, single: bool) -> str:
    verb = "lie" if category in ("ball", "body") else "stand"
    return f"{verb}s" if single else verb


def _placed(game: Game, placing: Placing) -> str:
    """ "Each side's lanterns stand on its back line", "4 foam balls lie in each half"."""
    line = _kit_line(game, placing)
    category = line.category if isinstance(line, GameKit) else str(line)
    spread = f", {placing.spread}" if placing.spread else ""
    if placing.count is None and placing.where.determiner in ("each", "every"):
        spread = ", shared out evenly" + spread
    where = f"{placing.preposition} {placing.where.words()}"
    own = isinstance(line, GameKit) and line.owner == "each"
    total = line.count if isinstance(line, GameKit) else 2
    if placing.count is not None and not placing.all_but:
        number = placing.count.value
        what = f"{placing.count.words()} {thing(game, placing.what.name, number)}"
        if own:
            what += " of each side"
    elif placing.count is not None:
        number, what = 2.0, f"all but {placing.count.words()} {placing.what.words()}"
    else:
        number = float(total)
        named = thing(game, placing.what.name, number)
        what = f"each side's {named}" if own else _the(placing.what).replace(placing.what.name.text, named, 1)
    if own and isinstance(placing.where.owner, Owner) and placing.where.owner.determiner == "their":
        where = f"{placing.preposition} its {placing.where.name.words()}"
    return f"{what} {_verb(category, number == 1)} {where}{spread}"


def _players(game: Game, placing: Placing) -> str:
    number = placing.count.value if placing.count else 2.0
    lead = f"{placing.all_but} " if placing.all_but else ""
    figure = f"{placing.count.words()} " if placing.count else ""
    who = placing.what.words()
    if placing.count is not None and number == 1 and not placing.all_but:
        who = who.replace(placing.what.name.text, one_of(game, placing.what.name), 1)
    single = number == 1 and not placing.all_but
    spread = f", {placing.spread}" if placing.spread else ""
    where = f"{placing.preposition} {placing.where.words()}"
    return f"{lead}{figure}{who} {'starts' if single else 'start'} {where}{spread}"


def _sides(game: Game, line: Node) -> str:
    match line:
        case Role():
            head = line.headcount
            least, most = head.least.whole, (head.most or head.least).whole
            figure = count(most, "player") if least == most else f"{least} to {count(most, 'player')}"
            if least == 0:
                figure = f"up to {count(most, 'player')}"
            details = "".join(f"; {detail.words()}" for detail in line.details).replace("aims from", "aims from about")
            return f"{line.name.words()}: {figure} of {line.owner.words()}{details}"
        case SideBySide():
            return f"up to {line.most.words()} {line.what.words()} run side by side"
        case OddPupil():
            return line.words().replace("the odd pupil", "an odd pupil", 1)
    return ""


def kit_words(game: Game) -> Iterator[str]:
    """The kit with its counts, totalled over the sides, then benches, bibs and marks."""
    for line in game.kit:
        yield _kit_count(game, line)
    for area in game.areas:
        if area.kind == "bench":
            places = len(game.sides) if area.each else 1
            yield f"{count(places, 'bench')} ({area.name})"
    if len(game.sides) > 1:
        yield f"bibs or bands to tell {listing(side.name for side in game.sides)} apart"
    yield "tape or cones to mark the lines"


def _kit_count(game: Game, line: GameKit) -> str:
    sides = [side.name for side in game.sides]
    total = line.count * (len(sides) if line.owner == "each" and not line.per_player else 1)
    said = [count(total, line.name, line.plural)]
    if line.per_player:
        everyone = line.owner == "each" or len(sides) == 1
        said.append("for each player" if everyone else f"for each player of {line.owner}")
    elif line.owner == "each":
        said.append(f"{line.count} for each side")
    elif line.owner:
        said.append(f"for {line.owner}")
    like = like_of(game, line)
    if like:
        said.append(like)
    if line.scale != 1.0:
        said.append(f"{line.scale * 100:g} % as big")
    if line.parts > 1:
        said.append(f"{'each ' if total > 1 else ''}of {line.parts} parts")
    for several in game.all_of("sides", SideBySide):
        said.append(f"for each of the {several.what.words()}")
    return said[0] + (f" ({', '.join(said[1:])})" if said[1:] else "")


def like_of(game: Game, line: GameKit) -> str:
    """ "like a skittle", in the author's word, or "" where the thing is just itself."""
    like = like_name(game, line)
    return f"like {article(like)}" if like else ""


def like_name(game: Game, line: GameKit) -> str:
    """ "skittle", in the author's word, or "" where the thing is just itself."""
    names = (line.name, line.plural)
    own = (said.like.text for said in game.all_of("kit", Kit) if said.like and said.name.text in names)
    like = next(own, line.like)
    return "" if like == line.name else like


def players_words(game: Game) -> str:
    """How many players: "2 sides of 6 to 14", "12 to 32", "1 against 1"."""
    spans = dict.fromkeys((side.least, side.most) for side in game.sides)
    if len(game.sides) == 1:
        return _span(*next(iter(spans)))
    if len(spans) == 1:
        least, most = next(iter(spans))
        if most == 1:
            return " against ".join("1" for _side in game.sides)
        return f"{len(game.sides)} sides of {_span(least, most)}"
    return ", ".join(f"{side.name} {_span(side.least, side.most)}" for side in game.sides)


def _span(least: int, most: int) -> str:
    return str(least) if least == most else f"{least} to {most}"
