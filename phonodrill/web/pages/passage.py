"""Passage: a text marked by what a class can read of it."""

from __future__ import annotations

from typing import Annotated, Any, NamedTuple

from fastapi import APIRouter, Form, Query, Request, Response, UploadFile
from pydantic import Field

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay
from phonodrill.render.as_html import fragment
from phonodrill.render.as_json import data_of
from phonodrill.render.document import Document, Section, Table, Words
from phonodrill.render.views import passage as view
from phonodrill.services.passage import check_text, namer, plain_text
from phonodrill.services.taught_steps import DEFAULT, default_lines, named, steps_from
from phonodrill.sounds.notation import Notation
from phonodrill.web.csrf import FIELD, check_form
from phonodrill.web.forms import ClassForm
from phonodrill.web.page import (
    Page,
    address_of,
    desk_of,
    options_of,
    problem_from,
    redirect_to,
    show,
)
from phonodrill.web.settings import LARGEST_BODY

PAGE = Page("/passage", "Passage", "Which words of a text your class can read, and which not yet.")
TEMPLATE = "passage.html"
LONGEST_ADDRESS = 4000
"""Longer ones are cut by some proxies; a text that makes one longer is answered directly."""
MOST_DIFFERENT = 15_000
"""Different words: a long book has fewer, and what is no text is not to hold up others."""
MOST_ROWS = 40
"""Longer tables are folded."""
USUAL_STEPS = 40
NOTATIONS = {"marks": "marks", "ipa": "IPA", "arpabet": "ARPAbet"}
CHOICES = {"notations": options_of(Notation, **NOTATIONS)}
page = APIRouter()
api = APIRouter()


class PassageForm(ClassForm):
    """A text to check."""

    text: str = Field(
        default="",
        max_length=LARGEST_BODY,
        description="The text.",
    )
    notation: Notation | None = Field(default=None, description="How guessed readings are written.")


class PassagePageForm(PassageForm):
    """The page offers our order to those who have no list."""

    steps: int | None = Field(default=None, ge=1, le=999, description="Our order up to this step.")

    def settled(self) -> PassagePageForm:
        """Return the form with our order in place of a list that was not given."""
        if self.taught or self.steps is None:
            return self.model_copy(update={"steps": None})
        return self.model_copy(update={"taught": f"{DEFAULT}:{self.steps}", "steps": None})


class PassageSent(PassagePageForm):
    """The form as it is sent, perhaps with a file."""

    token: str = Field(default="", max_length=200, alias="phonodrill_token", exclude=True)
    file: UploadFile | None = Field(default=None, exclude=True)


class Part(NamedTuple):
    """A part of the result.

    Attributes:
        heading: its heading.
        html: what stands under it.
        rows: how many rows it has, if it is a table.
        folded: whether it is long and so folded away.
    """

    heading: str
    html: str
    rows: int
    folded: bool


class Result(NamedTuple):
    """A checked text, ready to be put into the page."""

    document: Document
    passage: str
    parts: tuple[Part, ...]


@page.get(PAGE.path)
async def passage_page(request: Request, form: Annotated[PassagePageForm, Query()]) -> Response:
    """Show the form, and the text of the address marked."""
    if form.steps is not None and form.text:
        return redirect_to(PAGE.path, form.settled())
    return await _show_checked(request, form) if form.text else _show(request, form)


@page.post(PAGE.path)
async def send_passage(
    request: Request, form: Annotated[PassageSent, Form(media_type="multipart/form-data")]
) -> Response:
    """Take a text or a file; a short text goes into the address, where it can be shared."""
    check_form(request, form.token)
    wanted = PassagePageForm(**form.settled().model_dump())
    if form.file is not None:
        try:
            content = plain_text(await form.file.read())
        except PhonodrillError as error:
            return _show(request, wanted, problem=problem_from(error))
        wanted = wanted.model_copy(update={"text": content.strip()})
    if not wanted.text:
        return redirect_to(PAGE.path, wanted)
    if len(address_of(PAGE.path, wanted)) <= LONGEST_ADDRESS:
        return redirect_to(PAGE.path, wanted)
    return await _show_checked(request, wanted)


@api.post(
    "/passage",
    tags=["texts"],
    summary="Which words of a text a class can read",
)
async def passage_data(request: Request, form: PassageForm) -> dict[str, Any]:
    """Return the fields that ``phonodrill passage --format json`` writes."""
    desk = desk_of(request)
    return data_of(await desk.ask(make_document, form, desk.own_words()))


def make_document(lexicon: Lexicon, form: PassageForm, overlay: Overlay) -> Document:
    """Check the text of a form."""
    if not form.taught:
        raise PhonodrillError(
            "what has the class been taught?", f"taught: a step a line, or {DEFAULT}:{USUAL_STEPS}"
        )
    known = steps_from(form.taught, lexicon).known()
    report = check_text(lexicon, form.text, known, overlay, most=MOST_DIFFERENT)
    return view.document(report, namer(lexicon), form.band, form.notation)


def make_result(lexicon: Lexicon, form: PassageForm, overlay: Overlay) -> Result:
    """Check the text of a form and write the parts of the page.

    Long texts make long pages: writing them belongs to the work that waits its turn.
    """
    document = make_document(lexicon, form, overlay)
    marked, *others = document.sections
    parts = []
    for section in others:
        body = section.body
        rows = len(body.rows) if isinstance(body, Table) else 0
        if isinstance(body, Table) and len(body.headings) == 1:
            body = Words(tuple(word for (word,) in body.rows))
        parts.append(Part(section.heading, fragment([Section("", body)]), rows, rows > MOST_ROWS))
    return Result(document, fragment([marked._replace(heading="")]), tuple(parts))


async def _show_checked(request: Request, form: PassagePageForm) -> Response:
    desk = desk_of(request)
    try:
        result = await desk.ask(make_result, form, desk.own_words())
    except PhonodrillError as error:
        return _show(request, form, problem=problem_from(error))
    return _show(request, form, result=result, judged_by=named(form.taught))


def _show(request: Request, form: PassagePageForm, **context: Any) -> Response:
    return show(
        request,
        TEMPLATE,
        PAGE,
        form=form,
        choices=CHOICES,
        token_field=FIELD,
        usual_steps=USUAL_STEPS,
        most_steps=len(default_lines()),
        **context,
    )
