"""The same as data: groups, checks, results, progress and what comes next."""

from __future__ import annotations

from typing import Annotated, Any

from fastapi import APIRouter, Body, Query, Request
from pydantic import BaseModel, Field

from phonodrill.records.kept import Result
from phonodrill.records.results import LONGEST_SAID
from phonodrill.records.store import Store
from phonodrill.render.as_json import data_of, version_data
from phonodrill.render.views import next_focus as next_view
from phonodrill.render.views import records as view
from phonodrill.web.forms import Form as Fields
from phonodrill.web.records import next_focus, progress
from phonodrill.web.records.check import read_check, read_list
from phonodrill.web.records.desk import records_of
from phonodrill.web.records.keys import CHECK_KEY, KEY, Keys, keys_now
from phonodrill.web.records.private import PrivateRoute
from phonodrill.web.records.seen import RuleForm

MOST_RESULTS = 5000
TAGS: list[Any] = ["records"]
GROUP = "Key of the group, from /records/groups."
Check = Annotated[str, Query(pattern=CHECK_KEY, description="The digits that name the check.")]
api = APIRouter(prefix="/records", route_class=PrivateRoute, tags=TAGS)


class GroupsForm(Fields):
    """How much of the groups."""

    students: bool = Field(default=True, description="With the codes and keys of the students.")


class ChecksForm(Fields):
    """Which checks."""

    group: str = Field(default="", pattern=KEY, description=f"{GROUP} Or all.")


class StandingForm(RuleForm):
    """Whose progress, by which rule."""

    group: str = Field(pattern=KEY, description=GROUP)
    student: str = Field(default="", pattern=KEY, description="Key of one student.")


class NextQuery(next_focus.NextForm):
    """For which group, by which rule."""

    group: str = Field(pattern=KEY, description=GROUP)


class OneResult(BaseModel):
    """What one student did with one item."""

    position: int = Field(ge=1, le=99, description="Of the item in the check, from 1.")
    student: str = Field(max_length=12, description="Code of the student.")
    right: bool = Field(description="Whether it was right.")
    said: str = Field("", max_length=LONGEST_SAID, description="What was said instead.")
    entry: str = Field(
        "", max_length=64, description="Names the act: sent again, it changes nothing."
    )


class SentResults(BaseModel):
    """Results of a check."""

    check: str = Field(pattern=CHECK_KEY, description="The digits that name the check.")
    results: list[OneResult] = Field(
        max_length=MOST_RESULTS, description="Kept all together, or none of them."
    )


@api.get("/groups", summary="The groups, their students, and the keys of both")
async def groups(request: Request, form: Annotated[GroupsForm, Query()]) -> dict[str, Any]:
    """Return what ``phonodrill group list --students --format json`` writes, with keys."""
    return await records_of(request).ask(_groups, keys_now(), students=form.students)


@api.get("/checks", summary="The latest checks")
async def checks(request: Request, form: Annotated[ChecksForm, Query()]) -> dict[str, Any]:
    """Return the fields that ``phonodrill check list --format json`` writes."""
    return data_of(view.checks(await records_of(request).ask(read_list, keys_now(), form.group)))


@api.get("/check", summary="A check, and what is entered")
async def check(request: Request, check: Check) -> dict[str, Any]:
    """Return the fields that ``phonodrill check show --format json`` writes."""
    found = await records_of(request).ask(read_check, keys_now(), check)
    return data_of(view.check(found.check, found.students, found.results))


@api.post("/results", summary="Enter results of a check")
async def results(request: Request, sent: Annotated[SentResults, Body()]) -> dict[str, Any]:
    """Keep results; a later one of the same item and student takes the place of the first."""
    entered = [Result(**one.model_dump()) for one in sent.results]
    new = await records_of(request).ask(Store.enter_results, sent.check, entered)
    return {**version_data(), "check": sent.check, "new": new}


@api.get("/progress", summary="How a group or a student stands")
async def standing(request: Request, form: Annotated[StandingForm, Query()]) -> dict[str, Any]:
    """Return the fields that ``phonodrill progress --format json`` writes."""
    return data_of((await progress.see(request, form.group, form, form.student))[1])


@api.get("/next", summary="What to teach a group next, and why")
async def next_step(request: Request, form: Annotated[NextQuery, Query()]) -> dict[str, Any]:
    """Return the fields that ``phonodrill next --format json`` writes."""
    return data_of(next_view.next_step((await next_focus.see(request, form.group, form))[1]))


def _groups(store: Store, keys: Keys, *, students: bool) -> dict[str, Any]:
    found = store.list_groups()
    codes = {one.name: store.list_students(one.name) for one in found} if students else None
    # Where the records lie is not told to who asks from elsewhere.
    data = data_of(view.groups(found, codes, ""))
    for row in data["groups"]:
        row["key"] = keys.of(row["group"])
        if students:
            row["keys"] = [keys.of(row["group"], code) for code in row["codes"]]
    return data
