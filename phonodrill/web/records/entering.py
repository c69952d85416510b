"""Enter a check: the student, then one item at a time; every result is kept at once."""

from __future__ import annotations

import secrets
from collections import Counter
from collections.abc import Mapping, Sequence
from enum import StrEnum
from typing import Annotated, NamedTuple

from fastapi import APIRouter, Form, Query, Request, Response
from fastapi.responses import RedirectResponse
from pydantic import Field

from phonodrill.errors import PhonodrillError
from phonodrill.lesson.checking import SCRIPT
from phonodrill.records.entering import Turn, turns_of
from phonodrill.records.kept import Check, Result
from phonodrill.records.results import LONGEST_SAID
from phonodrill.records.store import Store
from phonodrill.remembered import Remembered
from phonodrill.services.checks import MOST_ITEMS
from phonodrill.web.csrf import check_form
from phonodrill.web.forms import Form as Fields
from phonodrill.web.page import address_of
from phonodrill.web.records.check import PAGE
from phonodrill.web.records.desk import Stack, records_of
from phonodrill.web.records.keys import KEY, CheckKey, Keys, StudentKey, keys_now
from phonodrill.web.records.private import PrivateRoute, SentForm, show_private

STUDENTS, ITEM = "check_students.html", "check_item.html"
ENTER = f"{PAGE.path}/{{check}}/enter"
DONE = r"^-?\d{1,2}(,-?\d{1,2}){0,59}$"
SKIPPED = "-"
MOST_DONE = 30
"""Acts that can be undone one after another."""
Replaced = Remembered[tuple[str, str, int], Stack]
page = APIRouter(route_class=PrivateRoute)


class Act(StrEnum):
    """What is done about an item."""

    RIGHT = "right"
    WRONG = "wrong"
    SKIP = "skip"
    UNDO = "undo"


class EnterForm(Fields):
    """Where one is.

    Attributes:
        item: which item; by default the first without a result.
        done: items done here, in order, a skipped one with a dash: they can be undone.
    """

    item: int | None = Field(default=None, ge=1, le=99)
    done: str = Field(default="", pattern=DONE)


class StudentsForm(Fields):
    """Which student was finished last, and how."""

    after: str = Field(default="", pattern=KEY)
    done: str = Field(default="", pattern=DONE)


class ActForm(EnterForm, SentForm):
    """What was tapped.

    Attributes:
        act: what is done.
        said: what was said instead.
        entry: names the act: sent again, it changes nothing.
    """

    act: Act
    said: str = Field(default="", max_length=LONGEST_SAID)
    entry: str = Field(default="", max_length=64)


class Sent(NamedTuple):
    """What was tapped.

    Attributes:
        check: digits of the check.
        student: key of the student.
        form: the rest.
    """

    check: str
    student: str
    form: ActForm


class Row(NamedTuple):
    """A student and how far the check is entered."""

    code: str
    key: str
    entered: int


class Turns(NamedTuple):
    """What the page of an item shows.

    Attributes:
        check: the check.
        code: the student.
        results: position -> what is entered.
        others: how many students there are, and how many have all items entered.
    """

    check: Check
    code: str
    results: Mapping[int, Result]
    others: tuple[int, int]

    def open_after(self, position: int) -> int | None:
        """Return the next item without a result."""
        entered = [Turn(self.code, one) for one in self.results]
        turns = turns_of(self.check, (self.code,), entered)
        return next((turn.position for turn in turns if turn.position > position), None)


@page.get(ENTER)
async def students_page(
    request: Request, check: CheckKey, form: Annotated[StudentsForm, Query()]
) -> Response:
    """Choose the student."""
    found, rows = await records_of(request).ask(read_rows, keys_now(), check)
    total = len(found.items)
    following = next((row for row in _from(rows, form.after) if row.entered < total), None)
    last = next((row for row in rows if row.key == form.after), None)
    return show_private(
        request,
        STUDENTS,
        PAGE,
        check=found,
        rows=rows,
        following=following,
        last=last if form.done else None,
        done=form.done,
        path=f"{PAGE.path}/{check}/enter",
        entry=new_entry(),
        complete=sum(row.entered >= total for row in rows),
    )


@page.get(f"{ENTER}/{{student}}")
async def item_page(
    request: Request, check: CheckKey, student: StudentKey, form: Annotated[EnterForm, Query()]
) -> Response:
    """Show one item with its answer, to be judged."""
    found = await records_of(request).ask(read_turns, keys_now(), check, student)
    total = len(found.check.items)
    at = min(form.item or found.open_after(0) or 1, total)
    path = f"{PAGE.path}/{check}/enter/{student}"
    return show_private(
        request,
        ITEM,
        PAGE,
        found=found,
        at=at,
        total=total,
        item=found.check.items[at - 1],
        script=SCRIPT,
        path=path,
        steps=[(n, address_of(path, form, item=n), found.results.get(n)) for n in _numbers(total)],
        back=address_of(path, form, item=at - 1) if at > 1 else "",
        done=form.done,
        entry=new_entry(),
        longest_said=LONGEST_SAID,
    )


@page.post(f"{ENTER}/{{student}}")
async def act(
    request: Request, check: CheckKey, student: StudentKey, form: Annotated[ActForm, Form()]
) -> Response:
    """Keep a result, or take one back, and go on."""
    check_form(request, form.token)
    records = records_of(request)
    sent = Sent(check, student, form)
    goes_to = await records.ask(keep_act, keys_now(), sent, records.replaced)
    return RedirectResponse(goes_to, 303)


def keep_act(store: Store, keys: Keys, sent: Sent, replaced: Replaced) -> str:
    """Do what was tapped; returns the address of the page that comes next.

    Args:
        store: the open store.
        keys: that addresses have.
        sent: what was tapped, and where.
        replaced: what was entered before, which undoing brings back.

    Raises:
        PhonodrillError: if there is no such check, student or item.
    """
    check, student, form = sent
    found = read_turns(store, keys, check, student)
    path = f"{PAGE.path}/{check}/enter"
    done = form.done.split(",") if form.done else []
    if form.act is Act.UNDO:
        at, done = _undo(store, found, done, form, replaced)
        return address_of(f"{path}/{student}", EnterForm(item=at, done=",".join(done)))
    at = form.item or 0
    if not 1 <= at <= len(found.check.items):
        raise PhonodrillError("the check has no such item", "the page Check")
    if form.act is Act.SKIP:
        done.append(f"{SKIPPED}{at}")
    else:
        is_right = form.act is Act.RIGHT
        result = Result(at, found.code, is_right, form.said, form.entry)
        if store.enter_result(check, result):
            replaced.recall((check, found.code, at), list).append(found.results.get(at))
        done.append(str(at))
    kept = ",".join(done[-MOST_DONE:])
    following = found.open_after(at)
    if following is None:
        return address_of(path, StudentsForm(after=student, done=kept))
    return address_of(f"{path}/{student}", EnterForm(item=following, done=kept))


def read_rows(store: Store, keys: Keys, check: str) -> tuple[Check, tuple[Row, ...]]:
    """Read how far a check is entered.

    Raises:
        PhonodrillError: if there is none.
    """
    found, rows, _ = _read(store, keys, check)
    return found, rows


def read_turns(store: Store, keys: Keys, check: str, student: str) -> Turns:
    """Read what is entered in a check for a student.

    Raises:
        PhonodrillError: if there is no such check or student.
    """
    found, rows, results = _read(store, keys, check)
    row = next((row for row in rows if row.key == student), None)
    if row is None:
        raise PhonodrillError("there is no such student in the group any more", "the page Groups")
    own = {one.position: one for one in results if one.student == row.code}
    complete = sum(row.entered >= len(found.items) for row in rows)
    return Turns(found, row.code, own, (len(rows), complete))


def new_entry() -> str:
    """Return the name of an act of entering."""
    return secrets.token_urlsafe(12)


def _read(store: Store, keys: Keys, check: str) -> tuple[Check, tuple[Row, ...], Sequence[Result]]:
    found = store.find_check(check)
    results = store.results_of(check)
    entered = Counter(one.student for one in results)
    rows = (
        Row(code, keys.of(found.group, code), entered[code])
        for code in store.list_students(found.group)
    )
    return found, tuple(rows), results


def _undo(
    store: Store, found: Turns, done: Sequence[str], form: ActForm, replaced: Replaced
) -> tuple[int, list[str]]:
    """Take the last act back, and bring back what was there before; the item is shown again."""
    if not done:
        return form.item or 1, []
    *before, last = done
    at = min(int(last.removeprefix(SKIPPED)), len(found.check.items)) or 1
    if not last.startswith(SKIPPED):
        stack = replaced.recall((found.check.key, found.code, at), list)
        before_it = stack[-1] if stack else None
        if before_it:
            is_new = store.enter_result(found.check.key, before_it._replace(entry=form.entry))
        else:
            is_new = store.undo_result(found.check.key, at, found.code, form.entry)
        if is_new and stack:
            stack.pop()
    return at, before


def _from(rows: Sequence[Row], after: str) -> list[Row]:
    """Return the rows, those behind the one that was finished last first."""
    place = next((n for n, row in enumerate(rows, 1) if row.key == after), 0)
    return [*rows[place:], *rows[:place]]


def _numbers(total: int) -> range:
    return range(1, min(total, MOST_ITEMS) + 1)
