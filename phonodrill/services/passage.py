"""A passage checked against what a class was taught, for command line and page."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

from phonodrill.errors import PhonodrillError, UnknownWordError
from phonodrill.gate import open_gate
from phonodrill.graphemes.chunk import ODD_CODE
from phonodrill.guess import Guess, guess_reading
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.reading.passage import split_passage
from phonodrill.reading.passage_check import Report, check_passage
from phonodrill.taught.known import Known
from phonodrill.taught.tokens import write_token

HIGHEST_GUESSES = 200


def check_text(
    lexicon: Lexicon,
    text: str,
    known: Known,
    overlay: Overlay = NO_OVERLAY,
    name: str = "the text",
    most: int | None = None,
) -> Report:
    """Judge every word of a text.

    Args:
        lexicon: the open lexicon.
        text: the passage.
        known: what was taught.
        overlay: a teacher's own words.
        name: what the text is called in an error.
        most: how many different words there may be; None for any number.

    Raises:
        PhonodrillError: if there is no word in it, or too many different ones.
    """
    pieces = tuple(split_passage(text))
    if most is not None and len({piece.word for piece in pieces}) > most:
        raise PhonodrillError(f"{name} has more than {most:,} different words", "a part of it")
    gate = open_gate(lexicon, overlay.words("block"))
    report = check_passage(pieces, lexicon, gate, known, _guesser(lexicon))
    if not report.counts:
        raise PhonodrillError(f"{name} has no word in it", "a text with words in it")
    return report


def namer(lexicon: Lexicon) -> Callable[[str], str]:
    """Return what writes a code or an ending as in a taught file."""
    inventory = lexicon.correspondences()
    by_code = {row.code: row for row in inventory}

    @cache
    def name_of(missing: str) -> str:
        if missing == ODD_CODE:
            return "an irregular part"
        return write_token(by_code[missing], inventory) if missing in by_code else missing

    return name_of


def plain_text(content: bytes) -> str:
    """Read what was sent as a text file; what is no UTF-8 becomes a replacement sign.

    Args:
        content: UTF-8, or UTF-16 that begins with its byte order mark.

    Raises:
        PhonodrillError: if it is no text.

    >>> plain_text("crab".encode("utf-8-sig")), plain_text("crab".encode("utf-16"))
    ('crab', 'crab')
    """
    is_utf16 = content.startswith((b"\xff\xfe", b"\xfe\xff"))
    text = content.decode("utf-16" if is_utf16 else "utf-8-sig", "replace")
    if "\0" in text:
        raise PhonodrillError("that file is no plain text", "save it as plain text, .txt")
    return text


def _guesser(lexicon: Lexicon) -> Callable[[str], Guess | None]:
    """Read unknown words, up to a number: a text of another language would take minutes."""
    read: list[str] = []

    def guess(word: str) -> Guess | None:
        read.append(word)
        if len(read) > HIGHEST_GUESSES:
            return None
        try:
            return guess_reading(word, lexicon)
        except UnknownWordError:
            return None

    return guess
