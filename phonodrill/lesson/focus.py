"""What a lesson is about: endings, a spelling, a sound, a task, or a contrast of two sounds."""

from __future__ import annotations

import difflib
import re
from enum import StrEnum
from typing import NamedTuple

from phonodrill.endings.suffix import POSSESSIVE, SPELLINGS
from phonodrill.errors import PhonodrillError
from phonodrill.graphemes.correspondence import Kind as CorrespondenceKind
from phonodrill.lexicon.entry import Counted
from phonodrill.lexicon.store import Lexicon
from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.notation import SCRIPT, parse_sound, symbols
from phonodrill.tasks.registry import TASKS
from phonodrill.taught.tokens import companions, read_token

TWO = 2
LEAST_SHARE = 0.03
"""Share of the words with a sound that a spelling must have to be one of its spellings."""
LEAST_OF_SPELLING = 0.03
"""Share of the words with a spelling that must say the sound: t is no way to write /ch/ by ear."""
EXAMPLES = "es,ies; sh; a_e; c=s; /k/; delete; i:e"


class Kind(StrEnum):
    """What sort of focus it is."""

    ENDINGS = "endings"
    SPELLING = "spelling"
    SOUND = "sound"
    CONTRAST = "contrast"
    TASK = "task"


LONGEST = 200
"""Signs of a focus: all endings together are shorter."""


class Focus(NamedTuple):
    """What a lesson is about.

    Attributes:
        text: as it was asked for, in plain form; names the focus in commands.
        kind: what sort of focus.
        title: in a teacher's words.
        endings: spelled endings, for a focus on endings.
        rows: correspondences the words are taken by, the commonest first.
        sounds: codes of the sounds; two for a contrast.
        task: name of the task, for a focus on a task.
    """

    text: str
    kind: Kind
    title: str
    endings: tuple[str, ...] = ()
    rows: tuple[Counted, ...] = ()
    sounds: tuple[str, ...] = ()
    task: str = ""

    def things(self, lexicon: Lexicon) -> frozenset[str]:
        """Return what the lesson itself teaches, as :class:`phonodrill.taught.known.Known` has it.

        A class may read a word of the lesson by what it was taught before and this.
        """
        inventory = lexicon.correspondences()
        rows = list(self.rows)
        for ending in self.endings:
            try:
                rows += read_token(f"-{ending}", inventory)
            except PhonodrillError:
                continue  # -ves and -ly are no single chunk and no step of a taught file.
        codes = frozenset[str]().union(*(companions(row, inventory) for row in rows))
        return codes | {f"-{ending}" for ending in self.endings}


_BETWEEN = re.compile(r"\s*,\s*|\s+")


def parse_focus(text: str, lexicon: Lexicon) -> Focus:
    """Read a focus.

    Args:
        text: endings ``es,ies``; a spelling ``sh``, ``a_e``, ``c=s``; a sound ``/k/``; a
            contrast ``i:e``; or the name of a task. What is both an ending and a spelling
            (``er``) is the ending; with its sound (``er=ûr``) it is the spelling.
            Several are parted by a comma or a space.
        lexicon: the open lexicon.

    Raises:
        PhonodrillError: if it is none of these.

    >>> with Lexicon() as lexicon:
    ...     [str(parse_focus(text, lexicon).kind) for text in ("es,ies", "a_e", "/k/", "i:e")]
    ['endings', 'spelling', 'sound', 'contrast']
    """
    bare = text.strip()
    if len(bare) > LONGEST:
        raise PhonodrillError(f"a focus of more than {LONGEST} signs", EXAMPLES)
    parts = tuple(dict.fromkeys(part.strip().lower() for part in _BETWEEN.split(bare)))
    if not bare or not all(parts):
        raise PhonodrillError(f"no focus in {text!r}", f"--focus {EXAMPLES}")
    if bare.lower() in TASKS:
        return Focus(bare.lower(), Kind.TASK, f"the task “{bare.lower()}”", task=bare.lower())
    if ":" in bare:
        return _contrast(bare, lexicon)
    if bare.startswith("/"):
        return _sound(bare, lexicon)
    named = tuple(part.lstrip("-") for part in parts)
    if POSSESSIVE in named:
        raise PhonodrillError(
            "there is no lesson on 's yet", 'phonodrill endings table --ending "\'s"'
        )
    if all(part in SPELLINGS for part in named):
        endings = tuple(spelled for spelled in SPELLINGS if spelled in named)
        shown = " and ".join(f"-{ending}" for ending in endings)
        return Focus(",".join(endings), Kind.ENDINGS, f"the ending {shown}", endings=endings)
    return _spelling(parts, lexicon)


def write_sound(code: str) -> str:
    """Write one sound for a title, between slashes."""
    return f"/{''.join(symbols(code, '1' * sum(c in VOWELS for c in code), SCRIPT))}/"


def _contrast(text: str, lexicon: Lexicon) -> Focus:
    parts = text.split(":")
    if len(parts) != TWO or not all(parts):
        raise PhonodrillError(f"--focus is {text!r}", "two sounds parted by a colon: i:e, sh:ch")
    codes = tuple(map(parse_sound, parts))
    if codes[0] == codes[1]:
        raise PhonodrillError(f"--focus {text} names one sound twice", "two sounds: i:e, sh:ch")
    if (codes[0] in VOWELS) != (codes[1] in VOWELS):
        raise PhonodrillError(
            f"--focus {text} names a vowel and a consonant", "two vowels or two consonants: i:e"
        )
    rows = tuple(row for code in codes for row in spellings_of_sound(code, lexicon))
    title = " and ".join(map(write_sound, codes))
    return Focus(text, Kind.CONTRAST, f"telling {title} apart", rows=rows, sounds=codes)


def _sound(text: str, lexicon: Lexicon) -> Focus:
    code = parse_sound(text)
    rows = spellings_of_sound(code, lexicon)
    return Focus(text, Kind.SOUND, f"the sound {write_sound(code)}", rows=rows, sounds=(code,))


def _spelling(parts: tuple[str, ...], lexicon: Lexicon) -> Focus:
    inventory = lexicon.correspondences()
    try:
        rows = tuple(row for part in parts for row in read_token(part, inventory))
    except PhonodrillError as error:
        near = difflib.get_close_matches(parts[0], TASKS, n=1, cutoff=0.7)
        raise PhonodrillError(
            f"--focus {','.join(parts)}: {error.message}",
            f"did you mean {near[0]}?" if near else error.hint or EXAMPLES,
        ) from error
    if not rows or any(row.correspondence.kind is CorrespondenceKind.ENDING for row in rows):
        raise PhonodrillError(f"--focus {','.join(parts)} is no spelling", EXAMPLES)
    shown = " and ".join(row.correspondence.spelling for row in rows)
    sounds = tuple(dict.fromkeys(row.correspondence.sound for row in rows))
    title = f"the spelling {shown}"
    if "=" in parts[0] and len(sounds) == 1:
        title = f"{title} that says {write_sound(sounds[0])}"
    return Focus(",".join(parts), Kind.SPELLING, title, rows=rows, sounds=sounds)


def spellings_of_sound(code: str, lexicon: Lexicon) -> tuple[Counted, ...]:
    """Return the taught spellings of a sound that enough of its words have, the commonest first."""
    inventory = lexicon.correspondences()
    found = [
        row
        for row in inventory
        if row.correspondence.sound == code
        and row.correspondence.is_regular
        and row.correspondence.kind is not CorrespondenceKind.ENDING
    ]
    least = LEAST_SHARE * sum(row.words for row in found)
    all_words: dict[str, int] = {}
    for row in inventory:
        spelling = row.correspondence.spelling
        all_words[spelling] = all_words.get(spelling, 0) + row.words
    return tuple(
        row
        for row in found
        if row.words >= least
        and row.words >= LEAST_OF_SPELLING * all_words[row.correspondence.spelling]
    )
