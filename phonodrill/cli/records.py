"""``phonodrill records``: back up, restore and verify; export and erase a student."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Optional

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.records_store import be_sure, need_records, open_store
from phonodrill.cli.report import report
from phonodrill.errors import PhonodrillError
from phonodrill.render.views import records as view

if TYPE_CHECKING:
    from phonodrill.records.store import Store

StudentArgument = Annotated[str, typer.Argument(help="Code of the student.")]
GroupOption = Annotated[
    str, typer.Option("--group", help="The student's group, where several have the code.")
]
YesOption = Annotated[bool, typer.Option("--yes", help="Do not ask.")]
app = typer.Typer(add_completion=False, rich_markup_mode=None)


@app.callback(invoke_without_command=True)
def records(context: typer.Context) -> None:
    """Back up, restore and verify the records; export or erase a student's."""
    if context.invoked_subcommand is None:
        typer.echo(context.get_help())


@app.command("backup")
def backup(
    file: Annotated[Path, typer.Argument(help="File to write, whole or not at all.")],
) -> None:
    """Write all records into one file, also while they are in use."""
    with open_store() as store:
        from phonodrill.records.backup import back_up

        back_up(store, file)
        counts = store.counts()
    typer.echo(f"{view.in_words(counts)} written to {file}")


@app.command("restore")
def restore(
    file: Annotated[Path, typer.Argument(help="A backup.")], yes: YesOption = False
) -> None:
    """Put a backup in the place of the records; what it replaces is kept beside them."""
    need_records()
    from phonodrill.records import backup as backups
    from phonodrill.records.place import find_place

    place = find_place()
    backups.check_file(file)
    if not yes and sys.stdin.isatty():
        typer.confirm(f"Put {file} in the place of {place.shown}?", abort=True, err=True)
    replaced = backups.restore(place, file)
    with open_store() as store:
        typer.echo(f"{view.in_words(store.counts())} restored")
    if replaced:
        typer.echo(f"what was there is kept as {replaced}")


@app.command("verify")
def verify(
    file: Annotated[
        Optional[Path], typer.Argument(help="A backup; the records themselves if not given.")
    ] = None,
) -> None:
    """Check every page of the file, and count what is in it."""
    need_records()
    from phonodrill.records.backup import check_file

    if file:
        check_file(file)
        typer.echo(f"{file} is sound")
        return
    with open_store() as store:
        place, counts = store.place, store.counts()
        store.database.empty_log()
    if place.path:
        check_file(place.path)
    typer.echo(f"{place.shown} is sound: {view.in_words(counts)}")


@app.command("export")
def export(
    student: StudentArgument,
    group: GroupOption = "",
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Show or write all that is kept of a student; --out NAME.json or NAME.csv."""
    with open_store() as store:
        record = store.export_student(_group_of(store, student, group), student)
    deliver(view.student(record), format_, out)


@app.command("erase")
def erase(
    student: StudentArgument,
    group: GroupOption = "",
    backups: Annotated[
        bool, typer.Option("--backups", help="Also from the backups that were written.")
    ] = False,
    yes: YesOption = False,
) -> None:
    """Erase a student and all results, so that nothing of them is left in the file."""
    erase_one(student, group, yes=yes, backups=backups)


@app.command("passphrase")
def passphrase() -> None:
    """Set the passphrase for pages that others in the building can reach."""
    need_records()
    from phonodrill.records.passphrase import keep_passphrase

    if sys.stdin.isatty():
        text = typer.prompt("Passphrase", hide_input=True, confirmation_prompt=True, err=True)
    else:
        text = sys.stdin.readline().rstrip("\r\n")
    keep_passphrase(text)
    typer.echo("the passphrase is set")


def erase_one(student: str, group: str, *, yes: bool, backups: bool) -> None:
    """Erase a student; see :func:`erase`.

    Raises:
        PhonodrillError: if there is no such student, or nobody to ask.
    """
    with open_store() as store:
        from phonodrill.records.backup import backups_of, erase_from_backups

        found = store.groups_with(student)
        # What was erased here before may still be in backups.
        if group in found or not (backups and group):
            group = _group_of(store, student, group)
            be_sure("a student with all results", yes=yes)
            gone = store.erase_student(group, student)
            typer.echo(f"erased with {gone} results")
        place = store.place
        if not backups:
            kept = len(backups_of(place))
            report([f"{kept} backups may still have it: --backups --group {group}"] if kept else [])
            return
        if place.path is None:
            report(["what pg_dump wrote is yours to delete"])
            return
        erased, problems = erase_from_backups(place, group, student)
    typer.echo(f"erased from {erased} backups")
    report(problems)


def _group_of(store: Store, student: str, group: str) -> str:
    if group:
        return group
    found = store.groups_with(student)
    if not found:
        raise PhonodrillError("there is no such student", "phonodrill group list --students")
    if len(found) > 1:
        raise PhonodrillError(
            f"{len(found)} groups have a student of that code", f"--group {found[0]}"
        )
    return found[0]
