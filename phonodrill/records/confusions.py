"""The likely confusion, named where a wrong answer shows it.

Worked out from sounds and letters with the modules that make the items. What was said is
never repeated: only sounds, letters and rules are named. An answer that cannot be read
shows nothing.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable
from typing import NamedTuple

from phonodrill.endings.sounds import codes_of, written_sound
from phonodrill.endings.suffix import SOUNDS_OF
from phonodrill.errors import PhonodrillError
from phonodrill.lesson.checking import FIND, HEAR, READ, SAY, SPELL, WRITE
from phonodrill.lesson.focus import write_sound
from phonodrill.lexicon.store import Lexicon
from phonodrill.records.answer import Answer, Asked, Kind
from phonodrill.records.confused_letters import (
    confused_base,
    confused_in_form,
    confused_spelling,
)
from phonodrill.records.confused_sounds import (
    confused_in_task,
    confused_in_word,
    is_letter_name,
    swapped,
    ways_said,
)
from phonodrill.sounds.notation import SCRIPT
from phonodrill.sounds.places import Position
from phonodrill.taught.tokens import read_token

_SYLLABLES = frozenset({"ɪz", "ɪd"})
_TYPED = {
    **dict.fromkeys(("iz", "ĭz", "ez", "es", "uz", "əz", "ɪz", "is"), "ɪz"),
    **dict.fromkeys(("id", "ĭd", "ed", "ud", "əd", "ɪd"), "ɪd"),
    **dict.fromkeys(("eez", "ēz", "iːz"), "iz"),
    **dict.fromkeys(("īz", "aɪz", "eyes"), "aɪz"),
    **{text: text for text in "sztd"},
}
"""How a teacher may type what an ending said."""


class Confusion(NamedTuple):
    """A confusion that wrong answers showed.

    Attributes:
        what: in a teacher's words.
        times: how often.
        students: codes of those who showed it.
        words: in which words, the latest first.
    """

    what: str
    times: int
    students: tuple[str, ...]
    words: tuple[str, ...]


def find_confusion(asked: Asked, said: str, lexicon: Lexicon) -> str:
    """Name the likely confusion behind a wrong answer; empty if it shows none.

    Args:
        asked: the item.
        said: what was said or written instead.
        lexicon: the open lexicon.
    """
    if not said.strip():
        return ""
    if _name_of(asked, Kind.TASK):
        return _in_task(asked, said, lexicon)
    find = _FINDERS.get(asked.how)
    return find(asked, said, lexicon) if find else ""


def _name_of(asked: Asked, kind: Kind) -> str:
    return next((skill.name for skill in asked.skills if skill.kind is kind), "")


def _in_task(asked: Asked, said: str, lexicon: Lexicon) -> str:
    at = Position(_name_of(asked, Kind.PLACE))
    answer = asked.answer.partition(" (also ")[0]
    done = _name_of(asked, Kind.TASK), at
    return confused_in_task(done, asked.word, answer, said, lexicon)


def _in_ending(asked: Asked, said: str, _: Lexicon) -> str:
    right = _name_of(asked, Kind.ENDING_SOUND)
    typed = said.strip(" /-\"'“”.").lower()
    heard = _TYPED.get(typed, "")
    if right in ("iz", "aɪz") and typed == "iz":
        return ""  # A teacher may have typed the right sound like this.
    if not heard or heard == right or right not in _known_sounds():
        return ""
    shown, wrong = written_sound(right, SCRIPT), written_sound(heard, SCRIPT)
    if right in _SYLLABLES and heard not in _SYLLABLES and len(codes_of(heard)) == 1:
        return f"says the syllable {shown} as one sound, {wrong}"
    if len(codes_of(right)) == 1 and heard in _SYLLABLES:
        return f"makes a syllable, {wrong}, of the one sound {shown}"
    return f"says {wrong} for {shown}"


def _known_sounds() -> frozenset[str]:
    return frozenset(sound for sounds in SOUNDS_OF.values() for sound in sounds)


def _in_letters(asked: Asked, said: str, lexicon: Lexicon) -> str:
    """Say what was taken for the sound of some letters."""
    token = _name_of(asked, Kind.CORRESPONDENCE)
    inventory = lexicon.correspondences()
    try:
        right = read_token(token, inventory)[0].correspondence
    except PhonodrillError:
        return ""
    for heard in ways_said(said, lexicon):
        if heard in right.sounds:
            return ""
        if is_letter_name(heard, right.spelling):
            return "says the letter’s name, not its sound"
        others = (r.correspondence for r in inventory if r.correspondence.is_regular)
        if any(o.spelling == right.spelling and heard in o.sounds for o in others):
            return f"says another sound of {right.spelling}: {write_sound(heard)}"
        if len(heard) == len(right.sound) == 1:
            return swapped(right.sound, heard)
    return ""


_FINDERS: dict[str, Callable[[Asked, str, Lexicon], str]] = {
    SPELL: lambda asked, said, lexicon: confused_in_form(asked.word, said, lexicon),
    FIND: lambda asked, said, lexicon: confused_base(asked.word, asked.answer, said, lexicon),
    SAY: _in_ending,
    WRITE: lambda asked, said, lexicon: confused_spelling(asked.word, said, lexicon),
    READ: lambda asked, said, lexicon: confused_in_word(asked.word, said, lexicon),
    HEAR: _in_letters,
}


def find_confusions(answers: Iterable[Answer], lexicon: Lexicon) -> tuple[Confusion, ...]:
    """Count the confusions of wrong answers, the commonest first."""
    shown: dict[str, list[Answer]] = defaultdict(list)
    for answer in answers:
        what = "" if answer.right else find_confusion(answer.asked, answer.said, lexicon)
        if what:
            shown[what].append(answer)
    found = [
        Confusion(
            what,
            len(wrong),
            tuple(sorted({answer.student for answer in wrong})),
            tuple(dict.fromkeys(a.asked.word for a in sorted(wrong, key=_date, reverse=True))),
        )
        for what, wrong in shown.items()
    ]
    return tuple(sorted(found, key=lambda one: (-one.times, one.what)))


def _date(answer: Answer) -> tuple[str, str]:
    return answer.date, answer.asked.word
