"""What is asked of a lesson, and what its composers share."""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from phonodrill.endings.classify import Ending, WaysOf, classify
from phonodrill.endings.listings import Listings, ReadAhead
from phonodrill.gate import Gate
from phonodrill.lesson.focus import Focus, parse_focus
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.selection import Pool, Query, select
from phonodrill.sounds.notation import SCRIPT, Notation
from phonodrill.taught.known import Known
from phonodrill.taught.steps import parse_steps


class Request(NamedTuple):
    """What a lesson is wanted for.

    Attributes:
        focus: as :func:`phonodrill.lesson.focus.parse_focus` reads it.
        band: highest band of the words, 1-3.
        minutes: how long the lesson is.
        seed: makes the same lesson again.
        day: which of several days it is, from 1.
        notation: how sounds are written in what the teacher says.
        taught: the lines of a taught file; none: any word may be read.
    """

    focus: str
    band: int = 2
    minutes: int = 25
    seed: int = 1
    day: int = 1
    notation: str = SCRIPT
    taught: tuple[str, ...] = ()


class Context(NamedTuple):
    """What every composer of a section is given.

    Attributes:
        lexicon: the open lexicon.
        request: what was asked for.
        focus: what the lesson is about.
        known: what the class can read by, this lesson's focus among it; None for all.
        pool: the words that may be used, past the gate.
        ways_of: takes a word with an ending apart, and remembers it.
        overlay: a teacher's own words.
        listings: what the lexicon lists of words with endings, read ahead; None for
            another focus.
    """

    lexicon: Lexicon
    request: Request
    focus: Focus
    known: Known | None
    pool: Pool
    ways_of: WaysOf
    overlay: Overlay = NO_OVERLAY
    listings: Listings | None = None

    @property
    def gate(self) -> Gate:
        """The never-say check."""
        return self.pool.gate

    @property
    def style(self) -> Notation:
        """How sounds are written."""
        return Notation(self.request.notation)


def open_context(lexicon: Lexicon, request: Request, overlay: Overlay = NO_OVERLAY) -> Context:
    """Read the focus and what was taught.

    Args:
        lexicon: the open lexicon.
        request: what is asked for.
        overlay: a teacher's own words.

    Raises:
        PhonodrillError: if the focus cannot be read.
    """
    focus = parse_focus(request.focus, lexicon)
    known = None
    if request.taught:
        before = parse_steps(request.taught, lexicon.correspondences()).known()
        known = before._replace(things=before.things | focus.things(lexicon))
    pool = select(lexicon, Query(request.band, known=known), overlay=overlay)
    exceptions = lexicon.ending_exceptions()

    listings = ReadAhead(lexicon, focus.endings) if focus.endings else None

    @cache
    def ways_of(form: str) -> list[Ending]:
        return classify(form, lexicon, exceptions, listings)

    request = request._replace(focus=focus.text)
    return Context(lexicon, request, focus, known, pool, ways_of, overlay, listings)
