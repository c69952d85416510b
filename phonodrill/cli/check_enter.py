"""``phonodrill check enter``: one key an item, or a table of results."""

from __future__ import annotations

import contextlib
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Optional

import typer

from phonodrill.cli.records_store import open_store
from phonodrill.errors import PhonodrillError
from phonodrill.records.kept import Check
from phonodrill.text_file import read_text

if TYPE_CHECKING:
    from phonodrill.records.entering import Entering
    from phonodrill.records.store import Store

RIGHT, WRONG, SAID, SKIP, BACK, QUIT = "yns uq"
KEYS = "y right, n not yet, s not yet and what was said, space skip, u undo, q quit"


def enter(
    check: Annotated[str, typer.Argument(help="The digits that name the check.")],
    file: Annotated[
        Optional[Path],
        typer.Option("--from", help="Take a CSV with the columns student,item,right,said."),
    ] = None,
    student: Annotated[str, typer.Option("--student", help="Only this student.")] = "",
    again: Annotated[bool, typer.Option("--again", help="Also what was entered already.")] = False,
) -> None:
    """Enter results: y right, n not yet, s what was said, space skip, u undo, q quit."""
    with open_store() as store:
        found = store.find_check(check)
        students = store.list_students(found.group)
        if student and student not in students:
            raise PhonodrillError(
                "there is no such student in the group of this check",
                "phonodrill group list --students",
            )
        chosen = (student,) if student else students
        if file:
            _take(store, found, chosen, file)
        else:
            _ask(store, found, chosen, again=again)


def _take(store: Store, check: Check, students: tuple[str, ...], file: Path) -> None:
    from phonodrill.records.results_file import read_results

    results = list(read_results(read_text(file), students, len(check.items)))
    store.enter_results(check.key, results)
    typer.echo(f"{len(results)} results entered")


def _ask(store: Store, check: Check, students: tuple[str, ...], *, again: bool) -> None:
    from phonodrill.records.entering import Entering, Turn, turns_of

    before = {Turn(one.student, one.position): one for one in store.results_of(check.key)}
    turns = turns_of(check, students, () if again else before)
    entering = Entering(store, check, turns, before)
    if turns:
        typer.echo(f"Check {check.key}, {check.focus}. Keys: {KEYS}.")
    # Ctrl-C or the end of what is piped in: what was entered is on the disk already.
    with contextlib.suppress(KeyboardInterrupt, EOFError):
        _run(entering, check, _key_reader())
    typer.echo(f"\n{entering.count} results entered, {entering.left} left")


def _run(entering: Entering, check: Check, read_key: Callable[[], str]) -> None:
    is_new_line = True
    while turn := entering.turn:
        if is_new_line:
            item = check.items[turn.position - 1]
            place = f"{turn.student}  {turn.position}/{len(check.items)}"
            typer.echo(f"{place}  {item.ask} → {item.answer}  ", nl=False)
        is_new_line = True
        key = read_key()
        if key == RIGHT:
            entering.enter(right=True)
            typer.echo("right")
        elif key in (WRONG, SAID):
            said = _read_line() if key == SAID else ""
            entering.enter(right=False, said=said)
            typer.echo("not yet")
        elif key == SKIP:
            entering.skip()
            typer.echo("skipped")
        elif key == BACK:
            typer.echo("back" if entering.go_back() else "nothing to undo")
        elif key == QUIT:
            return
        else:
            is_new_line = False
            typer.echo(f"[{KEYS}] ", nl=False)


def _key_reader() -> Callable[[], str]:
    """Return what reads one key from the terminal, or one sign of what is piped in."""
    if sys.stdin.isatty():
        return lambda: typer.getchar().lower()

    def read() -> str:
        while (key := sys.stdin.read(1)) in ("\n", "\r"):
            pass
        if not key:
            raise EOFError
        return key.lower()

    return read


def _read_line() -> str:
    if sys.stdin.isatty():
        typer.echo("said: ", nl=False)
    return sys.stdin.readline().strip()
