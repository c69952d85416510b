"""Reasons as the tables write them, with sounds in IPA, in the notation of a lesson."""

from __future__ import annotations

import re
from functools import cache

from phonodrill.sounds.inventory import PHONEMES, VOWELS
from phonodrill.sounds.notation import Notation, symbols


def in_style(text: str, style: Notation) -> str:
    """Write the sounds that a reason names between slashes, in IPA, in another notation.

    >>> in_style("the /ɡ/ is heard before est: /ŋɡ/", Notation.MARKS)
    'the /g/ is heard before est: /ngg/'
    """
    if style is Notation.IPA or "/" not in text:
        return text
    codes_of_signs, sign_of = _signs()

    def rewrite(found: re.Match[str]) -> str:
        signs = sign_of.findall(found[1])
        if "".join(signs) != found[1]:
            return found[0]
        codes = "".join(codes_of_signs[sign] for sign in signs)
        stressed = ("0" if sign == "ɚ" else "1" for sign in signs if codes_of_signs[sign] in VOWELS)
        written = symbols(codes, "".join(stressed), style)
        return f"/{''.join(sign.rstrip('012') for sign in written)}/"

    return re.sub(r"/([^/\s]+)/", rewrite, text)


@cache
def _signs() -> tuple[dict[str, str], re.Pattern[str]]:
    """Return the codes of the signs of IPA, and what finds the longest sign first."""
    codes = {**{phoneme.ipa: phoneme.code for phoneme in PHONEMES}, "ɚ": "ɝ"}
    return codes, re.compile("|".join(sorted(codes, key=len, reverse=True)))
