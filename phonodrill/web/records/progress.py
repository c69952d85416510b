"""Progress: how a group stands, and each of its students."""

from __future__ import annotations

from typing import Annotated, Any

from fastapi import APIRouter, Query, Request, Response

from phonodrill.lexicon.store import Lexicon
from phonodrill.records.report import see_progress
from phonodrill.render.as_html import fragment
from phonodrill.render.document import Document
from phonodrill.render.views import progress as view
from phonodrill.services.checks import today
from phonodrill.web.page import Page, desk_of
from phonodrill.web.records.desk import records_of
from phonodrill.web.records.groups import read_groups
from phonodrill.web.records.keys import GroupKey, StudentKey, keys_now
from phonodrill.web.records.private import PrivateRoute, show_private
from phonodrill.web.records.seen import MOST_CHECKS, Kept, RuleForm, read_kept

PAGE = Page("/progress", "Progress", "Who has what by now, and how sure that is.")
CHOOSE, TEMPLATE = "choose_group.html", "progress.html"
page = APIRouter(route_class=PrivateRoute)


@page.get(PAGE.path)
async def choose(request: Request) -> Response:
    """Choose the group."""
    groups = await records_of(request).ask(read_groups, keys_now())
    return show_private(request, CHOOSE, PAGE, groups=groups)


@page.get(f"{PAGE.path}/{{group}}")
async def group_page(
    request: Request, group: GroupKey, form: Annotated[RuleForm, Query()]
) -> Response:
    """Show how a group stands."""
    return await _show(request, group, form)


@page.get(f"{PAGE.path}/{{group}}/{{student}}")
async def student_page(
    request: Request, group: GroupKey, student: StudentKey, form: Annotated[RuleForm, Query()]
) -> Response:
    """Show how a student stands."""
    return await _show(request, group, form, student)


async def see(
    request: Request, group: str, form: RuleForm, student: str = "", *, inline: bool = False
) -> tuple[Kept, Document]:
    """Work out how a group or a student stands.

    Raises:
        RecordsError: if there is no such group or student.
        PhonodrillError: if the rule makes no sense.
    """
    rule = form.rule()
    kept = await records_of(request).ask(read_kept, keys_now(), group, form.last, student)

    def write(lexicon: Lexicon) -> Document:
        seen = see_progress(
            kept.answers,
            lexicon,
            group=kept.group,
            today=today(),
            student=kept.student,
            rule=rule,
        )
        return view.progress(seen, inline=inline)

    return kept, await desk_of(request).ask(write)


async def _show(request: Request, group: str, form: RuleForm, student: str = "") -> Response:
    kept, document = await see(request, group, form, student, inline=True)
    shown: dict[str, Any] = {"kept": kept, "group": group, "student": student}
    return show_private(
        request,
        TEMPLATE,
        PAGE,
        form=form,
        document=document,
        body=fragment(document.sections, scrolls=True),
        path=f"{PAGE.path}/{group}" + (f"/{student}" if student else ""),
        most_checks=MOST_CHECKS,
        **shown,
    )
