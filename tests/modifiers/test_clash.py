"""Modifiers that do not go together, undo each other, or hang on their order: told in words."""

from __future__ import annotations

from mixtures import made, mixed, modifier_in, row, use

from compose.modifiers.clash import clashes, order_matters, undone
from compose.modifiers.difference.same_game import same_lines
from grammar.finding import Basis, Severity
from library import kit_names


def told(*uses: object) -> list[str]:
    return [each.title for each in order_matters(row(), uses, kit_names())]  # type: ignore[arg-type]


def test_declared_clash_is_told_whichever_says_it() -> None:
    for pair in ((use("kick instead"), use("roll instead")), (use("roll instead"), use("kick instead"))):
        (finding,) = clashes(pair)
        assert finding.code == "M-clash" and finding.severity is Severity.ERROR
        assert "`kick instead`" in finding.title and "do not go together" in finding.title


def test_order_is_told_with_the_lines_that_differ() -> None:
    (title,) = told(use("small balls"), use("special ball"))
    assert "The order of `small balls` and `special ball` matters" in title
    assert "like a soft volleyball" in title and "like a small foam ball" in title


def test_order_that_does_not_matter_is_not_told() -> None:
    assert not told(use("add balls"), use("roll instead"))
    assert not told(use("shorter court"), use("out to a task"), use("hold limit"))


def test_pair_that_goes_together_only_one_way_round_says_why() -> None:
    gold = modifier_in("put in kit\n  1 gold ball, like a foam ball\nput in set-up\n  1 gold ball in the middle")
    user = modifier_in(
        "needs a gold ball\nput in play\n  players roll a gold ball past the back line of the other side"
    )
    (finding,) = order_matters(row(), (gold, user), kit_names())
    assert finding.basis is Basis.COMPUTED
    assert "the other way round, " in finding.title and "has no gold ball" in finding.title
    assert mixed(row(), user, gold).value is None


def test_later_modifier_that_changes_an_earlier_line_is_told() -> None:
    outcome = mixed(row(), use("hold limit", time=9), use("hold limit", time=5))
    assert outcome.value is not None
    (finding,) = undone(outcome.value)
    assert finding.code == "M-undone" and "a ball is held at most 9 s" in finding.title


def test_modifier_without_effect_is_told() -> None:
    outcome = mixed(row(), use("overarm instead"))
    assert [each.code for each in outcome.findings] == ["M-no-effect"]
    assert outcome.value is not None and not outcome.value.edits


def test_other_words_for_the_same_are_without_effect() -> None:
    """The clock of the row stops after 6 min already, and compares the only targets there are."""
    told_of = {minutes: mixed(row(), use("time limit", time=minutes)) for minutes in (6, 5)}
    assert [each.code for each in told_of[6].findings] == ["M-no-effect"]
    assert not told_of[5].findings


def test_what_is_told_to_people_alone_is_an_effect() -> None:
    spoken = modifier_in('put in play\n  "Say your name before you throw."')
    assert not mixed(row(), spoken).findings


def test_unmet_need_is_told_in_one_sentence() -> None:
    (finding,) = mixed(row(), use("wider zones")).findings
    assert finding.code == "M-need" and finding.title == "`wider zones` does not fit: Row has no zone."


def test_lines_of_care_alone_may_stand_in_another_order() -> None:
    care = [modifier_in(f'put in care\n  "{text}"') for text in ("Look up.", "Walk back.")]
    play = [use("hold limit"), use("walking play")]
    for pair, alike in ((care, True), (play, False)):
        one, other = made(row(), *pair), made(row(), *reversed(pair))
        assert same_lines(one, other) is alike
    assert not same_lines(row(), made(row(), care[0]))
