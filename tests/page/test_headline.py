"""What stands at the head of an answer is true of all that stands below it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from desks import browser, desk_in
from starlette.testclient import TestClient

import library

HALLS = [{"hall": ""}, {"hall": "", "long": "15", "wide": "12"}]
TO_MEND = re.compile(r'class="finding (?:mend|mistake)"')


def page_for(folder: Path, pupils: str, hall: dict[str, str], language: str = "en") -> TestClient:
    desk = desk_in(folder)
    client = browser(desk, **{"accept-language": language})
    told = {"pupils": pupils, "youngest": "9", "oldest": "10", "minutes": "40", **hall, "kit-foam ball": "8"}
    client.post("/class", data={"token": desk.token, **told})
    return client


def headline(text: str) -> tuple[str, str]:
    """How the headline looks, and what it says."""
    found = re.search(r'<p class="verdict (\w+)" id="verdict">\s*(.*?)\s*</p>', text, re.S)
    assert found
    return found.group(1), re.sub(r"\s+", " ", found.group(2))


@pytest.mark.sample(12)
@pytest.mark.parametrize("path", library.game_paths(), ids=lambda path: path.stem)
@pytest.mark.parametrize("hall", HALLS, ids=["no-hall", "small-hall"])
def test_the_headline_is_sound_only_where_nothing_below_is_to_mend(
    tmp_path: Path, path: Path, hall: dict[str, str]
) -> None:
    client = page_for(tmp_path, "27", hall)
    first = client.get(f"/remix/{path.stem}").text
    below = bool(TO_MEND.search(first))
    assert (headline(first)[0] == "mend") == below
    if "cannot play it" not in first:
        again = client.get(f"/remix/{path.stem}/proof").text
        assert headline(again)[0] == "mend" or not below, "after a longer look, too"
    odds = client.get(f"/remix/{path.stem}/odds").text
    assert ("verdict mend" in odds) == bool(TO_MEND.search(odds))


@pytest.mark.parametrize(
    ("slug", "hall", "said"),
    [
        ("lantern-row", HALLS[0], "There is something to mend for your class. The rules work."),
        ("heron-and-pike?with=nobody+is+out", HALLS[1], "There is something to mend in the rules and for your class."),
    ],
)
def test_one_headline_speaks_of_rules_and_class(tmp_path: Path, slug: str, hall: dict[str, str], said: str) -> None:
    assert headline(page_for(tmp_path, "26", hall).get(f"/remix/{slug}").text) == ("mend", said)


def test_so_it_does_in_french(tmp_path: Path) -> None:
    text = page_for(tmp_path, "26", HALLS[0], "fr").get("/remix/lantern-row?whole=yes").text
    told = "Il y a quelque chose à corriger pour votre classe. Les règles tiennent."
    assert headline(text) == ("mend", told)


@pytest.mark.parametrize("pupils", ["26", "2"])
@pytest.mark.parametrize(("language", "said"), [("en", "changes nothing in"), ("fr", "ne change rien")])
def test_a_modifier_that_changes_nothing_is_told(tmp_path: Path, language: str, said: str, pupils: str) -> None:
    """As the check tells it, also where the class cannot play at all; and not with another amount."""
    client = page_for(tmp_path, pupils, HALLS[0], language)
    assert said in client.get("/remix/lantern-row?with=time+limit,time+6").text
    assert said not in client.get("/remix/lantern-row?with=time+limit,time+4").text.partition('id="choose"')[0]
