"""Lineage on the terminal: one bad file hides no other."""

from __future__ import annotations

from pathlib import Path

from running import run, run_json


def test_bad_file_is_told_beside_the_others(tmp_path: Path) -> None:
    run("keep", "lantern row", "--with", "roll instead", "--title", "Zed", "--out", tmp_path / "zed.rules", code=0)
    (tmp_path / "bad.rules").write_text("game Bad\nnonsense", encoding="utf-8")
    assert "Zed" in run("lineage", tmp_path, code=2).output
    told = run_json("lineage", tmp_path, code=2)
    assert "Zed" in [node["title"] for node in told["nodes"]] and told["findings"]
