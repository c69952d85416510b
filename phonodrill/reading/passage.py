"""Split a passage into its words, keeping everything between them.

Numbers are kept apart; hyphens part words; an apostrophe inside a word belongs
to it. The splitting is nltk's regular-expression tokenizer, which needs no
downloaded data.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from enum import StrEnum
from typing import NamedTuple

_PIECES = r"[^\W\d_]+(?:['’][^\W\d_]+)*['’]?|\d+(?:[.,:/]\d+)*(?:st|nd|rd|th)?"

_SPACE = re.compile(r"\s")
_BLOCK = 20_000
"""Signs that are split at a time: the tokenizer gives up after five seconds on one text."""
LONGEST_WORD = 1_000
"""Signs beyond a block at which it ends even inside of what should be a word."""


class Sort(StrEnum):
    """What a piece of a passage is."""

    WORD = "word"
    NUMBER = "number"
    BETWEEN = "between"


class Piece(NamedTuple):
    """A word, a number, or what stands between two of them.

    Attributes:
        text: as written.
        sort: what it is.
        word: lower case, with a plain apostrophe; empty if it is no word.
    """

    text: str
    sort: Sort
    word: str = ""


def split_passage(text: str) -> Iterator[Piece]:
    """Yield the pieces of a passage; joined they are the passage.

    >>> [piece.word for piece in split_passage("The gull's 2 well-fed chicks") if piece.word]
    ['the', "gull's", 'well', 'fed', 'chicks']
    """
    from nltk.tokenize import RegexpTokenizer

    tokenizer = RegexpTokenizer(_PIECES)
    past = 0
    for start, end in _spans(text, tokenizer.span_tokenize):
        if start > past:
            yield Piece(text[past:start], Sort.BETWEEN)
        piece = text[start:end]
        if piece[0].isdigit():
            yield Piece(piece, Sort.NUMBER)
        else:
            yield from _word(piece)
        past = end
    if past < len(text):
        yield Piece(text[past:], Sort.BETWEEN)


def _spans(
    text: str, spans_of: Callable[[str], Iterable[tuple[int, int]]]
) -> Iterator[tuple[int, int]]:
    """Yield where the pieces are, block by block; no piece has a space in it."""
    begin = 0
    while begin < len(text):
        space = _SPACE.search(text, begin + _BLOCK, begin + _BLOCK + LONGEST_WORD)
        stop = space.start() if space else begin + _BLOCK + LONGEST_WORD
        yield from ((begin + start, begin + end) for start, end in spans_of(text[begin:stop]))
        begin = stop


def _word(piece: str) -> Iterator[Piece]:
    """A final apostrophe is a closing quotation mark unless an s stands before it."""
    is_quoted = piece[-1] in "'’" and piece[-2:-1] not in ("s", "S")
    text = piece[:-1] if is_quoted else piece
    yield Piece(text, Sort.WORD, text.lower().replace("’", "'"))
    if is_quoted:
        yield Piece(piece[-1], Sort.BETWEEN)
