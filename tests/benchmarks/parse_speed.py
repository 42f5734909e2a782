"""How fast rule sheets are read: one warm, a thousand formatted, and files that grow to 1 MiB.

Prints numbers, judges nothing; seconds are of the processor, so that other work does not count.
Run with `python -m tests.benchmarks.parse_speed`. Aims: a usual file read and resolved in 30 ms warm, a
thousand files formatted in 30 s, twice the file in twice the time.
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable, Iterator

from grammar.format import format_file
from grammar.language import sentence_tree
from grammar.mistakes.proofread import proofread
from grammar.parse import parse
from grammar.resolve import resolve
from library import game_paths, kit_categories

TIMES = 15
FILES = 1000
SIZES_KIB = (64, 128, 256, 512, 1024)


def seconds(work: Callable[[], object]) -> float:
    """How long it takes, once, in seconds of the processor."""
    begun = time.process_time()
    work()
    return time.process_time() - begun


def read_and_resolved(text: str) -> None:
    """From text to game, with no sentence remembered from before."""
    sentence_tree.cache_clear()
    rules = parse(text).value
    assert rules is not None
    assert resolve(rules.games[0], kit_categories()).value is not None


def usual_files() -> Iterator[str]:
    """One line for each game of the library."""
    for path in game_paths():
        text = path.read_text(encoding="utf-8")
        read_and_resolved(text)
        middle = statistics.median(seconds(lambda text=text: read_and_resolved(text)) for _ in range(TIMES))
        yield f"  {path.stem:<20} {len(text.splitlines()):>4} lines {1000 * middle:>8.1f} ms"


def varied(text: str, number: int) -> str:
    """The same game with other numbers, so that no two files have all sentences in common."""
    return text.replace("at most 10 s", f"at most {3 + number % 27} s").replace("8 to 12", f"{4 + number % 8} to 14")


def many_formatted(texts: list[str]) -> str:
    """Reading and writing a thousand files, one after the other on one core."""
    sentence_tree.cache_clear()

    def work() -> None:
        for number in range(FILES):
            rules = parse(varied(texts[number % len(texts)], number)).value
            assert rules is not None
            format_file(rules)

    return f"  {FILES} files {seconds(work):>8.1f} s"


def growth(title: str, line: Callable[[int], str]) -> Iterator[str]:
    """Files of more and more such lines; where the work is in step with the length, the last column stays."""
    yield f"  {title}"
    each = len(line(0)) + 1
    for kib in SIZES_KIB:
        data = ("game A\ncare\n" + "".join(map(line, range(kib * 1024 // each)))).encode()[: 1 << 20]
        sentence_tree.cache_clear()
        taken = seconds(lambda data=data: proofread(data, "growing.rules", kit_categories()))
        yield f"    {len(data) >> 10:>5} KiB {taken:>8.2f} s {1e6 * taken / len(data):>8.2f} µs a byte"


def main() -> None:
    """Print all numbers."""
    texts = [path.read_text(encoding="utf-8") for path in game_paths()]
    out = ["read and resolve a file of the library, warm:", *usual_files()]
    out += ["read and format:", many_formatted(texts)]
    out += ["files that grow:"]
    out += growth("sound games", lambda number: texts[number % len(texts)])
    out += growth("lines of one section (too long, so refused)", lambda number: f'  "Mind bench {number}."\n')
    out += growth("slips (only the first are mended)", lambda number: f"  Mind bench {number}.\n")
    print("\n".join(out))


if __name__ == "__main__":
    main()
