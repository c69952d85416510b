"""What the ending of a word says, decided from its base.

Sounds decide, letters only tell -ies from the rest. A dictionary's word for the
whole form is not followed against the rule: CMUdict has *gerbils* with S and
*bobcats* with Z.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import NamedTuple

from phonodrill.endings.base import Origin, known_origins
from phonodrill.endings.conditions import BaseWord
from phonodrill.endings.listings import Listings
from phonodrill.endings.rule import IRREGULAR
from phonodrill.endings.rules import RULES_OF
from phonodrill.endings.sounds import SOUNDS, codes_of, heard_in, label_of, label_of_s, say_form
from phonodrill.endings.words import open_base
from phonodrill.lexicon.entry import Pronunciation
from phonodrill.lexicon.store import Lexicon

__all__ = ["SOUNDS", "Ending", "Exceptions", "classify", "sound_of_ending"]
WaysOf = Callable[[str], list["Ending"]]
"""Takes a form apart as :func:`classify` does; may remember what it found."""
Exceptions = Mapping[tuple[str, str], tuple[str, str]]
"""(form, base) -> (what the ending says, watch-out): ``Lexicon.ending_exceptions()``."""


class Ending(NamedTuple):
    """A word with an ending, taken apart.

    Attributes:
        word: the form.
        base: its base word.
        ending: what the eye sees: s, es, ies, ves, ed, ing, er, est, ly, y, 's or s'.
        sound: what the ear hears: s, z, ɪz, iz or aɪz; t, d or ɪd; ɪŋ, ɚ, ɪst, li, i.
        rule: name of the spelling rule.
        said: how the form is said.
        parts_of_speech: for -s noun (more than one), verb (he, she, it), or both; for
            the others what the base is, or the word made with er, ly or y.
        watch_out: an exception to warn of, or empty.
        suffix: which ending it is: s, ed, ing, er, est, ly, y or 's.
    """

    word: str
    base: str
    ending: str
    sound: str
    rule: str
    said: Pronunciation
    parts_of_speech: tuple[str, ...]
    watch_out: str = ""
    suffix: str = "s"


def sound_of_ending(base: Pronunciation, ending: str) -> str:
    """Return the label of what -s says after a base.

    Args:
        base: how the base word is said.
        ending: what the eye sees: s, es, ies or ves.

    Returns:
        One of :data:`SOUNDS`. Words spelled -ies are ``iz`` or ``aɪz`` after
        those vowels; a base in f whose plural is spelled ves is voiced.
    """
    return label_of_s(base.sounds[-1], ending)


def classify(
    form: str, lexicon: Lexicon, exceptions: Exceptions, listings: Listings | None = None
) -> list[Ending]:
    """Take a word with a regular ending apart, in every way its known bases allow.

    Args:
        form: the word, lower case; the lexicon may lack it if it has the base.
        lexicon: the open lexicon.
        exceptions: ``lexicon.ending_exceptions()``.
        listings: what the lexicon lists, if it was read ahead.

    Returns:
        One result a base, the likeliest base first; empty if no known word gives
        this form, so it only looks inflected (*bus*, *series*) or is unknown, and
        for irregular forms (*feet*, *ran*) that show no ending.
    """
    found = []
    for origin in known_origins(form, lexicon, exceptions, listings):
        listed = (form, origin.base) in exceptions
        if origin.is_known and origin.ending and (origin.rule != IRREGULAR or listed):
            base = open_base(
                origin.base, lexicon, origin.parts_of_speech[0] if origin.parts_of_speech else ""
            )
            if base.said:
                found.append(_ending(form, origin, base, lexicon, exceptions))
    return found


def _ending(
    form: str, origin: Origin, base: BaseWord, lexicon: Lexicon, exceptions: Exceptions
) -> Ending:
    suffix, spelled = origin.suffix, origin.ending
    rule = next((rule for rule in RULES_OF[suffix] if rule.name == origin.rule), None)
    entry = lexicon.get(form)
    base = heard_in(base, suffix, entry, rule)
    sound = label_of(base, suffix, spelled, rule)
    watch_out = rule.watch_out if rule else ""
    exception = exceptions.get((form, origin.base))
    if exception:
        sound, watch_out = exception
    heard = codes_of(sound) if exception else ""
    said = say_form(base, suffix, entry, rule, heard)
    return Ending(
        form,
        origin.base,
        spelled,
        sound,
        origin.rule,
        said,
        origin.parts_of_speech,
        watch_out,
        suffix,
    )
