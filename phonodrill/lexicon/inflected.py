"""Inflected forms: how they are spelled, and whether they sound like base + ending.

Install time only: the results are stored in the lexicon.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from phonodrill.lexicon.entry import INFLECTIONS
from phonodrill.lexicon.sources import Inflection
from phonodrill.sounds.normal import normal_form
from phonodrill.sounds.suffixes import SUFFIXES, add_suffix

Sounds = tuple[str, str]
Expected = dict[str, dict[str, frozenset[str]]]


@dataclass(frozen=True, slots=True, order=True)
class Disagreement:
    """A form none of whose pronunciations is its base with the ending added."""

    word: str
    base: str
    expected: str
    found: str


def spelled_ending(form: str, base: str, inflection: str) -> str:
    """Name the ending a form is spelled with, or empty if it is irregular.

    The label is what the eye sees: s, es, ies, ves, ed, ing, er or est. *pies* is
    ``ies`` although only s was added.

    >>> spelled_ending("torches", "torch", "plural"), spelled_ending("pies", "pie", "plural")
    ('es', 'ies')
    >>> spelled_ending("waves", "wave", "plural"), spelled_ending("fed", "feed", "past")
    ('s', '')
    """
    suffix = INFLECTIONS.get(inflection, "")
    if suffix == "s":
        return _spelled_s(form, base)
    regular = suffix and form in _with_vowel_suffix(base, suffix)
    return suffix if regular else ""


def _spelled_s(form: str, base: str) -> str:
    if form == base + "s":
        return "ies" if form.endswith("ies") else "s"
    if form in (base + "es", base + base[-1] + "es"):
        return "es"
    if base.endswith("y") and form == base[:-1] + "ies":
        return "ies"
    voiced = base.removesuffix("e")
    return "ves" if voiced.endswith("f") and form == voiced[:-1] + "ves" else ""


def _with_vowel_suffix(base: str, suffix: str) -> set[str]:
    """Every regular spelling of a base with ed, ing, er or est."""
    forms = {base + suffix, base + base[-1] + suffix}
    if base.endswith("e"):
        forms.add(base[:-1] + suffix)
    if base.endswith("c"):
        forms.add(base + "k" + suffix)
    if base.endswith("ie") and suffix == "ing":
        forms.add(base[:-2] + "ying")
    if base.endswith("y") and suffix != "ing":
        forms.add(base[:-1] + "i" + suffix)
    return forms


def with_ending(base: Sounds, inflection: str) -> Sounds:
    """Add the sounds of a regular inflection to a base.

    >>> with_ending(("pɪnʧ", "1"), "plural")
    ('pɪnʧɪz', '10')
    """
    sounds, stress = base
    return add_suffix(sounds, stress, SUFFIXES[INFLECTIONS[inflection]](sounds))


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
