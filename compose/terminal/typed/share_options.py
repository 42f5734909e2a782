"""Arguments and options that several commands for sharing have."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from compose.terminal.typed.options import AsJson as AsJson
from compose.terminal.typed.options import Force as Force
from compose.terminal.typed.options import text_of

ShelfFolder = Annotated[
    Path | None, typer.Option("--shelf", envvar="RULEWEAVE_SHELF", help="The folder of your shelf.", show_envvar=False)
]
PackFile = Annotated[Path, typer.Argument(help="A pack: a zip file that was made by `pack make`.")]
Things = Annotated[list[str], typer.Argument(help="Games, remixes or modifiers: by file, or by name.")]
Keep = Annotated[str | None, typer.Option("--keep", help="Where yours differs: ours, theirs or both.")]
Choose = Annotated[list[str] | None, typer.Option("--choose", help='For one thing: "Lantern Row=both".')]
OnlyLook = Annotated[bool, typer.Option("--look", help="Only say what would happen.")]
With = Annotated[list[str] | None, typer.Option("--with", help='A modifier: "add balls, n 3". May be repeated.')]
Origin = Annotated[str, typer.Option("--from", callback=text_of, help="Your school, as others should read it.")]
Folder = Annotated[Path, typer.Argument(help="The folder that the schools share.")]
