"""``phonodrill group``: groups and the codes of their students."""

from __future__ import annotations

from typing import Annotated

import typer

from phonodrill.cli import options
from phonodrill.cli.deliver import deliver
from phonodrill.cli.records_store import be_sure, open_store
from phonodrill.render.views import records as view

NameArgument = Annotated[str, typer.Argument(help="Name of the group: harbor-2.")]
CodesArgument = Annotated[str, typer.Argument(help="Codes or initials, no full names: A,B,C.")]
YesOption = Annotated[bool, typer.Option("--yes", help="Do not ask.")]
app = typer.Typer(add_completion=False, rich_markup_mode=None)
student_app = typer.Typer(add_completion=False, rich_markup_mode=None)
app.add_typer(student_app, name="student", help="Add students to a group, or erase them.")


@app.callback(invoke_without_command=True)
def group(context: typer.Context) -> None:
    """Keep groups of students, whose checks are kept."""
    if context.invoked_subcommand is None:
        typer.echo(context.get_help())


@app.command("add")
def add(
    name: NameArgument,
    students: Annotated[
        str, typer.Option("--students", help="Codes or initials, no full names: A,B,C.")
    ] = "",
) -> None:
    """Add a group."""
    with open_store() as store:
        from phonodrill.records.groups import read_codes

        codes = read_codes(students)
        store.add_group(name, codes)
    _say_size(name, len(codes))


@app.command("list")
def list_(
    students: Annotated[
        bool, typer.Option("--students", help="With the codes of the students.")
    ] = False,
    format_: options.FormatOption = None,
    out: options.OutOption = None,
) -> None:
    """Show the groups."""
    with open_store() as store:
        found = store.list_groups()
        codes = {one.name: store.list_students(one.name) for one in found} if students else None
        shown = store.place.shown
    deliver(view.groups(found, codes, shown), format_, out)


@app.command("remove")
def remove(name: NameArgument, yes: YesOption = False) -> None:
    """Remove a group with its students, checks and results."""
    with open_store() as store:
        store.list_students(name)
        be_sure(f"group {name} with all its results", yes=yes)
        store.remove_group(name)
    typer.echo(f"group {name} is removed; backups may still have it")


@student_app.command("add")
def add_students(name: NameArgument, students: CodesArgument) -> None:
    """Add students to a group."""
    with open_store() as store:
        from phonodrill.records.groups import read_codes

        codes = read_codes(students)
        store.add_students(name, codes)
        count = len(store.list_students(name))
    _say_size(name, count)


@student_app.command("remove")
def remove_student(
    name: NameArgument,
    student: Annotated[str, typer.Argument(help="Code of one student.")],
    yes: YesOption = False,
) -> None:
    """Erase a student and all results, as phonodrill records erase does."""
    from phonodrill.cli.records import erase_one

    erase_one(student, name, yes=yes, backups=False)


def _say_size(name: str, count: int) -> None:
    typer.echo(f"group {name}: {count} student{'s' * (count != 1)}")
