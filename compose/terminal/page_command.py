"""The command that opens the page in a browser."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer


def register(app: typer.Typer) -> None:
    """Add the command to the program."""
    app.command()(page)


def page(
    port: Annotated[int | None, typer.Option("--port", min=1024, max=65535, help="Serve it at this port.")] = None,
    open_browser: Annotated[bool, typer.Option("--open/--no-open", help="Open it in the browser.")] = True,
    shelf: Annotated[Path | None, typer.Option("--shelf", help="The folder of the shelf.")] = None,
    to_click: Annotated[
        Path | None, typer.Option("--shortcut", help="Only write a file to double-click into this folder.")
    ] = None,
) -> None:
    """Open the teacher's page: everything without typing commands. Ctrl-C ends it."""
    if to_click is not None:
        _write_shortcut(to_click)
        return
    from compose.page.serve import serve
    from compose.share.shelf.usual_folder import usual_folder
    from compose.terminal.answer import refuse, say

    try:
        serve(shelf or usual_folder(), port, open_browser, lambda address: say(f"The page is at {address}"))
    except OSError as error:
        refuse(f"Port {port} cannot be used: {(error.strerror or str(error)).lower()}.", "Name another with --port.")


def _write_shortcut(folder: Path) -> None:
    from compose.page.shortcut import write_shortcut
    from compose.terminal.answer import refuse, say

    try:
        say(f"Double-click {write_shortcut(folder)} to open the page.")
    except FileExistsError as there:
        refuse(f"`{there.filename}` is there already.", "Take it away first, or name another folder.")
    except OSError as error:
        refuse(f"Nothing can be written into `{folder}`: {(error.strerror or str(error)).lower()}.", "Name a folder.")
