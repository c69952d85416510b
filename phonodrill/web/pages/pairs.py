"""Pairs: words for contrast; words to read; how a sound is spelled."""

from __future__ import annotations

from fastapi import APIRouter
from pydantic import Field

from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay
from phonodrill.reading.pairs import Kind, Place
from phonodrill.services.decodable import Wish as ListWish
from phonodrill.services.decodable import decodable
from phonodrill.services.made import Made
from phonodrill.services.pairs import Wish, pairs
from phonodrill.services.spellings import spellings
from phonodrill.services.taught_steps import steps_from
from phonodrill.sounds.notation import Notation
from phonodrill.taught.known import Known
from phonodrill.web.choices import NOTATIONS
from phonodrill.web.forms import ClassForm, DrawForm, Form
from phonodrill.web.page import Page, options_of
from phonodrill.web.tab import Tab, add_tabs, board_of_words

PAGE = Page("/pairs", "Pairs", "Words for contrast, words to read, and how sounds are spelled.")
MOST_WORDS = 200
CHOICES = {
    "kinds": options_of(
        Kind,
        minimal="one sound differs",
        deletion="one sound is left off",
        spelling="only the spelling differs",
    ),
    "places": options_of(
        Place,
        first="the first sound",
        last="the last sound",
        vowel="the vowel",
        any="anywhere",
    ),
    "notations": NOTATIONS,
}
page = APIRouter()
api = APIRouter()


class PairsForm(DrawForm):
    """Pairs of words for contrast."""

    kind: Kind = Field(
        Kind.MINIMAL, description="One sound differs, one is left off, or only the spelling."
    )
    sounds: str = Field(
        "", max_length=20, description="The two sounds of a minimal pair: i:e, sh:ch, p:b."
    )
    at: Place = Field(Place.ANY, description="Where the sound is.")
    endings: bool = Field(default=False, description="Also words with -s, -es, -ed, -ing.")
    count: int = Field(12, ge=1, le=MOST_WORDS, description="How many pairs.")
    notation: Notation | None = Field(None, description="How sounds are written.")


class ListForm(DrawForm):
    """Words to read."""

    pattern: str = Field(
        "", max_length=60, description="Only these shapes: CVC, CCVC, CVCe, CVVC, CRC."
    )
    spelling: str = Field(
        "", max_length=60, description="Only words with this spelling: sh, a_e, c=s."
    )
    endings: bool = Field(default=False, description="Also words with -s, -es, -ed, -ing.")
    count: int = Field(60, ge=1, le=MOST_WORDS, description="How many words.")


class SpellingsForm(Form):
    """Spellings of a sound, or sounds of a spelling."""

    sound: str = Field("", max_length=10, description="A sound: /f/, sh, ā, ER, or ə.")
    spelling: str = Field(
        "", max_length=12, description="Letters; asks the reverse: how they are said."
    )
    one_syllable: bool = Field(default=False, description="Count only words of one syllable.")
    band: int = Field(3, ge=1, le=3, description="Highest band of words used.")
    notation: Notation | None = Field(None, description="How sounds are written.")


def make_pairs(lexicon: Lexicon, form: PairsForm, overlay: Overlay) -> Made:
    """Choose the pairs that a form asks for.

    Raises:
        PhonodrillError: if choices do not go together or no pair fits.
    """
    wish = Wish(
        form.band,
        form.count,
        form.seed or 0,
        form.kind,
        form.sounds,
        form.at,
        _known(lexicon, form),
        form.endings,
    )
    return pairs(lexicon, wish, overlay, form.notation)


def make_list(lexicon: Lexicon, form: ListForm, overlay: Overlay) -> Made:
    """Choose the words to read that a form asks for.

    Raises:
        PhonodrillError: if a shape or spelling cannot be read, or no word fits.
    """
    wish = ListWish(
        form.band,
        form.count,
        form.seed or 0,
        _known(lexicon, form),
        form.pattern,
        form.spelling,
        form.endings,
    )
    return decodable(lexicon, wish, overlay)


def make_spellings(lexicon: Lexicon, form: SpellingsForm, overlay: Overlay) -> Made:
    """Count the spellings or sounds that a form asks for.

    Raises:
        PhonodrillError: if both are asked for, the sound is not known, or no word has it.
    """
    return spellings(
        lexicon,
        form.sound,
        form.spelling,
        band=form.band,
        one_syllable=form.one_syllable,
        overlay=overlay,
        notation=form.notation,
    )


def _known(lexicon: Lexicon, form: ClassForm) -> Known | None:
    return steps_from(form.taught, lexicon).known() if form.taught else None


TABS = (
    Tab(
        PAGE.path,
        "Pairs",
        "Find pairs",
        "pairs.html",
        PairsForm,
        make_pairs,
        "/pairs",
        "Pairs of words for contrast",
        choices=CHOICES,
        spoken="tbody td:first-child, tbody td:nth-child(3)",
        board=board_of_words("a", "b"),
    ),
    Tab(
        f"{PAGE.path}/words-to-read",
        "Words to read",
        "List words",
        "words_to_read.html",
        ListForm,
        make_list,
        "/decodable",
        "Words whose every letter-sound correspondence was taught",
        grouped=True,
        spoken=".words li",
        board=board_of_words("word"),
    ),
    Tab(
        f"{PAGE.path}/spellings",
        "Spellings of a sound",
        "Count",
        "spellings.html",
        SpellingsForm,
        make_spellings,
        "/spellings",
        "Every spelling of a sound, or sound of a spelling, with its share",
        choices=CHOICES,
    ),
)
add_tabs(page, api, PAGE, TABS)
