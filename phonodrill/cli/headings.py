"""Read the headings of a mat: spellings, endings and sounds."""

from __future__ import annotations

import re

from phonodrill.errors import PhonodrillError
from phonodrill.gate import Gate
from phonodrill.graphemes.correspondence import write_sounds
from phonodrill.lexicon.store import Lexicon
from phonodrill.paper.page import Script, Text
from phonodrill.selection import may_be_shown
from phonodrill.sounds.notation import Notation, parse_sound

_LETTERS = re.compile(r"-?[a-z]+(_[a-z]+)?")
LONGEST = 8


def read_headings(text: str, lexicon: Lexicon, gate: Gate, notation: Notation) -> tuple[Text, ...]:
    """Read headings parted by commas, each once.

    Args:
        text: spellings (``sh``, ``a_e``), endings (``-es``) and sounds (``/sh/``).
        lexicon: the open lexicon.
        gate: the never-say check.
        notation: how sounds are printed.

    Raises:
        PhonodrillError: if one cannot be read or is not fit for class.
    """
    parts = [part.strip() for part in text.split(",") if part.strip()]
    return tuple(dict.fromkeys(_heading(part, lexicon, gate, notation) for part in parts))


def _heading(text: str, lexicon: Lexicon, gate: Gate, notation: Notation) -> Text:
    if text.startswith("/"):
        return Text(f"/{write_sounds(parse_sound(text), notation)}/", Script.SOUNDS)
    letters = text.lower()
    if not _LETTERS.fullmatch(letters) or len(letters) > LONGEST:
        raise PhonodrillError(
            f"{text!r} is no heading", "letters or sounds: --headings sh,a_e,-es,/ī/"
        )
    bare = letters.strip("-").replace("_", "")
    entry = lexicon.get(bare)
    if not (may_be_shown(entry, gate) if entry else gate.allows(bare, (), alone=False)):
        raise PhonodrillError("that heading is not fit for class", "another heading")
    return Text(letters)
