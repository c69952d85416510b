"""A base for a form that no dictionary lists, by the rules and by analogy.

Of the bases that the rules would turn into this form, the one is taken that words
with the same last letters have: *sneeving* is like *leaving*, so its base has an e.
"""

from __future__ import annotations

import re
from collections import Counter

from phonodrill.endings.base import Origin
from phonodrill.endings.conditions import VOWEL_LETTERS
from phonodrill.endings.rule import Rule
from phonodrill.endings.rules import RULES_OF, rule_for
from phonodrill.endings.spell import rules_of
from phonodrill.endings.suffix import PARTS_OF
from phonodrill.endings.words import open_base
from phonodrill.lexicon.entry import INFLECTIONS
from phonodrill.lexicon.store import Lexicon

GUESSED = ("ing", "ed", "s")
LONGEST_TAIL = 4
ENOUGH = 3
"""How many words with the same last letters make an analogy."""
SHORTEST_BASE = 2
_LACKS_E = re.compile(r"(?:[bcdfgkpstvz][lr]|[^aeious]s|[^v]v|[nrl]c|u|[^aeo]u[cdlmt]|[^aeio]at)$")
"""No English word ends so: *handl*, *hors*, *leav* and *danc* want an e."""


def guess_origins(form: str, lexicon: Lexicon) -> list[Origin]:
    """Return made-up or unlisted bases that give this form by rule, the likeliest first.

    Args:
        form: lower case, not in the lexicon.
        lexicon: the open lexicon.
    """
    for suffix in GUESSED:
        if form.endswith(suffix) and len(form) > len(suffix) + 1:
            fitting = _fitting(form, suffix, lexicon)
            if fitting:
                return _by_analogy(form, suffix, fitting, lexicon)
    return []


def _fitting(form: str, suffix: str, lexicon: Lexicon) -> dict[str, Rule]:
    """Find every base that the rules turn into the form."""
    spellings = lexicon.ending_spellings()
    found: dict[str, Rule] = {}
    for rule in RULES_OF[suffix]:
        word = rule.undo(form) if rule.adds else ""
        if len(word) < SHORTEST_BASE or word in found or lexicon.get(word) is not None:
            continue
        base = open_base(word, lexicon, PARTS_OF[suffix][0])
        if rule.name in (usual.name for usual in rules_of(base, suffix, spellings)):
            found[word] = rule
    likely = {w: rule for w, rule in found.items() if rule.doubles or not _LACKS_E.search(w)}
    return likely or found


def _by_analogy(form: str, suffix: str, fitting: dict[str, Rule], lexicon: Lexicon) -> list[Origin]:
    votes, tail = _votes(form, suffix, lexicon)
    why = f"made up or rare: by rule, like other words in {tail}" if tail else "by rule alone"
    ordered = sorted(fitting, key=lambda word: (-votes[fitting[word].name], len(word)))
    return [
        Origin(word, suffix, fitting[word].ending, fitting[word].name, (), (), why, is_known=False)
        for word in ordered
    ]


def _votes(form: str, suffix: str, lexicon: Lexicon) -> tuple[Counter[str], str]:
    """Count the rules of the listed forms that share the longest run of last letters."""
    for length in range(min(len(form) - 1, len(suffix) + LONGEST_TAIL), len(suffix), -1):
        tail = form[-length:]
        votes: Counter[str] = Counter()
        before = form[-length - 1 : -length] in VOWEL_LETTERS
        for row in lexicon.forms_ending_in(tail):
            alike = (row.form[-length - 1 : -length] in VOWEL_LETTERS) == before
            if alike and INFLECTIONS[row.inflection] == suffix:
                rule = rule_for(row.form, row.base, suffix)
                votes[rule.name if rule else ""] += 1
        if votes.total() >= ENOUGH:
            return votes, tail
    return Counter(), ""
