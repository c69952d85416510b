"""The low back vowels by spelling: what the dictionary writes at random.

CMUdict has AA or AO for *awful*, *log* and *water* as it comes, so its letters
do not tell whose vowel is whose. The spelling does, nearly always: the lexical
sets of Wells (1982), *Accents of English* (from memory):

* ``ɑ``: o (hot, top), and a after w or qu (wand, squash);
* ``ɒ``: o before f, s, th, ng, g (off, cross, cloth, long, dog), some speakers
  with the vowel of *hot*, some with that of *caught*;
* ``ɔ``: au, aw, al, ough (haul, saw, ball, bought);
* ``a``: any other a (father, calm, spa).

A vowel whose letters cannot be found is ``?``, which is like no other.
"""

from __future__ import annotations

import re

from phonodrill.sounds.places import UNKNOWN

LOW_BACK = "ɑɔ"
_VOWELS = frozenset("ɑæʌɔWIɛɝEɪiOYʊuə")
_GROUP = (
    "(?P<thought>augh|ough|au|aw|a(?=l[lktdsrw]|lmost))"
    "|(?P<wa>(?<=w)a(?![iyw])|(?<=wh)a)"
    "|(?P<cloth>o(?=ff|ft|ss|st|ths?$|ng|gg?s?$))"
    "|(?P<lot>o(?![aeiouwy])|(?<=kn)ow(?=l))"
    "|(?P<palm>aa|ah|ea(?=r)|a(?![eiouwy]))"
    "|(?P<other>[aeiouy]+w?)"
)
_SETS = {"thought": "ɔ", "wa": "ɑ", "cloth": "ɒ", "lot": "ɑ", "palm": "a"}


def split_low_back(spelling: str, normal: str, *, father_apart: bool) -> str:
    """Write each low back vowel as the set its spelling puts it in; not before R.

    Args:
        spelling: lower case.
        normal: the normal form.
        father_apart: whether the vowel of *father* has a set of its own.

    >>> split_low_back("awful", "ɑfəl", father_apart=True)
    'ɔfəl'
    >>> split_low_back("waffle", "wɑfəl", father_apart=True)
    'wɑfəl'
    """
    if "ɑ" not in normal and "ɔ" not in normal:
        return normal
    sets = _sets_by_vowel(spelling, sum(code in _VOWELS for code in normal))
    found = []
    place = 0
    for index, code in enumerate(normal):
        written = code
        if code in LOW_BACK and not normal.startswith("r", index + 1):
            known = sets[place] if sets else UNKNOWN
            written = "ɑ" if known == "a" and not father_apart else known
        found.append(written)
        place += code in _VOWELS
    return "".join(found)


def is_misfiled(spelling: str, normal: str) -> bool:
    """Whether the dictionary has the other of the two vowels than the spelling says.

    >>> is_misfiled("fallen", "fɑlən"), is_misfiled("hop", "hɑp"), is_misfiled("treetop", "tritɔp")
    (True, False, True)
    """
    split = split_low_back(spelling, normal, father_apart=False)
    return any(
        two == UNKNOWN or {one, two} == {*LOW_BACK} for one, two in zip(normal, split, strict=True)
    )


def _sets_by_vowel(spelling: str, vowels: int) -> list[str]:
    """Name the set of each vowel in turn, or nothing if letters and vowels do not pair off."""
    groups = [
        _SETS.get(match.lastgroup or "", UNKNOWN)
        for match in re.finditer(_GROUP, _spoken(spelling))
    ]
    return groups if len(groups) == vowels else []


def _spoken(spelling: str) -> str:
    """Leave off the e and the u that are not said."""
    without = re.sub("qu(?=a)", "qw", spelling.removeprefix("y"))
    without = re.sub("qu(?=[eiouy])", "q", without)
    without = re.sub("(?<=[^aeiouytd])ed$", "d", without)
    if re.search("[^aeiouy]le$", without):
        return without
    return re.sub("(?<=[aeiouy][^aeiouyw])e(?=s?$)|(?<=[^aeiouyw]{2})e(?=s?$)", "", without)
