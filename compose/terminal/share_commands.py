"""The commands for sharing. Each loads what it needs when it is called, so that others start as fast as before."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from compose.terminal.shelf_commands import shelf_commands
from compose.terminal.typed.options import text_of
from compose.terminal.typed.share_options import (
    AsJson,
    Choose,
    Folder,
    Force,
    Keep,
    OnlyLook,
    Origin,
    PackFile,
    ShelfFolder,
    Things,
    With,
)


def register(app: typer.Typer) -> None:
    """Add the commands for packs, the shelf, merging and the common shelf."""
    for name, words, fill in (
        ("pack", "Packs: games, remixes and modifiers in one file, to pass on.", _pack_commands),
        ("shelf", "Your own shelf: what you keep, where it came from, notes, rounds.", shelf_commands),
        ("common", "A folder that several schools share.", _common_commands),
    ):
        group = typer.Typer(help=words, no_args_is_help=True, rich_markup_mode=None)
        fill(group)
        app.add_typer(group, name=name)
    _merge_command(app)


def _pack_commands(pack: typer.Typer) -> None:
    @pack.command("make")
    def make(
        names: Things,
        out: Annotated[Path, typer.Option("--out", help="The file to write.")],
        modifier: With = None,
        title: Annotated[str, typer.Option("--title", callback=text_of, help="What the pack is called.")] = "",
        origin: Origin = "",
        force: Force = False,
        shelf: ShelfFolder = None,
        as_json: AsJson = False,
    ) -> None:
        """Make a pack; with --with it carries the remix of each game, too."""
        from compose.terminal.sharing.pack_making import make as run

        raise typer.Exit(run(names, modifier or [], title, origin, out, force, shelf, as_json))

    @pack.command("look")
    def look(file: PackFile, shelf: ShelfFolder = None, as_json: AsJson = False) -> None:
        """Look into a pack: what it carries, whose it is, and how it stands to your shelf."""
        from compose.terminal.sharing.packing import look as run

        raise typer.Exit(run(file, shelf, as_json))

    @pack.command("verify")
    def verify(file: PackFile, shelf: ShelfFolder = None, as_json: AsJson = False) -> None:
        """Verify a pack: its hashes, its sheets, and whether its remixes can be made."""
        from compose.terminal.sharing.packing import verify as run

        raise typer.Exit(run(file, shelf, as_json))

    @pack.command("take")
    def take(
        file: PackFile,
        keep: Keep = None,
        choose: Choose = None,
        only_look: OnlyLook = False,
        shelf: ShelfFolder = None,
        as_json: AsJson = False,
    ) -> None:
        """Take a pack onto your shelf: all of it or nothing, nothing renamed or replaced unasked."""
        from compose.terminal.sharing.packing import take as run

        raise typer.Exit(run(file, keep, choose or [], only_look, shelf, as_json))


def _common_commands(common: typer.Typer) -> None:
    @common.command("list")
    def show(folder: Folder, as_json: AsJson = False) -> None:
        """List what the common shelf has."""
        from compose.terminal.sharing.common_shelf import show_common

        raise typer.Exit(show_common(folder, as_json))

    @common.command("take")
    def take(
        folder: Folder,
        names: Annotated[list[str] | None, typer.Argument(help="What to take; everything if left out.")] = None,
        keep: Keep = None,
        choose: Choose = None,
        only_look: OnlyLook = False,
        shelf: ShelfFolder = None,
        as_json: AsJson = False,
    ) -> None:
        """Take things from the common shelf onto yours."""
        from compose.terminal.sharing.common_shelf import take_common

        raise typer.Exit(take_common(folder, names or [], keep, choose or [], only_look, shelf, as_json))

    @common.command("give")
    def give(
        folder: Folder,
        names: Things,
        commit: Annotated[bool, typer.Option("--commit", help="In a git repository: commit what was given.")] = False,
        shelf: ShelfFolder = None,
        as_json: AsJson = False,
    ) -> None:
        """Give things to the common shelf; your notes and rounds stay with you."""
        from compose.terminal.sharing.common_shelf import give_common

        raise typer.Exit(give_common(folder, names, commit, shelf, as_json))

    @common.command("page")
    def page(
        folder: Folder,
        out: Annotated[Path, typer.Option("--out", help="The folder of the page.")],
        title: Annotated[str, typer.Option("--title", callback=text_of, help="What stands at its head.")] = "",
        pdf: Annotated[bool, typer.Option("--pdf", help="With each card as PDF, too.")] = False,
        as_json: AsJson = False,
    ) -> None:
        """Make the page of the common shelf: to look through, search and download, without a network."""
        from compose.terminal.sharing.common_shelf import make_page

        raise typer.Exit(make_page(folder, out, title, pdf, as_json))


def _merge_command(app: typer.Typer) -> None:
    @app.command("merge")
    def merge(
        ours: Annotated[str, typer.Argument(help="Yours: a file, or a name on the shelf.")],
        theirs: Annotated[
            str, typer.Argument(help='Theirs: a file, a name, a pack or a common shelf; or "past": yours as it was.')
        ],
        base: Annotated[
            str | None, typer.Option("--base", help="What both came from, if the shelf cannot know.")
        ] = None,
        choose: Annotated[list[str] | None, typer.Option("--choose", help='For a conflict: "1=theirs".')] = None,
        rest: Annotated[str | None, typer.Option("--rest", help="For all others: ours, theirs or base.")] = None,
        out: Annotated[Path | None, typer.Option("--out", help="The file to write, instead of the shelf.")] = None,
        force: Force = False,
        shelf: ShelfFolder = None,
        as_json: AsJson = False,
    ) -> None:
        """Merge two states of one game: changes of both, and a choice where both changed the same."""
        from compose.terminal.sharing.merging import show_merge

        raise typer.Exit(show_merge(ours, theirs, base, choose or [], rest, out, force, shelf, as_json))
