"""Warm-up: items of any task, answers shown or hidden; and word chains."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import islice
from typing import Annotated, Any

from fastapi import APIRouter, Query, Request
from pydantic import Field

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay
from phonodrill.render.as_json import version_data
from phonodrill.render.views import warmup as view
from phonodrill.selection import Query as WordQuery
from phonodrill.selection import select
from phonodrill.services.bank import every_item, kinds_of
from phonodrill.services.chain import HIGHEST_STEPS, USUAL_STEPS, chain
from phonodrill.services.made import Made
from phonodrill.services.oral import ENDINGS, read_query
from phonodrill.services.taught_steps import steps_from
from phonodrill.services.warmup import Wish, task_and_place, warm_up
from phonodrill.services.word_list import typed_words, usable_words
from phonodrill.sounds.accents import parse_accents
from phonodrill.sounds.notation import Notation
from phonodrill.sounds.places import Position
from phonodrill.sounds.units import RVowels
from phonodrill.tasks.difficulty import Level
from phonodrill.tasks.phrases import IN_SHORT
from phonodrill.tasks.registry import TASKS
from phonodrill.web.choices import ACCENTS, NOTATIONS, R_VOWELS
from phonodrill.web.forms import DrawForm, Form
from phonodrill.web.page import Page, desk_of, options_of
from phonodrill.web.tab import Tab, add_tabs, board_of_form, board_of_words

PAGE = Page("/warm-up", "Warm-up", "Oral items of one task, each with its checked answer.")
MOST_ITEMS = 40
LONGEST_LIST = 4000
MOST_OF_BANK = 200
LAST_OF_BANK = 10_000
"""More than any kind of item has."""
PLACE_WORDS = {
    "first": "the first sound",
    "last": "the last sound",
    "vowel": "the vowel",
    "onset2": "the second of two first consonants",
    "coda1": "the first of two last consonants",
    "syllable": "a syllable, or half of a joined word",
    "onset": "all before the vowel",
    "rime": "the vowel and all after it",
    "each": "sound by sound",
}
CHOICES: Mapping[str, Sequence[tuple[str, ...]]] = {
    "tasks": options_of(TASKS, **IN_SHORT),
    "places": [
        (
            str(place),
            PLACE_WORDS[place],
            " ".join(n for n, t in TASKS.items() if place in t.positions),
        )
        for place in Position
    ],
    "endings": [(ending, f"-{ending}") for ending in ENDINGS],
    "levels": options_of(Level),
    "notations": NOTATIONS,
    "accents": ACCENTS,
    "r_vowels": R_VOWELS,
}
Accent = Annotated[str, Field(max_length=120)]
AccentField: Any = Field(
    [],
    max_length=20,
    description="What your class is known to say alike; by default right in every accent.",
)
page = APIRouter()
api = APIRouter()


class WarmUpForm(DrawForm):
    """An oral warm-up."""

    task: str = Field("delete", description=f"One of {', '.join(TASKS)}.", max_length=20)
    at: Position | None = Field(None, description="Where in the word; empty: the usual place.")
    ending: str = Field("", max_length=20, description=f"Words with {', '.join(ENDINGS)} added.")
    sound: str = Field("", max_length=10, description="Only items about this sound: sh, /ʃ/ or SH.")
    level: Level | None = Field(None, description="How hard among items of this kind.")
    count: int = Field(8, ge=1, le=MOST_ITEMS, description="How many items.")
    made_up: bool = Field(default=False, description="Made-up words: blend, segment, substitute.")
    notation: Notation | None = Field(None, description="How sounds are written.")
    accent: list[Accent] = AccentField
    r_vowels: RVowels | None = Field(
        None, description="A vowel with its R counted as two sounds or one; empty: neither is used."
    )
    words: str = Field(
        "", max_length=LONGEST_LIST, description="Your own words, parted by spaces or commas."
    )


class WarmUpPageForm(WarmUpForm):
    """The page shows answers or hides them."""

    hide: bool = Field(default=False, description="Fold the answers away.")


class ChainForm(DrawForm):
    """A word chain."""

    start: str = Field("", max_length=40, description="The word to start from.")
    end: str = Field("", max_length=40, description="The word to come to; empty: a varied chain.")
    steps: int = Field(
        USUAL_STEPS, ge=1, le=HIGHEST_STEPS, description="How many, without a word to come to."
    )
    accent: list[Accent] = AccentField
    notation: Notation | None = Field(None, description="How sounds are written.")


class BankForm(Form):
    """Every item of a task, some at a time."""

    task: str = Field("delete", description=f"One of {', '.join(TASKS)}.", max_length=20)
    at: Position | None = Field(None, description="Where in the word; empty: the usual place.")
    ending: str = Field("", max_length=20, description=f"Words with {', '.join(ENDINGS)} added.")
    sound: str = Field("", max_length=10, description="Only items about this sound: sh, /ʃ/ or SH.")
    accent: list[Accent] = AccentField
    r_vowels: RVowels | None = Field(None, description="A vowel with its R as two sounds or one.")
    made_up: bool = Field(default=False, description="Made-up words: blend, segment, substitute.")
    band: int = Field(2, ge=1, le=3, description="Highest band of words used.")
    notation: Notation | None = Field(None, description="How sounds are written.")
    count: int = Field(100, ge=1, le=MOST_OF_BANK, description="How many items at once.")
    offset: int = Field(0, ge=0, le=LAST_OF_BANK, description="How many to pass over.")


def make_warmup(lexicon: Lexicon, form: WarmUpForm, overlay: Overlay) -> Made:
    """Make the warm-up that a form asks for.

    Raises:
        PhonodrillError: if choices do not go together or no item fits.
    """
    wish, problems = make_wish(lexicon, form, overlay)
    made = warm_up(lexicon, wish, overlay)
    return Made(view.document(made, form.notation), (*problems, *made.notes))


def make_wish(lexicon: Lexicon, form: WarmUpForm, overlay: Overlay) -> tuple[Wish, tuple[str, ...]]:
    """Read what a form asks for, and what of it cannot be used.

    Raises:
        PhonodrillError: naming what cannot be read.
    """
    _check_place(form.task, form.at)
    query: WordQuery = read_query(
        band=form.band,
        ending=form.ending,
        sound=form.sound,
        accent=",".join(form.accent),
        r_vowels=form.r_vowels,
        made_up=form.made_up,
    )
    problems: tuple[str, ...] = ()
    if form.words:
        words, problems = usable_words(
            lexicon, typed_words(form.words), overlay, what="word", name="your list"
        )
        query = query._replace(words=words)
    if form.taught:
        query = query._replace(known=steps_from(form.taught, lexicon).known())
    wish = Wish(query, form.count, form.seed or 0, form.task, form.at, form.level)
    return wish, problems


def make_chain(lexicon: Lexicon, form: ChainForm, overlay: Overlay) -> Made:
    """Make the chain that a form asks for.

    Raises:
        PhonodrillError: if a word is not known or not fit, or there is no chain.
    """
    if not form.start:
        raise PhonodrillError("there is no word to start from", "start: crab")
    query = WordQuery(form.band, accents=parse_accents(",".join(form.accent)))
    if form.taught:
        query = query._replace(known=steps_from(form.taught, lexicon).known())
    return chain(
        lexicon,
        query,
        form.start,
        form.end,
        steps=form.steps,
        seed=form.seed or 0,
        overlay=overlay,
        notation=form.notation,
    )


def read_bank(lexicon: Lexicon, form: BankForm, overlay: Overlay) -> dict[str, Any]:
    """Return some of the items of a task, with where the next ones begin.

    Raises:
        PhonodrillError: if there is no such task, it has no such place, or takes no
            made-up words.
    """
    task, place = task_and_place(form.task, form.at)
    query = read_query(
        band=form.band,
        ending=form.ending,
        sound=form.sound,
        accent=",".join(form.accent),
        r_vowels=form.r_vowels,
        made_up=form.made_up,
    )
    kinds = kinds_of(task.name, place, made_up=form.made_up)
    pool = select(lexicon, query, overlay=overlay)
    stop = form.offset + form.count
    found = list(islice(every_item(kinds, pool, query), form.offset, stop + 1))
    return {
        "task": task.name,
        "at": str(place),
        "offset": form.offset,
        "next": stop if len(found) > form.count else None,
        "items": [view.record(item, form.notation) for item in found[: form.count]],
    }


def _check_place(task: str, at: Position | None) -> None:
    """Explain a place that a task does not have.

    Raises:
        PhonodrillError: naming the places that it has.
    """
    places = TASKS[task].positions if task in TASKS else ()
    if at and places and at not in places:
        offers = " / ".join(f"{PLACE_WORDS[place]} ({place})" for place in places)
        raise PhonodrillError(
            f"“{IN_SHORT[task]}” ({task}) is not done at “{PLACE_WORDS[at]}” ({at})",
            f"the usual place, or {offers}",
        )


TABS = (
    Tab(
        PAGE.path,
        "Items of one task",
        "Make a warm-up",
        "warmup.html",
        WarmUpPageForm,
        make_warmup,
        "/warmup",
        "An oral warm-up",
        asks=WarmUpForm,
        choices=CHOICES,
        board=board_of_form,
    ),
    Tab(
        f"{PAGE.path}/chain",
        "A word chain",
        "Make a chain",
        "chain.html",
        ChainForm,
        make_chain,
        "/chain",
        "Words that change one sound at a time",
        needs=("start", "end"),
        fixed=("end",),
        choices=CHOICES,
        spoken="td:first-child",
        board=board_of_words("word"),
    ),
)
add_tabs(page, api, PAGE, TABS)


@api.get("/bank", tags=["words"], summary="Every item of a task, some at a time")
async def bank_data(request: Request, form: Annotated[BankForm, Query()]) -> dict[str, Any]:
    """Return rows of ``phonodrill bank`` for one task and place.

    The whole bank is for the command: here a request gives at most 200 rows, from
    ``offset`` on; ``next`` is the offset of those that follow.
    """
    desk = desk_of(request)
    return version_data() | await desk.ask(read_bank, form, desk.own_words())
