"""The endings: what is known of each beside its spelling rules and its sound.

One row an ending. How it is spelled is in ``rules.py``, what it says after which sound
in ``sounds/suffixes.py``; both are looked up by the name here.
"""

from __future__ import annotations

from typing import NamedTuple

POSSESSIVE = "'s"
PLURAL_NOUN = "plural noun"
"""A reading of the possessive; dictionaries have no part of speech of that name."""


class Suffix(NamedTuple):
    """An ending.

    Attributes:
        name: s, ed, ing, er, est, ly, y or 's.
        spelled: what the eye sees of it, in the order in which a sort shows it.
        says: labels of what the ear may hear, in the order in which a sort shows them.
        means: (reading of the base, what the form means) in classroom words, the commonest
            reading first.
        in_short: what it means, for a list of endings to choose from.
        is_inflection: whether dictionaries list its forms with their base.
        makes_words: whether words made with it are listed in ``derived_words.tsv``.
    """

    name: str
    spelled: tuple[str, ...]
    says: tuple[str, ...]
    means: tuple[tuple[str, str], ...]
    in_short: str
    is_inflection: bool = True
    makes_words: bool = False


TABLE = (
    Suffix(
        "s",
        ("s", "es", "ies", "ves"),
        ("s", "z", "ɪz", "iz", "aɪz"),
        (("noun", "more than one"), ("verb", "he, she or it does it")),
        "more than one; he, she or it does it",
    ),
    Suffix("ed", ("ed",), ("t", "d", "ɪd"), (("verb", "it is over"),), "it is over"),
    Suffix("ing", ("ing",), ("ɪŋ",), (("verb", "it goes on"),), "it goes on"),
    Suffix(
        "er",
        ("er",),
        ("ɚ",),
        (("adjective", "more so"), ("adverb", "more so"), ("verb", "who or what does it")),
        "more so; who does it",
        makes_words=True,
    ),
    Suffix("est", ("est",), ("ɪst",), (("adjective", "most so"), ("adverb", "most so")), "most so"),
    Suffix(
        "ly",
        ("ly",),
        ("li",),
        (("adjective", "in that way"), ("noun", "like it, or once in each")),
        "in that way",
        is_inflection=False,
        makes_words=True,
    ),
    Suffix(
        "y",
        ("y",),
        ("i",),
        (("noun", "like it, or full of it"), ("verb", "given to doing it")),
        "like it, full of it",
        is_inflection=False,
        makes_words=True,
    ),
    Suffix(
        POSSESSIVE,
        (POSSESSIVE,),
        ("s", "z", "ɪz"),
        (("noun", "it belongs to one"), (PLURAL_NOUN, "it belongs to more than one")),
        "it belongs to it",
        is_inflection=False,
    ),
)

SPELLED = {row.name: row.spelled for row in TABLE}
SPELLINGS = tuple(spelled for row in TABLE for spelled in row.spelled)
"""What the eye sees of the endings, in the order in which a sort shows them."""
SUFFIX_OF = {spelled: row.name for row in TABLE for spelled in row.spelled}
SOUNDS_OF = {row.name: row.says for row in TABLE}
"""Ending -> the labels of what it says."""
PARTS_OF = {
    row.name: tuple(reading for reading, _ in row.means if reading != PLURAL_NOUN) for row in TABLE
}
"""Ending -> the parts of speech that take it, the commonest first."""
READINGS = {(row.name, reading): meant for row in TABLE for reading, meant in row.means}
"""(ending, reading of the base) -> what the form means, in classroom words."""
INFLECTED = frozenset(spelled for row in TABLE if row.is_inflection for spelled in row.spelled)
DERIVED = frozenset(spelled for row in TABLE if row.makes_words for spelled in row.spelled)
