"""About: where the words come from, how they are chosen, what to be careful of."""

from __future__ import annotations

from typing import Annotated, Any

from fastapi import APIRouter, Query, Request, Response
from pydantic import Field

from phonodrill.lexicon.store import Lexicon
from phonodrill.render.as_html import fragment
from phonodrill.render.as_json import SCHEMA, data_of
from phonodrill.render.document import Document
from phonodrill.render.views import lexicon as view
from phonodrill.services.lexicon import count_words
from phonodrill.version import VERSION
from phonodrill.web.forms import ClassForm, Form
from phonodrill.web.page import Page, desk_of, show

PAGE = Page("/about", "About", "Where the words come from, how they are chosen, and what to mind.")
TEMPLATE = "about.html"
page = APIRouter()
api = APIRouter()


class LexiconForm(Form):
    """What is told of the lexicon."""

    disagreements: bool = Field(
        default=False, description="List the forms that are not base + ending."
    )


@page.get(PAGE.path)
async def about_page(request: Request, form: Annotated[ClassForm, Query()]) -> Response:
    """Show sources, limits and cautions."""
    document = await desk_of(request).ask(make_document, LexiconForm())
    parts = [
        (section.heading, fragment([section._replace(heading="")])) for section in document.sections
    ]
    return show(
        request, TEMPLATE, PAGE, form=form, parts=parts, version=VERSION, schema_version=SCHEMA
    )


@api.get(
    "/lexicon",
    tags=["about"],
    summary="Where the words come from",
)
async def lexicon_data(request: Request, form: Annotated[LexiconForm, Query()]) -> dict[str, Any]:
    """Return the fields that ``phonodrill lexicon --format json`` writes."""
    return data_of(await desk_of(request).ask(make_document, form))


def make_document(lexicon: Lexicon, form: LexiconForm) -> Document:
    """Tell of the lexicon what a form asks for."""
    rows = tuple(lexicon.disagreements()) if form.disagreements else ()
    return view.document(lexicon.sources(), count_words(lexicon), rows)
