"""The shape of a word in letters: CVC, CCVC, CVCe, ...

``C`` is a consonant spelling, of one letter or more (*ship* is CVC), ``V`` a
vowel of one letter, ``VV`` a vowel of several letters (*rain* is CVVC), ``R`` a
vowel with its r (*car* is CR), ``e`` the silent e of a split vowel (*cake* is
CVCe). A final -le is ``Cle``. Regular endings are left off: *gulls* is CVC.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping

from phonodrill.errors import PhonodrillError
from phonodrill.graphemes.chunk import CLOSING_CODE
from phonodrill.graphemes.correspondence import VOWEL_LETTERS, Correspondence, Kind
from phonodrill.lexicon.entry import Counted

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


def signs_of(inventory: Iterable[Counted]) -> dict[str, str]:
    """Return the sign of each correspondence, by its code; empty for an ending.

    A letter that is silent by itself has none.
    """
    signs = {row.code: _sign(row.correspondence) for row in inventory if row.correspondence.sound}
    return signs | {CLOSING_CODE: "e"}


def pattern_of(chunks: str, signs: Mapping[str, str]) -> str:
    """Return the pattern of a word; empty if a letter is silent or odd by itself.

    Args:
        chunks: as stored.
        signs: from :func:`signs_of`.
    """
    try:
        return "".join(signs[code] for code in chunks)
    except KeyError:
        return ""


def _sign(found: Correspondence) -> str:
    if found.kind is Kind.ENDING:
        return ""
    if found.kind is Kind.SPLIT_VOWEL:
        return "V"
    if found.spelling == _CONSONANT_LE and found.is_vowel:
        return _CONSONANT_LE
    if found.kind is Kind.R_VOWEL and "r" in found.spelling:
        return "R"
    if found.is_vowel and found.spelling[0] in VOWEL_LETTERS:
        return "V" if len(found.spelling) == 1 else "VV"
    return "C"
