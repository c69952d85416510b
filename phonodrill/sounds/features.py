"""How near two sounds are: articulatory features and a distance made from them.

The table is ours. Places and vowel heights: International Phonetic Association
(1999), *Handbook of the IPA*, "American English" (values from memory). Manner,
voice and sibilance are the inventory's. That a change of voice alone is the
easiest to miss: Treiman, Broderick, Tincoff & Rodriguez (1998), *JECP* 68, 3-21.
"""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.sounds.inventory import BY_ARPABET, BY_CODE, Kind, Phoneme

PLACES = (
    ("bilabial", "P B M W"),
    ("labiodental", "F V"),
    ("dental", "TH DH"),
    ("alveolar", "T D S Z N L"),
    ("postalveolar", "CH JH SH ZH R"),
    ("palatal", "Y"),
    ("velar", "K G NG"),
    ("glottal", "HH"),
)
"""Places from the lips back, and the consonants made there (CMUdict symbols)."""


class VowelShape(NamedTuple):
    """Where a vowel is made.

    Attributes:
        height: 0 close (i) to 6 open (ɑ).
        backness: 0 front, 1 central, 2 back.
        rounded: whether the lips are rounded.
        glides_to: the vowel it moves towards (I or U), or empty.
        rhotic: whether it is colored by R.
    """

    height: int
    backness: int
    rounded: bool = False
    glides_to: str = ""
    rhotic: bool = False


VOWEL_SHAPES = {
    "IY": VowelShape(0, 0),
    "IH": VowelShape(1, 0),
    "EY": VowelShape(2, 0, glides_to="I"),
    "EH": VowelShape(4, 0),
    "AE": VowelShape(5, 0),
    "AA": VowelShape(6, 2),
    "AO": VowelShape(4, 2, rounded=True),
    "OW": VowelShape(2, 2, rounded=True, glides_to="U"),
    "UH": VowelShape(1, 2, rounded=True),
    "UW": VowelShape(0, 2, rounded=True),
    "AH": VowelShape(4, 1),
    "ER": VowelShape(3, 1, rhotic=True),
    "AY": VowelShape(6, 1, glides_to="I"),
    "AW": VowelShape(6, 1, glides_to="U"),
    "OY": VowelShape(4, 2, rounded=True, glides_to="I"),
}

_PLACE = {
    BY_ARPABET[symbol].code: index
    for index, (_, symbols) in enumerate(PLACES)
    for symbol in symbols.split()
}
_SHAPE = {BY_ARPABET[symbol].code: shape for symbol, shape in VOWEL_SHAPES.items()}
_FARTHEST_PLACE = 3
"""Steps of place beyond which farther is no plainer."""
_SONORANT = (Kind.NASAL, Kind.LIQUID, Kind.GLIDE)
_STOPPED = (Kind.STOP, Kind.AFFRICATE, Kind.NASAL)


def features_apart(first: str, second: str) -> int:
    """Count the features in which two sounds differ.

    Consonants have three: voice, place, manner; vowels four: height, backness
    (with rounding), glide, R. A vowel and a consonant share none.

    Args:
        first: code of one phoneme.
        second: code of the other.

    Returns:
        0 for the same sound, 1 for a near pair such as /p/ and /b/.

    >>> features_apart("p", "b"), features_apart("p", "m"), features_apart("p", "l")
    (1, 2, 3)
    """
    a, b = BY_CODE[first], BY_CODE[second]
    if a.is_vowel != b.is_vowel:
        return 4
    if a.is_vowel:
        one, two = _SHAPE[first], _SHAPE[second]
        near = abs(one.height - two.height) > 0
        back = (one.backness, one.rounded) != (two.backness, two.rounded)
        return near + back + (one.glides_to != two.glides_to) + (one.rhotic != two.rhotic)
    return (a.voiced != b.voiced) + (_PLACE[first] != _PLACE[second]) + (_manner(a) != _manner(b))


def distance(first: str, second: str) -> float:
    """Return how far two sounds are apart, 0 (the same) to 1 (a vowel and a consonant).

    >>> distance("p", "b") < distance("p", "m") < distance("p", "l") < distance("p", "i") == 1
    True
    """
    a, b = BY_CODE[first], BY_CODE[second]
    if a.is_vowel != b.is_vowel:
        return 1.0
    if a.is_vowel:
        one, two = _SHAPE[first], _SHAPE[second]
        steps = abs(one.height - two.height) / 6 + abs(one.backness - two.backness) / 2
        others = (one.rounded != two.rounded) + (one.glides_to != two.glides_to)
        return min(0.95, (steps + 0.5 * others + (one.rhotic != two.rhotic)) / 4)
    place = min(abs(_PLACE[first] - _PLACE[second]), _FARTHEST_PLACE) / _FARTHEST_PLACE
    manner = (
        ((a.kind in _SONORANT) != (b.kind in _SONORANT))
        + ((a.kind in _STOPPED) != (b.kind in _STOPPED))
        + (a.sibilant != b.sibilant)
        + (a.kind is not b.kind) / 2
    )
    return min(0.95, (0.75 * (a.voiced != b.voiced) + place + manner) / 5)


def _manner(phoneme: Phoneme) -> tuple[Kind, bool, str]:
    # R and L are both liquids, yet nobody takes one for the other by manner.
    liquid = phoneme.code if phoneme.kind is Kind.LIQUID else ""
    return phoneme.kind, phoneme.sibilant, liquid
