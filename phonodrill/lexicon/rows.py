"""Turn rows of the lexicon into the records it answers with."""

from __future__ import annotations

from typing import Any

from phonodrill.graphemes.correspondence import Correspondence, Kind
from phonodrill.lexicon.entry import NAME, Counted, Entry, Pronunciation

_FIRST_OF_SAID = 10


def counted_of(row: tuple[Any, ...]) -> Counted:
    """Make a correspondence and its counts of a row of table ``correspondence``."""
    code, spelling, sounds, kind, is_regular, example, words, uses = row
    variants = tuple(sounds.split("/"))
    found = Correspondence(spelling, variants, Kind(kind), bool(is_regular), example)
    return Counted(code, found, words, uses)


def entry_of(variants: list[tuple[Any, ...]]) -> Entry:
    """Make an entry of the rows of ``word`` joined with ``pronunciation``, one a variant."""
    word, zipf, band, reason, parts, picturable, is_name, is_heteronym, base, endings = variants[0][
        :_FIRST_OF_SAID
    ]
    return Entry(
        word,
        zipf / 100,
        band,
        reason or (NAME if is_name and not band else ""),
        tuple(parts.split(",")) if parts else (),
        bool(picturable),
        bool(is_name),
        bool(is_heteronym),
        base or word,
        tuple(endings.split(",")) if endings else (),
        tuple(Pronunciation(*row[_FIRST_OF_SAID:]) for row in variants),
    )
