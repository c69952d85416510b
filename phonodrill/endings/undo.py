"""Walk back from a form to its base, or say why there is none."""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.endings.base import Origin, has_parts, known_origins, ordered, trace
from phonodrill.endings.guess import GUESSED, guess_origins
from phonodrill.endings.rules import SUFFIXES, possible_bases
from phonodrill.gate import Gate, open_gate
from phonodrill.lexicon.entry import Entry
from phonodrill.lexicon.store import Lexicon
from phonodrill.selection import may_be_shown

REVIEWED = (1, 2, 3)
NO_ENDING = ("ss", "us", "is")
"""Last letters of words that are no forms in s, as a rule."""


class Undone(NamedTuple):
    """What was found behind a form.

    Attributes:
        form: the word asked about.
        origins: its bases, the likeliest first.
        note: why there is no base, or that the base is guessed; empty otherwise.
    """

    form: str
    origins: tuple[Origin, ...]
    note: str = ""


def find_bases(form: str, lexicon: Lexicon, gate: Gate | None = None) -> Undone:
    """Find every base a form may come from, by likelihood.

    Args:
        form: lower case.
        lexicon: the open lexicon.
        gate: what a note may show; the lexicon's own by default.

    >>> with Lexicon() as lexicon:
    ...     [origin.base for origin in find_bases("axes", lexicon).origins]
    ['axe', 'ax', 'axis']
    """
    exceptions = lexicon.ending_exceptions()
    origins = known_origins(form, lexicon, exceptions)
    if origins:
        warned = (
            origin._replace(watch_out=exceptions.get((form, origin.base), ("", ""))[1])
            for origin in origins
        )
        return Undone(form, tuple(warned))
    why = lexicon.only_looks_inflected(form)
    entry = lexicon.get(form)
    if why or (entry and not _may_be_unlisted_form(entry)):
        return Undone(form, (), why or _why_not(form, lexicon, gate))
    traced = trace(form, lexicon) if entry else {}
    unlisted = {key: uses for key, uses in traced.items() if key[1] in GUESSED}
    if unlisted:
        return Undone(form, tuple(ordered(form, unlisted, lexicon)))
    guessed = guess_origins(form, lexicon)
    if guessed:
        return Undone(form, tuple(guessed), "no dictionary here lists the base: rule-based")
    return Undone(form, (), _why_not(form, lexicon, gate))


def _may_be_unlisted_form(entry: Entry) -> bool:
    """Whether a word may be a form of a base that the lexicon happens to lack."""
    return entry.band not in REVIEWED and not entry.word.endswith(NO_ENDING)


def _why_not(form: str, lexicon: Lexicon, gate: Gate | None) -> str:
    """Say what a child may take for an ending, and why it is none.

    What is left without the letters may itself be unfit for class: then it is not shown.
    """
    if form.endswith("ss"):
        return "ss at the end is no ending"
    shown = gate or open_gate(lexicon)
    for suffix in SUFFIXES:
        for word in possible_bases(form, suffix):
            entry = lexicon.get(word)
            if entry and entry.band and has_parts(entry) and may_be_shown(entry, shown):
                return f"a word of its own today: not simply {word} with an ending"
    for suffix in SUFFIXES:
        rest = form.removesuffix(suffix)
        is_left = rest != form and len(rest) > 1 and not has_parts(lexicon.get(rest))
        if is_left and possible_bases(form, suffix) and _is_fit(rest, lexicon, shown):
            return f"a word of its own: without {suffix} only {rest} is left, which is no word"
    return "a word of its own: it has no ending"


def _is_fit(word: str, lexicon: Lexicon, gate: Gate) -> bool:
    entry = lexicon.get(word)
    return may_be_shown(entry, gate) if entry else gate.allows(word, [], alone=False)
