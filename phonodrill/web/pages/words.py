"""Words: look one up, sentences with it, and the teacher's own lists."""

from __future__ import annotations

import contextlib
from enum import StrEnum
from itertools import islice
from pathlib import Path
from typing import Annotated, Any, NamedTuple

import fastapi
from fastapi import APIRouter, Request, Response
from pydantic import Field
from starlette.responses import RedirectResponse

from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay, change_overlay
from phonodrill.render.document import Document, Section, Table
from phonodrill.render.views import words as view
from phonodrill.selection import nearest_words
from phonodrill.services.made import Made
from phonodrill.services.own_words import add_words, block_words, remove_words
from phonodrill.services.sentences import sentences
from phonodrill.services.word import word
from phonodrill.services.word_list import is_fit, typed_words
from phonodrill.sounds.notation import SCRIPT, Notation, parse_arpabet, symbols
from phonodrill.web.choices import NOTATIONS
from phonodrill.web.csrf import check_form
from phonodrill.web.forms import Form
from phonodrill.web.page import Page, desk_of, problem_from, settings_of, show
from phonodrill.web.tab import Tab, add_tabs

PAGE = Page("/words", "Words", "All that is known of a word; your own lists of words.")
LONGEST_WORD = 60
LONGEST_LIST = 2000
CHUNKS = "Letters and sounds"
"""How the headings begin under which the document has letters tied to sounds."""
BAND_WORDS = {
    0: "not a word for drills",
    1: "known to most children of 5 to 6",
    2: "known to most children of 6 to 7",
    3: "known to most children of 8 to 9",
    4: "known to older children, or not judged",
}
CHOICES = {"notations": NOTATIONS}
page = APIRouter()
api = APIRouter()


class WordForm(Form):
    """A word to look up."""

    word: str = Field("", max_length=LONGEST_WORD, description="The word.")
    band: int = Field(2, ge=1, le=3, description="Highest band of the rhymes.")
    guess: bool = Field(
        default=False, description="Guess the sounds of a word that the lexicon lacks."
    )
    notation: Notation | None = Field(None, description="How sounds are written.")


class WordPageForm(WordForm):
    """The page guesses unless told otherwise."""

    guess: bool = Field(default=True, description="Guess what the lexicon lacks.")


class SentencesForm(Form):
    """Sentences with a word."""

    word: str = Field("", max_length=LONGEST_WORD, description="The word, in the form wanted.")
    cloze: bool = Field(default=False, description="Leave a gap for the word.")


class ListsForm(Form):
    """The teacher's own lists."""

    words: str = Field("", max_length=LONGEST_LIST, description="Words to put into the form.")


class Action(StrEnum):
    """What is done with words of the lists."""

    ADD = "add"
    BLOCK = "block"
    REMOVE = "remove"


class ChangeForm(Form):
    """A change of the teacher's own lists."""

    action: Action = Field(Action.ADD, description="What is done with the words.")
    words: str = Field("", max_length=LONGEST_LIST, description="One word or more.")
    band: int = Field(1, ge=1, le=3, description="The band that words added take.")
    phonodrill_token: str = Field("", max_length=100, description="From the page's form.")


class Box(NamedTuple):
    """A chunk of a word as a box.

    Attributes:
        letters: what is written.
        sounds: what it says, or that it is silent.
        mark: "irregular", or empty.
    """

    letters: str
    sounds: str
    mark: str


def make_word(lexicon: Lexicon, form: WordForm, overlay: Overlay) -> Made:
    """Look the word of a form up, with sentences for it.

    Raises:
        PhonodrillError: if it is not known, or not for class.
    """
    made = word(
        lexicon,
        form.word,
        band=form.band,
        guess=form.guess,
        overlay=overlay,
        notation=form.notation,
    )
    document = made.document
    if document.data.get("guess"):
        near = nearest_words(lexicon, form.word)
        return made._replace(notes=(f"did you mean {', '.join(near)}?",) if near else ())
    with contextlib.suppress(PhonodrillError):
        body = sentences(lexicon, document.title, overlay=overlay).document.sections[0].body
        more = Section("Sentences with it", body)
        document = document._replace(sections=(*document.sections, more))
    return made._replace(document=document)


def make_sentences(lexicon: Lexicon, form: SentencesForm, overlay: Overlay) -> Made:
    """Find sentences for the word of a form.

    Raises:
        PhonodrillError: if there is none.
    """
    return sentences(lexicon, form.word, cloze=form.cloze, overlay=overlay)


def make_lists(lexicon: Lexicon, _: ListsForm, overlay: Overlay) -> Made:
    """Show the teacher's own lists; a word that is not for class is counted only."""
    gate = open_gate(lexicon)
    fit = {w: rule for w, rule in overlay.rules.items() if is_fit(w, lexicon, gate)}
    hidden = len(overlay.rules) - len(fit)
    notes = list(overlay.problems)
    if hidden:
        notes.append(f"not shown, as not for class: {hidden} more")
    return Made(view.document(Overlay(fit), "a file on this machine"), tuple(notes))


def change(lexicon: Lexicon, form: ChangeForm, file: Path) -> None:
    """Change the teacher's own lists and keep them.

    Args:
        lexicon: the open lexicon.
        form: what is changed.
        file: where the lists are kept.

    Raises:
        PhonodrillError: if a word cannot be used, or the lists cannot be kept.
    """
    words = [line.word for line in typed_words(form.words)]

    def changed(own: Overlay) -> Overlay:
        if form.action is Action.ADD:
            return add_words(lexicon, own, words, form.band)
        if form.action is Action.BLOCK:
            return block_words(lexicon, own, words)
        return remove_words(own, words)

    try:
        change_overlay(file, changed)
    except PhonodrillError as error:
        if str(file.parent) not in error.message:
            raise
        # The folder is nothing for a page.
        raise PhonodrillError(
            "your lists cannot be kept", "ask who looks after this machine"
        ) from error


def _boxes(form: WordForm, document: Document) -> dict[str, Any]:
    """Give the template the chunks of each way to say the word, and its band in words."""
    if document.data.get("guess"):
        ways = [_guessed_boxes(document, form.notation or SCRIPT)]
        return {"ways": ways, "known": "not in the lexicon: what follows is a guess"}
    tables = [
        section.body
        for section in document.sections
        if section.heading.startswith(CHUNKS) and isinstance(section.body, Table)
    ]
    return {
        "ways": [_table_boxes(table) for table in tables],
        "known": BAND_WORDS[document.data["band"]],
    }


def _table_boxes(table: Table) -> list[Box]:
    sounds, *marks = table.rows
    marked = marks[0] if marks else [""] * len(sounds)
    return [Box(*cells) for cells in zip(table.headings, sounds, marked, strict=True)]


def _guessed_boxes(document: Document, notation: Notation) -> list[Box]:
    way = document.data["pronunciations"][0]
    signs = iter(symbols(*parse_arpabet(way["arpabet"]), notation))
    return [
        Box(
            chunk["letters"],
            " ".join(islice(signs, len(chunk["arpabet"]))) or "(silent)",
            "irregular" if chunk["irregular"] else "",
        )
        for chunk in way["chunks"]
    ]


LISTS = Tab(
    f"{PAGE.path}/own",
    "Your own lists",
    "",
    "words_own.html",
    ListsForm,
    make_lists,
    "/words",
    "The teacher's own lists",
)
TABS = (
    Tab(
        PAGE.path,
        "Look up",
        "Look it up",
        "words.html",
        WordPageForm,
        make_word,
        "/word",
        "All that is known of a word",
        asks=WordForm,
        needs=("word",),
        choices=CHOICES,
        more=_boxes,
    ),
    Tab(
        f"{PAGE.path}/sentences",
        "Sentences",
        "Find sentences",
        "words_sentences.html",
        SentencesForm,
        make_sentences,
        "/sentences",
        "Short sentences with a word",
        needs=("word",),
        spoken="tbody td:first-child",
    ),
    LISTS,
)
add_tabs(page, api, PAGE, TABS)


@page.post(LISTS.path)
async def change_lists(request: Request, form: Annotated[ChangeForm, fastapi.Form()]) -> Response:
    """Change the teacher's own lists, then show them."""
    check_form(request, form.phonodrill_token)
    file = settings_of(request).words_file
    if file is None:
        raise PhonodrillError("words cannot be kept here", "phonodrill on your own machine")
    try:
        await desk_of(request).ask(change, form, file)
    except PhonodrillError as error:
        return show(
            request,
            LISTS.template,
            PAGE,
            form=form,
            problem=problem_from(error),
            tab=LISTS,
            tabs=TABS,
            document=None,
        )
    return RedirectResponse(LISTS.path, 303)
