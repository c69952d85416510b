"""Pairs of words for contrast."""

from __future__ import annotations

import random
from collections.abc import Iterable
from typing import TYPE_CHECKING, NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.lexicon.entry import Spelled
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.reading.decodable import Wanted, find_words
from phonodrill.reading.pairs import (
    Kind,
    Pair,
    Place,
    choose_pairs,
    deletion_pairs,
    minimal_pairs,
    said_with_either_vowel,
    spelling_pairs,
)
from phonodrill.render.views import pairs as view
from phonodrill.services.made import Made
from phonodrill.sounds.notation import Notation, parse_sound

if TYPE_CHECKING:
    from phonodrill.taught.known import Known

TWO = 2


class Wish(NamedTuple):
    """Which pairs are wanted.

    Attributes:
        band: highest familiarity band.
        size: how many.
        seed: makes the same choice again.
        kind: what the two words have to do with each other.
        sounds: of a minimal pair, parted by a colon; empty for any.
        at: where the sound is.
        known: what the class was taught; None for any word.
        endings: whether words with -s, -es, -ed, -ing are used, too.
    """

    band: int
    size: int
    seed: int
    kind: Kind = Kind.MINIMAL
    sounds: str = ""
    at: Place = Place.ANY
    known: Known | None = None
    endings: bool = False


def pairs(
    lexicon: Lexicon,
    wish: Wish,
    overlay: Overlay = NO_OVERLAY,
    notation: Notation | None = None,
) -> Made:
    """Choose pairs of words.

    Args:
        lexicon: the open lexicon.
        wish: what is wanted.
        overlay: a teacher's own words.
        notation: how sounds are written.

    Raises:
        PhonodrillError: if options do not go together or no pair fits.
    """
    sounds = _two_sounds(wish.sounds, wish.kind)
    gate = open_gate(lexicon, overlay.words("block"))
    wanted = Wanted(wish.known, endings=wish.endings)
    words = find_words(lexicon, gate, wanted, highest_band=wish.band)
    either_vowel = said_with_either_vowel(lexicon.correspondences())
    found = _find(wish.kind, wish.at, sounds, words, either_vowel)
    chosen = choose_pairs(found, wish.size, random.Random(wish.seed))
    if not chosen:
        raise PhonodrillError(
            "no pair of words fits", "other --sounds, --at any, --band 3 or more steps taught"
        )
    notes: tuple[str, ...] = ()
    if len(chosen) < wish.size:
        notes = (f"{len(chosen)} of {wish.size} pairs; for more: --at any, --band 3, --endings",)
    chunks = {
        word.word: lexicon.chunks(word.chunks) for pair in chosen for word in (pair.a, pair.b)
    }
    return Made(view.document(wish.kind, chosen, chunks, wish.seed, notation), notes)


def _find(
    kind: Kind,
    at: Place,
    sounds: tuple[str, ...],
    words: list[Spelled],
    either_vowel: frozenset[str],
) -> Iterable[Pair]:
    if kind is Kind.MINIMAL:
        return minimal_pairs(words, either_vowel, at, sounds)
    if kind is Kind.DELETION:
        if at is Place.VOWEL:
            raise PhonodrillError("a vowel is not left off", "--at first or --at last")
        return deletion_pairs(words, either_vowel, at)
    if at is not Place.ANY:
        raise PhonodrillError("spelling pairs differ in no sound", "leave out --at")
    return spelling_pairs(words)


def _two_sounds(text: str, kind: Kind) -> tuple[str, ...]:
    if not text:
        return ()
    if kind is not Kind.MINIMAL:
        raise PhonodrillError("--sounds is for minimal pairs", "--kind minimal")
    parts = text.split(":")
    if len(parts) != TWO or not all(parts):
        raise PhonodrillError(f"--sounds is {text!r}", "two sounds parted by a colon: i:e, sh:ch")
    codes = tuple(map(parse_sound, parts))
    if codes[0] == codes[1]:
        raise PhonodrillError(f"--sounds {text} names one sound twice", "two sounds: i:e, sh:ch")
    return codes
