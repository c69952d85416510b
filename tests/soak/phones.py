"""Sounds as tuples of CMUdict phones: places in a word, and what accents make of it.

Written anew, from the definitions in the documentation; shares no code with the engine.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

Phones = tuple[str, ...]

_VOWELS = ("AA", "AE", "AH", "AO", "AW", "AY", "EH", "ER", "EY", "IH", "IY", "OW", "OY", "UH", "UW")
_STOPS = ("B", "D", "G", "K", "P", "T", "CH", "JH")
_OTHERS = ("DH", "F", "HH", "S", "SH", "TH", "V", "Z", "ZH", "M", "N", "NG", "L", "R", "W", "Y")
VOWELS = frozenset({"@", *_VOWELS})
"""Vowels; @ is the weak one, which CMUdict writes in several ways."""
WEAK = frozenset({"AH", "IH", "UH"})
_CODES = "ɑæʌɔWIɛɝEɪiOYʊubdɡkptʧʤðfhsʃθvzʒmnŋlrwj"
ARPABET = dict(zip(_CODES, (*_VOWELS, *_STOPS, *_OTHERS), strict=True))
"""The one-character codes of an item's sounds -> phones: the only thing known of them here."""


@cache
def phones_of(sounds: str) -> Phones:
    """Return the phones of an item's codes, without stress."""
    return tuple(ARPABET[code] for code in sounds)


@cache
def stressed(sounds: str, stress: str) -> Phones:
    """Return codes and stress digits as CMUdict writes them."""
    digits = iter(stress)
    return tuple(phone + next(digits) if phone in VOWELS else phone for phone in phones_of(sounds))


@cache
def is_said_as(phones: Phones, part: Phones) -> bool:
    """Whether a part names these phones; a weak vowel may be named in full."""
    return len(phones) == len(part) and all(
        one == two or (one == "@" and two in WEAK) for one, two in zip(phones, part, strict=True)
    )


def vowels_of(phones: Phones) -> list[int]:
    """Return where the vowels are."""
    return [index for index, phone in enumerate(phones) if phone in VOWELS]


def _r_closes(phones: Phones, index: int) -> bool:
    """Whether an R at ``index`` belongs to the vowel before it."""
    return (
        0 < index < len(phones)
        and phones[index] == "R"
        and phones[index - 1] in VOWELS
        and (index + 1 == len(phones) or phones[index + 1] not in VOWELS)
    )


def place(phones: Phones, at: str, *, r_joins: bool) -> tuple[int, int] | None:
    """Return where a place begins and ends, or None where the word has none that may be parted.

    A vowel and the R that closes its syllable are never parted: they are one place, or none.
    """
    vowels = vowels_of(phones)
    if not vowels or len(phones) < 2:
        return None
    first, last = vowels[0], vowels[-1]
    if at in ("vowel", "onset", "rime") and first != last:
        return None
    start, end = {
        "first": (0, 1),
        "last": (len(phones) - 1, len(phones)),
        "vowel": (first, first + 1),
        "onset2": (1, 2),
        "coda1": (last + 1, last + 2),
        "onset": (0, first),
        "rime": (first, len(phones)),
    }[at]
    if at in ("first", "vowel") and _r_closes(phones, end):
        end += 1
    if at == "last" and _r_closes(phones, start):
        start -= 1
    parts_r = end - start > 1 and at in ("first", "vowel", "last")
    # A word may be no more than its vowel and R (or, air), if they are one sound.
    is_all = (start, end) == (0, len(phones)) and at != "vowel"
    outside = end > len(phones) or start == end or is_all
    return None if outside or (parts_r and not r_joins) else (start, end)


@cache
def cut(phones: Phones, at: str, *, r_joins: bool) -> tuple[Phones, Phones, Phones] | None:
    """Return left, middle and right of a place."""
    found = place(phones, at, r_joins=r_joins)
    return found and (phones[: found[0]], phones[found[0] : found[1]], phones[found[1] :])


def _write_alike(
    phones: Phones, old: str, new: str, before: str, *, unless: bool = False, inside: bool = False
) -> Phones:
    """Write some vowels as another where a phone follows (or does not)."""
    found = list(phones)
    for index, phone in enumerate(phones):
        follows = phones[index + 1] if index + 1 < len(phones) else ""
        vowel_next = index + 2 < len(phones) and phones[index + 2] in VOWELS
        fits = (follows in before.split()) is not unless
        if phone in old.split() and fits and (vowel_next or not inside):
            found[index] = new
    return tuple(found)


def _drop_behind(phones: Phones, gone: str, behind: str, before: str) -> Phones:
    return tuple(
        phone
        for index, phone in enumerate(phones)
        if not (
            phone == gone
            and phones[index + 1 : index + 2] == (before,)
            and (not behind or (index and phones[index - 1] in behind.split()))
        )
    )


def cot_caught(phones: Phones) -> Phones:
    """The vowels of cot and caught are one, but not before R."""
    return _write_alike(phones, "AO", "AA", "R", unless=True)


def pin_pen(phones: Phones) -> Phones:
    """Pin and pen sound the same."""
    return _write_alike(phones, "EH", "IH", "M N NG")


def _as_listed(phones: Phones) -> Phones:
    """CMUdict, or the weak vowel written as one, has the two as one already."""
    return phones


def _mary(phones: Phones) -> Phones:
    return _write_alike(phones, "AE EY", "EH", "R", inside=True)


def _horse(phones: Phones) -> Phones:
    return _write_alike(phones, "OW", "AO", "R")


def _wine(phones: Phones) -> Phones:
    return _drop_behind(phones, "HH", "", "W")


def _new(phones: Phones) -> Phones:
    return _drop_behind(phones, "Y", "T D N S Z L TH", "UW")


def _feel(phones: Phones) -> Phones:
    return _write_alike(phones, "IY", "IH", "L")


def _pool(phones: Phones) -> Phones:
    return _write_alike(phones, "UW", "UH", "L")


MERGERS: dict[str, Callable[[Phones], Phones]] = {
    "cot-caught": cot_caught,
    "father-bother": _as_listed,
    "pin-pen": pin_pen,
    "mary-marry-merry": _mary,
    "horse-hoarse": _horse,
    "wh-w": _wine,
    "j-dropping": _new,
    "fill-feel": _feel,
    "pull-pool": _pool,
    "weak-vowels": _as_listed,
}
"""Accents in which sounds fall together, as the atlas describes them (see docs)."""


@cache
def heard(phones: Phones, accents: str) -> tuple[Phones, ...]:
    """Return how each listener has a word, always in the same order of listeners.

    Args:
        phones: as CMUdict has it.
        accents: what a class is known to merge, as ``--accent`` takes it.
    """
    if accents == "dictionary":
        return (phones,)
    known = [name for name in accents.split(",") if name]
    base = phones
    for name, merge in MERGERS.items():
        base = merge(base) if name in known else base
    return (base, *(merge(base) for name, merge in MERGERS.items() if name not in known))


@cache
def for_gate(phones: Phones) -> Phones:
    """Return the form in which a sound is compared with what is never said."""
    return pin_pen(cot_caught(phones))
