"""Choices that several pages offer, in a teacher's words."""

from __future__ import annotations

from phonodrill.sounds.accents import DICTIONARY, FEATURES
from phonodrill.sounds.notation import Notation
from phonodrill.sounds.units import RVowels
from phonodrill.web.page import options_of

NOTATIONS = options_of(
    Notation, ipa="IPA: /ʃ/", marks="dictionary marks: /sh/", arpabet="ARPAbet: SH"
)
ACCENTS = [
    *((feature.name, f"{feature.name}: {feature.about}") for feature in FEATURES),
    (DICTIONARY, "only as the dictionary says it (alone)"),
]
R_VOWELS = options_of(RVowels, two="two sounds", one="one sound")
