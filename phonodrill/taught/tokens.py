"""One correspondence as a person writes it: ``sh``, ``c=s``, ``a_e``, ``-es``, ``x=k+s``.

Without a sound, the most usual one in words of bands 1-3 is meant, except that
``y`` alone is the consonant. Some readings come together, for no class is
taught them apart:

* a vowel in an unstressed syllable (the weak vowel), once its spelling is taught;
* the /j/ that some accents put before a long u (``u_e`` in *rule* and *cube*);
* the vowels of *cot* and *caught*, which CMUdict mixes and many speakers merge;
* ``dg`` with ``dge``: the e goes before -ing;
* the a of *carrot* with the short a: before rr many say another vowel;
* apostrophe and hyphen.

``nk``, ``tion`` and ``sion`` stand for their parts.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from phonodrill.errors import PhonodrillError
from phonodrill.graphemes.correspondence import Correspondence, Kind, write_sounds
from phonodrill.lexicon.entry import Counted
from phonodrill.sounds.normal import WEAK
from phonodrill.sounds.notation import SCRIPT, parse_sound

SILENT = "silent"
_USUAL_SOUND = {"y": "j"}
_STANDS_FOR = {"nk": ("n=ng", "k"), "tion": ("ti=sh",), "sion": ("si=sh", "si=zh")}
_TOKEN = re.compile(r"(-?)([a-zA-Z]+(?:_[eE])?)(?:=(\S+))?")
_COT_CAUGHT = str.maketrans("ɔ", "ɑ")
_SHORT = frozenset("æɛɪɑʌ")
_ALWAYS_OPEN = frozenset("'-")
SPELLED_ENDINGS = ("s", "es", "ies", "ves", "ed", "ing", "er", "est")
"""Endings whose words must wait until the ending itself is taught."""


def read_token(text: str, inventory: Sequence[Counted]) -> tuple[Counted, ...]:
    """Find the correspondences that a person names.

    Args:
        text: one token, for example ``c=k`` or ``-es``.
        inventory: ``Lexicon.correspondences()``, the commonest first.

    Returns:
        Mostly one; for an ending without a sound, each of its sounds; for an
        ending that is spelled as it is read (-ing), none.

    Raises:
        PhonodrillError: if there is no such spelling, or it has not that sound.
    """
    if text.lower() in _STANDS_FOR:
        return tuple(r for part in _STANDS_FOR[text.lower()] for r in read_token(part, inventory))
    match = _TOKEN.fullmatch(text)
    if match is None:
        raise PhonodrillError(f"cannot read {text!r}", "s, sh, c=k, a_e, -es or word: said")
    is_ending, letters, sound = match.groups()
    spelling = letters.lower()
    rows = [
        row
        for row in inventory
        if row.correspondence.spelling == spelling
        and (row.correspondence.kind is Kind.ENDING) == bool(is_ending)
        and not row.correspondence.is_before_rr
    ]
    if is_ending and not rows and spelling in SPELLED_ENDINGS:
        return ()
    if not rows:
        raise _unknown_spelling(is_ending + spelling, inventory)
    if sound is None:
        is_taught = (row for row in rows if row.correspondence.is_regular)
        return tuple(is_taught) if is_ending else (usual(spelling, rows),)
    codes = _parse_sounds(sound)
    found = tuple(row for row in rows if codes in row.correspondence.sounds)
    if not found:
        known = ", ".join(f"{is_ending}{spelling}={_written(r.correspondence)}" for r in rows)
        raise PhonodrillError(f"{text!r}: {spelling} does not say that", f"one of: {known}")
    return found


def usual(spelling: str, rows: Iterable[Counted]) -> Counted:
    """Return the correspondence that a spelling means when no sound is written.

    Args:
        spelling: the letters.
        rows: its correspondences, the commonest first.
    """
    listed = list(rows)
    wanted = _USUAL_SOUND.get(spelling)
    if wanted:
        return next(row for row in listed if row.correspondence.sound == wanted)
    full = [r for r in listed if r.correspondence.is_regular and not r.correspondence.is_weak]
    return (full or listed)[0]


def write_token(row: Counted, inventory: Sequence[Counted]) -> str:
    """Write a correspondence so that :func:`read_token` finds it again, as short as can be."""
    found = row.correspondence
    if found.kind is Kind.ENDING:
        return f"-{found.spelling}"
    if found.is_before_rr:
        return found.spelling
    rows = [
        other
        for other in inventory
        if other.correspondence.spelling == found.spelling
        and other.correspondence.kind is not Kind.ENDING
    ]
    is_usual = usual(found.spelling, rows) == row
    return found.spelling if is_usual else f"{found.spelling}={_written(found)}"


def write_whole_token(row: Counted) -> str:
    """Write a correspondence with its sound, so that it can stand alone (``er=ər``)."""
    found = row.correspondence
    return f"{'-' * (found.kind is Kind.ENDING)}{found.spelling}={_written(found)}"


def companions(row: Counted, inventory: Iterable[Counted]) -> frozenset[str]:
    """Return the codes that are open once a correspondence is taught, its own among them."""
    return frozenset(
        other.code for other in inventory if _comes_with(other.correspondence, row.correspondence)
    )


def always_open(inventory: Iterable[Counted]) -> frozenset[str]:
    """Return the codes of apostrophe and hyphen."""
    return frozenset(row.code for row in inventory if row.correspondence.spelling in _ALWAYS_OPEN)


def ending_codes(inventory: Iterable[Counted]) -> frozenset[str]:
    """Return the codes of the endings that are one chunk."""
    return frozenset(row.code for row in inventory if row.correspondence.kind is Kind.ENDING)


def _comes_with(other: Correspondence, taught: Correspondence) -> bool:
    if other.spelling != taught.spelling:
        return f"{other.spelling}e" == taught.spelling == "dge" and other.sound == taught.sound
    if Kind.ENDING in (other.kind, taught.kind):
        return other == taught
    return (
        (other.is_weak and taught.is_vowel)
        or (other.is_before_rr and taught.sound in _SHORT)
        or _plain(other.sound) == _plain(taught.sound)
        or other.sound == WEAK + taught.sound
    )


def _plain(sound: str) -> str:
    """The sound without a glide before a long u, cot and caught made one."""
    merged = sound if "r" in sound else sound.translate(_COT_CAUGHT)
    return merged.removeprefix("j") if merged[1:] else merged


def _written(correspondence: Correspondence) -> str:
    return write_sounds(correspondence.sound, SCRIPT).replace(" ", "+") or SILENT


def _parse_sounds(text: str) -> str:
    if text == SILENT:
        return ""
    return "".join(WEAK if part == WEAK else parse_sound(part) for part in text.split("+"))


def _unknown_spelling(spelling: str, inventory: Iterable[Counted]) -> PhonodrillError:
    known = {
        "-" * (row.correspondence.kind is Kind.ENDING) + row.correspondence.spelling
        for row in inventory
    }
    import difflib

    near = difflib.get_close_matches(spelling, sorted(known), n=3, cutoff=0.5)
    hint = f"did you mean {', '.join(near)}?" if near else "s, sh, c=k, a_e, -es or word: said"
    return PhonodrillError(f"no correspondence is spelled {spelling!r}", hint)
