"""Fill real disks of several small sizes with a shelf, and print what was kept; needs the right to mount (Linux, root).

    python tests/benchmarks/share_full_disk.py

Every game that was acknowledged must be there afterwards, and the one that was refused must have left no trace.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve()
sys.path[:0] = [str(HERE.parents[2]), str(HERE.parents[1] / "share")]

from killed_writer import numbered  # noqa: E402  (the path is set above)
from shelves import contents, files, opened  # noqa: E402


def filled(folder: Path) -> tuple[list[str], str]:
    """Put games on a shelf until one is refused: those that were kept, and the refusal."""
    kept: list[str] = []
    with opened(folder) as shelf:
        while True:
            before = files(folder)
            outcome = shelf.put(numbered(len(kept)))
            if outcome.value is None:
                assert files(folder) == before, "the refused game left something behind"
                return kept, outcome.findings[0].title
            kept.append(outcome.value.item.name)


def main() -> None:
    for size_kb in (300, 450, 600, 900, 1300, 2000):
        with tempfile.TemporaryDirectory() as disk:
            subprocess.run(["mount", "-t", "tmpfs", "-o", f"size={size_kb}k", "tmpfs", disk], check=True)
            try:
                kept, title = filled(Path(disk) / "shelf")
                with opened(Path(disk) / "shelf") as shelf:
                    assert sorted(contents(shelf)) == sorted(kept)
                    how = "for reading" if shelf.read_only else "as usual"
            finally:
                subprocess.run(["umount", disk], check=True)
        said = title.replace(disk, "DISK")
        print(f"{size_kb} kB: {len(kept)} games kept, then: {said} Opened again {how}; all there.")


if __name__ == "__main__":
    main()
