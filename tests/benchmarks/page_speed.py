"""How quick the page is: PYTHONPATH=. python tests/benchmarks/page_speed.py [processor]

Prints, on this machine: the first page from the command on; then, over every game of the library with two modifiers
that fit it, with nothing in the cache, a tap to "sound or not" and to odds and length (the two games with the most
situations apart); then the memory of all processes after 200 taps, and whether anything is still being worked on.
With `processor` only the answers, in processor seconds of one worker: for a machine that is busy with other work.

Measured with `processor`, two pairs for each of 24 games. On two nearly idle cores, before remixes were made once, the
first look was bounded and rounds were played only by what can happen: sound or not, half within 0.25 s, 95 % within
0.96 s; odds and length, half within 0.46 s, 95 % within 3.24 s. After that, while five other processes wanted the same
two cores: 0.14 s and 0.57 s; 0.29 s and 1.49 s. Meant are 0.3 s and 1.5 s at 95 %. Under that load the first page came
1.5 to 1.8 s after the command (0.7 to 0.9 s of processor time), and 200 taps left 211 MB in four processes and no work.

With the remix made anew, too (before, drawing the pair had made it already), beside other work, in the same minute:
0.10 s and 0.30 s, 0.13 s and 0.83 s; with what the order of modifiers decides told with the odds, no longer with the
first look: 0.08 s and 0.28 s, 0.15 s and 1.04 s.

On two idle cores, on the wall (not `processor`): the first page after 0.75 s; sound or not, half within 0.13 s, 95 %
within 0.38 s; odds and length 0.24 s and 1.65 s; 200 taps left 292 MB in four processes and no work.

After that, with places for words tried one by one and attempts numbered without comparing them, in processor seconds,
before and after side by side: sound or not, half within 0.068 and 0.061 s, 95 % within 0.256 and 0.243 s, the sum of
all 6.8 and 6.4 s; odds and length 0.11 and 0.10 s, 0.55 and 0.59 s. The screen around an answer takes 8 ms more:
2 ms for the shelf and what is asked, 5 ms for the template, 1 ms on the way between the processes.

On two idle cores, on the wall, in an hour in which importing NumPy took 0.25 s (in quick ones 0.10 s): the first page
after 0.52 s; sound or not, half within 0.11 s, 95 % within 0.38 s; odds and length 0.18 s and 0.97 s; 200 taps left
318 MB in four processes and no work.

Drawing the pairs has read the games and modifiers already where only the processor is measured; a worker that had not
took, beside other work (load 8), in processor seconds: sound or not, half within 0.08 s, 95 % within 0.25 s, the sum of
all 6.8 to 8.4 s; odds and length 0.13 s and 0.7 s. With the games of the library read, and what the first forecast
loads, while nobody asks: 0.06 s and 0.22 s, the sum 5.5 to 6.1 s; 0.09 s and 0.6 s; and 1.4 s to get ready, not 0.45 s.
"""

from __future__ import annotations

import os
import random
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from urllib.parse import urlencode
from urllib.request import Request, urlopen

import library
from compose.page.answers.at_hand import game_of, made, modifiers, remixed, warming
from compose.page.answers.remixing import odds, quick
from compose.page.answers.values import Asked
from compose.page.kept import USUAL

LARGEST = ("four-becks", "beck-gates")  # measured and not judged
PORT, SEED, TAPS, PAIRS = 8749, 1, 200, 2
HOME = f"http://127.0.0.1:{PORT}"
START = "from compose.terminal.main import main\nif __name__ == '__main__':\n    main()\n"


def main() -> None:
    """Measure and print."""
    with tempfile.TemporaryDirectory() as folder:
        script = Path(folder, "start.py")
        script.write_text(START, encoding="utf-8")
        begun = time.perf_counter()
        words = [sys.executable, str(script), "page", "--no-open", "--port", str(PORT), "--shelf", f"{folder}/shelf"]
        environment = {**os.environ, "PYTHONPATH": str(Path(__file__).parents[2])}
        process = subprocess.Popen(words, env=environment, stdout=subprocess.DEVNULL)
        try:
            seconds_to("/")
            print(f"first page {time.perf_counter() - begun:.2f} s after the command")
            time.sleep(4)  # the workers are ready by then
            taps()
            many_taps(process.pid)
        finally:
            process.terminate()
            process.wait()


def seconds_to(path: str, tab: str = "benchmark") -> float:
    """How long an address takes; waits for the server at first."""
    begun = time.perf_counter()
    for _ in range(2000):
        try:
            urlopen(Request(HOME + path, headers={"X-Tab": tab}), timeout=120).read()
            break
        except OSError:
            time.sleep(0.01)
    return time.perf_counter() - begun


def taps() -> None:
    """Each game with pairs of modifiers that fit, each asked once."""

    def asked(path: Path, pair: tuple[str, str]) -> tuple[float, float]:
        query = urlencode([("with", each) for each in pair])
        sound = seconds_to(f"/remix/{path.stem}?{query}")
        return sound, sound + seconds_to(f"/remix/{path.stem}/odds?{query}")

    tell(asked, PAIRS)


def answers() -> None:
    """The same answers from this process, in processor seconds."""
    for _ in warming():
        pass

    def asked(path: Path, pair: tuple[str, str]) -> tuple[float, float]:
        question = Asked((path.read_text(encoding="utf-8"),), pair, USUAL, "en")
        for kept in (game_of, made, remixed):  # drawing the pair has made it
            kept.cache_clear()
        begun = time.process_time()
        quick(question)
        sound = time.process_time() - begun
        odds(question)
        return sound, time.process_time() - begun

    tell(asked, PAIRS)


def tell(asked: Callable[[Path, tuple[str, str]], tuple[float, float]], number: int) -> None:
    """Ask for each game with pairs of modifiers, and print what it takes; the two largest games apart."""
    sounds, known = list[float](), list[float]()
    for path in sorted(library.game_paths(), key=lambda path: path.stem in LARGEST):
        for pair in pairs(path, 1 if path.stem in LARGEST else number):
            sound, whole = asked(path, pair)
            if path.stem in LARGEST:
                print(f"{path.stem} with {pair}, not judged: {sound:.2f} s, {whole:.2f} s", flush=True)
            else:
                sounds.append(sound)
                known.append(whole)
        if path.stem not in LARGEST and len(sounds) == number * (len(library.game_paths()) - len(LARGEST)):
            for what, found in (("sound or not", sorted(sounds)), ("odds and length", sorted(known))):
                half, most = found[len(found) // 2], found[round(0.95 * (len(found) - 1))]
                print(f"tap to {what}: half within {half:.2f} s, 95 % within {most:.2f} s, of {len(found)}", flush=True)


def pairs(path: Path, number: int) -> list[tuple[str, str]]:
    """Pairs of modifiers that fit a game, drawn from a seed."""
    texts, drawn = (path.read_text(encoding="utf-8"),), random.Random(f"{SEED} {path.stem}")
    names, found = sorted(modifiers()), list[tuple[str, str]]()
    while len(found) < number:
        one, other = drawn.sample(names, 2)
        if remixed(texts, (one, other)).value is not None:
            found.append((one, other))
    return found


def many_taps(pid: int) -> None:
    """Memory of the page and its workers after many taps, each with its forecast asked for and left."""
    names = sorted(modifiers())
    for number in range(TAPS):
        seconds_to(f"/remix/lantern-row?{urlencode({'with': names[number % len(names)]})}", f"tab {number % 3}")
    time.sleep(2)
    processes = [pid, *children(pid)]
    print(f"after {TAPS} taps: {sum(map(megabytes, processes)):.0f} MB in {len(processes)} processes")
    before = sum(map(ticks, processes))
    time.sleep(2)
    spent = (sum(map(ticks, processes)) - before) / os.sysconf("SC_CLK_TCK")
    print(f"processor time in the two seconds after: {spent:.2f} s")


def children(pid: int) -> list[int]:
    """The processes below another one."""
    tasks = Path(f"/proc/{pid}/task").glob("*/children")  # a worker is the child of the thread that tends it
    text = " ".join(task.read_text() for task in tasks)
    return [below for child in map(int, text.split()) for below in (child, *children(child))]


def megabytes(pid: int) -> float:
    """What a process holds in memory that is its own (proportional share of what is shared)."""
    rows = Path(f"/proc/{pid}/smaps_rollup").read_text().splitlines()
    return next(int(row.split()[1]) for row in rows if row.startswith("Pss:")) / 1024


def ticks(pid: int) -> int:
    """Processor time that a process has used, in ticks."""
    fields = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
    return int(fields[11]) + int(fields[12])


if __name__ == "__main__":
    answers() if sys.argv[1:] == ["processor"] else main()
