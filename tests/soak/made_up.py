"""Whether a made-up word is none, and is read as it is spelled."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from tests.raw_cmudict import plain, raw_cmudict
from tests.soak.phones import MERGERS, Phones, cut, for_gate, phones_of, vowels_of
from tests.soak.shape import ItemShape
from tests.soak.tables import never_say, ways

SHORTEST = 3
"""Sounds that an unfit word must have to be heard inside another."""
_LETTERS = {
    "a": "AE", "e": "EH", "i": "IH", "o": "AA", "u": "AH",
    "sh": "SH", "ch": "CH", "tch": "CH", "th": "TH", "ck": "K", "ff": "F", "ss": "S",
    "zz": "Z", "ng": "NG", "nk": "NG K", "c": "K", "j": "JH", "h": "HH", "y": "Y",
    **{letter: letter.upper() for letter in "bdfgklmnprstvwz"},
}  # fmt: skip


def faults(item: ItemShape) -> Iterator[str]:
    """Say what is wrong with an item of made-up words."""
    words = [(item.stimulus, item.stimulus_said), (item.answer, item.answer_said)]
    for word, said in words:
        if word:
            yield from word_faults(word, phones_of(said.sounds))
    one = phones_of(item.stimulus_said.sounds)
    if item.task == "substitute":
        a = cut(one, str(item.at), r_joins=False)
        b = cut(phones_of(item.answer_said.sounds), str(item.at), r_joins=False)
        named = phones_of(item.sound.sounds), phones_of(item.new.sounds)
        if not (
            a and b and (a[0], a[2]) == (b[0], b[2]) and (a[1], b[1]) == named and a[1] != b[1]
        ):
            yield "the change does not lead to the answer"
        return
    parts = [phones_of(part.sounds) for part in item.parts]
    if len(parts) < 2 or tuple(phone for part in parts for phone in part) != one:
        yield "the parts do not make the word"
    if item.at == "each" and any(len(part) > 1 for part in parts):
        yield "a part is more than one sound"
    if item.at == "onset" and (
        len(parts) != 2 or vowels_of(parts[0]) or not vowels_of(parts[1][:1])
    ):
        yield "the parts are not onset and rime"


@cache
def word_faults(word: str, said: Phones) -> tuple[str, ...]:
    """Say what is wrong with one made-up word."""
    return tuple(_word_faults(word, said))


def _word_faults(word: str, said: Phones) -> Iterator[str]:
    if word in raw_cmudict():
        yield f"{word} is a word"
    if ways(word) or _listed_sounds() & {said, *(merge(said) for merge in MERGERS.values())}:
        yield f"{word} sounds like a word"
    if read(word) != said:
        yield f"{word} is not read {' '.join(said)}"
    unfit = never_say()
    form = for_gate(said)
    inside = {form[a:b] for a in range(len(form)) for b in range(a + SHORTEST, len(form) + 1)}
    if not unfit.sounds.isdisjoint(inside) or form in unfit.alone:
        yield f"{word} sounds like, or has in it, an unfit word"
    if any(len(bad) >= SHORTEST and bad in word for bad in unfit.spellings):
        yield f"{word} has an unfit word in its letters"


@cache
def _listed_sounds() -> frozenset[Phones]:
    """Every sound of one syllable in CMUdict, also as each merger makes it."""
    listed = {plain(way) for found in raw_cmudict().values() for way in found if _is_short(way)}
    return frozenset({merge(way) for merge in MERGERS.values() for way in listed} | listed)


def _is_short(way: tuple[str, ...]) -> bool:
    """Whether a way to say a word has one vowel: these carry the stress digits."""
    return sum(phone[-1].isdigit() for phone in way) == 1


def read(word: str) -> Phones | None:
    """Read a made-up word letter by letter: short vowels, the longest spelling first."""
    found: list[str] = []
    while word:
        size = next((n for n in (3, 2, 1) if word[:n] in _LETTERS), 0)
        if not size:
            return None
        found += _LETTERS[word[:size]].split()
        word = word[size:]
    return tuple(found)
