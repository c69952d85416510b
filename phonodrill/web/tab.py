"""A tab of a page: one form and what is made from it, as a page, as a file and as data."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from enum import StrEnum
from typing import Annotated, Any, NamedTuple
from urllib.parse import urlencode

from fastapi import APIRouter, Query, Request, Response
from starlette.concurrency import run_in_threadpool

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay
from phonodrill.render import as_csv
from phonodrill.render.as_html import fragment
from phonodrill.render.as_json import data_of
from phonodrill.render.document import Document
from phonodrill.services.board import MOST_WORDS
from phonodrill.services.made import Made
from phonodrill.web.forms import DrawForm, Form
from phonodrill.web.page import (
    Page,
    Problem,
    address_of,
    desk_of,
    in_page_words,
    problem_from,
    redirect_to,
    show,
)

BOARD = "/show"
SHOWN_NOTES = 20


class File(StrEnum):
    """A file that a result is taken along as."""

    CSV = "csv"
    WORD = "docx"


MEDIA = {
    File.CSV: "text/csv; charset=utf-8",
    File.WORD: "application/vnd.openxmlformats-officedocument.wordprocessingml.document",
}


class Tab(NamedTuple):
    """A tab.

    Attributes:
        path: its address; that of the page for the first tab.
        name: what it is called.
        does: what its button says.
        template: its file in ``templates/``.
        form: what the page asks.
        make: makes the result from lexicon, form and a teacher's own words.
        api: its path under ``/api``.
        summary: what the API says of it.
        asks: what the API asks; None for the same as the page.
        needs: the fields without which there is nothing to make; none: always something.
        fixed: fields which, filled in, leave nothing to be drawn again.
        grouped: whether short lists stand side by side.
        choices: for the fields that choose one of several.
        spoken: what may be said aloud, as a CSS selector.
        board: gives the page Show its query, from form and result; None where there is
            nothing to show.
        more: what the template shows beside the document, from form and result.
    """

    path: str
    name: str
    does: str
    template: str
    form: type[Form]
    make: Callable[[Lexicon, Any, Overlay], Made]
    api: str
    summary: str
    asks: type[Form] | None = None
    needs: tuple[str, ...] = ()
    fixed: tuple[str, ...] = ()
    grouped: bool = False
    choices: Mapping[str, Sequence[tuple[str, ...]]] = {}
    spoken: str = ""
    board: Callable[[Any, Document], str] | None = None
    more: Callable[[Any, Document], dict[str, Any]] | None = None


def board_of_form(form: Form, _: Document) -> str:
    """Show what the same query gives."""
    return address_of(BOARD, form)


def board_of_words(*names: str) -> Callable[[Form, Document], str]:
    """Show the words of a result one by one.

    Args:
        names: of the columns of its records that hold them.
    """

    def board(_: Form, document: Document) -> str:
        words = dict.fromkeys(record[name] for record in document.records for name in names)
        return f"{BOARD}?{urlencode({'what': 'words', 'words': ' '.join([*words][:MOST_WORDS])})}"

    return board


def add_tabs(page: APIRouter, api: APIRouter, entry: Page, tabs: Sequence[Tab]) -> None:
    """Give a page its tabs.

    Args:
        page: where pages and files go.
        api: where the data goes.
        entry: the page in the menu.
        tabs: in order.
    """
    for tab in tabs:
        page.get(tab.path)(_page_of(tab, entry, tabs))
        page.get(f"{tab.path}/file.{{kind}}")(_file_of(tab))
        api.get(tab.api, tags=["words"], summary=tab.summary)(_data_of(tab))


def _page_of(tab: Tab, entry: Page, tabs: Sequence[Tab]) -> Callable[..., Any]:
    async def show_tab(request: Request, form: Form) -> Response:
        asked = not tab.needs or any(getattr(form, name) for name in tab.needs)
        if asked and isinstance(form, DrawForm) and form.seed is None:
            return redirect_to(tab.path, form.with_seed())
        made, problem = None, None
        if asked:
            try:
                made = await _make(request, tab, form)
            except PhonodrillError as error:
                problem = problem_from(error)
        return _write(request, entry, tab, tabs, form, made, problem)

    return _asking(show_tab, tab.form)


def _file_of(tab: Tab) -> Callable[..., Any]:
    async def send_file(request: Request, kind: File, form: Form) -> Response:
        made = await _make(request, tab, form)
        content = await run_in_threadpool(_file, made.document, kind)
        name = tab.path.strip("/").replace("/", "-")
        headers = {"content-disposition": f'attachment; filename="{name}.{kind}"'}
        return Response(content, media_type=MEDIA[kind], headers=headers)

    return _asking(send_file, tab.form)


def _data_of(tab: Tab) -> Callable[..., Any]:
    async def send_data(request: Request, form: Form) -> dict[str, Any]:
        return data_of((await _make(request, tab, form)).document)

    send_data.__doc__ = "Return the fields that the command writes with ``--format json``."
    return _asking(send_data, tab.asks or tab.form)


def _asking(handler: Callable[..., Any], form: type[Form]) -> Callable[..., Any]:
    """Let FastAPI know which form a handler is sent."""
    handler.__annotations__ = {**handler.__annotations__, "form": Annotated[form, Query()]}
    return handler


def _is_drawn(tab: Tab, form: Form) -> bool:
    return isinstance(form, DrawForm) and not any(getattr(form, name) for name in tab.fixed)


async def _make(request: Request, tab: Tab, form: Form) -> Made:
    desk = desk_of(request)
    seeded = form.with_seed() if isinstance(form, DrawForm) else form
    return await desk.ask(tab.make, seeded, desk.own_words())


def _file(document: Document, kind: File) -> bytes:
    if kind is File.CSV:
        # Spreadsheets take CSV for UTF-8 only with a byte order mark.
        return as_csv.render(document).encode("utf-8-sig")
    from phonodrill.render import as_docx

    return as_docx.render(document)


def _write(
    request: Request,
    entry: Page,
    tab: Tab,
    tabs: Sequence[Tab],
    form: Form,
    made: Made | None,
    problem: Problem | None,
) -> Response:
    shown: dict[str, Any] = {"document": None}
    if made:
        notes = [in_page_words(note) for note in made.notes]
        left = len(notes) - SHOWN_NOTES
        files = ((f"{tab.path}/file.{kind}", kind) for kind in File)
        shown = {
            "document": made.document,
            "notes": notes[:SHOWN_NOTES] + ([f"and {left:,} more"] if left > 0 else []),
            "body": fragment(
                made.document.sections, hide_answers=getattr(form, "hide", False), scrolls=True
            ),
            "files": {str(kind): address_of(path, form) for path, kind in files},
            "again": address_of(tab.path, form, seed=None) if _is_drawn(tab, form) else "",
            "board": tab.board(form, made.document) if tab.board else "",
        } | (tab.more(form, made.document) if tab.more else {})
    return show(
        request,
        tab.template,
        entry,
        form=form,
        choices=tab.choices,
        problem=problem,
        tab=tab,
        tabs=tabs,
        **shown,
    )
