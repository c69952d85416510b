"""Next: what to teach a group next, for whom, and why."""

from __future__ import annotations

from typing import Annotated, NamedTuple
from urllib.parse import urlencode

from fastapi import APIRouter, Query, Request, Response
from pydantic import Field

from phonodrill.lexicon.store import Lexicon
from phonodrill.records.practice import oral_for
from phonodrill.records.report import NextStep, see_next
from phonodrill.render.as_html import fragment
from phonodrill.render.views import next_focus as view
from phonodrill.services.checks import today
from phonodrill.services.needs import order_of
from phonodrill.services.taught_steps import steps_from
from phonodrill.web.forms import LONGEST_STEPS
from phonodrill.web.page import Page, desk_of
from phonodrill.web.records.desk import records_of
from phonodrill.web.records.groups import read_groups
from phonodrill.web.records.keys import GroupKey, keys_now
from phonodrill.web.records.private import PrivateRoute, show_private
from phonodrill.web.records.seen import MOST_CHECKS, Kept, RuleForm, read_kept

PAGE = Page("/next", "Next", "What to teach next, for whom, and why.")
CHOOSE, TEMPLATE = "choose_group.html", "next.html"
page = APIRouter(route_class=PrivateRoute)


class NextForm(RuleForm):
    """What the class was taught goes first in the order taught."""

    taught: str = Field(
        default="", max_length=LONGEST_STEPS, description="Correspondences in the order taught."
    )


class Links(NamedTuple):
    """Where the page leads to; an empty one leads nowhere.

    Attributes:
        lesson: a lesson on the focus.
        warmup: oral items of the task and place where the group is weakest.
        check: a check on the focus.
    """

    lesson: str = ""
    warmup: str = ""
    check: str = ""


@page.get(PAGE.path)
async def choose(request: Request) -> Response:
    """Choose the group."""
    groups = await records_of(request).ask(read_groups, keys_now())
    return show_private(request, CHOOSE, PAGE, groups=groups)


@page.get(f"{PAGE.path}/{{group}}")
async def next_page(
    request: Request, group: GroupKey, form: Annotated[NextForm, Query()]
) -> Response:
    """Show what comes next."""
    kept, found = await see(request, group, form)
    document = view.next_step(found)
    shown = [part for part in document.sections if part.heading != view.WHAT_TO_DO]
    return show_private(
        request,
        TEMPLATE,
        PAGE,
        form=form,
        kept=kept,
        group=group,
        found=found,
        document=document,
        body=fragment(shown, scrolls=True),
        links=_links(kept, found, group, form),
        path=f"{PAGE.path}/{group}",
        most_checks=MOST_CHECKS,
    )


async def see(request: Request, group: str, form: NextForm) -> tuple[Kept, NextStep]:
    """Work out what a group needs next.

    Raises:
        RecordsError: if there is no such group.
        PhonodrillError: if the rule makes no sense, or the steps cannot be read.
    """
    rule = form.rule()
    kept = await records_of(request).ask(read_kept, keys_now(), group, form.last)

    def work_out(lexicon: Lexicon) -> NextStep:
        order = order_of(steps_from(form.taught, lexicon).steps) if form.taught else ()
        return see_next(
            kept.answers, lexicon, group=kept.group, today=today(), rule=rule, order=order
        )

    return kept, await desk_of(request).ask(work_out)


def _links(kept: Kept, found: NextStep, group: str, form: NextForm) -> Links:
    taught = {"taught": form.taught} if form.taught else {}
    oral = oral_for(kept.answers, found.rule)
    warmup = {"task": oral.task.name, "at": str(oral.at), **taught} if oral else {}
    focus = {"focus": found.picks[0].focus, **taught} if found.picks else {}
    return Links(
        f"/today?{urlencode(focus)}" if focus else "",
        f"/warm-up?{urlencode(warmup)}" if warmup else "",
        f"/check?{urlencode({'group': group, **focus})}",
    )
