"""What a teaching order must mind, as one table and as the two functions that apply it.

``before`` says which steps must come first, ``apart`` how far two steps must be
from each other. docs/taught.md shows the table.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import combinations
from typing import NamedTuple

from phonodrill.graphemes.correspondence import Kind
from phonodrill.sounds.inventory import BY_CODE, VOWELS
from phonodrill.taught.units import Unit

HELD_FIRST = 4
"""So many steps come first whose sounds can be held."""
COMMON = 100
"""A letter is common if so many words need it."""
NEIGHBORS = 2
"""Distance of two steps that are not next to each other."""
SHORT_VOWELS = 3
NEAR_VOWELS = 4
LOOK_AND_SOUND = 5
OTHER_SOUND = 10
ENDINGS_APART = 6
FEWEST_OPENED = 40
"""An ending comes when it opens so many words at once, or half of all it can open."""
COMMON_PRACTICE = "common practice, no source"


class Constraint(NamedTuple):
    """One line of the table.

    Attributes:
        rule: what must hold.
        reason: why.
        source: who says so.
    """

    rule: str
    reason: str
    source: str = COMMON_PRACTICE


CONSTRAINTS = (
    Constraint("one new thing a step", "a mistake then has one cause"),
    Constraint(
        f"the first {HELD_FIRST} steps are letters whose sounds can be held",
        "held sounds run into each other, so the first words can be drawn out",
    ),
    Constraint(
        f"the five short vowels, and letters that {COMMON} words or more need, before every "
        "other vowel spelling",
        "short words with common letters are read before one vowel takes several letters",
        "Common Core RF.K.3 and RF.1.3: letters and short vowels come a grade before final e "
        "and vowel teams",
    ),
    Constraint(
        f"short vowels {SHORT_VOWELS} steps apart or more",
        "each is sure before the next must be told from it",
    ),
    Constraint(
        "a spelling of several letters after each of its letters (a digraph, a split vowel, an "
        "r-vowel, a doubled letter, an ending)",
        "the letters are known before they say something else together",
    ),
    Constraint(
        "a longer spelling after the shorter one in it that says the same (ch, tch)",
        "the shorter one is the usual one",
    ),
    Constraint(
        f"a further sound of a spelling after its usual one, {OTHER_SOUND} steps apart or more",
        "the first must be sure before it is no longer always right",
    ),
    Constraint(
        f"sounds that differ only in voice, or in a near place, {NEIGHBORS} steps apart or more; "
        f"near vowels {NEAR_VOWELS}",
        "children take them for each other",
        "voice: Treiman, Broderick, Tincoff & Rodriguez (1998); place: Miller & Nicely (1955), "
        "value from memory; near vowels: neighbors on the vowel chart, no source",
    ),
    Constraint(
        f"letters of like shape {NEIGHBORS} steps apart or more, {LOOK_AND_SOUND} if they sound "
        "alike too",
        "mirrored and turned letters are taken for each other",
    ),
    Constraint(
        f"two spellings of one sound {NEIGHBORS} steps apart or more, doubled letters aside",
        "else the class must choose between two before it knows one",
    ),
    Constraint(
        f"an ending when it opens {FEWEST_OPENED} words or half of its words; endings "
        f"{ENDINGS_APART} steps apart; -s, then -es, then -ies; -ing after ng",
        "an ending is learned on base words that can be read",
    ),
)

LOOK_ALIKE = ("bdpqg", "mnhur", "vwy", "ijlt", "ft", "ceo", "ao", "sz", "kx")
"""Letters of like shape in a plain hand or print: mirrored, turned, or a stroke apart."""
VOICE_PAIRS = "pb td kɡ fv θð sz ʃʒ ʧʤ"
NEAR_PLACE = "pt tk bd dɡ mn nŋ fθ sθ vð zð sʃ zʒ ʃʧ ʒʤ lr wr wv"
NEAR_VOWEL = "iɪ ɪɛ ɛæ æʌ æɑ ʌɑ ɑɔ ɔO ʌʊ ʊu Eɛ EI OW ɔY"
_NEAR = {frozenset(pair): NEIGHBORS for pair in NEAR_PLACE.split()} | {
    frozenset(pair): NEAR_VOWELS for pair in NEAR_VOWEL.split()
}
_VOICE_PAIRS = {frozenset(pair): NEIGHBORS for pair in VOICE_PAIRS.split()}
CONFUSED = _NEAR | _VOICE_PAIRS
_LEADS_TO_ENDING = {"-es": ("s",), "-ies": ("es", "y"), "-ing": ("ng",)}
_SOUND_BEFORE_ENDING = frozenset("iŋ")
_SHORT = frozenset("æɛɪɑʌ")


def is_short_vowel(unit: Unit) -> bool:
    """Whether it is a vowel letter with its short sound."""
    return unit.is_first and len(unit.spelling) == 1 and unit.sound in _SHORT


def before(unit: Unit, units: Iterable[Unit]) -> list[int]:
    """Return the indexes of the units that must come before this one."""
    return [index for index, other in enumerate(units) if other != unit and _leads(other, unit)]


def waits(unit: Unit) -> int:
    """Return how many steps must come before this one, whichever they are."""
    is_held = len(unit.spelling) == 1 and unit.sound in BY_CODE and BY_CODE[unit.sound].holdable
    return 0 if is_held else HELD_FIRST


def apart(one: Unit, other: Unit) -> int:
    """Return how many steps must lie from one unit to the other at least; 0 if any number."""
    if one.kind is other.kind is Kind.ENDING:
        return ENDINGS_APART
    if not one.sound or not other.sound:
        return 0
    if one.spelling == other.spelling:
        return OTHER_SOUND
    if one.sound == other.sound:
        return NEIGHBORS
    by_sound = confusion(one.sound, other.sound)
    if is_short_vowel(one) and is_short_vowel(other):
        by_sound = max(by_sound, SHORT_VOWELS)
    by_shape = NEIGHBORS if _look_alike(one, other) else 0
    return LOOK_AND_SOUND if by_sound and by_shape else max(by_sound, by_shape)


def confusion(one: str, other: str) -> int:
    """Return the distance that two sounds ask for: 0 unless exactly one phoneme is a near one.

    Args:
        one: codes of the sounds of a spelling.
        other: those of another.

    >>> confusion("b", "p"), confusion("b", "s"), confusion("ɑr", "ɔr")
    (2, 0, 4)
    """
    if len(one) != len(other):
        return 0
    differing = [frozenset(pair) for pair in zip(one, other, strict=True) if pair[0] != pair[1]]
    return CONFUSED.get(differing[0], 0) if len(differing) == 1 else 0


def pairs_apart(units: Sequence[Unit]) -> list[tuple[int, int, int]]:
    """Return ``(index, index, distance)`` of all units that must be apart."""
    return [
        (first, second, distance)
        for (first, one), (second, other) in combinations(enumerate(units), 2)
        if (distance := apart(one, other))
    ]


def _leads(lead: Unit, unit: Unit) -> bool:
    if unit.kind is Kind.ENDING and (lead.spelling in _LEADS_TO_ENDING.get(unit.token, ())):
        return lead.kind is Kind.ENDING or lead.sound in _SOUND_BEFORE_ENDING
    if not lead.sound:
        return False
    is_letter = len(lead.spelling) == 1 and lead.is_first
    return (
        (is_letter and len(unit.spelling) > 1 and lead.spelling in unit.letters)
        or (_is_common_letter(lead) and _is_other_vowel(unit))
        or (lead.spelling == unit.spelling and lead.is_first)
        or _is_inside(lead, unit)
    )


def _is_common_letter(unit: Unit) -> bool:
    is_letter = len(unit.spelling) == 1 and unit.is_first
    return is_letter and (is_short_vowel(unit) or unit.words >= COMMON)


def _is_other_vowel(unit: Unit) -> bool:
    return not is_short_vowel(unit) and any(char in VOWELS for char in unit.sound)


def _is_inside(short: Unit, long: Unit) -> bool:
    return (
        1 < len(short.spelling) < len(long.spelling)
        and short.spelling in long.spelling
        and short.sound == long.sound
    )


def _look_alike(one: Unit, other: Unit) -> bool:
    """Whether two new letters, each met for the first time, have like shapes."""
    if not (one.is_first and other.is_first and len(one.spelling) == len(other.spelling) == 1):
        return False
    return any(one.spelling in group and other.spelling in group for group in LOOK_ALIKE)
