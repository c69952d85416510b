"""Words a class can read."""

from __future__ import annotations

import random
from typing import TYPE_CHECKING, NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.reading.decodable import Wanted, find_words
from phonodrill.reading.patterns import check_pattern, pattern_of, signs_of
from phonodrill.render.views import decodable as view
from phonodrill.services.made import Made
from phonodrill.taught.tokens import read_token

if TYPE_CHECKING:
    from phonodrill.taught.known import Known


class Wish(NamedTuple):
    """Which words are wanted.

    Attributes:
        band: highest familiarity band.
        size: how many.
        seed: makes the same choice again.
        known: what the class was taught; None for any word.
        pattern: shapes parted by commas, one of which a word has; empty for any.
        spelling: correspondences parted by spaces or commas, one of which a word has.
        endings: whether words with -s, -es, -ed, -ing are used, too.
    """

    band: int
    size: int
    seed: int
    known: Known | None = None
    pattern: str = ""
    spelling: str = ""
    endings: bool = False


def decodable(lexicon: Lexicon, wish: Wish, overlay: Overlay = NO_OVERLAY) -> Made:
    """Choose words whose every letter-sound correspondence has been taught.

    Args:
        lexicon: the open lexicon.
        wish: what is wanted.
        overlay: a teacher's own words.

    Raises:
        PhonodrillError: if a pattern or spelling cannot be read, or no word fits.
    """
    parts = (part.strip() for part in wish.pattern.split(","))
    inventory = lexicon.correspondences()
    wanted = Wanted(
        wish.known,
        frozenset(check_pattern(part) for part in parts if part),
        frozenset(
            row.code
            for token in wish.spelling.replace(",", " ").split()
            for row in read_token(token, inventory)
        ),
        wish.endings,
    )
    gate = open_gate(lexicon, overlay.words("block"))
    found = find_words(lexicon, gate, wanted, highest_band=wish.band)
    if not found:
        raise PhonodrillError(
            f"no word of bands 1-{wish.band} fits", "more steps, another --pattern, or --band 3"
        )
    signs = signs_of(inventory)
    chosen = [
        view.Shown(word, lexicon.chunks(word.chunks), pattern_of(word.chunks, signs))
        for word in random.Random(wish.seed).sample(found, min(wish.size, len(found)))
    ]
    return Made(view.document(chosen, len(found), wish.seed))
