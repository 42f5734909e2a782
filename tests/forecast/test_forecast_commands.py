"""The commands forecast, replay and export, from what is typed to what is printed."""

from __future__ import annotations

import json
import os
import signal
from pathlib import Path

import pytest

from compose.terminal.answer import JSON_VERSION
from compose.terminal.patience import INTERRUPTED, Patience, StoppedError
from tests.terminal.running import typed

FEW = ("--states", "50", "--rounds", "100")  # too few states for anything, so that rounds are played


def run(*words: str, code: int = 0) -> str:
    result = typed(*words)
    assert result.exit_code == code, result.output
    return result.output


def answer(*words: str, code: int = 0) -> dict[str, object]:
    found = json.loads(run(*words, "--json", code=code))
    assert isinstance(found, dict)
    return found


def test_forecast_in_words_fits_the_terminal() -> None:
    text = run("forecast", "lantern-row", "--absent", "3", "--minutes", "60")
    assert all(len(line) <= 80 for line in text.splitlines())
    for said in ("on average", "north wins", "a draw", "turns a minute", "In a lesson of 60 min", "--details"):
        assert said in text
    assert "With 9 north and 8 south, instead of all:" in text
    assert "sideways error" not in text and "Worked out exactly" not in text and "seed" not in text


def test_what_a_forecast_rests_on_is_told_on_request() -> None:
    text = run("forecast", "lantern-row", "--details")
    assert all(len(line) <= 80 for line in text.splitlines())
    assert "sideways error" in text and "Worked out exactly" in text and "seed" not in text


def test_forecast_as_json_adds_up() -> None:
    told = answer("forecast", "lantern-row")
    forecast = told["forecast"]
    assert isinstance(forecast, dict) and told["players"] == {"north": 10, "south": 10}
    odds = forecast["odds"]
    assert sum(chance["value"] for chance in odds["wins"].values()) + odds["draw"]["value"] == pytest.approx(1.0)
    assert forecast["method"]["name"] == "exact" and forecast["moves_most"][0]["norm"] == "aim across"
    assert all(each["low"] <= each["usual"] <= each["high"] and each["sources"] for each in forecast["assumptions"])


def test_past_the_budget_rounds_are_played_and_the_seed_is_said() -> None:
    text = run("forecast", "lantern-row", *FEW, "--seed", "9", code=1)
    assert text.count("100 rounds at random (seed 9)") == 1 and "±" in text
    details = run("forecast", "lantern-row", *FEW, "--seed", "9", "--details", code=1)
    assert details.count("100 rounds at random (seed 9)") == 1
    told = answer("forecast", "lantern-row", *FEW, "--seed", "9", code=1)["forecast"]
    assert isinstance(told, dict)
    assert told["method"] == {"name": "simulated", "rounds": 100, "seed": 9, "margin_level": 0.95}
    mean = told["length_minutes"]["mean"]["value"]
    assert f"{mean:.1f} min" in text, "the same seed, the same numbers"


def test_modifiers_and_pupils_are_heeded() -> None:
    base = answer("forecast", "lantern-row", "--pupils", "16")["forecast"]
    more = answer("forecast", "lantern-row", "--pupils", "16", "--with", "add balls, n 6")["forecast"]
    assert isinstance(base, dict) and isinstance(more, dict)
    mean = [told["length_minutes"]["mean"]["value"] for told in (base, more)]
    assert mean[1] < mean[0]


def test_findings_set_the_exit_code() -> None:
    told = answer("forecast", "homestead", code=1)
    findings = told["findings"]
    assert isinstance(findings, list)
    assert "F-idle-pupils" in {finding["code"] for finding in findings}
    assert {finding["basis"] for finding in findings} <= {"computed", "simulated", "read in the text", "proved"}


@pytest.mark.parametrize(
    "words",
    [
        ("forecast", "no such game"),
        ("forecast", "lantern-row", "--absent", "100"),
        ("forecast", "lantern-row", "--absent", "19"),
        ("replay", "lantern-row", "--finding", "C-nothing"),
        ("export", "no such game"),
    ],
)
def test_wrong_use_is_refused_in_words(words: tuple[str, ...]) -> None:
    told = answer(*words, code=2)
    findings = told["findings"]
    assert isinstance(findings, list) and len(findings) == 1 and findings[0]["hint"]


def test_no_time_for_rounds_says_so() -> None:
    told = answer("forecast", "four-becks", "--states", "50", "--seconds", "0.01", code=2)
    findings = told["findings"]
    assert isinstance(findings, list) and "too short" in findings[0]["title"]


def test_replay_of_a_round() -> None:
    text = run("replay", "lantern-row", "--seed", "4")
    assert text == run("replay", "lantern-row", "--seed", "4") != run("replay", "lantern-row")
    assert all(len(line) <= 80 for line in text.splitlines())
    assert "0:00  the round starts" in text and "knocks it" in text and "without effect" in text
    whole = run("replay", "lantern-row", "--seed", "4", "--all")
    assert len(whole) > len(text) and "and misses" in " ".join(whole.split()) and "without effect" not in whole
    told = answer("replay", "lantern-row", "--seed", "4")
    moves = told["moves"]
    assert isinstance(moves, list) and str(told["result"]) in text
    times = [move["minutes"] for move in moves]
    assert times == sorted(times) and times[-1] <= told["minutes"]
    fallen = [sum(n for place, n in move["after"].items() if place.endswith("/down")) for move in moves]
    assert fallen == sorted(fallen) and fallen[-1] >= 1


def test_replay_of_a_finding() -> None:
    told = answer("replay", "sledge-road", "--finding", "c-stall")
    assert told["finding"] == "C-stall" and "can keep the round from ending" in str(told["title"])
    text = run("replay", "sledge-road", "--finding", "C-stall")
    assert "the round starts" in text and all(len(line) <= 80 for line in text.splitlines())


def test_export(tmp_path: Path) -> None:
    text = run("export", "lantern-row")
    assert text.startswith("ctmc") and 'label "over"' in text
    target = tmp_path / "row.sm"
    assert "Written to" in run("export", "lantern-row", "--out", str(target))
    assert target.read_text().rstrip() == text.rstrip()
    run("export", "lantern-row", "--out", str(target), code=2)
    run("export", "lantern-row", "--out", str(target), "--force")


def test_one_stop_is_heeded_and_a_second_ends_the_program() -> None:
    before = signal.getsignal(signal.SIGINT)
    with Patience() as patience:
        assert patience.keep_going("situations", 1, 0)
        os.kill(os.getpid(), signal.SIGINT)
        assert not patience.keep_going("situations", 2, 0) and patience.stopped
        with pytest.raises(StoppedError):
            os.kill(os.getpid(), signal.SIGINT)
            patience.keep_going("situations", 3, 0)
    assert signal.getsignal(signal.SIGINT) is before


def test_a_forecast_that_is_stopped_tells_what_it_knows(monkeypatch: pytest.MonkeyPatch) -> None:
    """Stopped while assumptions are tried: length and odds are there, the band is not."""

    def stop_late(self: Patience, what: str, done: int, of: int) -> bool:
        self.stopped = self.stopped or what == "assumptions tried"
        return not self.stopped

    monkeypatch.setattr(Patience, "keep_going", stop_late)
    told = answer("forecast", "lantern-row", code=INTERRUPTED)["forecast"]
    assert isinstance(told, dict)
    assert told["band"]["low"] is None and told["moves_most"] == [] and told["odds"]["wins"]["north"]["value"] > 0


def test_a_forecast_stopped_at_once_says_that_nothing_is_known(monkeypatch: pytest.MonkeyPatch) -> None:
    def stop(self: Patience, what: str, done: int, of: int) -> bool:
        self.stopped = True
        return False

    monkeypatch.setattr(Patience, "keep_going", stop)
    assert answer("forecast", "lantern-row", code=INTERRUPTED) == {
        "version": JSON_VERSION,
        "stopped": True,
        "forecast": None,
    }
    assert "nothing is known yet" in run("forecast", "lantern-row", code=INTERRUPTED)


def test_progress_is_shown_on_a_terminal_after_a_second(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("sys.stderr.isatty", lambda: True, raising=False)
    monkeypatch.setattr("compose.terminal.patience.QUIET_SECONDS", 0.0)
    with Patience() as patience:
        assert patience.keep_going("rounds played", 20, 100) and patience.keep_going("rounds played", 30, 100)
        assert patience._progress is not None
        [task] = patience._progress.tasks
        assert task.description == "30 of 100 rounds played"
    monkeypatch.setattr("compose.terminal.patience.QUIET_SECONDS", 60.0)
    with Patience() as patience:
        assert patience.keep_going("rounds played", 20, 100) and patience._progress is None
