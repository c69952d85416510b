"""The ``phonodrill`` command: joins the command groups, turns errors into one line."""

from __future__ import annotations

import atexit
import contextlib
import gc
import os
import sys
from importlib import import_module
from typing import Annotated, Any

import typer
from typer.core import TyperGroup
from typer.main import get_command

from phonodrill.errors import PhonodrillError, one_line
from phonodrill.version import VERSION

COMMANDS = {
    "warmup": "phonodrill.cli.warmup",
    "chain": "phonodrill.cli.chain",
    "lesson": "phonodrill.cli.lesson",
    "bank": "phonodrill.cli.bank",
    "endings": "phonodrill.cli.endings",
    "sentences": "phonodrill.cli.sentences",
    "words": "phonodrill.cli.words",
    "word": "phonodrill.cli.word",
    "spellings": "phonodrill.cli.spellings",
    "decodable": "phonodrill.cli.decodable",
    "pairs": "phonodrill.cli.pairs",
    "passage": "phonodrill.cli.passage",
    "taught": "phonodrill.cli.taught",
    "print": "phonodrill.cli.print_",
    "group": "phonodrill.cli.group",
    "check": "phonodrill.cli.check",
    "progress": "phonodrill.cli.progress",
    "next": "phonodrill.cli.next_",
    "records": "phonodrill.cli.records",
    "serve": "phonodrill.cli.serve",
    "lexicon": "phonodrill.cli.lexicon",
}
"""Command -> the module whose ``app`` it is; imported only when it is called."""
LONG_RUNNING = "serve"
SELDOM = 100_000
"""New objects between two searches for unused cycles of objects; by default some 700."""


class LazyGroup(TyperGroup):
    """A group that imports a command's module when the command is asked for."""

    def list_commands(self, ctx: Any) -> list[str]:  # noqa: ARG002
        """Name the commands in the order of the table."""
        return list(COMMANDS)

    def get_command(self, ctx: Any, cmd_name: str) -> Any:  # noqa: ARG002
        """Import a command.

        Raises:
            PhonodrillError: naming the nearest command, if there is none of that name.
        """
        if cmd_name not in COMMANDS:
            import difflib

            near = difflib.get_close_matches(cmd_name, COMMANDS, n=1)
            hint = f"phonodrill {near[0]}" if near else "phonodrill --help"
            raise PhonodrillError(f"no such command {cmd_name!r}", hint)
        if cmd_name != LONG_RUNNING:
            _collect_seldom()
        command = get_command(import_module(COMMANDS[cmd_name]).app)
        command.name = cmd_name
        return command


app = typer.Typer(
    name="phonodrill",
    cls=LazyGroup,
    help="Make word-study drills in which every word, sound and answer was checked.",
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)


def _collect_seldom() -> None:
    """Spare a short command the search for unused objects, a tenth of its time."""
    gc.set_threshold(SELDOM)
    # The process ends: all goes at once.
    atexit.register(gc.freeze)


def _version(wanted: bool) -> None:
    if wanted:
        typer.echo(f"phonodrill {VERSION}")
        raise typer.Exit


@app.callback(invoke_without_command=True)
def phonodrill(
    context: typer.Context,
    version: Annotated[
        bool,
        typer.Option("--version", callback=_version, is_eager=True, help="Show the version."),
    ] = False,
) -> None:
    """Make word-study drills in which every word, sound and answer was checked."""
    if context.invoked_subcommand is None and not version:
        typer.echo(context.get_help())


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
    except OSError as error:
        _complain_of_system(error)
        sys.exit(2)
    except UnicodeEncodeError as error:
        # Bytes on the command line that are no text, where a word is looked up by them.
        sign = error.object[error.start : error.start + 1]
        _complain(f"{sign!a} is no letter or sign", "letters, written as UTF-8")
        sys.exit(2)
    except typer.TyperException as error:
        message = error.format_message()
        _complain(message[:1].lower() + message[1:], _help_of(getattr(error, "ctx", None)))
        sys.exit(2)
    sys.exit(status if isinstance(status, int) else 0)


def _help_of(context: Any) -> str:
    """Name the help of the command that was asked wrongly."""
    if context is None:
        # An option without its value: nothing but the command line tells whose it is.
        command = [word for word in sys.argv[1:3] if word.isascii() and word.isalpha()]
        return " ".join(["phonodrill", *command, "--help"])
    words = ["--help"]
    while context is not None and context.parent is not None:
        words.insert(0, context.info_name)
        context = context.parent
    return " ".join(["phonodrill", *words])


def _complain_of_system(error: OSError) -> None:
    if error.filename:
        _complain(f"cannot use {error.filename}: {error.strerror}", "another file or folder")
        return
    with contextlib.suppress(OSError, AttributeError):
        # What is left in the buffer would be written again, and fail again, on leaving.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    _complain(f"cannot write the result: {error.strerror or error}", "--out FILE")


def _complain(message: str, hint: str) -> None:
    typer.echo(f"error: {one_line(message)}", err=True)
    if hint:
        typer.echo(f"try: {hint}", err=True)
