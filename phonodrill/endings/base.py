"""Undo an ending: every base a form may come from, by likelihood, with the reason."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from phonodrill.endings.listings import Listings
from phonodrill.endings.rule import IRREGULAR
from phonodrill.endings.rules import RULES_OF, SUFFIXES, rule_for
from phonodrill.endings.spell import row_named, rules_of
from phonodrill.endings.suffix import PARTS_OF, POSSESSIVE
from phonodrill.endings.words import PREFIXES, is_head, known_tail, open_base
from phonodrill.lexicon.entry import INFLECTIONS, Entry
from phonodrill.lexicon.store import Lexicon

HIGHEST_BAND = 4
_NO_PLURALS = ("ss", "us", "is", "ics", "as")
"""Last letters of nouns that are singular or not counted, as a rule."""
BY_HEART = "an irregular form: learned by heart"
Uses = dict[tuple[str, str], list[tuple[str, str]]]
"""(base, ending) -> how it is used there: (part of speech, inflection)."""


class Origin(NamedTuple):
    """One base a form may come from.

    Attributes:
        base: the base word.
        suffix: which ending was added: s, ed, ing, er, est, ly, y or 's.
        ending: what the eye sees of it; empty where it is irregular.
        rule: name of the spelling rule.
        parts_of_speech: how the base is used there; empty if not known.
        inflections: plural, third person, past, ...; what a derived word is for er, ly, y.
        reason: why this base.
        is_known: whether the lexicon has the base.
        watch_out: an exception to warn of, or empty.
    """

    base: str
    suffix: str
    ending: str
    rule: str
    parts_of_speech: tuple[str, ...]
    inflections: tuple[str, ...]
    reason: str
    is_known: bool = True
    watch_out: str = ""


def known_origins(
    form: str,
    lexicon: Lexicon,
    irregular: Iterable[tuple[str, str]] = (),
    listings: Listings | None = None,
) -> list[Origin]:
    """Return every known base of a form, the likeliest first.

    A dictionary's listing decides; a form that the dictionaries lack is traced back
    by the rules to known words of a fitting part of speech. A word of its own that
    nobody lists as a form has no base (*bus*).

    Args:
        form: lower case.
        lexicon: the open lexicon.
        irregular: (form, base) pairs that our table of exceptions adds.
        listings: what the lexicon lists, if it was read ahead.
    """
    listed = listings or lexicon
    possessive = _without_apostrophe(form, lexicon)
    if possessive:
        return [possessive]
    if listed.only_looks_inflected(form):
        return []
    found: Uses = {}
    for row in listed.bases_of(form):
        key = (row.base, INFLECTIONS[row.inflection])
        found.setdefault(key, []).append((row.part_of_speech, row.inflection))
    for word, base in irregular:
        if word == form and not any(base == known for known, _ in found):
            found[base, "s"] = [("", "")]
    for _, base, ending, part in listed.derived_words(form):
        found.setdefault((base, ending), []).append((part, "made from it"))
    singular = "" if found else unlisted_singular(form, lexicon)
    if singular:
        found[singular, "s"] = [("noun", "plural")]
    if not found and _may_be_form(lexicon.get(form)):
        found = trace(form, lexicon)
    return ordered(form, found, lexicon)


def ordered(form: str, found: Uses, lexicon: Lexicon) -> list[Origin]:
    """Make the origins of a form, the likeliest first.

    A base that is itself a form gives way to one that is not (*taxes* is of *tax*,
    not of *taxis*).
    """
    bases = {word for word, _ in found if not _is_form(word, lexicon)} or {
        word for word, _ in found
    }
    return sorted(
        (
            _origin(form, word, suffix, uses, lexicon)
            for (word, suffix), uses in found.items()
            if word in bases
        ),
        key=lambda origin: _unlikelihood(origin, lexicon),
    )


def _is_form(word: str, lexicon: Lexicon) -> bool:
    entry = lexicon.get(word)
    return entry is not None and bool(entry.endings)


def _without_apostrophe(form: str, lexicon: Lexicon) -> Origin | None:
    if form.endswith(POSSESSIVE):
        base, tail, name = form[:-2], POSSESSIVE, "add 's"
    elif form.endswith("s'"):
        base, tail, name = form[:-1], "s'", "add ' after s"
    else:
        return None
    known = lexicon.get(base) is not None
    why = "The apostrophe shows that something belongs to it."
    return Origin(base, POSSESSIVE, tail, name, ("noun",), ("possessive",), why, known)


def unlisted_singular(word: str, lexicon: Lexicon) -> str:
    """Return the known word whose plural a noun in s is, though nobody lists it as a form.

    *apps* is one, *lens* has a plural of its own, and *jeans* is in our table. Empty
    if there is none.
    """
    entry = lexicon.get(word)
    if entry is None or entry.parts_of_speech[:1] != ("noun",) or not word.endswith("s"):
        return ""
    is_judged = bool(lexicon.only_looks_inflected(word)) or (
        (word, "s") in lexicon.ending_spellings()
    )
    if is_judged or lexicon.forms_of(word) or word.endswith(_NO_PLURALS):
        return ""
    singular = lexicon.get(word[:-1])
    if singular and (singular.band or singular.parts_of_speech):
        return word[:-1]
    return next((base for base, suffix in trace(word, lexicon) if suffix == "s"), "")


def _may_be_form(entry: Entry | None) -> bool:
    """Whether a word may be a form nobody lists: unknown, only a name, or of a verb (*texted*)."""
    if entry is None or not (entry.parts_of_speech or not entry.is_name):
        return True
    return entry.parts_of_speech == ("verb",) and entry.word.endswith(("ed", "ing"))


def trace(form: str, lexicon: Lexicon) -> Uses:
    """Find known words that take an ending to this form, by their own rule if any does."""
    spellings = lexicon.ending_spellings()
    usual: Uses = {}
    other: Uses = {}
    by_parts: Uses = {}
    for suffix in SUFFIXES:
        if suffix != "s" and not _has_vowel(form.removesuffix(suffix)):
            continue
        for rule in RULES_OF[suffix]:
            word = rule.undo(form) if rule.turns != ("", "") or rule.adds else ""
            parts = _parts_of(word, lexicon) if word else ()
            fitting = [part for part in PARTS_OF[suffix] if part in parts]
            if fitting and (word, suffix) not in usual:
                base = open_base(word, lexicon, fitting[0])
                names = [own.name for own in rules_of(base, suffix, spellings)]
                is_word = has_parts(lexicon.get(word))
                if rule.name in names:
                    found = usual if is_word else by_parts
                elif is_word:
                    found = other
                else:
                    continue
                found[word, suffix] = [(part, "") for part in fitting]
    return usual or other or by_parts or _irregular_tail(form, lexicon)


def _has_vowel(rest: str) -> bool:
    """Whether an ending leaves a syllable before it: *bing* is no form of *be*."""
    return any(letter in "aeiouy" for letter in rest)


def _parts_of(word: str, lexicon: Lexicon) -> tuple[str, ...]:
    """Return the parts of speech of a known word, or of the known word that ends it."""
    entry = lexicon.get(word)
    if not has_parts(entry):
        entry = known_tail(word, lexicon)
    return entry.parts_of_speech if entry else ()


def has_parts(entry: Entry | None) -> bool:
    """Whether an entry is of a word, not only of a name or of letters."""
    return entry is not None and bool(entry.parts_of_speech)


def _irregular_tail(form: str, lexicon: Lexicon) -> Uses:
    """Trace *backslid* to *backslide* by way of *slid*."""
    found: Uses = {}
    for start in range(2, len(form) - 2):
        head = form[:start]
        # Burg + led is no past of lead: before ed only a prefix is safe.
        if head in PREFIXES or (is_head(head, lexicon) and not form.endswith("ed")):
            for row in lexicon.bases_of(form[start:]):
                if not row.ending:
                    key = (head + row.base, INFLECTIONS[row.inflection])
                    found.setdefault(key, []).append((row.part_of_speech, row.inflection))
        if found:
            break
    return found


def _origin(
    form: str, base: str, suffix: str, uses: list[tuple[str, str]], lexicon: Lexicon
) -> Origin:
    parts = tuple(dict.fromkeys(part for part, _ in uses if part))
    kinds = tuple(dict.fromkeys(kind for _, kind in uses if kind))
    rule = rule_for(form, base, suffix)
    known = lexicon.get(base) is not None
    if rule is None:
        ending = "es" if suffix == "s" and form.endswith("s") else ""
        return Origin(base, suffix, ending, IRREGULAR, parts, kinds, BY_HEART, known)
    rule = row_named(rule.name, suffix, open_base(base, lexicon, parts[0] if parts else ""))
    return Origin(base, suffix, rule.ending, rule.name, parts, kinds, rule.says, known)


def _unlikelihood(origin: Origin, lexicon: Lexicon) -> tuple[float, ...]:
    """Order bases: known, familiar, easy to picture, frequent first."""
    entry = lexicon.get(origin.base)
    if entry is None:
        tail = known_tail(origin.base, lexicon)
        return (True, tail is not None and bool(tail.endings))
    # Bathed is of bathe, which is mostly a verb, rather than of bath.
    is_unusual = origin.suffix in ("ed", "ing") and entry.parts_of_speech[:1] != ("verb",)
    band = entry.band or HIGHEST_BAND + 1
    return (False, is_unusual, band, not entry.picturable, -entry.zipf)
