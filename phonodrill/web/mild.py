"""Messages that say again what was typed, without words that are never said in class."""

from __future__ import annotations

import re

from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon

_WORD = re.compile(r"[A-Za-z']+")


def leave_out_unfit(text: str, lexicon: Lexicon) -> str:
    """Replace the words of a message that are never said in class.

    Args:
        text: the message.
        lexicon: the open lexicon.
    """
    gate = open_gate(lexicon)

    def shown(found: re.Match[str]) -> str:
        word = found[0].strip("'").lower()
        entry = lexicon.get(word)
        said = [way.normal for way in entry.pronunciations] if entry else []
        return found[0] if gate.allows(word, said, alone=False) else "…"

    return _WORD.sub(shown, text)
