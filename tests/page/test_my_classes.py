"""Several classes of one teacher, their cupboard, and a hall in which something stands."""

from __future__ import annotations

from html import unescape
from pathlib import Path

import pytest
from attrs import evolve
from desks import CLASS, browser, desk_in
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as drawn
from playwright.sync_api import Browser, BrowserContext, expect
from starlette.testclient import TestClient
from windows import PHONE, Served, at, opened

import library
from compose.page.answers.group import group_of
from compose.page.class_form import Fields, fields_of, sheet_of
from compose.page.classes import others
from compose.page.desk import Desk
from compose.page.screens.my_class import IN_A_HALL

STAGE, DOOR = IN_A_HALL["stage"], IN_A_HALL["door"]


@pytest.fixture(name="desk")
def _desk(tmp_path: Path) -> Desk:
    return desk_in(tmp_path)


@pytest.fixture(name="client")
def _client(desk: Desk) -> TestClient:
    return browser(desk)


def kept(desk: Desk, **told: str) -> dict[str, str]:
    return {**CLASS, "token": desk.token, "long": "15", "wide": "12", **told}


def test_each_line_that_is_offered_can_be_said_of_a_hall() -> None:
    for line in IN_A_HALL.values():
        outcome = group_of(sheet_of(Fields(long="18", wide="12", other=line)))
        assert outcome.value is not None, outcome.findings


@pytest.mark.parametrize("path", library.class_paths(), ids=lambda path: path.stem)
def test_nothing_of_a_sheet_is_lost_in_the_form(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    fields, before = fields_of(text).value, group_of(text).value
    assert fields is not None and before is not None
    after = group_of(sheet_of(fields)).value
    assert after is not None and set(after.cupboard) == set(before.cupboard)
    assert evolve(after, cupboard=()) == evolve(before, cupboard=())


@given(drawn.lists(drawn.sampled_from((*IN_A_HALL.values(), "6 stumps, like a plastic pin", "setting up takes 4 min"))))
def test_form_and_sheet_agree(lines: list[str]) -> None:
    typed = Fields(name="Year Four", long="20", wide="12", other="\n".join(dict.fromkeys(lines)))
    read = fields_of(sheet_of(typed)).value
    assert read is not None and sheet_of(read) == sheet_of(typed)


def test_a_stage_is_kept_and_told_where_it_cannot_be_read(desk: Desk, client: TestClient) -> None:
    assert client.post("/class", data=kept(desk, other=f"{STAGE}\n{DOOR}")).url.path == "/games"
    assert STAGE in client.get("/class").text
    client.post("/class", data=kept(desk, other=f"{STAGE}\n{DOOR}", pupils="20"))
    assert STAGE in (desk.shelf / "my-class.rules").read_text()
    wrong = client.post("/class", data=kept(desk, other="a stage somewhere"))
    assert wrong.status_code == 422 and "a stage somewhere" in wrong.text


def test_two_classes_share_one_cupboard(desk: Desk, client: TestClient) -> None:
    client.post("/class", data=kept(desk, name="Year Four", pupils="27"))
    client.post("/class/choose", data={"token": desk.token, "opened": "Year Four", "do": "more"})
    shown = unescape(client.get("/class").text)
    assert 'aria-current="true">My class 2<' in shown and 'name="shared" value="yes" checked' in shown
    told = kept(desk, name="Year Six", pupils="24", opened="My class 2", shared="yes", **{"kit-foam ball": "5"})
    client.post("/class", data=told)
    (four,) = others(desk.shelf)
    assert four.name == "Year Four" and "class of 27" in four.text and "5 foam balls" in four.text
    client.post("/class/choose", data={"token": desk.token, "opened": "Year Six", "class": four.slug})
    assert "class of 27" in desk.group and [each.name for each in others(desk.shelf)] == ["Year Six"]


def test_a_cupboard_of_its_own_stays_so(desk: Desk, client: TestClient) -> None:
    client.post("/class", data=kept(desk, name="Year Four"))
    client.post("/class/choose", data={"token": desk.token, "do": "more"})
    client.post("/class", data=kept(desk, name="Year Six", **{"kit-foam ball": "3"}))
    assert "8 foam balls" in others(desk.shelf)[0].text
    assert 'name="shared" value="yes">' in client.get("/class").text


def test_another_tab_that_has_chosen_another_class_changes_not_this_one(desk: Desk, client: TestClient) -> None:
    client.post("/class", data=kept(desk, name="Year Four", pupils="27"))
    client.post("/class/choose", data={"token": desk.token, "do": "more"})  # in another tab
    client.post("/class", data=kept(desk, name="Year Four", opened="Year Four", pupils="26"))
    assert "class Year Four" in desk.group and "class of 26" in desk.group
    assert [(each.name, "class of 27" in each.text) for each in others(desk.shelf)] == [("My class 2", True)]


def test_no_class_takes_the_place_of_another(desk: Desk, client: TestClient) -> None:
    client.post("/class", data=kept(desk, name="Year Four"))
    client.post("/class/choose", data={"token": desk.token, "do": "more"})
    answer = client.post("/class", data=kept(desk, name="year four!"))
    assert answer.status_code == 422 and "Another class is called so, too." in answer.text
    for away in ("My class 2", "Year Four", "Year Four"):
        client.post("/class/choose", data={"token": desk.token, "opened": away, "do": "away"})
    assert "class Year Four" in desk.group and others(desk.shelf) == ()


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=20, deadline=None)
@given(drawn.lists(drawn.sampled_from(("more", "first", "last")), max_size=6))
def test_choosing_loses_no_class(tmp_path_factory: pytest.TempPathFactory, steps: list[str]) -> None:
    desk = desk_in(tmp_path_factory.mktemp("desk"))
    client = browser(desk)
    client.post("/class", data=kept(desk, name="Year Four"))
    names = {"Year Four"}
    for step in steps:
        there = others(desk.shelf)
        if step == "more" or not there:
            client.post("/class/choose", data={"token": desk.token, "do": "more"})
            names.add(desk.group.splitlines()[0].removeprefix("class "))
        else:
            client.post("/class/choose", data={"token": desk.token, "class": there[0 if step == "first" else -1].slug})
        assert {desk.group.splitlines()[0].removeprefix("class "), *(each.name for each in others(desk.shelf))} == names


def test_a_stage_is_put_in_by_a_tap_and_is_on_the_plan(
    served: Served, window: Browser, tabs: list[BrowserContext]
) -> None:
    page = opened(at(tabs, window, PHONE, has_touch=True), served, "/class")
    page.locator("#long").fill("18")
    page.locator("#wide").fill("12")
    page.locator("#in-the-hall summary").tap()
    for name in ("A stage", "A door"):
        page.get_by_role("button", name=name, exact=True).tap()
    expect(page.locator("#other")).to_have_value(f"{STAGE}\n{DOOR}\n")
    page.locator("button.main").tap()
    page.wait_for_url("**/games")
    assert f"  {STAGE}\n  {DOOR}\n" in (served.shelf / "my-class.rules").read_text(encoding="utf-8")
