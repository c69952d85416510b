"""Endings: words sorted by sound and spelling with reasons, an ending added, a base found."""

from __future__ import annotations

from enum import StrEnum

from fastapi import APIRouter
from pydantic import Field

from phonodrill.endings.reasons import explain
from phonodrill.endings.rules import SUFFIXES
from phonodrill.endings.sort import By
from phonodrill.endings.suffix import SPELLINGS, TABLE
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay
from phonodrill.render.document import Section
from phonodrill.render.views import sort as view
from phonodrill.render.views.endings import stages
from phonodrill.services import word_endings
from phonodrill.services.made import Made
from phonodrill.services.taught_steps import steps_from
from phonodrill.services.word_endings import Draw
from phonodrill.services.word_list import typed_words
from phonodrill.sounds.notation import Notation
from phonodrill.web.choices import NOTATIONS
from phonodrill.web.forms import DrawForm, Form
from phonodrill.web.page import Page, options_of
from phonodrill.web.tab import Tab, add_tabs, board_of_words

PAGE = Page(
    "/endings",
    "Endings",
    "What an ending says, how it is spelled, and why: sorted, added, taken off.",
)
LONGEST_LIST = 4000
LONGEST_WORD = 60
MOST_WORDS = 200
Suffix = StrEnum("Suffix", {s.strip("'").upper() + "_" * ("'" in s): s for s in SUFFIXES})  # type: ignore[misc]
CHOICES = {
    "orders": options_of(
        By,
        sound="what the ending says",
        spelling="how it is spelled",
        rule="its rule",
        base="the base word",
    ),
    "suffixes": [(row.name, f"-{row.name}: {row.in_short}") for row in TABLE],
    "spelled": [(spelled, f"-{spelled}") for spelled in SPELLINGS],
    "notations": NOTATIONS,
}
page = APIRouter()
api = APIRouter()


class SortForm(DrawForm):
    """Words sorted by their endings."""

    words: str = Field(
        "",
        max_length=LONGEST_LIST,
        description="Words to sort, parted by spaces or commas; empty: words of the vocabulary.",
    )
    by: By = Field(By.SOUND, description="What they are sorted by.")
    ending: list[str] = Field(
        [],
        max_length=20,
        description=f"Which spellings: {', '.join(SPELLINGS)}; s, es, ies where words are drawn.",
    )
    count: int = Field(
        8, ge=1, le=MOST_WORDS, description="How many words a group, or bases, are drawn."
    )
    notation: Notation | None = Field(None, description="How sounds are written.")


class AddForm(Form):
    """An ending added to a word."""

    word: str = Field("", max_length=LONGEST_WORD, description="The base, real or made up.")
    ending: Suffix = Field(Suffix("s"), description="Which ending; 's is the possessive.")
    sounds: str = Field(
        "", max_length=120, description="How a made-up base is said, as in CMUdict: G AH1 CH."
    )
    notation: Notation | None = Field(None, description="How sounds are written.")


class BaseForm(Form):
    """The base of a word with an ending."""

    word: str = Field("", max_length=LONGEST_WORD, description="A word with an ending.")


class TableForm(DrawForm):
    """The rule card of an ending."""

    ending: Suffix = Field(Suffix("s"), description="Which ending; 's is the possessive.")
    count: int = Field(2, ge=1, le=MOST_WORDS, description="Examples of each kind of base.")
    notation: Notation | None = Field(None, description="How sounds are written.")


class LookalikesForm(DrawForm):
    """Traps for a lesson."""

    ending: list[str] = Field(
        [], max_length=20, description=f"The lesson's focus: {', '.join(SPELLINGS)}."
    )
    count: int = Field(8, ge=1, le=MOST_WORDS, description="Words of each kind.")


def make_sort(lexicon: Lexicon, form: SortForm, overlay: Overlay) -> Made:
    """Sort the words of a form, or words drawn; what the page shows has the reasons, too.

    Raises:
        PhonodrillError: if no word has such an ending.
    """
    draw = Draw(form.band, form.count, form.seed or 0)
    if form.taught and not form.words:
        draw = draw._replace(known=steps_from(form.taught, lexicon).known())
    result = word_endings.sort(
        lexicon, ",".join(form.ending), form.by, draw, overlay, typed_words(form.words), "word"
    )
    document = view.document(result.sort, form.notation, draw.seed)
    reasons = view.reasons(result.sort, explain(lexicon, result.sort), form.notation)
    return Made(document._replace(sections=(*document.sections, *reasons)), result.unfit)


def make_added(lexicon: Lexicon, form: AddForm, overlay: Overlay) -> Made:
    """Add an ending to the word of a form.

    Raises:
        PhonodrillError: if it is no word, or not for class.
    """
    made = word_endings.add(
        lexicon,
        form.word,
        str(form.ending),
        sounds=form.sounds,
        overlay=overlay,
        notation=form.notation,
    )
    document = made.document
    sections = [
        part
        for section, added in zip(document.sections, document.data["forms"], strict=True)
        for part in (section, Section("Step by step", stages(added, document.data["base"]), 2))
    ]
    return made._replace(document=document._replace(sections=tuple(sections)))


def make_bases(lexicon: Lexicon, form: BaseForm, overlay: Overlay) -> Made:
    """Find the bases of the word of a form.

    Raises:
        PhonodrillError: if it is no word, or not for class.
    """
    return word_endings.base(lexicon, form.word, overlay)


def make_table(lexicon: Lexicon, form: TableForm, overlay: Overlay) -> Made:
    """Make the rule card that a form asks for."""
    draw = Draw(form.band, form.count, form.seed or 0)
    return word_endings.table(lexicon, str(form.ending), draw, overlay, form.notation)


def make_lookalikes(lexicon: Lexicon, form: LookalikesForm, overlay: Overlay) -> Made:
    """List the traps that a form asks for.

    Raises:
        PhonodrillError: naming an ending that is not known.
    """
    draw = Draw(form.band, form.count, form.seed or 0)
    return word_endings.lookalikes(lexicon, ",".join(form.ending), draw, overlay)


TABS = (
    Tab(
        PAGE.path,
        "Sort",
        "Sort",
        "endings_sort.html",
        SortForm,
        make_sort,
        "/endings/sort",
        "Words sorted by what their ending says or how it is spelled",
        fixed=("words",),
        grouped=True,
        choices=CHOICES,
        spoken=".words li",
        board=board_of_words("word"),
    ),
    Tab(
        f"{PAGE.path}/add",
        "Add an ending",
        "Add it",
        "endings_add.html",
        AddForm,
        make_added,
        "/endings/add",
        "An ending added to a word, real or made up",
        needs=("word",),
        choices=CHOICES,
    ),
    Tab(
        f"{PAGE.path}/base",
        "Find the base",
        "Find it",
        "endings_base.html",
        BaseForm,
        make_bases,
        "/endings/base",
        "Every base a word may come from, the likeliest first",
        needs=("word",),
        spoken="tbody td:first-child",
    ),
    Tab(
        f"{PAGE.path}/rules",
        "Rules",
        "Make a rule card",
        "endings_rules.html",
        TableForm,
        make_table,
        "/endings/table",
        "The rule card of an ending, with examples",
        choices=CHOICES,
    ),
    Tab(
        f"{PAGE.path}/look-alikes",
        "Look-alikes",
        "List traps",
        "endings_lookalikes.html",
        LookalikesForm,
        make_lookalikes,
        "/endings/lookalikes",
        "Words that only look inflected, and other traps",
        choices=CHOICES,
        spoken="tbody td:first-child",
    ),
)
add_tabs(page, api, PAGE, TABS)
