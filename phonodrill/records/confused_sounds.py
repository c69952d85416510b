"""What a wrong sound or a wrongly said word shows: which sound was taken for which."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import product

from phonodrill.errors import PhonodrillError
from phonodrill.lesson.focus import write_sound
from phonodrill.lexicon.store import Lexicon
from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.notation import parse_sound
from phonodrill.sounds.places import NUCLEI, Position, cut_at

LETTER_NAMES = {
    "a": "E",
    "b": "bi",
    "c": "si",
    "d": "di",
    "e": "i",
    "f": "ɛf",
    "g": "ʤi",
    "h": "Eʧ",
    "i": "I",
    "j": "ʤE",
    "k": "kE",
    "l": "ɛl",
    "m": "ɛm",
    "n": "ɛn",
    "o": "O",
    "p": "pi",
    "q": "kju",
    "r": "ɑr",
    "s": "ɛs",
    "t": "ti",
    "u": "ju",
    "v": "vi",
    "w": "dʌbəlju",
    "x": "ɛks",
    "y": "wI",
    "z": "zi",
}
"""What the name of each letter sounds like, one code a phoneme."""
_PLACES = {
    Position.FIRST: "the first sound",
    Position.LAST: "the last sound",
    Position.ONSET2: "the second consonant",
    Position.CODA1: "the consonant after the vowel",
    Position.ONSET: "all before the vowel",
    Position.VOWEL: "the vowel",
    Position.RIME: "the vowel and all after it",
}
_ONE_OF_CLUSTER = "leaves one sound of the cluster"
_WHOLE_CLUSTER = "takes the whole cluster for one sound"
_CHANGING = frozenset({"delete", "add", "substitute", "reverse"})
_BARE = " \t\"'“”‘’/.,;!?"
_PARTS = re.compile(r"[\s/,;–-]+")


def ways_said(text: str, lexicon: Lexicon) -> tuple[str, ...]:
    """Return the sounds somebody may have noted: those of a word, or one sound.

    Args:
        text: as it was typed.
        lexicon: the open lexicon.

    Returns:
        Codes, one a phoneme; none if it cannot be read.
    """
    bare = text.strip(_BARE).lower()
    entry = lexicon.get(bare) if len(bare) > 1 and "/" not in text else None
    if entry and entry.usable_pronunciations:
        return tuple(dict.fromkeys(said.sounds for said in entry.usable_pronunciations))
    code = _one_sound(text.strip(" \"'“”"))
    return (code,) if code else ()


def _one_sound(text: str) -> str:
    try:
        return parse_sound(text)
    except PhonodrillError:
        return ""


def compare(right: str, said: str) -> str:
    """Name the one sound in which two forms differ; empty if they differ in more.

    >>> compare("rId", "rɪd"), compare("pɪɡ", "bɪɡ")
    ('takes the vowel /ī/ for /ĭ/', 'says /b/ for /p/')
    >>> compare("snAl", "sAl"), compare("bɛl", "bɛlt"), compare("bɛl", "kɪŋ")
    ('leaves /n/ out of the cluster', 'adds /t/', '')
    """
    if len(right) == len(said):
        places = [place for place, code in enumerate(right) if code != said[place]]
        if len(places) == 1:
            return swapped(right[places[0]], said[places[0]])
    if len(right) == len(said) + 1:
        for place in range(len(right)):
            if right[:place] + right[place + 1 :] == said:
                among = " out of the cluster" if _is_in_cluster(right, place) else " out"
                return f"leaves {write_sound(right[place])}{among}"
    if len(said) == len(right) + 1:
        for place in range(len(said)):
            if said[:place] + said[place + 1 :] == right:
                return f"adds {write_sound(said[place])}"
    return ""


def swapped(right: str, said: str) -> str:
    """Say that one sound was taken for another."""
    if right in VOWELS and said in VOWELS:
        return f"takes the vowel {write_sound(right)} for {write_sound(said)}"
    return f"says {write_sound(said)} for {write_sound(right)}"


def _is_in_cluster(sounds: str, place: int) -> bool:
    around = sounds[max(0, place - 1) : place] + sounds[place + 1 : place + 2]
    return sounds[place] not in NUCLEI and any(code not in NUCLEI for code in around)


def is_letter_name(said: str, letters: str) -> bool:
    """Whether what was said is the name of one of some letters."""
    return any(LETTER_NAMES.get(letter) == said for letter in letters)


def confused_in_word(word: str, said: str, lexicon: Lexicon) -> str:
    """Compare a word with what was read or put together instead."""
    right, heard = ways_said(word, lexicon), ways_said(said, lexicon)
    return "" if set(right) & set(heard) else _first(compare, right, heard)


def confused_in_task(
    done: tuple[str, Position], word: str, answer: str, said: str, lexicon: Lexicon
) -> str:
    """Work out what was done instead in a phonemic task.

    Args:
        done: which task, and where in the word.
        word: the word asked about.
        answer: what is right.
        said: what was said instead.
        lexicon: the open lexicon.
    """
    task, at = done
    heard, words, answers = (ways_said(text, lexicon) for text in (said, word, answer))
    if set(heard) & {*answers}:
        return ""
    if task in _CHANGING and set(heard) & {*words}:
        return "says the word as it was"
    if task == "segment":
        return _parted(words[0], said) if words and at is Position.EACH else ""
    finders: dict[str, Callable[[str, str, str], str]] = {
        "blend": lambda _, right, own: compare(right, own),
        "isolate": lambda full, _, own: _isolated(full, own, word, at),
        "delete": lambda full, _, own: _left_off(full, own, at),
    }

    def find_moved(full: str, right: str, own: str) -> str:
        return _moved(task, at, full, right, own)

    find = finders.get(task, find_moved)
    # Several sounds as an answer are no word that could be looked up.
    found = (find(full, right, own) for full, right, own in product(words, answers or ("",), heard))
    return next(filter(None, found), "")


def _first(find: Callable[[str, str], str], rights: tuple[str, ...], saids: tuple[str, ...]) -> str:
    pairs: Iterator[tuple[str, str]] = product(rights, saids)
    return next(filter(None, (find(right, said) for right, said in pairs)), "")


def _left_off(sounds: str, left: str, at: Position) -> str:
    """Say what was left off, from what is left of a word."""
    if at is Position.ONSET:
        for other in (Position.FIRST, Position.ONSET2):
            if _without(sounds, other) == left:
                return _ONE_OF_CLUSTER
    is_cluster = NUCLEI.isdisjoint(sounds[:2])
    begins = at in (Position.FIRST, Position.ONSET2)
    if begins and is_cluster and _without(sounds, Position.ONSET) == left:
        return "drops the whole cluster for one sound"
    if at in (Position.LAST, Position.CODA1) and left == _without_coda(sounds):
        return "drops the whole cluster for one sound"
    for other, name in _PLACES.items():
        if other is not at and _without(sounds, other) == left:
            return f"drops {name}, not {_PLACES.get(at, 'the part asked for')}"
    return ""


def _without(sounds: str, at: Position) -> str | None:
    cut = cut_at(sounds, at)
    return cut.left + cut.right if cut else None


def _without_coda(sounds: str) -> str | None:
    """Return a word without its last consonants, if these are more than one."""
    rest = sounds.rstrip("".join(set(sounds) - NUCLEI))
    return rest if len(sounds) - len(rest) > 1 else None


def _isolated(sounds: str, said: str, word: str, at: Position) -> str:
    """Say which other sound of the word was named."""
    wanted = cut_at(sounds, at)
    if wanted is None or said == wanted.middle:
        return ""
    if is_letter_name(said, word):
        return "says the letter’s name, not its sound"
    for other, name in _PLACES.items():
        cut = cut_at(sounds, other)
        if cut and cut.middle == said:
            if other is Position.ONSET and at in (Position.FIRST, Position.ONSET2):
                return _WHOLE_CLUSTER
            return f"says {name}, not {_PLACES.get(at, 'the part asked for')}"
    if len(said) == len(wanted.middle) == 1:
        return swapped(wanted.middle, said)
    return ""


def _moved(task: str, at: Position, sounds: str, answer: str, said: str) -> str:
    """Say whether the new sound was put in another place, or another sound was."""
    new = cut_at(answer, at)
    if new is None:
        return ""
    if task == "add":
        ends = {Position.FIRST: sounds + new.middle, Position.LAST: new.middle + sounds}
        if said == ends.get(at):
            return "adds the sound at the other end"
    if task == "substitute":
        for other, name in _PLACES.items():
            cut = cut_at(sounds, other)
            if cut and other is not at and cut.left + new.middle + cut.right == said:
                return f"changes {name}, not {_PLACES.get(at, 'the part asked for')}"
    return compare(answer, said)


def _parted(sounds: str, said: str) -> str:
    """Say whether a cluster was kept together when a word was taken apart."""
    parts = [part for part in _PARTS.split(said.strip(_BARE)) if part]
    if not 1 < len(parts) < len(sounds):
        return ""
    for ends in (parts[0], parts[-1]):
        codes = [_one_sound(letter) for letter in ends]
        if len(codes) > 1 and all(codes) and NUCLEI.isdisjoint("".join(codes)):
            together = "".join(codes)
            if sounds.startswith(together) or sounds.endswith(together):
                return "keeps a cluster together as one sound"
    return "hears fewer sounds than there are"
