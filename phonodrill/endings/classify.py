"""What the ending of a word in -s says, decided from its base.

Sounds decide, letters only tell -ies from the rest. A dictionary's word for the
whole form is not followed against the rule: CMUdict has *gerbils* with S and
*bobcats* with Z.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from phonodrill.endings.rules import possible_bases, rule_for
from phonodrill.lexicon.entry import DERIVED, Entry, Pronunciation
from phonodrill.lexicon.store import Lexicon
from phonodrill.sounds.normal import normal_form
from phonodrill.sounds.suffixes import add_suffix, s_suffix

_CODES = {"s": "s", "z": "z", "ɪz": "ɪz", "iz": "iz", "aɪz": "Iz"}
SOUNDS = tuple(_CODES)
"""The labels, in the order in which a sort shows them."""

HIGHEST_BAND = 4
AFTER_IE = "ie was there before: only s was added"
Exceptions = Mapping[tuple[str, str], tuple[str, str]]


class Ending(NamedTuple):
    """A word in -s, taken apart.

    Attributes:
        word: the form.
        base: its base word.
        ending: what the eye sees: s, es, ies or ves.
        sound: what the ear hears: s, z, ɪz, iz or aɪz.
        rule: name of the spelling rule.
        said: how the form is said.
        parts_of_speech: noun (more than one), verb (he, she, it), or both.
        watch_out: an exception to warn of, or empty.
    """

    word: str
    base: str
    ending: str
    sound: str
    rule: str
    said: Pronunciation
    parts_of_speech: tuple[str, ...]
    watch_out: str = ""


def sound_of_ending(base: Pronunciation, ending: str) -> str:
    """Return the label of what -s says after a base.

    Args:
        base: how the base word is said.
        ending: what the eye sees: s, es, ies or ves.

    Returns:
        One of :data:`SOUNDS`. Words spelled -ies are ``iz`` or ``aɪz`` after
        those vowels; a base in f whose plural is spelled ves is voiced.
    """
    if ending == "ves":
        return "z"
    if ending == "ies" and base.sounds.endswith(("i", "I")):
        return "iz" if base.sounds.endswith("i") else "aɪz"
    return s_suffix(base.sounds)


def classify(form: str, lexicon: Lexicon, exceptions: Exceptions) -> list[Ending]:
    """Take a word in -s apart, in every way its known bases allow.

    Args:
        form: the word, lower case; the lexicon may lack it if it has the base.
        lexicon: the open lexicon.
        exceptions: ``lexicon.ending_exceptions()``.

    Returns:
        One result a base, the most familiar base first; empty if no known word gives
        this form, so it only looks inflected (*bus*, *series*) or is unknown.
    """
    irregular = [base for word, base in exceptions if word == form]
    listed = {row.base: row.part_of_speech for row in lexicon.bases_of(form)}
    own = lexicon.get(form)
    is_own_word = own is not None and not own.is_name and not listed
    found = []
    for word in dict.fromkeys([*possible_bases(form), *irregular]):
        base = lexicon.get(word)
        if base is None:
            continue
        # For a form that the dictionaries lack, any noun or verb may be the base.
        is_free = not listed and not is_own_word and _takes_s(base)
        if not (word in listed or word in irregular or is_free):
            continue
        familiarity = (base.band or HIGHEST_BAND + 1, -base.zipf)
        found.append((familiarity, _ending(form, base, lexicon, exceptions)))
    return [ending for _, ending in sorted(found, key=lambda pair: pair[0])]


def _takes_s(entry: Entry) -> bool:
    return not entry.is_name and not {"noun", "verb"}.isdisjoint(entry.parts_of_speech)


def _ending(form: str, base: Entry, lexicon: Lexicon, exceptions: Exceptions) -> Ending:
    said = next(iter(base.usable_pronunciations), base.pronunciations[0])
    rule = rule_for(form, base.word)
    spelled = rule.ending if rule else "es"
    sound = sound_of_ending(said, spelled)
    watch_out = AFTER_IE if rule and rule.name == "add s after ie" else ""
    exception = exceptions.get((form, base.word))
    if exception:
        sound, watch_out = exception
    parts = [row.part_of_speech for row in lexicon.bases_of(form) if row.base == base.word]
    follows_dictionary = exception is not None or spelled == "ves"
    return Ending(
        form,
        base.word,
        spelled,
        sound,
        rule.name if rule else "irregular",
        _said(form, said, lexicon, _CODES[sound] if follows_dictionary else ""),
        tuple(dict.fromkeys(parts)),
        watch_out,
    )


def _said(form: str, base: Pronunciation, lexicon: Lexicon, heard: str) -> Pronunciation:
    """The dictionary's way to say the form if it fits the rule, else base + ending.

    Where the form is irregular, ``heard`` holds the codes it must end in.
    """
    sounds, stress = add_suffix(base.sounds, base.stress, s_suffix(base.sounds))
    built = Pronunciation(sounds, stress, normal_form(sounds, stress), origin=DERIVED)
    entry = lexicon.get(form)
    if entry is None:
        return built
    if heard:
        ways = [*entry.usable_pronunciations, *entry.pronunciations]
        return next((way for way in ways if way.shown.endswith(heard)), ways[0])
    return next((p for p in entry.pronunciations if p.normal == built.normal), built)
