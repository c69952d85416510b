"""Groups: who is checked together; what is kept of a student, taken along or erased."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Any, NamedTuple

from fastapi import APIRouter, Form, Query, Request, Response
from fastapi.responses import RedirectResponse
from pydantic import Field

from phonodrill.errors import PhonodrillError
from phonodrill.records.backup import backups_of, erase_from_backups
from phonodrill.records.groups import LONGEST_NAME, read_codes
from phonodrill.records.kept import StudentRecord
from phonodrill.records.store import Store
from phonodrill.render import as_csv, as_json
from phonodrill.render.views import records as view
from phonodrill.web.csrf import check_form
from phonodrill.web.forms import Form as Fields
from phonodrill.web.page import Page
from phonodrill.web.records.desk import records_of
from phonodrill.web.records.errors import RecordsError
from phonodrill.web.records.keys import GroupKey, Keys, StudentKey, keys_now
from phonodrill.web.records.private import PrivateRoute, SentForm, show_private

PAGE = Page("/groups", "Groups", "Who is checked together. Codes or initials, no full names.")
LIST, GROUP, CONFIRM = "groups.html", "group.html", "confirm.html"
LONGEST_CODES = 3000
page = APIRouter(route_class=PrivateRoute)


class Done(StrEnum):
    """What was done on the page before."""

    NOTHING = ""
    ADDED = "added"
    ERASED = "erased"
    REMOVED = "removed"


DONE = {
    Done.NOTHING: "",
    Done.ADDED: "Added.",
    Done.ERASED: "The student is erased, with all results.",
    Done.REMOVED: "The group is removed, with all its results. Backups may still have it.",
}


class DoneForm(Fields):
    """What there is to say."""

    done: Done = Done.NOTHING


class GroupForm(SentForm):
    """A new group, or new students of one."""

    name: str = Field(default="", max_length=200)
    students: str = Field(default="", max_length=LONGEST_CODES)


class EraseForm(SentForm):
    """A student to erase."""

    backups: bool = False


class Linked(NamedTuple):
    """A group or a student and the address.

    Attributes:
        name: name of the group, or code of the student.
        key: in addresses.
        students: how many the group has.
        checks: how many were made for it.
    """

    name: str
    key: str
    students: int = 0
    checks: int = 0


class Shown(NamedTuple):
    """A group with its students."""

    group: Linked
    students: tuple[Linked, ...]


class Erased(NamedTuple):
    """What came of erasing a student.

    Attributes:
        results: how many were erased.
        backups: how many other files may still have the student.
        problems: a line each on those that could not be looked into.
    """

    results: int
    backups: int
    problems: tuple[str, ...]


@page.get(PAGE.path)
async def groups_page(request: Request, form: Annotated[DoneForm, Query()]) -> Response:
    """List the groups."""
    return await _show_list(request, GroupForm(), done=DONE[form.done])


@page.post(PAGE.path)
async def add(request: Request, form: Annotated[GroupForm, Form()]) -> Response:
    """Add a group."""
    check_form(request, form.token)
    keys = keys_now()
    try:
        await records_of(request).ask(add_group, form.name, form.students)
    except RecordsError as error:
        return await _show_list(request, form, problem=error.problem)
    return RedirectResponse(f"{PAGE.path}/{keys.of(form.name)}?done={Done.ADDED}", 303)


@page.get(f"{PAGE.path}/{{group}}")
async def group_page(
    request: Request, group: GroupKey, form: Annotated[DoneForm, Query()]
) -> Response:
    """Show a group and its students."""
    return await _show_group(request, group, GroupForm(), done=DONE[form.done])


@page.post(f"{PAGE.path}/{{group}}")
async def add_students(
    request: Request, group: GroupKey, form: Annotated[GroupForm, Form()]
) -> Response:
    """Add students to a group."""
    check_form(request, form.token)
    try:
        await records_of(request).ask(_add_students, keys_now(), group, form.students)
    except RecordsError as error:
        return await _show_group(request, group, form, problem=error.problem)
    return RedirectResponse(f"{PAGE.path}/{group}?done={Done.ADDED}", 303)


@page.get(f"{PAGE.path}/{{group}}/remove")
async def ask_to_remove(request: Request, group: GroupKey) -> Response:
    """Ask before a group is removed."""
    found = await records_of(request).ask(read_group, keys_now(), group)
    return show_private(
        request,
        CONFIRM,
        PAGE,
        what=f"the group {found.group.name} with its students, checks and results",
        act="Remove the group for good",
        back=f"{PAGE.path}/{group}",
        backups=False,
    )


@page.post(f"{PAGE.path}/{{group}}/remove")
async def remove(request: Request, group: GroupKey, form: Annotated[SentForm, Form()]) -> Response:
    """Remove a group."""
    check_form(request, form.token)
    await records_of(request).ask(_remove_group, keys_now(), group)
    records_of(request).forget()
    return RedirectResponse(f"{PAGE.path}?done={Done.REMOVED}", 303)


@page.get(f"{PAGE.path}/{{group}}/{{student}}/erase")
async def ask_to_erase(request: Request, group: GroupKey, student: StudentKey) -> Response:
    """Ask before a student is erased."""
    record = await records_of(request).ask(read_record, keys_now(), group, student)
    return show_private(
        request,
        CONFIRM,
        PAGE,
        what=f"student {record.code} with {len(record.entered)} results",
        act="Erase the student for good",
        back=f"{PAGE.path}/{group}",
        backups=True,
    )


@page.post(f"{PAGE.path}/{{group}}/{{student}}/erase")
async def erase(
    request: Request, group: GroupKey, student: StudentKey, form: Annotated[EraseForm, Form()]
) -> Response:
    """Erase a student."""
    check_form(request, form.token)
    erased = await records_of(request).ask(
        erase_student, keys_now(), group, student, backups=form.backups
    )
    records_of(request).forget()
    if not erased.backups:
        return RedirectResponse(f"{PAGE.path}/{group}?done={Done.ERASED}", 303)
    return await _show_group(request, group, GroupForm(), done=DONE[Done.ERASED], erased=erased)


@page.get(f"{PAGE.path}/{{group}}/{{student}}/kept.json")
async def kept_as_json(request: Request, group: GroupKey, student: StudentKey) -> Response:
    """Send all that is kept of a student, for programs."""
    record = await records_of(request).ask(read_record, keys_now(), group, student)
    return _file(as_json.render(view.student(record)).encode(), "json", "application/json")


@page.get(f"{PAGE.path}/{{group}}/{{student}}/kept.csv")
async def kept_as_csv(request: Request, group: GroupKey, student: StudentKey) -> Response:
    """Send all that is kept of a student, for spreadsheets."""
    record = await records_of(request).ask(read_record, keys_now(), group, student)
    content = as_csv.render(view.student(record)).encode(as_csv.ENCODING)
    return _file(content, "csv", "text/csv; charset=utf-8")


def read_groups(store: Store, keys: Keys) -> tuple[Linked, ...]:
    """Read the groups."""
    return tuple(
        Linked(one.name, keys.of(one.name), one.students, one.checks) for one in store.list_groups()
    )


def read_group(store: Store, keys: Keys, key: str) -> Shown:
    """Read a group and its students.

    Raises:
        PhonodrillError: if there is no such group.
    """
    name = keys.group(store, key)
    students = store.list_students(name)
    group = Linked(name, key, len(students))
    return Shown(group, tuple(Linked(code, keys.of(name, code)) for code in students))


def read_record(store: Store, keys: Keys, group: str, student: str) -> StudentRecord:
    """Read all that is kept of a student.

    Raises:
        PhonodrillError: if there is no such group or student.
    """
    return store.export_student(*keys.find(store, group, student))


def add_group(store: Store, name: str, students: str) -> None:
    """Add a group; an error does not say its name again.

    Raises:
        PhonodrillError: if the name or the codes cannot be used, or the name is taken.
    """
    if name in (one.name for one in store.list_groups()):
        raise PhonodrillError("there is a group of that name already", "another name")
    store.add_group(name, read_codes(students))


def erase_student(store: Store, keys: Keys, group: str, student: str, *, backups: bool) -> Erased:
    """Erase a student, and from the backups if that is asked for.

    Raises:
        PhonodrillError: if there is no such group or student.
    """
    name, code = keys.find(store, group, student)
    results = store.erase_student(name, code)
    files = backups_of(store.place)
    if not backups:
        return Erased(results, len(files), ())
    _, problems = erase_from_backups(store.place, name, code)
    for file in files:
        # A page does not tell where files lie; the name tells the teacher which one.
        problems = [line.replace(str(file), file.name) for line in problems]
    return Erased(results, len(problems), tuple(problems))


def _add_students(store: Store, keys: Keys, group: str, students: str) -> None:
    name = keys.group(store, group)
    codes = read_codes(students)
    if not codes:
        raise PhonodrillError("no code of a student", "initials or numbers: A,B,C2")
    store.add_students(name, codes)


def _remove_group(store: Store, keys: Keys, group: str) -> None:
    store.remove_group(keys.group(store, group))


def _file(content: bytes, kind: str, media: str) -> Response:
    # The name of a file stays in the list of downloads: no code in it.
    headers = {"content-disposition": f'attachment; filename="student.{kind}"'}
    return Response(content, media_type=media, headers=headers)


async def _show_list(request: Request, form: GroupForm, **context: Any) -> Response:
    groups = await records_of(request).ask(read_groups, keys_now())
    return show_private(
        request,
        LIST,
        PAGE,
        form=form,
        groups=groups,
        longest_name=LONGEST_NAME,
        longest_codes=LONGEST_CODES,
        **{"done": "", **context},
    )


async def _show_group(request: Request, group: str, form: GroupForm, **context: Any) -> Response:
    found = await records_of(request).ask(read_group, keys_now(), group)
    return show_private(
        request,
        GROUP,
        PAGE,
        form=form,
        found=found,
        longest_codes=LONGEST_CODES,
        **{"done": "", "erased": None, **context},
    )
