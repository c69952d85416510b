"""The ``phonodrill`` command: joins the command groups, turns errors into one line."""

from __future__ import annotations

import sys
from typing import Annotated

import typer

from phonodrill.cli import endings, lexicon, warmup
from phonodrill.errors import PhonodrillError
from phonodrill.version import VERSION

app = typer.Typer(
    name="phonodrill",
    help="Make word-study drills in which every word, sound and answer was checked.",
    no_args_is_help=True,
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)
app.command("warmup")(warmup.warmup)
app.command("word")(lexicon.word)
app.command("lexicon")(lexicon.lexicon)
app.add_typer(endings.app)


def _version(wanted: bool) -> None:
    if wanted:
        typer.echo(f"phonodrill {VERSION}")
        raise typer.Exit


@app.callback()
def phonodrill(
    version: Annotated[
        bool,
        typer.Option("--version", callback=_version, is_eager=True, help="Show the version."),
    ] = False,
) -> None:
    """Make word-study drills in which every word, sound and answer was checked."""


def main() -> None:
    """Run the command line; exit 2 with one clear line for anything a user can mend."""
    try:
        status = app(standalone_mode=False)
    except PhonodrillError as error:
        _complain(error.message, error.hint)
        sys.exit(2)
    except typer.Abort:
        sys.exit(130)
    except BrokenPipeError:
        # The reader (head, less) has seen enough; nothing was lost.
        sys.stderr.close()
        sys.exit(0)
    except typer.TyperException as error:
        message = error.format_message()
        if not message:
            sys.exit(0)
        _complain(message[:1].lower() + message[1:], "phonodrill --help")
        sys.exit(2)
    sys.exit(status if isinstance(status, int) else 0)


def _complain(message: str, hint: str) -> None:
    typer.echo(f"error: {' '.join(message.split())}", err=True)
    if hint:
        typer.echo(f"try: {hint}", err=True)
