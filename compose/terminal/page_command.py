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
) -> None:
    """Open the teacher's page: everything without typing commands. Ctrl-C ends it."""
    from compose.page.serve import serve
    from compose.share.usual_folder import usual_folder
    from compose.terminal.answer import refuse, say

    try:
        serve(shelf or usual_folder(), port, open_browser, lambda address: say(f"The page is at {address}"))
    except OSError as error:
        refuse(f"Port {port} cannot be used: {(error.strerror or str(error)).lower()}.", "Name another with --port.")
