"""The round in pictures: the counts of the marking, the sentences of the moves, a page that stands alone."""

from __future__ import annotations

import json
import re
from collections import Counter
from functools import cache
from xml.etree import ElementTree

import pytest
from drawn_games import NAMES, laid_out, library_game
from test_booklet import Tags
from test_plan import covered

import library
from compose.draw.signs.shapes import Label
from compose.draw.signs.to_svg import svg_of
from compose.draw.strip.html import strip_html_of
from compose.draw.strip.moments import Told, moments_of
from compose.draw.strip.strip import drawing_of, strip_of
from compose.forecast.chances.chances import chances
from compose.forecast.rounds.sample import sample_round
from compose.net.from_game import net_of
from compose.staging.resolved import resolved
from compose.telling.english.moves import move_words
from grammar.core.clock import ComeIn, TakeAway
from grammar.core.values import At, Part
from grammar.parse import parse
from library.load import granted_path, kit_names


@cache
def sampled(name, seed=3):
    """A game's net, and a round of it."""
    game = library_game(name)
    players = {side.name: (side.least + side.most + 1) // 2 for side in game.sides}
    granted = parse(granted_path().read_text(encoding="utf-8"), "granted").value.games[0]
    net = net_of(game, granted, players).value
    return net, sample_round(net, chances(net, library.norms(), kit_names()), seed)


@cache
def strip(name):
    game, (net, sample) = library_game(name), sampled(name)
    said = [move_words(net, net.transitions[each.transition]) for each in sample.events]
    moves = [Told(words, each.marking, each.minutes) for words, each in zip(said, sample.events, strict=True)]
    moments = moments_of(net, moves, "the round is over")
    return net, moves, strip_of(game, laid_out(game), net, moments, game.title, "A round.")


@pytest.mark.sample(6)
@pytest.mark.parametrize("name", NAMES)
def test_every_picture_shows_the_counts_of_its_marking(name):
    net, _moves, made = strip(name)
    assert 2 <= len(made.moments) <= 8
    balls = {line.name for line in library_game(name).kit if line.category == "ball"}
    for moment, scene in zip(made.moments, made.scenes, strict=True):
        shown = Counter((token.item.category, token.item.side, token.up) for token in scene)
        wanted = Counter()
        for place, count in zip(net.places, moment.marking, strict=True):
            if place.token == "player":
                wanted["player", place.side, not place.name.endswith("/out")] += count
            if place.token == "target" and not place.in_parts and place.kind != "sledge":  # under its log
                wanted["target", place.side, place.name.endswith("/standing")] += count
            if place.token == "ball" or (place.token == "load" and place.kind in balls):
                wanted["ball", place.side, True] += count
        for key, count in wanted.items():
            if key[0] != "target" or "cairn" not in name:
                assert shown[key] == count, (key, moment.counts)


@pytest.mark.parametrize("name", NAMES)
def test_tokens_keep_their_names_and_lie_in_the_picture(name):
    _net, _moves, made = strip(name)
    rules = resolved(library_game(name)).play.rules
    brought = any(isinstance(effect, ComeIn | TakeAway) for rule in rules for effect in rule.effects)
    box = made.frames[0].box
    keys = []
    for scene in made.scenes:
        # Only balls come in or are taken away, and only where the sheet says so.
        here = [token.key for token in scene if not brought or token.item.category != "ball"]
        keys = keys or here
        assert here == keys and len({token.key for token in scene}) == len(scene)
        assert all(box.holds(token.item.x, token.item.y) for token in scene)
        spots = Counter((token.item.category, round(token.item.x, 3), round(token.item.y, 3)) for token in scene)
        assert not [spot for spot, count in spots.items() if count > 1 and spot[0] != "body"]


@pytest.mark.parametrize("name", NAMES)
def test_the_strip_is_one_valid_drawing_with_every_sentence(name):
    _net, moves, made = strip(name)
    drawing = drawing_of(made)
    assert drawing.box.joined(covered(drawing)) == drawing.box
    said = " ".join(shape.text for shape in drawing.shapes if isinstance(shape, Label))
    for moment in made.moments:
        assert moment.sentence in said
        assert moment.counts in said
    assert made.moments[-1].marking == moves[-1].marking
    ElementTree.fromstring(svg_of(drawing))


def test_the_page_stands_alone_and_can_be_worked_without_a_mouse():
    _net, _moves, made = strip("heron-and-pike")
    text = strip_html_of(made)
    page = Tags()
    page.feed(text)
    assert page.open == [] and page.asked == []
    assert not re.search(r"https?://(?!www\.w3\.org)", text)
    assert "prefers-reduced-motion" in text and "aria-live" in text and "ArrowRight" in text
    data = json.loads(re.search(r'id="round">(.*?)</script>', text).group(1))
    assert len(data["scenes"]) == len(made.moments) == len(data["told"])
    assert all(look < len(data["looks"]) for scene in data["scenes"] for _x, _y, look in scene)
    assert sum(tag == "button" for tag, _attributes in page.seen) == 4


def test_balls_that_come_in_and_go_are_seen_only_while_they_are_there():
    net, _sample = sampled("ember-minute")
    start, kinds = net.start(), {place.kind for place in net.places if place.token == "ball"}
    assert len(kinds) == 2
    numbers = [number for number, place in enumerate(net.places) if place.token == "ball"]
    first = next(number for number in numbers if start[number])
    second = next(number for number in numbers if net.places[number].kind != net.places[first].kind)
    later = [0 if number in numbers else count for number, count in enumerate(start)]
    later[second] = 6
    told = [Told("They come in.", tuple(later), 3.0)]
    game = library_game("ember-minute")
    made = strip_of(game, laid_out(game), net, moments_of(net, told, ""), game.title, "")
    data = json.loads(re.search(r'id="round">(.*?)</script>', strip_html_of(made)).group(1))
    balls = sum(start[number] for number in numbers)
    for scene, seen in zip(data["scenes"], made.scenes, strict=True):
        assert len(scene) == len(data["scenes"][0])
        assert sum(data["looks"][look] != "" for _x, _y, look in scene) == len(seen)
    assert [sum(token.item.category == "ball" for token in seen) for seen in made.scenes] == [balls, 6]


def test_few_moves_are_all_shown_and_many_are_thinned():
    net, moves, _made = strip("lantern-row")
    assert len(moments_of(net, moves[:2], "")) == 3
    assert len(moments_of(net, moves, "", 4)) == 4
    assert len(moments_of(net, [], "")) == 1


def test_what_lies_behind_a_line_is_drawn_behind_it():
    """Of sampled rounds, each ball behind a back line lies outside the court."""
    seen = 0
    for name in ("beck-gates", "millrace-roll", "heron-and-pike"):
        net, _moves, made = strip(name)
        court = laid_out(library_game(name)).court
        behind = [
            number
            for number, place in enumerate(net.places)
            if place.token == "ball" and isinstance(place.standing, At) and place.standing.spot.part is Part.BEHIND
        ]
        for moment, scene in zip(made.moments, made.scenes, strict=True):
            balls = [each.item for each in scene if each.item.category == "ball"]
            outside = [each for each in balls if not court.holds(each.x, each.y)]
            count = sum(moment.marking[number] for number in behind)
            assert len(outside) >= count
            seen += count
    assert seen


def test_who_is_on_the_bench_of_the_other_side_is_drawn_there():
    net, _moves, made = strip("ferry-bench")
    benches = {area.owner: area.rectangle for area in laid_out(library_game("ferry-bench")).areas}
    places = enumerate(net.places)
    there = [n for n, place in places if isinstance(place.standing, At) and place.token == "player"]
    assert any(moment.marking[number] for moment in made.moments for number in there)
    for moment, scene in zip(made.moments, made.scenes, strict=True):
        for number in there:
            place = net.places[number]
            box, side = benches[place.standing.spot.owner.key], place.side
            drawn = [token for token in scene if token.item.side == side and box.holds(token.item.x, token.item.y)]
            assert len(drawn) == moment.marking[number]
