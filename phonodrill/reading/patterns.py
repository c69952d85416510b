"""The shape of a word in letters: CVC, CCVC, CVCe, ...

``C`` is a consonant spelling, of one letter or more (*ship* is CVC), ``V`` a
vowel of one letter, ``VV`` a vowel of several letters (*rain* is CVVC), ``R`` a
vowel with its r (*car* is CR), ``e`` the silent e of a split vowel (*cake* is
CVCe). A final -le is ``Cle``. Regular endings are left off: *gulls* is CVC.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from phonodrill.errors import PhonodrillError
from phonodrill.graphemes.chunk import Chunk
from phonodrill.graphemes.correspondence import Kind

_PATTERN = re.compile(r"(C|VV?|R|e|le)+")
_CONSONANT_LE = "le"


def check_pattern(text: str) -> str:
    """Return a pattern if it can be read.

    Raises:
        PhonodrillError: if it has other signs.
    """
    if not _PATTERN.fullmatch(text):
        raise PhonodrillError(
            f"cannot read the pattern {text!r}",
            "C consonant, V vowel, VV vowel of two letters, R vowel + r, e silent: CVC, CCVC, CVCe",
        )
    return text


def pattern_of(chunks: Sequence[Chunk]) -> str:
    """Return the pattern of a word; empty if a letter is silent or odd by itself.

    Args:
        chunks: letters tied to sounds.
    """
    signs: dict[int, str] = {}
    for chunk in chunks:
        found = chunk.correspondence
        if found is None or not found.sound:
            return ""
        if found.kind is Kind.ENDING:
            continue
        first = chunk.letters[0]
        if found.kind is Kind.SPLIT_VOWEL:
            signs[first], signs[chunk.letters[-1]] = "V", "e"
        elif found.spelling == _CONSONANT_LE and found.is_vowel:
            signs[first] = _CONSONANT_LE
        elif found.kind is Kind.R_VOWEL and "r" in found.spelling:
            signs[first] = "R"
        elif found.is_vowel and found.spelling != "qu":
            signs[first] = "V" if len(found.spelling) == 1 else "VV"
        else:
            signs[first] = "C"
    return "".join(signs[place] for place in sorted(signs))
