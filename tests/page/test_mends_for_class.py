"""A mend is tried with the class: what it brings to mend stands on its button."""

from __future__ import annotations

import re
from collections import Counter
from pathlib import Path

import pytest
from desks import browser, desk_in

import library
from compose.page.answers.mending import less, more
from compose.page.answers.remixing import odds, proof, quick
from compose.page.answers.values import Asked, Mend

GROUP = "class My class\n  class of {pupils}\n  ages 9 to 10\n  lesson of 40 min\n  the hall is 15 m by 12 m\n"


def asked(slug: str, *uses: str, pupils: int = 30, language: str = "en") -> Asked:
    (text,) = [path.read_text(encoding="utf-8") for path in library.game_paths() if path.stem == slug]
    return Asked((text,), uses, GROUP.format(pupils=pupils), language)


def mends(one: Asked, place: str) -> tuple[Mend, ...]:
    return (*less(one, place), *more(one, place, 3))


def codes_to_mend(one: Asked) -> Counter[str]:
    """What the screen of a remix tells to mend, in all of its parts."""
    first, later = quick(one), odds(one)
    rules = proof(one)
    told = (*first.refused, *first.of_class, *(each for _, each in later.findings))
    told = (*told, *(each for _, each in rules.findings)) if rules is not None else told
    known = {(each.code, each.title): each for each in told if each.gravity != "know"}
    return Counter(code for code, _ in known)


@pytest.mark.parametrize(
    ("slug", "uses", "place", "pupils"),
    [
        ("tide-whistle", (), "c0", 30),
        ("fell-post", (), "c0", 30),
        ("ferry-bench", (), "c0", 30),
        ("heron-and-pike", ("nobody is out",), "r0", 24),
        ("kiln-row", (), "c0", 30),
    ],
)
def test_all_that_a_mend_brings_stands_on_its_button(slug: str, uses: tuple[str, ...], place: str, pupils: int) -> None:
    before = asked(slug, *uses, pupils=pupils)
    there, found = codes_to_mend(before), mends(before, place)
    assert any(each.brings for each in found)
    for each in found:
        new = codes_to_mend(asked(slug, *each.uses, pupils=pupils)) - there
        assert len(each.brings) == new.total(), (each.words, new)


def test_what_brings_less_stands_first() -> None:
    numbers = [len(each.brings) for each in more(asked("ferry-bench"), "c0", 4)]
    assert numbers == sorted(numbers) and numbers[0] < numbers[-1]


@pytest.mark.parametrize(
    ("language", "before"), [("en", "Then there is to mend: A pupil spends"), ("fr", "Il y a alors à corriger :")]
)
def test_who_rests_is_said_before_a_side_is_put_to_rest(tmp_path: Path, language: str, before: str) -> None:
    """And the same where everything comes at once, without scripts."""
    desk = desk_in(tmp_path)
    client = browser(desk, **{"accept-language": language})
    client.post(
        "/class",
        data={
            "token": desk.token,
            "pupils": "30",
            "youngest": "9",
            "oldest": "10",
            "minutes": "40",
            "hall": "",
            "long": "15",
            "wide": "12",
        },
    )
    for address in ("/why/lantern-row/more-mends?", "/why/lantern-row?whole=yes&"):
        assert before in client.get(f"{address}finding=c0").text.replace("\xa0", " ")


@pytest.mark.parametrize("address", ["/mends?", "/more-mends?before=1&costly=yes&", "?whole=yes&"])
def test_nothing_else_to_mend_is_not_said_beside_a_mend_that_says_what_it_brings(tmp_path: Path, address: str) -> None:
    """The mend by taking away comes first, and the words below all of them later."""
    text = browser(desk_in(tmp_path)).get(f"/why/heron-and-pike{address}with=nobody+is+out&finding=r0").text
    assert "more-mends" in address or "Then there is to mend" in text
    later = re.search(r'data-later="([^"]*)"', text)
    assert "brings nothing else to mend." not in text and (later is None or "costly=yes" in later.group(1))


@pytest.mark.parametrize(("language", "said"), [("en", "it comes of your class"), ("fr", "cela vient de votre classe")])
def test_what_comes_of_the_class_is_not_said_to_stand_in_the_sheet(tmp_path: Path, language: str, said: str) -> None:
    desk = desk_in(tmp_path)
    client = browser(desk, **{"accept-language": language})
    told = {"pupils": "30", "youngest": "9", "oldest": "10", "minutes": "40"}
    client.post("/class", data={"token": desk.token, **told})
    text = client.get("/why/lantern-row?finding=c0").text
    assert said in text and "it stands in the sheet" not in text and "In the sheet" not in text
