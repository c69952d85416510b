"""From a spelling to a base the rules can look at: dictionary, known parts, or letters."""

from __future__ import annotations

from phonodrill.endings.conditions import BaseWord
from phonodrill.endings.letters import count_syllables, from_letters
from phonodrill.lexicon.entry import Entry, Pronunciation
from phonodrill.lexicon.store import Lexicon

_PREFIXES = (
    "re un dis mis over out under up fore with pre de en em in im inter counter trans sub "
    "super non anti auto bi tri micro mini multi semi ultra down off by be a"
)
PREFIXES = frozenset(_PREFIXES.split())
SHORTEST_PART = 3


def open_base(
    word: str, lexicon: Lexicon, part_of_speech: str = "", *, is_name: bool = False
) -> BaseWord:
    """Look a base up; what the dictionary lacks is judged by its parts, then by its letters.

    Args:
        word: lower case.
        lexicon: the open lexicon.
        part_of_speech: the reading asked for: noun, verb, adjective, or empty.
        is_name: whether it was written as a name.
    """
    entry = lexicon.get(word)
    if entry:
        base = from_entry(entry, part_of_speech, is_name=is_name)
        if base.said and base.said.stress[1:].endswith("2"):
            # Half stressed: as strong as a word of its own (baby + sit), else weak (mentor).
            tail = known_tail(word, lexicon)
            return base._replace(stressed_end=tail is not None and is_short(tail))
        return base
    tail = known_tail(word, lexicon)
    if tail:
        inner = open_base(tail.word, lexicon, part_of_speech)
        head = count_syllables(word[: -len(tail.word)])
        return inner._replace(
            word=word,
            syllables=inner.syllables + head,
            said=None,
            ways=(),
            listed_as=tail.word,
        )
    return from_letters(word, part_of_speech, is_name=is_name)


def from_entry(entry: Entry, part_of_speech: str = "", *, is_name: bool = False) -> BaseWord:
    """Make the base of a dictionary entry, said as that part of speech is."""
    said = way_to_say(entry, part_of_speech)
    return BaseWord(
        entry.word,
        said.sounds[-1],
        said.syllables,
        len(said.stress) <= 1 or said.stress[-1] == "1",
        part_of_speech,
        is_name or (entry.is_name and not entry.parts_of_speech),
        said,
        entry.usable_pronunciations or entry.pronunciations,
    )


def way_to_say(entry: Entry, part_of_speech: str = "") -> Pronunciation:
    """Choose how a base is said: of two stresses a verb has the later (*permit*)."""
    ways = entry.usable_pronunciations or entry.pronunciations
    if part_of_speech == "verb" and len(ways) > 1:
        return next((way for way in ways if way.stress.endswith("1")), ways[0])
    return ways[0]


def known_tail(word: str, lexicon: Lexicon) -> Entry | None:
    """Find the known word that ends a longer one: *fish* of *sailfish*, *zip* of *unzip*."""
    for start in range(1, len(word) - SHORTEST_PART + 1):
        head = word[:start]
        if not is_head(head, lexicon):
            continue
        tail = lexicon.get(word[start:])
        if tail and tail.parts_of_speech and not tail.is_name:
            return tail
    return None


def is_short(entry: Entry) -> bool:
    """Whether a word has one syllable."""
    return way_to_say(entry).syllables == 1


def is_head(head: str, lexicon: Lexicon) -> bool:
    """Whether letters may begin a longer word: a prefix or a known word."""
    if head in PREFIXES:
        return True
    entry = lexicon.get(head) if len(head) >= SHORTEST_PART else None
    return entry is not None and bool(entry.parts_of_speech)
