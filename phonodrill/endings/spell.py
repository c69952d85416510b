"""How -s is added to a base: the rule is chosen by sounds, then by letters.

*stomach* ends in the letters ch but in the sound /k/, so it takes s.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from phonodrill.endings.rules import RULES, Rule
from phonodrill.sounds.inventory import SIBILANTS

_BY_NAME = {rule.name: rule for rule in RULES}
_ONE_SHORT_VOWEL_THEN_Z = re.compile(r"[^aeiou]*(?:qu)?[aeiou]z")

Listed = Mapping[str, tuple[str, str]]
"""Base -> (rule name, part of speech or empty for any): ``Lexicon.s_spellings()``."""


def rule_of(base: str, sounds: str, listed: Listed, part_of_speech: str = "") -> Rule:
    """Choose the rule by which a base takes -s.

    Args:
        base: the spelling, lower case; real or made up.
        sounds: how it is said, one code a phoneme.
        listed: bases whose spelling no rule foretells.
        part_of_speech: ``noun`` or ``verb``; *leaf* has *leaves* as a noun only.

    >>> rule_of("gutch", "ɡʌʧ", {}).spell("gutch")
    'gutches'
    """
    name, only_for = listed.get(base, ("", ""))
    if name and only_for in ("", part_of_speech):
        return _BY_NAME[name]
    if _BY_NAME["y to i, add es"].spell(base):
        return _BY_NAME["y to i, add es"]
    if base.endswith("ie"):
        return _BY_NAME["add s after ie"]
    if sounds[-1] not in SIBILANTS or base.endswith("e"):
        return _BY_NAME["add s"]
    if _ONE_SHORT_VOWEL_THEN_Z.fullmatch(base):
        return _BY_NAME["double, add es"]
    return _BY_NAME["add es"]
