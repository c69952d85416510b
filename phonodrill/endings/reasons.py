"""Why each word of a sort stands where it stands, and why others are left out."""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.endings.classify import Ending
from phonodrill.endings.sort import Sort
from phonodrill.endings.sounds import codes_of
from phonodrill.endings.spell import row_named
from phonodrill.endings.undo import find_bases
from phonodrill.endings.words import open_base
from phonodrill.gate import Gate, open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.selection import may_be_shown

BY_HEART = "Learned by heart."


class Reason(NamedTuple):
    """Why a word says and spells its ending so.

    Attributes:
        ending: the word, taken apart.
        before: code of the sound before the ending, which decides what it says; empty
            if the ending always says the same or is an exception.
        spelled: the spelling rule in a teacher's words.
    """

    ending: Ending
    before: str
    spelled: str


class Explained(NamedTuple):
    """The reasons of a sort.

    Attributes:
        reasons: in the order of its groups.
        left_out: other words, each with why it has no such ending.
    """

    reasons: tuple[Reason, ...]
    left_out: tuple[tuple[str, str], ...]


def explain(lexicon: Lexicon, sort: Sort) -> Explained:
    """Give the reason of each word of a sort.

    Args:
        lexicon: the open lexicon.
        sort: words sorted by their endings.
    """
    gate = open_gate(lexicon)
    reasons = tuple(_reason(lexicon, e) for group in sort.groups for e in group.words)
    left_out = tuple((word, _why_left_out(lexicon, gate, word, why)) for word, why in sort.left_out)
    return Explained(reasons, left_out)


def _reason(lexicon: Lexicon, ending: Ending) -> Reason:
    part = next(iter(ending.parts_of_speech), "")
    base = open_base(ending.base, lexicon, part)
    try:
        spelled = row_named(ending.rule, ending.suffix, base).says
    except KeyError:
        spelled = BY_HEART
    return Reason(ending, "" if ending.watch_out else _before(ending, base.last), spelled)


def _before(ending: Ending, last: str) -> str:
    """Return the sound that decides what -s or -ed says, or the vowel that y says in -ies."""
    if ending.suffix not in ("s", "ed"):
        return ""
    codes = codes_of(ending.sound)
    head = ending.said.sounds.removesuffix(codes)
    if ending.ending == "ies":
        return last
    return head[-1:] if head != ending.said.sounds else ""


def _why_left_out(lexicon: Lexicon, gate: Gate, word: str, why: str) -> str:
    found = find_bases(word, lexicon, gate)
    for origin in found.origins:
        entry = lexicon.get(origin.base)
        if entry and may_be_shown(entry, gate):
            return f"from {origin.base}: {origin.reason}"
    return found.note if lexicon.get(word) and found.note else why
