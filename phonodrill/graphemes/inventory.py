"""The correspondences, arranged for looking them up by letters."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from enum import StrEnum
from typing import NamedTuple

from phonodrill.graphemes.correspondence import SPLIT, VOWEL_LETTERS, Correspondence, Kind
from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.normal import WEAK

WEAK_I = "ᵻ"
"""An unstressed ɪ: the i of *rabbit*, or the weak vowel of *village*."""
ALIGNED_VOWELS = frozenset(VOWELS) | {WEAK, WEAK_I}
_ALTERNATIVES = {WEAK: (WEAK, WEAK_I), "ɪ": ("ɪ", WEAK_I)}

CLOSING = "e"


class BeforeR(StrEnum):
    """Where a reading may stand as to the letter r behind it."""

    ANYWHERE = "anywhere"
    NOT_SINGLE = "not before a single r: the inventory has the two together"
    ONLY_DOUBLED = "only before rr"
    NOT_DOUBLED = "not before rr: another reading is kept for that"


class Reading(NamedTuple):
    """One way to say some letters, with what the aligner must mind.

    Attributes:
        sounds: as compared.
        row: index of the correspondence.
        is_long: the long vowel of a single letter, as a split vowel says it.
        has_silent_e: ends in a silent e that goes with the consonant before it.
        before_r: where it may stand as to the letter r.
    """

    sounds: str
    row: int
    is_long: bool = False
    has_silent_e: bool = False
    before_r: BeforeR = BeforeR.ANYWHERE


Table = Mapping[str, Sequence[Reading]]


class Inventory(NamedTuple):
    """The correspondences by letters.

    Attributes:
        rows: the correspondences in the table's order.
        plain: letters -> readings, without those below.
        odd_silent: a letter -> the same, where it is silent in a few words only.
        split: first letter of a split vowel -> readings.
        endings: letters of an ending -> readings.
        longest: the most letters of a plain spelling.
    """

    rows: tuple[Correspondence, ...]
    plain: Table
    odd_silent: Table
    split: Table
    endings: Table
    longest: int


def arrange(rows: Iterable[Correspondence]) -> Inventory:
    """Arrange correspondences for the aligner."""
    listed = tuple(rows)
    plain: dict[str, list[Reading]] = {}
    odd_silent: dict[str, list[Reading]] = {}
    split: dict[str, list[Reading]] = {}
    endings: dict[str, list[Reading]] = {}
    for index, row in enumerate(listed):
        if row.kind is Kind.ENDING:
            table, letters = endings, row.spelling
        elif SPLIT in row.spelling:
            table, letters = split, row.spelling[0]
        elif not row.sound and not row.is_regular:
            table, letters = odd_silent, row.spelling
        else:
            table, letters = plain, row.spelling
        forms = (form for sounds in row.sounds for form in _compared_forms(sounds))
        table.setdefault(letters, []).extend(Reading(form, index) for form in forms)
    minded = {
        letters: [_mind(listed, plain, split, letters, reading) for reading in found]
        for letters, found in plain.items()
    }
    return Inventory(listed, minded, odd_silent, split, endings, max(map(len, plain)))


def _mind(
    rows: Sequence[Correspondence], plain: Table, split: Table, letters: str, reading: Reading
) -> Reading:
    """Fill in what the aligner must mind of a reading."""

    def says(table: Table, spelling: str, sounds: str) -> list[Correspondence]:
        return [rows[r.row] for r in table.get(spelling, ()) if r.sounds == sounds]

    ends_in_e = len(letters) > 1 and letters[-1] == CLOSING and letters[-2] not in VOWEL_LETTERS
    without_e = says(plain, letters[:-1], reading.sounds) if ends_in_e else []
    before_r = BeforeR.ANYWHERE
    if says(plain, f"{letters}r", f"{reading.sounds}r"):
        before_r = BeforeR.NOT_SINGLE
    kept = [row for row in says(plain, letters, reading.sounds) if row.is_before_rr]
    if kept:
        is_kept = rows[reading.row] in kept
        before_r = BeforeR.ONLY_DOUBLED if is_kept else BeforeR.NOT_DOUBLED
    return reading._replace(
        is_long=any(map(is_long, says(split, letters, reading.sounds))),
        has_silent_e=any(row.is_regular for row in without_e),
        before_r=before_r,
    )


def is_long(row: Correspondence) -> bool:
    """Whether a split vowel is a taught pattern with a full vowel (cake, not climate)."""
    return row.kind is Kind.SPLIT_VOWEL and row.is_regular and not row.is_weak


def aligned_form(sounds: str, stress: str) -> str:
    """Return the sounds as the aligner compares them, weak vowels told apart.

    Args:
        sounds: codes, one a phoneme.
        stress: one digit a vowel.

    >>> aligned_form("ræbʌt", "10")
    'ræbət'
    """
    digits = iter(stress)
    weak = {"ʌ": WEAK, "ɪ": WEAK_I}
    return "".join(
        weak.get(char, char) if char in VOWELS and next(digits) == "0" else char for char in sounds
    )


def is_vowel(char: str) -> bool:
    """Whether a character of an aligned form is a vowel."""
    return char in ALIGNED_VOWELS


def _compared_forms(sounds: str) -> Iterator[str]:
    if not sounds:
        yield ""
        return
    for rest in _compared_forms(sounds[1:]):
        for first in _ALTERNATIVES.get(sounds[0], (sounds[0],)):
            yield first + rest
