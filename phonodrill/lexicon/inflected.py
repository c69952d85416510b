"""Inflected forms: how they are spelled, and whether they sound like base + ending.

Install time only: the results are stored in the lexicon.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from phonodrill.lexicon.sources import Inflection
from phonodrill.sounds.normal import normal_form
from phonodrill.sounds.suffixes import add_suffix, ed_suffix, s_suffix

Sounds = tuple[str, str]
Expected = dict[str, dict[str, frozenset[str]]]

_SUFFIX_OF = {
    "plural": "s",
    "third person": "s",
    "past": "ed",
    "past participle": "ed",
    "present participle": "ing",
}
_SAID: dict[str, Callable[[str], str]] = {"s": s_suffix, "ed": ed_suffix, "ing": lambda _: "ɪŋ"}


@dataclass(frozen=True, slots=True, order=True)
class Disagreement:
    """A form none of whose pronunciations is its base with the ending added."""

    word: str
    base: str
    expected: str
    found: str


def spelled_ending(form: str, base: str, inflection: str) -> str:
    """Name the ending a form is spelled with: s, es, ies, ves, ed, ing, or empty if irregular.

    The label is what the eye sees: *pies* is ``ies`` although only s was added.

    >>> spelled_ending("torches", "torch", "plural"), spelled_ending("pies", "pie", "plural")
    ('es', 'ies')
    >>> spelled_ending("fed", "feed", "past")
    ''
    """
    doubled = base + base[-1]
    endings = {
        "s": {
            base + "s": "ies" if form.endswith("ies") else "s",
            base + "es": "es",
            doubled + "es": "es",
            base[:-1] + "ies": "ies" if base.endswith("y") else "",
            base[:-1] + "ves": "ves" if base.endswith("f") else "",
            base[:-2] + "ves": "ves" if base.endswith("fe") else "",
        },
        "ed": {
            base + "ed": "ed",
            base + "d": "ed" if base.endswith("e") else "",
            doubled + "ed": "ed",
            base[:-1] + "ied": "ed" if base.endswith("y") else "",
            base + "ked": "ed" if base.endswith("c") else "",
        },
        "ing": {
            base + "ing": "ing",
            base[:-1] + "ing": "ing" if base.endswith("e") else "",
            doubled + "ing": "ing",
            base[:-2] + "ying": "ing" if base.endswith("ie") else "",
            base + "king": "ing" if base.endswith("c") else "",
        },
    }
    suffix = _SUFFIX_OF.get(inflection, "")
    return endings.get(suffix, {}).get(form, "")


def with_ending(base: Sounds, inflection: str) -> Sounds:
    """Add the sounds of a regular inflection to a base.

    >>> with_ending(("pɪnʧ", "1"), "plural")
    ('pɪnʧɪz', '10')
    """
    sounds, stress = base
    return add_suffix(sounds, stress, _SAID[_SUFFIX_OF[inflection]](sounds))


def keeps_base_sounds(ending: str) -> bool:
    """Whether forms with this spelled ending sound like base + ending (not knife, knives)."""
    return ending not in ("", "ves")


def expected_forms(
    inflections: Iterable[Inflection], sounds: Mapping[str, Sequence[Sounds]]
) -> Expected:
    """Say how each regularly spelled form should sound, from each of its bases.

    Args:
        inflections: forms with their bases.
        sounds: word -> its pronunciations as ``(sounds, stress)``.

    Returns:
        Form -> base -> normal forms of base + ending, one a pronunciation of the base.
    """
    expected: Expected = {}
    for row in inflections:
        ending = spelled_ending(row.form, row.base, row.inflection)
        if keeps_base_sounds(ending):
            expected.setdefault(row.form, {})[row.base] = frozenset(
                normal_form(*with_ending(base, row.inflection)) for base in sounds[row.base]
            )
    return expected


def find_disagreements(
    expected: Expected, found: Mapping[str, Sequence[str]], exceptions: frozenset[str]
) -> list[Disagreement]:
    """List the forms that sound like none of their bases with the ending.

    Args:
        expected: what :func:`expected_forms` returned.
        found: word -> normal forms of its pronunciations.
        exceptions: forms known to be irregular in sound.
    """
    listed = []
    for form, by_base in expected.items():
        heard = set(found[form])
        if form in exceptions or any(heard & wanted for wanted in by_base.values()):
            continue
        listed += [
            Disagreement(form, base, " ".join(sorted(wanted)), " ".join(sorted(heard)))
            for base, wanted in by_base.items()
        ]
    return sorted(listed)
