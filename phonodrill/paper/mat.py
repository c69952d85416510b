"""A mat to sort cards on: which columns it has, and which words go where."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from phonodrill.endings.sort import HEADINGS, By, label
from phonodrill.errors import PhonodrillError
from phonodrill.paper.page import Mat, Script, Text
from phonodrill.paper.printed import Printed

HIGHEST_COLUMNS = 6


class Column(NamedTuple):
    """One column of a mat.

    Attributes:
        heading: what stands at its head.
        words: those that belong there: the answer key.
    """

    heading: Text
    words: tuple[str, ...] = ()


class Columns(NamedTuple):
    """The columns of a mat and what does not go in exactly one.

    Attributes:
        columns: from left to right.
        in_none: words that belong nowhere.
        in_several: words that belong in more than one column.
    """

    columns: tuple[Column, ...]
    in_none: tuple[str, ...] = ()
    in_several: tuple[str, ...] = ()


def by_ending(words: Sequence[Printed], by: By) -> Columns:
    """Sort words by what their ending says, how it is spelled, its rule or its base.

    Args:
        words: those to sort; words without an ending belong nowhere, nor by base
            those whose base is no word for class.
        by: what is sorted by.

    Raises:
        PhonodrillError: if no word has an ending, or there are too many columns.
    """
    found: dict[str, list[Printed]] = {}
    in_none = []
    for word in words:
        if word.ending and (word.base or by is not By.BASE):
            found.setdefault(label(word.ending, by), []).append(word)
        else:
            in_none.append(word.word)
    order = {name: place for place, name in enumerate(HEADINGS.get(by, ()))}
    groups = sorted(found.items(), key=lambda group: (order.get(group[0], len(order)), group[0]))
    columns = (
        Column(_heading(name, group[0], by), tuple(word.word for word in group))
        for name, group in groups
    )
    return _checked(Columns(tuple(columns), tuple(in_none)))


def _heading(name: str, word: Printed, by: By) -> Text:
    if by is By.SOUND:
        return Text(word.ending_signs, Script.SOUNDS)
    return Text(f"-{name}" if by is By.SPELLING else name)


def by_headings(words: Sequence[Printed], headings: Sequence[Text]) -> Columns:
    """Sort words by the spelling or the sound that each heading names.

    A word belongs in a column if one of its chunks is spelled so, or says that
    sound; what belongs in several is set apart, since it has no one answer.

    Args:
        words: those to sort.
        headings: letters (``sh``, ``a_e``), an ending (``-es``) or one sound
            between slashes.
    """
    found: dict[Text, list[str]] = {heading: [] for heading in headings}
    in_none: list[str] = []
    in_several: list[str] = []
    for word in words:
        fits = [heading for heading in headings if _has(word, heading)]
        if len(fits) == 1:
            found[fits[0]].append(word.word)
        else:
            (in_several if fits else in_none).append(word.word)
    columns = (Column(heading, tuple(group)) for heading, group in found.items())
    return _checked(Columns(tuple(columns), tuple(in_none), tuple(in_several)))


def mat_of(title: str, columns: Columns, note: str = "") -> Mat:
    """Make the page that cards are sorted on."""
    return Mat(title, tuple((column.heading,) for column in columns.columns), note)


def _has(word: Printed, heading: Text) -> bool:
    if heading.text.startswith("-"):
        return word.ending is not None and heading.text == f"-{word.ending.ending}"
    if word.split is None:
        return False
    if heading.script is Script.LETTERS:
        return heading.text in word.split.chunks
    sound = heading.text.strip("/")
    # ARPAbet vowels carry a stress digit in a word and none in a heading.
    return any(sound == sign.rstrip("012") for piece in word.split.pieces for sign in piece.sounds)


def _checked(columns: Columns) -> Columns:
    count = len(columns.columns)
    if not 1 <= count <= HIGHEST_COLUMNS:
        raise PhonodrillError(
            f"a mat of {count} columns" if count else "no word here has an ending to sort by",
            f"at most {HIGHEST_COLUMNS}: fewer kinds of words, or --headings sh,ch,th",
        )
    return columns
