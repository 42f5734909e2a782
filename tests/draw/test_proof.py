"""What check and forecast say on a card: in English as it always was, in French with French numbers and lists."""

from __future__ import annotations

import sys

import pytest

from compose.check import Facts
from compose.check import findings as folder
from compose.check.findings import limits
from compose.draw.proof import FINDING, check_lines, fact_lines, forecast_lines, share_said, time_said
from compose.draw.wording import ENGLISH, wording_of
from compose.forecast.answers import Answers
from compose.forecast.course import Figure
from compose.terminal.carding import make_card
from grammar.finding import Finding, Severity
from grammar.span import nowhere

FRENCH = wording_of("fr")
HERONS = {"herons": 11, "pikes": 1}
WINDS = {"north": 1, "east": 10}


def found(wins, stopped=0.27, idle=0.19, minutes=5.68):
    shares = tuple((side, Figure(chance)) for side, chance in wins)
    return Answers(Figure(minutes), shares, Figure(stopped), Figure(1.94), Figure(idle))


def warning(code):
    return Finding(code, Severity.WARNING, f"What {code} says of the herons.", nowhere(), "Mend it.")


def test_the_forecast_in_two_sentences():
    answers = found([("herons", 0.494), ("east", 0.5)])
    assert forecast_lines(answers, ENGLISH) == (
        "A round lasts 5.7 min on average; the clock stops 27 % of the rounds (forecast).",
        "A pupil gets 1.9 turns a minute and spends 19 % of the round not playing; "
        "the herons win 49 % and east wins 50 % of the rounds.",
    )
    assert forecast_lines(answers, FRENCH) == (
        "Une manche dure 5,7\u00a0min en moyenne\u00a0; le temps met fin à 27\u00a0% des manches (prévision).",
        "Un élève joue 1,9 fois par minute et passe 19\u00a0% de la manche sans jouer\u00a0; "
        "les hérons gagnent 49\u00a0% et l’Est gagne 50\u00a0% des manches.",
    )


def test_where_nobody_wins_or_waits_nobody_is_said_to():
    answers = found([("herons", 0.0)], stopped=0.0, idle=0.0, minutes=1.2)
    assert forecast_lines(answers, ENGLISH) == (
        "A round lasts 72 s on average (forecast).",
        "A pupil gets 1.9 turns a minute.",
    )
    assert forecast_lines(answers, FRENCH) == (
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


def test_nothing_to_mend_with_the_first_fact():
    facts = ("Can win: herons.", "And more.")
    assert check_lines(HERONS, (), facts, ENGLISH) == ("Checked for 11 herons and 1 pikes: nothing to mend", facts[0])
    assert check_lines(HERONS, (), ("Fait.",), FRENCH) == (
        "Vérifié pour 11 hérons et 1 brochet\u00a0: rien à corriger",
        "Fait.",
    )
    assert check_lines(WINDS, (), (), FRENCH) == (
        "Vérifié pour 1 joueur du Nord et 10 joueurs de l’Est\u00a0: rien à corriger",
    )


def test_what_is_to_mend():
    said = (warning("C-stall"), warning("C-no-end"), warning("C-idle"))
    assert check_lines(HERONS, said, ("A fact.",), ENGLISH) == (
        "Checked for 11 herons and 1 pikes: 3 things to mend",
        said[0].title,
        said[1].title,
    )
    assert check_lines(HERONS, said, ("Fait.",), FRENCH) == (
        "Vérifié pour 11 hérons et 1 brochet\u00a0: 3 points à corriger",
        "Une équipe peut empêcher la manche de finir",
        "Rien de ce qui peut arriver en jeu ne met fin à la manche",
    )
    assert check_lines(HERONS, said[:1], (), FRENCH)[0].endswith("1 point à corriger")


def test_every_finding_of_the_check_is_said_in_french():
    homes = {sys.modules[check.look.__module__] for check in folder.FINDINGS}
    codes = {home.CODE for home in homes} | {limits.BUDGET, limits.TOO_LARGE, limits.UNFINISHED}
    assert len(codes) == len(folder.FINDINGS) + 3
    codes |= {"N-too-high", "N-unfit", "N-hard-ball"}  # what the net warns of
    codes |= {"M-no-effect", "M-base-changed", "M-licence"}  # and what is said on the way there
    assert sorted(code for code in codes if FRENCH.known(FINDING, code) is None) == []


def test_facts():
    facts = Facts(
        states=10,
        ends=2,
        edges=20,
        complete=True,
        ends_surely=True,
        held_up_by=(),
        shortest=11,
        longest=30,
        can_win=("herons", "pikes"),
        capped=(),
    )
    assert list(fact_lines(facts, 8.5, ENGLISH)) == [
        "Can win: herons and pikes.",
        "The shortest round takes 11 moves.",
        "The round ends in every line of play, sooner or later (with probability 1).",
        "The clock ends it after 8.5 min at the latest.",
    ]
    assert list(fact_lines(facts, 8.5, FRENCH)) == [
        "Victoire possible pour les hérons et les brochets.",
        "La manche la plus courte compte 11 actions.",
        "Quoi que l’on joue, la manche finit tôt ou tard (avec une probabilité de 1).",
        "Le temps met fin à la manche après 8,5\u00a0min au plus tard.",
    ]


def test_that_the_round_ends_is_not_said_without_who_can_hold_it_up():
    facts = Facts(9, 1, 9, True, True, ("herons",), ("herons", "pikes"), 2, None, ())
    assert list(fact_lines(facts, None, ENGLISH))[-1] == (
        "If all sides play on, the round ends sooner or later (with probability 1); "
        "a side that does not want it to can hold it up: herons."
    )
    assert list(fact_lines(facts, None, FRENCH))[-1].endswith("peut l’en empêcher : les hérons.")


def test_a_french_card_is_told_in_french(capsys):
    make_card("lantern row", (), 20, None, None, "A4", False, False, language="fr")
    told = capsys.readouterr().out
    assert "- Vérifié pour 10 joueurs du Nord et 10 joueurs du Sud\u00a0: rien à corriger.\n" in told
    assert "- Victoire possible pour le Nord et le Sud.\n" in told
    assert "- Une manche dure " in told and "- Un élève joue " in told
    assert "Checked" not in told and " rounds" not in told
