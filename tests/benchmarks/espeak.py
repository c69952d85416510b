"""Ask espeak-ng's US English voice how it says words, in our sounds (benchmark only).

It is the Debian package ``espeak-ng``. Its phoneme names (``-x``) are mapped so
that a different habit of writing is no error:

* its weak vowels (``@ a# I2 I# 0# @-``) are an unstressed AH, which the normal
  form folds with unstressed IH and UH, as it does for the dictionary's;
* ``@L`` and ``n-`` (syllabic consonants) are that vowel and the consonant;
* ``t#`` (flap), ``t2`` and ``?`` (glottal stop, only for a t) are T;
* ``A@ O@ o@ e@ i@3 U@`` are a vowel and R, ``aI3`` is AY and ER, and an R that
  is said again behind these or behind ER is left out;
* ``aa`` is AE, ``0`` and ``A:`` are AA, ``O:`` and ``O2`` are AO; ``x`` is K.
"""

from __future__ import annotations

import re
import shutil
import subprocess
from collections.abc import Sequence

from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.normal import normal_form

_TABLE = """
    b b   d d   f f   h h   j j   k k   l l   m m   n n   p p   r r   s s   t t   v v   w w   z z
    g ɡ   N ŋ   S ʃ   Z ʒ   T θ   D ð   tS ʧ   dZ ʤ   t# t   t2 t   ? t   x k   r- r   n- ʌn   @L ʌl
    @ ʌ   @- ʌ   @2 ʌ   @5 ʌ   a# ʌ   0# ʌ   I2 ɪ   I# ɪ
    a æ   aa æ   A: ɑ   A ɑ   0 ɑ   O: ɔ   O2 ɔ   O ɔ   E ɛ   E2 ɛ   I ɪ   i i   i: i   U ʊ
    u u   u: u   V ʌ   3 ɝ   3: ɝ   eI E   oU O   aI I   aU W   OI Y
    A@ ɑr   O@ ɔr   o@ ɔr   e@ ɛr   i@3 ɪr   U@ ʊr   i@ iʌ   aI@ Iʌ   aI3 Iɝ   aU@ Wʌ
"""
_SOUNDS = {"": "", ";": ""} | dict(re.findall(r"(\S+) (\S+)", _TABLE))
_STRESS = {"'": "1", ",": "2"}
_MARKS = "',%=;!|"


def is_there() -> bool:
    return shutil.which("espeak-ng") is not None


def say(words: Sequence[str]) -> dict[str, str]:
    """Return the normal form of espeak-ng's reading of each word."""
    done = subprocess.run(
        ["espeak-ng", "-q", "-x", "-v", "en-us", "--sep=_"],
        input="".join(f"{word}\n" for word in words),
        capture_output=True,
        check=True,
        encoding="utf-8",
    )
    lines = [line.strip() for line in done.stdout.splitlines() if line.strip()]
    assert len(lines) == len(words)
    return {word: _normal(line) for word, line in zip(words, lines, strict=True)}


def reads_by_rule(word: str) -> bool:
    """Whether espeak-ng finds neither the word nor its base in its own list of words."""
    done = subprocess.run(
        ["espeak-ng", "-q", "-X", "-v", "en-us", word],
        capture_output=True,
        check=True,
        encoding="utf-8",
    )
    return "Found:" not in done.stdout


def _normal(line: str) -> str:
    sounds = stress = ""
    for name in line.replace(" ", "_").split("_"):
        bare = name.lstrip(_MARKS)
        digit = next((_STRESS[sign] for sign in name if sign in _STRESS), "0")
        for char in _SOUNDS[bare]:
            if char == "r" and sounds.endswith(("r", "ɝ")):
                continue
            sounds += char
            if char in VOWELS:
                # Only the first vowel of a name bears its stress.
                stress += digit
                digit = "0"
    return normal_form(sounds, stress)
