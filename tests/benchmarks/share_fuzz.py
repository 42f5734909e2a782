"""Read mutated packs (20,000 unless told otherwise) and print what became of them.

    python tests/benchmarks/share_fuzz.py [packs] [seed]

Every pack must be refused with one line or be a pack in order; each hundredth is also taken in, so that
nothing is written for one that is refused.
"""

from __future__ import annotations

import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

HERE = Path(__file__).resolve()
sys.path[:0] = [str(HERE.parents[2]), str(HERE.parents[1] / "share")]

from pack_mutations import mutated  # noqa: E402  (the path is set above)
from shared_games import everything, game_item, modifier_item, pack_of  # noqa: E402
from shelves import files, opened  # noqa: E402

from compose.modifiers.content_hash import content_hash  # noqa: E402
from compose.share.pack.pack import Pack, read_pack  # noqa: E402
from compose.share.pack.taking_in import take_in  # noqa: E402


def in_order(pack: Pack) -> bool:
    """Whether every sheet of a pack is what the manifest says."""
    return all(content_hash(sheet) == item.content for item, sheet in zip(pack.items, pack.sheets, strict=True))


def main() -> None:
    number = int(sys.argv[1]) if len(sys.argv) > 1 else 20_000
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 1
    seeds = [pack_of(*everything()), pack_of(game_item()), pack_of(modifier_item())]
    refused: Counter[str] = Counter()
    taken, slowest, written = 0, 0.0, 0
    started = time.perf_counter()
    with tempfile.TemporaryDirectory() as folder:
        for index, data in enumerate(mutated(seeds, number, seed)):
            begun = time.perf_counter()
            outcome = read_pack(data, "mutated.zip")
            slowest = max(slowest, time.perf_counter() - begun)
            if outcome.value is not None:
                assert in_order(outcome.value)
                taken += 1
                if index % 100 == 0:
                    with opened(Path(folder) / str(index)) as shelf:
                        written += take_in(shelf, outcome.value, {}, None, "2025-11-25").value is not None
                continue
            [finding] = outcome.findings
            assert finding.title.isprintable() and "\n" not in finding.title and len(finding.title) < 300
            refused[finding.code] += 1
        shelves = {path.name for path in Path(folder).iterdir() if files(path)}
    assert len(shelves) == written
    print(f"{number} mutated packs in {time.perf_counter() - started:.0f} s, the slowest {slowest * 1000:.0f} ms")
    print(f"{sum(refused.values())} refused with one line: {dict(refused.most_common())}")
    print(f"{taken} in order still and true to their manifest; {written} of these taken in as a sample")


if __name__ == "__main__":
    main()
