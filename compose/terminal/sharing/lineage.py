"""The lineage of games and remixes, as indented text, as SVG and as JSON; and remix files written and carried over."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

import library
from compose.modifiers.content_hash import content_hash
from compose.modifiers.lineage import lineage, lineage_lines, only_remixed
from compose.terminal.answer import exit_code, finding_json, refuse, say, say_findings, say_json
from compose.terminal.typed.finding_games import ENDING, reading
from compose.terminal.writing import ends_with, write
from grammar.finding import Finding
from grammar.tree import GameSheet, RemixSheet, RuleFile

MOST_FILES = 500


def show_lineage(paths: Sequence[Path], out: Path | None, every_game: bool, force: bool, as_json: bool) -> int:
    """Print or write who comes from whom among these files or folders and the library; the exit code."""
    games, remixes, troubles = _sheets(paths, as_json)
    graph = lineage(games, remixes)
    shown = graph if every_game else only_remixed(graph)
    if out is not None:
        from compose.draw.lineage_drawing import lineage_drawing
        from compose.draw.signs.to_svg import svg_of

        ends_with(out, (".svg",), as_json)
        write(out, svg_of(lineage_drawing(shown)).encode(), force, as_json)
    if as_json:
        edges = [{"base": base, "remix": remix} | dict(step) for base, remix, step in shown.edges(data=True)]
        contents = {game.title: content_hash(game) for game in games}
        contents |= {remix.title: content_hash(remix) for remix in remixes}
        nodes = [{"title": title, "kind": kind, "content": contents.get(title)} for title, kind in shown.nodes("kind")]
        say_json({"nodes": nodes, "steps": edges, "findings": [finding_json(finding) for finding in troubles]})
        return exit_code(troubles)
    lines = list(lineage_lines(shown))
    for line in lines or ["Nobody has remixed anything yet."]:
        say(line)
    if out is not None:
        say(f"Written to {out}.")
    say_findings(troubles)
    return exit_code(troubles)


def _sheets(paths: Sequence[Path], as_json: bool) -> tuple[list[GameSheet], list[RemixSheet], list[Finding]]:
    """What the files hold; a file that cannot be read is told, and the others are read still."""
    games, remixes, troubles = list[GameSheet](), list[RemixSheet](), list[Finding]()
    for path in _files(paths, as_json):
        outcome = reading(path)
        troubles += outcome.findings
        rules = outcome.value or RuleFile(str(path), (), ())
        games += [each for each in rules.games if each.title not in {game.title for game in games}]
        remixes += [each for each in rules.remixes if each.title not in {remix.title for remix in remixes}]
    return games, remixes, troubles


def _files(paths: Sequence[Path], as_json: bool) -> Iterator[Path]:
    """The files named, those in the folders named, and after them those of the library."""
    for path in paths:
        found = sorted(path.glob(f"*{ENDING}")) if path.is_dir() else [path]
        if len(found) > MOST_FILES:
            refuse(f"`{path}` holds more than {MOST_FILES} rule files.", "Name a smaller folder.", as_json)
        yield from found
    yield from (*library.remix_paths(), *library.game_paths())
