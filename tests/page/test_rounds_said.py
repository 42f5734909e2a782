"""How many rounds there are: one number wherever the lesson's time is meant, and apart from what the game asks for."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from desks import browser, desk_in
from starlette.testclient import TestClient

from compose.page.desk import Desk

FITS = re.compile(r"\d+ rounds? of \d+ fit: [^<]*|Not even one round fits[^<]*")


def page_for(folder: Path, language: str = "en", **told: str) -> tuple[Desk, TestClient]:
    desk = desk_in(folder)
    client = browser(desk, **{"accept-language": language})
    group = {"pupils": "30", "youngest": "9", "oldest": "10", "minutes": "40", "hall": "", "long": "27", "wide": "15"}
    client.post("/class", data={"token": desk.token, **group, **told})
    return desk, client


def row_of(client: TestClient, slug: str) -> str:
    rows = client.get("/games?whole=yes").text.split('<li class="game">')
    (row,) = [each for each in rows if f'"/remix/{slug}"' in each]
    return row


def test_the_list_and_the_game_say_as_many_rounds(tmp_path: Path) -> None:
    """By the forecast, wherever the clock alone would say that they do not fit; once on a screen."""
    _, client = page_for(tmp_path, pupils="20", minutes="18")
    told = 0
    for slug in ("kiln-row", "crag-row", "quarry-row", "fell-couriers", "lantern-row"):
        whole = client.get(f"/remix/{slug}?whole=yes").text
        assert not FITS.search(client.get(f"/remix/{slug}").text), "before the forecast nobody knows"
        found = FITS.findall(whole)
        assert found == FITS.findall(row_of(client, slug)) and len(found) < 2
        told += len(found)
    assert told == 4


def test_what_mends_the_lack_of_time_is_tried(tmp_path: Path) -> None:
    _, client = page_for(tmp_path, pupils="20", minutes="18")
    where = re.search(r'href="(/why/crag-row\?finding=t0)"', client.get("/remix/crag-row/odds").text)
    assert where and "Add “" in client.get(f"{where.group(1)}&whole=yes").text


@pytest.mark.parametrize(
    ("language", "asks", "in_the_hall"),
    [
        ("en", "game asks for up to 6 rounds", "Round {number} of up to {most} in this game"),
        ("fr", "jeu demande jusqu’à 6 manches", "Manche {number} sur {most} au plus dans ce jeu"),
    ],
)
def test_what_the_game_asks_for_is_told_apart_from_what_there_is_time_for(
    tmp_path: Path, language: str, asks: str, in_the_hall: str
) -> None:
    desk, client = page_for(tmp_path, language)
    assert asks in client.get("/remix/lantern-row/odds?with=one+side+rests").text.replace("\xa0", " ")
    client.post("/lesson/add", data={"token": desk.token, "game": "lantern-row", "with": "one side rests"})
    for address in ("/lesson", "/lesson?whole=yes"):
        assert asks in client.get(address).text.replace("\xa0", " ")
    assert in_the_hall in client.get("/hall/lantern-row?with=one+side+rests&in=0").text
    assert asks[:20] not in client.get("/remix/lantern-row/odds").text, "of one round nothing is said"
