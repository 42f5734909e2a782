"""Make the page of a common shelf of 500 games (unless told otherwise), then bring it up to date, and print the times.

python tests/benchmarks/share_page.py [games]
"""

from __future__ import annotations

import os
import sys
import tempfile
import time
from pathlib import Path

HERE = Path(__file__).resolve()
sys.path[:0] = [str(HERE.parents[2]), str(HERE.parents[1] / "share")]

from shared_games import FELL_GATE, game_item  # noqa: E402  (the path is set above)
from site_shelf import keep, many  # noqa: E402

from compose.share.pack.item import item_of, sheets_in  # noqa: E402
from compose.share.site.build import Built, build_site  # noqa: E402
from grammar.parse import parse  # noqa: E402
from library import game_paths  # noqa: E402


def varied(number: int) -> list[object]:
    """So many games: those of the library, again and again under other names, and small ones."""
    texts = [path.read_text(encoding="utf-8") for path in game_paths()]
    items: list[object] = []
    for at in range(number):
        title = next(line for line in texts[at % len(texts)].splitlines() if line.startswith("game "))
        rules = parse(texts[at % len(texts)].replace(title, f"game Number {at}")).value
        assert rules is not None
        items.append(item_of(sheets_in(rules)[0]))
    return items


def timed(words: str, folder: Path, out: Path) -> Built:
    """Build, and print how long it took."""
    started, used = time.perf_counter(), sum(os.times()[:4])
    outcome = build_site(folder, out, "Tarn Valley common shelf")
    assert outcome.value is not None, outcome.findings
    took, cpu = time.perf_counter() - started, sum(os.times()[:4]) - used
    print(f"{words}: {took:.1f} s, of them {cpu:.1f} s on {os.cpu_count()} processors, {outcome.value}")
    return outcome.value


def main() -> None:
    number = int(sys.argv[1]) if len(sys.argv) > 1 else 500
    with tempfile.TemporaryDirectory() as held:
        folder, out = Path(held) / "common", Path(held) / "site"
        keep(folder, *varied(number), *many(0))  # type: ignore[arg-type]
        timed(f"{number} games, all anew", folder, out)
        timed("nothing changed", folder, out)
        keep(folder, game_item(FELL_GATE.replace("14 m", "15 m")))
        timed("one game changed", folder, out)
        files = [path for path in out.rglob("*") if path.is_file()]
        index = (out / "index.html").stat().st_size
        size = sum(path.stat().st_size for path in files)
        print(f"{len(files)} files, {size / 1e6:.1f} MB, the list {index / 1e3:.0f} kB")


if __name__ == "__main__":
    main()
