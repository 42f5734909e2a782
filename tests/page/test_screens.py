"""The screens without a browser: every link and form does its work without scripts."""

from __future__ import annotations

import re
from html import unescape
from pathlib import Path

import pytest
from desks import CLASS, browser, desk_in
from starlette.testclient import TestClient

import library
from compose.page.desk import Desk

HOSTILE = 'x"><script>alert(1)</script>'


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    return desk_in(tmp_path)


@pytest.fixture
def client(desk: Desk) -> TestClient:
    return browser(desk)


def link(text: str, words: str) -> str:
    """Where the link with these words leads."""
    found = re.search(rf'<a [^>]*href="([^"]*)"[^>]*>(?:(?!</a>).)*{re.escape(words)}', text, re.S)
    assert found, words
    return unescape(found.group(1))


def test_the_way_in_is_the_class_and_then_the_games(desk: Desk, client: TestClient) -> None:
    assert client.get("/").url.path == "/class"
    sent = client.post("/class", data={**CLASS, "token": desk.token})
    assert sent.url.path == "/games"
    assert client.get("/").url.path == "/games"
    again = client.get("/class").text
    assert 'name="pupils" type="number" inputmode="numeric" min="1" max="400" value="27"' in again
    assert "class of 27" in (desk.shelf / "my-class.rules").read_text()


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("pupils", "0"),
        ("pupils", "27; x"),
        ("minutes", "999"),
        ("oldest", "0"),
        ("oldest", "x"),
        ("youngest", "2"),
    ],
)
def test_a_class_that_cannot_be_is_not_kept(desk: Desk, client: TestClient, field: str, value: str) -> None:
    answer = client.post("/class", data={**CLASS, "token": desk.token, field: value})
    assert answer.status_code == 422
    assert 'role="alert"' in answer.text
    assert not desk.shelf.exists()


def test_games_are_filtered(client: TestClient) -> None:
    every = client.get("/games?whole=yes").text
    towed = client.get("/games?whole=yes&skill=tow").text
    assert "Lantern Row" in every and "Sledge Road" in every
    assert "Sledge Road" in towed and 'href="/remix/lantern-row"' not in towed


def test_names_and_lines_are_there_before_it_is_known_what_fits(desk: Desk, client: TestClient) -> None:
    """The same games as in the list itself, without a sheet being read; one that is no plain file does no harm."""
    (desk.shelf / "games").mkdir(parents=True)
    (desk.shelf / "games" / "trap.rules").symlink_to("/dev/zero")
    listed = set(re.findall(r'href="(/remix/[^"]*)"', client.get("/games?whole=yes").text))
    first = client.get("/games").text
    assert set(re.findall(r'href="(/remix/[^"]*)"', first)) == listed | {"/remix/trap"}
    assert 'data-later="/games/rows"' in first and "Two sides clear each other" in first


def test_what_fits_comes_first(client: TestClient) -> None:
    rows = re.findall(r'<p class="verdict (sound|mend)">', client.get("/games?whole=yes").text)
    assert rows == sorted(rows, key=lambda each: each != "sound")
    assert set(rows) == {"sound", "mend"}


def test_a_modifier_is_put_on_set_undone_and_done_again(client: TestClient) -> None:
    plain = client.get("/remix/lantern-row?whole=yes").text
    one = client.get(link(plain, "add balls")).text
    assert "Lantern Row Remix" in one and "foam balls in place of 8" in one
    more = client.get(re.findall(r'href="([^"]*)" id="more-1-add balls"', one)[0].replace("&amp;", "&")).text
    assert "11 foam balls in place of 8" in more
    undone = client.get(link(more, "Undo")).text
    assert "10 foam balls in place of 8" in undone
    assert "11 foam balls in place of 8" in client.get(link(undone, "Redo")).text


def test_the_plan_is_there_once_for_each_breadth(client: TestClient) -> None:
    """With words that can be read on a phone, too, and no id twice."""
    text = client.get("/remix/lantern-row").text
    wide, narrow = re.findall(r'<figure class="plan (?:wide|narrow)">(.*?)</figure>', text, re.S)
    sizes = [max(float(size) for size in re.findall(r'font-size="([\d.]+)"', plan)) for plan in (wide, narrow)]
    assert sizes[1] > 1.5 * sizes[0]
    ids = re.findall(r' id="([^"]*)"', text)
    assert len(ids) == len(set(ids))


def test_what_does_not_fit_says_why(client: TestClient) -> None:
    text = client.get("/remix/lantern-row/choices").text
    off = re.search(r'aria-disabled="true"><b>wider zones</b> <small>([^<]*)', text)
    assert off and "zone" in off.group(1)


def test_what_fits_stands_before_what_does_not(client: TestClient) -> None:
    """Under each heading, so that nobody has to look for what can be tapped between what cannot."""
    for heading in client.get("/remix/lantern-row/choices").text.split('class="heading"')[1:]:
        offered = re.findall(r'class="choice( off)?', heading)
        assert offered == sorted(offered)


def test_what_the_class_lacks_stands_before_the_forecast(desk: Desk, client: TestClient) -> None:
    client.post("/class", data={**CLASS, "token": desk.token, "kit-foam ball": "1"})
    before, _, after = client.get("/remix/lantern-row").text.partition('id="odds"')
    assert "finding mend" in before and after


def test_whether_order_matters_follows_with_the_forecast(client: TestClient) -> None:
    """It takes as long as the remix itself, so that the first look does not wait for it."""
    query, told = "with=moving+targets&with=pass+first", "The order of"
    assert told not in client.get(f"/remix/lantern-row?{query}").text
    assert client.get(f"/remix/lantern-row/odds?{query}").text.count(told) == 1
    assert client.get(f"/remix/lantern-row?{query}&whole=yes").text.count(told) == 1
    assert told not in client.get("/remix/lantern-row/odds?with=roll+instead&with=pass+first").text


def test_order_is_told_at_once_where_no_forecast_follows(desk: Desk, client: TestClient) -> None:
    client.post("/class", data={**CLASS, "token": desk.token, "pupils": "2"})
    shown = client.get("/remix/lantern-row?with=moving+targets&with=pass+first").text
    assert "cannot play it like this" in shown and shown.count("The order of") == 1


def test_the_forecast_follows(client: TestClient) -> None:
    assert "data-later" in client.get("/remix/lantern-row").text
    assert "A round lasts" in client.get("/remix/lantern-row/odds").text
    assert "A round lasts" in client.get("/remix/lantern-row?whole=yes").text


def test_modifiers_that_clash_are_told(client: TestClient) -> None:
    """Each can be taken off; in French they are called by their French names, with one full stop at the end."""
    path = "/remix/lantern-row?with=add+balls&with=kick+instead&with=roll+instead"
    text = client.get(path).text
    assert "do not go together" in text
    off = re.findall(r'id="off-([^"]*)" href="([^"]*)"', text)
    assert [name for name, _ in off] == ["add balls", "kick instead", "roll instead"]
    assert "Lantern Row Remix" in client.get(unescape(off[1][1])).text
    french = client.get(path, headers={"accept-language": "fr"}).text
    assert "<code>tirer du pied</code> et <code>faire rouler</code> ne vont pas ensemble.</p>" in french


@pytest.mark.parametrize(
    "path",
    [
        f"/remix/{HOSTILE}",
        f"/remix/lantern-row?with={HOSTILE}",
        f"/games?skill={HOSTILE}",
        f"/remix/lantern-row?was={HOSTILE}",
    ],
)
def test_what_is_written_into_an_address_is_never_markup(client: TestClient, path: str) -> None:
    assert "<script>alert" not in client.get(path).text


def test_a_hall_by_its_size_is_kept(desk: Desk, client: TestClient) -> None:
    sent = {**CLASS, "token": desk.token, "hall": "", "long": "15", "wide": "12,5"}
    assert client.post("/class", data=sent).url.path == "/games"
    assert "the hall is 15 m by 12.5 m" in (desk.shelf / "my-class.rules").read_text()
    again = client.get("/class").text
    assert 'value="12.5"' in again and " selected" not in again.partition('id="hall"')[2].partition("</select>")[0]
    assert client.post("/class", data={**sent, "long": "x"}).status_code == 422


def test_a_size_that_is_typed_is_never_dropped(desk: Desk, client: TestClient) -> None:
    """It is the hall's where none is chosen, and what stands there then does not deny it; beside the name of a hall it
    is refused."""
    sent = {**CLASS, "token": desk.token, "long": "15", "wide": "12"}
    assert client.post("/class", data=sent).url.path == "/games"
    assert "the hall is 15 m by 12 m" in (desk.shelf / "my-class.rules").read_text()
    for language, said in (("en", "not in this list: by its size"), ("fr", "autre : par ses dimensions")):
        shown = client.get("/class", headers={"accept-language": language}).text
        first = re.search(r'<select id="hall" name="hall"><option value="">([^<]*)', shown)
        assert first and first.group(1).replace("\xa0", " ").startswith(said)
    assert client.post("/class", data={**sent, "hall": next(iter(library.halls()))}).status_code == 422


@pytest.mark.parametrize("query", ["with=kick+instead&with=roll+instead", "with=no+such+modifier"])
def test_a_forecast_of_what_cannot_be_is_no_breakdown(client: TestClient, query: str) -> None:
    assert "could not be forecast" in client.get(f"/remix/lantern-row/odds?{query}").text
