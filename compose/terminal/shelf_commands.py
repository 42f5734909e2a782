"""The commands of the own shelf."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from compose.terminal.typed.looking_options import finite
from compose.terminal.typed.share_options import AsJson, Force, ShelfFolder, Things, With


def shelf_commands(group: typer.Typer) -> None:
    """Add them to their group."""
    _shelf_things(group)
    _shelf_rounds(group)


def _shelf_things(group: typer.Typer) -> None:
    @group.command("list")
    def show(
        rebuild: Annotated[bool, typer.Option("--rebuild", help="Make the index anew from the plain files.")] = False,
        shelf: ShelfFolder = None,
        as_json: AsJson = False,
    ) -> None:
        """List what is on your shelf, and where it lies."""
        from compose.terminal.sharing.shelving import show as run

        raise typer.Exit(run(rebuild, shelf, as_json))

    @group.command("find")
    def find(
        words: Annotated[str, typer.Argument(help="Words to look for.")] = "",
        skill: Annotated[str, typer.Option("--skill", help="What is practised.")] = "",
        age: Annotated[float | None, typer.Option("--age", callback=finite, help="Of the pupils, in years.")] = None,
        players: Annotated[int | None, typer.Option("--players", help="How many play.")] = None,
        kit: Annotated[list[str] | None, typer.Option("--kit", help="What the cupboard has; may be repeated.")] = None,
        space: Annotated[str, typer.Option("--space", help='The floor in metres: "18 by 9".')] = "",
        kind: Annotated[str, typer.Option("--kind", help="game, remix or modifier.")] = "",
        sound: Annotated[bool, typer.Option("--sound", help="Only where the check finds nothing to mend.")] = False,
        shelf: ShelfFolder = None,
        as_json: AsJson = False,
    ) -> None:
        """Find things on your shelf; the nearest where nothing fits."""
        from compose.terminal.sharing.shelving import search, wanted

        wishes = wanted(words, skill, age, players, kit or [], space, kind, sound, as_json)
        raise typer.Exit(search(wishes, shelf, as_json))

    @group.command("keep")
    def keep(
        names: Things,
        newer: Annotated[bool, typer.Option("--newer", help="Where yours differs, put this in its place.")] = False,
        shelf: ShelfFolder = None,
        as_json: AsJson = False,
    ) -> None:
        """Put games, remixes or modifiers on your shelf."""
        from compose.terminal.sharing.shelving import keep as run

        raise typer.Exit(run(names, newer, shelf, as_json))

    @group.command("drop")
    def drop(name: str, shelf: ShelfFolder = None, as_json: AsJson = False) -> None:
        """Take a thing off your shelf."""
        from compose.terminal.sharing.shelving import drop as run

        raise typer.Exit(run(name, shelf, as_json))

    @group.command("undo")
    def undo(shelf: ShelfFolder = None, as_json: AsJson = False) -> None:
        """Undo the last change of your shelf; again for the one before."""
        from compose.terminal.sharing.packing import undo as run

        raise typer.Exit(run(shelf, as_json))

    @group.command("note")
    def note(name: str, text: str, shelf: ShelfFolder = None, as_json: AsJson = False) -> None:
        """Note something of a thing; leave pupils' names out."""
        from compose.terminal.sharing.shelving import note as run

        raise typer.Exit(run(name, text, shelf, as_json))


def _shelf_rounds(group: typer.Typer) -> None:
    @group.command("played")
    def played(
        name: str,
        minutes: Annotated[float, typer.Option("--minutes", callback=finite, help="How long the round took.")],
        winner: Annotated[str, typer.Option("--winner", help="The side that won; or draw, or nobody.")],
        pupils: Annotated[int, typer.Option("--pupils", help="How many played.")],
        waited: Annotated[int, typer.Option("--waited", help="How many had to wait at the worst moment.")] = 0,
        class_code: Annotated[str, typer.Option("--class", help="The class, such as 5a; no names.")] = "",
        day: Annotated[str, typer.Option("--day", help="Such as 2025-11-25; today if left out.")] = "",
        modifier: With = None,
        shelf: ShelfFolder = None,
        as_json: AsJson = False,
    ) -> None:
        """Keep a round that was played. No pupil's name is kept, and none can be."""
        from compose.share.shelf.rounds import ObservedRound
        from compose.terminal.sharing.shelf_door import today
        from compose.terminal.sharing.shelving import played as run

        seen = ObservedRound(day or today(), class_code, pupils, 0.0, winner, waited, "")
        raise typer.Exit(run(name, modifier or [], minutes, seen, shelf, as_json))

    @group.command("rounds")
    def rounds(name: str, shelf: ShelfFolder = None, as_json: AsJson = False) -> None:
        """Show the rounds of a game that you kept."""
        from compose.terminal.sharing.shelving import rounds as run

        raise typer.Exit(run(name, shelf, as_json))

    @group.command("export")
    def export(
        out: Annotated[Path, typer.Option("--out", help="The file to write.")],
        force: Force = False,
        shelf: ShelfFolder = None,
        as_json: AsJson = False,
    ) -> None:
        """Give out all of your own data: rounds, notes, where things came from."""
        from compose.terminal.sharing.shelving import give_out

        raise typer.Exit(give_out(out, force, shelf, as_json))

    @group.command("forget")
    def forget(
        what: Annotated[str, typer.Argument(help="rounds, notes or everything.")],
        game: Annotated[str, typer.Option("--game", help="Only the rounds of this game.")] = "",
        class_code: Annotated[str, typer.Option("--class", help="Only the rounds of this class.")] = "",
        sure: Annotated[bool, typer.Option("--sure", help="This cannot be undone.")] = False,
        shelf: ShelfFolder = None,
        as_json: AsJson = False,
    ) -> None:
        """Delete rounds, notes, or the whole shelf."""
        from compose.terminal.sharing.shelving import forget as run

        raise typer.Exit(run(what, game, class_code, sure, shelf, as_json))
