"""``phonodrill check``: make a check for a group, enter its results, list checks."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Optional

import typer

from phonodrill.cli import options
from phonodrill.cli.check_enter import enter
from phonodrill.cli.deliver import deliver, is_named
from phonodrill.cli.own_words import own_words
from phonodrill.cli.records_store import be_sure, open_store
from phonodrill.cli.report import report
from phonodrill.errors import PhonodrillError
from phonodrill.paper.page import Paper
from phonodrill.records.kept import Check
from phonodrill.render.views import records as view
from phonodrill.services.checks import MOST_ITEMS, USUAL_ITEMS, recent_words, today, write_sheet
from phonodrill.whole_file import write_whole

if TYPE_CHECKING:
    from collections.abc import Sequence

    from phonodrill.lesson.request import Request
    from phonodrill.records.answer import Asked

CheckArgument = Annotated[str, typer.Argument(help="The digits that name the check.")]
GroupOption = Annotated[str, typer.Option("--group", help="The group.")]
PdfOutOption = Annotated[
    Optional[Path], typer.Option("--out", help="File to write; NAME.pdf for the sheet on paper.")
]
PaperOption = Annotated[
    Optional[Paper], typer.Option("--paper", help="Size of the sheets of a PDF.")
]
app = typer.Typer(add_completion=False, rich_markup_mode=None)
app.command("enter")(enter)


@app.callback(invoke_without_command=True)
def check(context: typer.Context) -> None:
    """Make a short check for a group and keep its results."""
    if context.invoked_subcommand is None:
        typer.echo(context.get_help())


@app.command("make")
def make(
    group: GroupOption = "",
    focus: Annotated[
        str,
        typer.Option(
            "--focus", help="Endings es,ies; a spelling sh, a_e, c=s; a sound /k/; i:e; a task."
        ),
    ] = "",
    count: Annotated[int, typer.Option("--count", help=f"Items, 1 to {MOST_ITEMS}.")] = USUAL_ITEMS,
    date: Annotated[str, typer.Option("--date", help="Day of the check; today if not given.")] = "",
    taught: options.TaughtOption = None,
    band: options.BandOption = 2,
    seed: options.SeedOption = None,
    notation: options.NotationOption = None,
    format_: options.FormatOption = None,
    out: PdfOutOption = None,
    paper: PaperOption = None,
) -> None:
    """Make a check on a focus and keep it, so that its results can be entered."""
    if not group or not focus:
        raise PhonodrillError("a check is for a group and on a focus", "--group G --focus es,ies")
    if not 1 <= count <= MOST_ITEMS:
        raise PhonodrillError(f"--count is {count}", f"1 to {MOST_ITEMS}: --count 8")
    _check_paper(format_, out, paper)
    from phonodrill.lesson.request import Request
    from phonodrill.sounds.notation import SCRIPT

    request = Request(focus, band, seed=options.seed_or_new(seed), notation=str(notation or SCRIPT))
    with open_store() as store:
        students = store.list_students(group)
        items = _make_items(request, count, taught, recent_words(store, group))
        made = store.keep_check(
            Check("", group, request.focus, date or today(), band, request.seed, items)
        )
        try:
            _write(made, students, format_, out, paper)
        except PhonodrillError:
            # A check that nobody got to see would only stand in the list.
            store.remove_check(made.key)
            raise
    if len(items) < count:
        report([f"only {len(items)} items: too few words fit"])
    if out:
        typer.echo(f"check {made.key}: phonodrill check enter {made.key}")


@app.command("list")
def list_(
    group: GroupOption = "", format_: options.FormatOption = None, out: options.OutOption = None
) -> None:
    """Show the latest checks."""
    with open_store() as store:
        found = store.list_checks(group)
    deliver(view.checks(found), format_, out)


@app.command("show")
def show(
    check: CheckArgument,
    format_: options.FormatOption = None,
    out: PdfOutOption = None,
    paper: PaperOption = None,
) -> None:
    """Show a check again, with what is entered."""
    _check_paper(format_, out, paper)
    with open_store() as store:
        made = store.find_check(check)
        students = store.list_students(made.group)
        results = store.results_of(check)
    if out and is_named(out, format_, ".pdf"):
        _write(made, students, format_, out, paper)
    else:
        deliver(view.check(made, students, results), format_, out)


@app.command("remove")
def remove(
    check: CheckArgument, yes: Annotated[bool, typer.Option("--yes", help="Do not ask.")] = False
) -> None:
    """Remove a check with its results."""
    with open_store() as store:
        store.find_check(check)
        be_sure(f"check {check} with its results", yes=yes)
        store.remove_check(check)
    typer.echo(f"check {check} is removed")


def _check_paper(format_: options.Format | None, out: Path | None, paper: Paper | None) -> None:
    if paper and not is_named(out, format_, ".pdf"):
        raise PhonodrillError("--paper is for a PDF", "--paper ... --out NAME.pdf")


def _make_items(
    request: Request, count: int, taught: Path | None, avoid: frozenset[str]
) -> tuple[Asked, ...]:
    from phonodrill.lexicon.store import Lexicon
    from phonodrill.records.items import make_items

    with Lexicon() as lexicon:
        if taught:
            from phonodrill.cli.taught_file import read_taught

            steps = read_taught(taught, lexicon).steps
            request = request._replace(taught=tuple(step.text for step in steps))
        return make_items(lexicon, request, count, own_words(), avoid)


def _write(
    made: Check,
    students: Sequence[str],
    format_: options.Format | None,
    out: Path | None,
    paper: Paper | None,
) -> None:
    if out is None or not is_named(out, format_, ".pdf"):
        deliver(view.check(made, students), format_, out)
        return
    write_whole(out, write_sheet(made, students, paper or Paper.LETTER))
