"""What check and forecast say on a card: in English as it always was, in French with French numbers and lists."""

from __future__ import annotations

import re
import sys
from pathlib import Path
from types import SimpleNamespace

import pytest
from attrs import evolve

from compose.answer.answer import Answer
from compose.answer.staged import Staged
from compose.check import Facts
from compose.check import findings as folder
from compose.check.findings import limits
from compose.check.space import USUAL
from compose.draw.card.proof import answer_lines, fact_lines, forecast_lines
from compose.forecast.answers import Answers
from compose.forecast.course import Figure
from compose.forecast.findings.findings import LOOKS
from compose.net.match import ONE_ROUND, Match
from compose.net.net import Bell, Net
from compose.telling.amounts import share_said, time_said
from compose.telling.findings import FINDING
from compose.telling.wording import ENGLISH, wording_of
from compose.terminal.carding import Asked, make_card
from compose.terminal.typed.classes import Who
from grammar.core.ends import Meeting
from grammar.finding import IDLE, Finding, Severity
from grammar.span import nowhere
from tests.check.build import rule

FRENCH = wording_of("fr")
HERONS = {"herons": 11, "pikes": 1}
WINDS = {"north": 1, "east": 10}


def found(wins, stopped=0.27, idle=0.19, minutes=5.68):
    shares = tuple((side, Figure(chance)) for side, chance in wins)
    return Answers(Figure(minutes), shares, Figure(stopped), Figure(1.94), Figure(idle))


def warning(code):
    return Finding(code, Severity.WARNING, f"What {code} says of the herons.", nowhere(), "Mend it.")


def test_odds_of_a_series_are_not_called_those_of_a_round():
    """Whatever the match is but one round, its odds are those of the game that the sheet asks for."""
    answers = found([("the first side", 0.25), ("the second side", 0.25), ("the third side", 0.25)])
    meeting = Match(groups=3, meeting=Meeting.ALL_MEET_ALL, rounds=3)
    _, told = forecast_lines(answers, meeting, ENGLISH)
    assert "25 % of the games of 3 rounds between 3 sides, and nobody 25 %." in told
    assert "des parties de 3 manches entre 3 équipes" in forecast_lines(answers, meeting, FRENCH)[1]
    for match in (meeting, Match(best_of=3), Match(halves=True), Match(halves=True, parts=3, of_rounds=True)):
        assert not match.one_round
        assert " of the rounds" not in forecast_lines(answers, match, ENGLISH)[1]


def test_the_forecast_in_two_sentences():
    answers = found([("herons", 0.494), ("east", 0.5)])
    assert forecast_lines(answers, ONE_ROUND, ENGLISH) == (
        "A round lasts 5.7 min on average; the clock stops 27 % of the rounds (forecast).",
        "A pupil gets 1.9 turns a minute and spends 19 % of the round not playing; "
        "the herons win 49 % and east wins 50 % of the rounds, and nobody 1 %.",
    )
    assert forecast_lines(answers, ONE_ROUND, FRENCH) == (
        "Une manche dure 5,7\u00a0min en moyenne\u00a0; le temps met fin à 27\u00a0% des manches (prévision).",
        "Un élève joue 1,9 fois par minute et passe 19\u00a0% de la manche sans jouer\u00a0; "
        "les hérons gagnent 49\u00a0% et l’Est gagne 50\u00a0% des manches, et personne 1\u00a0%.",
    )


def test_where_nobody_wins_or_waits_nobody_is_said_to():
    answers = found([("herons", 0.0)], stopped=0.0, idle=0.0, minutes=1.2)
    assert forecast_lines(answers, ONE_ROUND, ENGLISH) == (
        "A round lasts 72 s on average (forecast).",
        "A pupil gets 1.9 turns a minute.",
    )
    assert forecast_lines(answers, ONE_ROUND, FRENCH) == (
        "Une manche dure 72\u00a0s en moyenne (prévision).",
        "Un élève joue 1,9 fois par minute.",
    )


@pytest.mark.parametrize(
    ("share", "english", "french"),
    [
        (0.45, "45 %", "45\u00a0%"),
        (0.002, "under 1 %", "moins de 1\u00a0%"),
        (0.998, "over 99 %", "plus de 99\u00a0%"),
        (1.0, "100 %", "100\u00a0%"),
        (0.0, "0 %", "0\u00a0%"),
    ],
)
def test_shares(share, english, french):
    assert (share_said(share, ENGLISH), share_said(share, FRENCH)) == (english, french)


@pytest.mark.parametrize(
    ("minutes", "english", "french"),
    [
        (0.5, "30 s", "30\u00a0s"),
        (4.26, "4.3 min", "4,3\u00a0min"),
        (12.4, "12 min", "12\u00a0min"),
        (float("inf"), "for ever", "sans fin"),
    ],
)
def test_times(minutes, english, french):
    assert (time_said(minutes, ENGLISH), time_said(minutes, FRENCH)) == (english, french)


def test_odds_are_said_of_the_game_that_is_played():
    answers = found([("herons", 0.494), ("pikes", 0.5)], stopped=0, idle=0)
    wins = "the herons win 49 % and the pikes win 50 % of the games"
    of_three = forecast_lines(answers, Match(best_of=3), ENGLISH)[1]
    assert of_three.endswith(f"; {wins} of up to 3 rounds, and nobody 1 %.")
    halves = forecast_lines(answers, Match(halves=True, tasks_change=True), ENGLISH)[1]
    assert halves.endswith(f"; by the side that a group begins as, {wins} of two halves, and nobody 1 %.")
    assert "manches au plus" in forecast_lines(answers, Match(best_of=3), FRENCH)[1]
    assert "deux mi-temps" in forecast_lines(answers, Match(halves=True), FRENCH)[1]


def answer(players, proved=(), added=None, facts=None, bell=None, match=ONE_ROUND):
    """An answer about no game in particular."""
    net = Net("Herons", tuple(players), (), (), (), (), bell, (), match=match)
    court = SimpleNamespace(players=players)
    return Answer(
        Staged(SimpleNamespace(findings=(), courts=(court,), court=court), players, net, None, ()),
        tuple(proved),
        facts,
        None,
        None,
        added,
    )


FACTS = Facts(
    states=10,
    looked=10,
    ends=2,
    edges=20,
    complete=True,
    ends_surely=True,
    held_up_by=(),
    all_wait=False,
    shortest=11,
    longest=30,
    can_win=("herons", "pikes"),
)


def test_nothing_to_mend_with_the_first_fact():
    assert answer_lines(answer(HERONS, facts=FACTS), ENGLISH) == (
        "Checked for 11 herons and 1 pike: nothing to mend",
        "Can win: herons and pikes.",
    )
    assert answer_lines(answer(HERONS, facts=FACTS, added=()), FRENCH) == (
        "Vérifié et prévu pour 11 hérons et 1 brochet\u00a0: rien à corriger",
        "Victoire possible pour les hérons et les brochets.",
    )
    assert answer_lines(answer(WINDS), FRENCH) == (
        "Vérifié pour 1 joueur du Nord et 10 joueurs de l’Est\u00a0: rien à corriger",
    )


def test_what_is_to_mend():
    said = (warning("C-stall"), warning("C-no-end"), warning("C-idle"))
    assert answer_lines(answer(HERONS, said, facts=FACTS), ENGLISH) == (
        "Checked for 11 herons and 1 pike: 3 things to mend",
        *(each.title for each in said),
    )
    assert answer_lines(answer(HERONS, said, facts=FACTS), FRENCH) == (
        "Vérifié pour 11 hérons et 1 brochet\u00a0: 3 points à corriger",
        "Une équipe peut empêcher la manche de finir.",
        "Rien de ce qui peut arriver en jeu ne met fin à la manche.",
        "Une règle n’a jamais d’effet.",
    )
    assert answer_lines(answer(HERONS, said[:1]), FRENCH)[0].endswith("1 point à corriger")


def test_what_there_is_no_room_for_is_counted_and_the_gravest_come_first():
    proved = (warning("C-a"), evolve(warning("C-note"), severity=Severity.NOTE), warning("C-b"), warning("C-c"))
    added = (evolve(warning("F-wrong"), severity=Severity.ERROR), warning("F-d"))
    lines = answer_lines(answer(HERONS, proved, added), ENGLISH)
    assert lines[0] == "Checked and forecast for 11 herons and 1 pike: 5 things to mend"
    assert lines[1:4] == tuple(f"What {code} says of the herons." for code in ("F-wrong", "C-a", "C-b"))
    assert lines[4:] == ("2 things more to mend: the commands check and forecast tell all of them",)


def test_a_part_that_was_looked_at_is_said_to_be_one():
    part = answer(HERONS, (warning("C-budget"),), facts=evolve(FACTS, complete=False, states=2000, looked=1234))
    assert answer_lines(part, ENGLISH)[-1] == "1234 situations were looked at; there are more, so this is no proof"
    assert "ce n’est donc pas une preuve" in answer_lines(part, FRENCH)[-1]


def test_every_finding_of_the_check_is_said_in_french():
    homes = {sys.modules[check.look.__module__] for check in folder.FINDINGS}
    codes = {vars(home).get("CODE", IDLE) for home in homes} | {limits.BUDGET, limits.TOO_LARGE, limits.UNFINISHED}
    assert len(homes) == len(folder.FINDINGS)  # of which two may have one code
    codes |= {"N-too-high", "N-unfit", "N-hard-ball", "N-own-down", "N-same-tasks", "N-unread"}  # what the net warns of
    codes |= {"M-no-effect", "M-base-changed", "M-licence"}  # and what is said on the way there
    of_forecast = {str(sys.modules[look.__module__].__file__) for look in LOOKS}
    texts = "".join(Path(file).read_text("utf-8") for file in of_forecast)
    codes |= {"chances-over-one", *re.findall(r'"(F-[a-z-]+)"', texts)}
    assert sorted(code for code in codes if FRENCH.known(FINDING, code) is None) == []


def test_facts():
    clock = Bell(510, (), rule("after 8.5 min"))
    assert list(fact_lines(answer(HERONS, facts=FACTS, bell=clock), ENGLISH)) == [
        "Can win: herons and pikes.",
        "The shortest round takes 11 moves.",
        "The round ends in every line of play, sooner or later.",
        "The clock ends it after 8.5 min at the latest.",
    ]
    assert list(fact_lines(answer(HERONS, facts=FACTS, bell=clock), FRENCH)) == [
        "Victoire possible pour les hérons et les brochets.",
        "La manche la plus courte compte 11 actions.",
        "Quoi que l’on joue, la manche finit tôt ou tard.",
        "Le temps met fin à la manche après 8,5\u00a0min au plus tard.",
    ]
    halves = answer(HERONS, facts=FACTS, match=Match(halves=True))
    assert next(fact_lines(halves, ENGLISH)) == "Can win over both halves: herons and pikes."


def test_that_the_round_ends_is_not_said_without_who_can_hold_it_up():
    held = answer(HERONS, facts=evolve(FACTS, held_up_by=("herons",)))
    assert list(fact_lines(held, ENGLISH))[-1] == (
        "If all sides play on, the round ends sooner or later; a side that does not want it to can hold it up: herons."
    )
    assert list(fact_lines(held, FRENCH))[-1].endswith("peut l’en empêcher : les hérons.")


def test_a_french_card_is_told_in_french(capsys):
    make_card("lantern row", (), Who(20), None, Asked("A4", False, "metric", "fr", USUAL, None), False, False)
    told = capsys.readouterr().out.replace("\n  ", " ")
    assert "- Vérifié et prévu pour 10 joueurs du Nord et 10 joueurs du Sud\u00a0: rien à corriger.\n" in told
    assert "- Victoire possible pour le Nord et le Sud.\n" in told
    assert "- Une manche dure " in told and "- Un élève joue " in told
    assert "Checked" not in told and " rounds" not in told
