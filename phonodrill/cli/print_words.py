"""Which words a page is printed of: given, from a file, or drawn from the vocabulary."""

from __future__ import annotations

import random
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple

from phonodrill.cli import options
from phonodrill.cli.own_words import own_words
from phonodrill.cli.report import report
from phonodrill.cli.words_file import read_words
from phonodrill.endings.sort import By
from phonodrill.errors import PhonodrillError
from phonodrill.gate import Gate, open_gate
from phonodrill.lexicon.entry import Entry
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import Overlay
from phonodrill.paper.draw import draw_words
from phonodrill.selection import Query, look_up, may_be_printed, own_entries
from phonodrill.services.endings import parse_endings
from phonodrill.services.word_list import problems_of, typed_words, why_unusable
from phonodrill.taught.tokens import SPELLED_ENDINGS

ENDINGS = SPELLED_ENDINGS
HIGHEST_WORDS = 1000
"""More than these on paper is a slip; a file of them takes seconds to draw."""


class Source(NamedTuple):
    """Where the words come from; exactly one of the first three is given.

    Attributes:
        words: those given, several in one by commas.
        file: a list, one word a line.
        ending: endings, one of which words drawn from the vocabulary must have.
        band: highest band of the words drawn.
        taught: what the class was taught; words drawn are decodable by it.
        wanted: how many are drawn.
        seed: makes the same draw again.
    """

    words: tuple[str, ...]
    file: Path | None
    ending: str
    band: int
    taught: Path | None
    wanted: int
    seed: int

    @property
    def about(self) -> str:
        """How to get the same words again; empty where that needs no saying."""
        return f"seed {self.seed}" if self.ending else ""


class Store(NamedTuple):
    """What words are looked up in.

    Attributes:
        lexicon: the open lexicon.
        overlay: a teacher's own words.
        gate: the never-say check, with what the teacher blocked.
    """

    lexicon: Lexicon
    overlay: Overlay
    gate: Gate


@contextmanager
def open_store() -> Iterator[Store]:
    """Open the lexicon, the teacher's own words and the gate."""
    with Lexicon() as lexicon:
        overlay = own_words()
        yield Store(lexicon, overlay, open_gate(lexicon, overlay.words("block")))


def choose_words(store: Store, source: Source, by: By = By.SPELLING) -> list[Entry]:
    """Return the words to print, each once, all past the gate.

    What cannot be used is reported with its line, and that fewer words were
    found than asked for.

    Args:
        store: what they are looked up in.
        source: where they come from.
        by: over what words drawn from the vocabulary are spread evenly.

    Raises:
        PhonodrillError: if there is no source or more than one, no word that can
            be used, or too many.
    """
    given = bool(source.words) + bool(source.file) + bool(source.ending)
    if given != 1:
        raise PhonodrillError(
            "several kinds of words" if given else "no words to print",
            "words (torches ropes gulls), or --words FILE, or --ending es,ies",
        )
    entries = _drawn(store, source, by) if source.ending else _listed(store, source)
    if len(entries) > HIGHEST_WORDS:
        raise PhonodrillError(f"{len(entries):,} words are too many to print", "a shorter list")
    return entries


def _drawn(store: Store, source: Source, by: By) -> list[Entry]:
    query = Query(
        source.band,
        parse_endings(source.ending, ENDINGS),
        known=options.known_from(source.taught, store.lexicon),
    )
    rng = random.Random(source.seed)
    entries = draw_words(store.lexicon, query, by, source.wanted, rng, store.overlay)
    if not entries:
        raise PhonodrillError("no word has these endings here", "--band 3, or more steps taught")
    if len(entries) < source.wanted:
        report([f"only {len(entries)} of {source.wanted} words hold; for more: --band 3"])
    return entries


def _listed(store: Store, source: Source) -> list[Entry]:
    lexicon, overlay, gate = store
    own = own_entries(lexicon, overlay)
    lines = read_words(source.file) if source.file else typed_words(" ".join(source.words))
    usable, problems = problems_of(
        lines,
        why_unusable(lexicon, gate, own, may_be_printed),
        "line" if source.file else "word",
    )
    report(problems)
    if not usable:
        raise PhonodrillError("none of these words can be printed", "other words")
    return look_up(usable, lexicon, own)
