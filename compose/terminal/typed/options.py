"""Arguments and options that many commands have, each said once."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

Name = Annotated[str, typer.Argument(help="A game of the library by its name, or a file of rules.")]
With = Annotated[
    list[str] | None,
    typer.Option("--with", help='A modifier, with values behind commas: "add balls, n 3". May be repeated.'),
]
ClassName = Annotated[str | None, typer.Option("--class", help="A class of the library by its name, or a file.")]
InHall = Annotated[
    str | None, typer.Option("--hall", help='A hall around the court: "15 m by 12 m", a name, or a file.')
]
Pupils = Annotated[int | None, typer.Option("--pupils", min=1, max=400, help="How many pupils play.")]
Language = Annotated[str, typer.Option("--language", help="en or fr.")]
Out = Annotated[Path | None, typer.Option("--out", help="The file to write; without it the answer is printed.")]
Force = Annotated[bool, typer.Option("--force", help="Write over a file that is there already.")]
AsJson = Annotated[bool, typer.Option("--json", help="Answer as JSON.")]


def text_of(said: str) -> str:
    """Words to be written somewhere; raises typer.BadParameter where a file could not hold them."""
    try:
        said.encode()
    except UnicodeEncodeError:
        raise typer.BadParameter("it has signs that are no text in UTF-8.") from None
    return said
