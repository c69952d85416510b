"""What is asked of a lesson: by the page, by its files, by the board and by the API."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, StringConstraints

from phonodrill.lesson.plan import FEWEST_MINUTES, MOST_MINUTES
from phonodrill.lesson.request import Request as Wanted
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay
from phonodrill.services.lesson import Lessons, Swap, Swapped, Wish
from phonodrill.services.taught_steps import steps_from
from phonodrill.sounds.notation import SCRIPT, Notation
from phonodrill.web.forms import DrawForm

MOST_DAYS = 10
MOST_SWAPS = 30
LONGEST_WORD = 30
LONGEST_FOCUS = 60
OneSwap = Annotated[str, StringConstraints(max_length=2 * LONGEST_WORD + 1)]


class LessonForm(DrawForm):
    """A lesson."""

    focus: str = Field(
        "",
        max_length=LONGEST_FOCUS,
        description="Endings es,ies; a spelling sh, a_e, c=s; a sound /k/; a contrast i:e; a task.",
    )
    minutes: int = Field(25, ge=FEWEST_MINUTES, le=MOST_MINUTES, description="How long it is.")
    days: int = Field(1, ge=1, le=MOST_DAYS, description="A lesson for each of so many days.")
    notation: Notation | None = Field(None, description="How sounds are written.")
    swap: list[OneSwap] = Field(
        [], max_length=MOST_SWAPS, description="Words to swap, in this order: old:new, or old:."
    )


def make_lessons(lexicon: Lexicon, form: LessonForm, overlay: Overlay, lessons: Lessons) -> Swapped:
    """Make the lessons that a form with a seed asks for.

    Raises:
        PhonodrillError: if they cannot be made.
    """
    taught = steps_from(form.taught, lexicon).steps if form.taught else ()
    wanted = Wanted(
        form.focus,
        form.band,
        form.minutes,
        form.seed or 0,
        notation=str(form.notation or SCRIPT),
        taught=tuple(step.text for step in taught),
    )
    return lessons.make(lexicon, Wish(wanted, form.days, tuple(map(read_swap, form.swap))), overlay)


def read_swap(text: str) -> Swap:
    """Read a swap as an address has it.

    >>> read_swap("torches:patches"), read_swap("torches")
    (Swap(old='torches', new='patches'), Swap(old='torches', new=''))
    """
    old, _, new = text.lower().partition(":")
    return Swap(old.strip(), new.strip())
