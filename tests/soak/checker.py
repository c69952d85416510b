"""Whether an item is right and fit, worked out again from raw CMUdict.

Takes an item as it is given to a user: its words, the sounds it names, its answer. All else
(how words are said, where a sound is, what accents make of it, what is never said, how
familiar a word is) comes from `phones` and `tables`, which share no code with the engine.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from functools import cache
from typing import NamedTuple

from tests.raw_cmudict import plain
from tests.soak import made_up
from tests.soak.phones import (
    Phones,
    cut,
    for_gate,
    heard,
    is_said_as,
    phones_of,
    stressed,
    vowels_of,
)
from tests.soak.shape import ItemShape, Sounding
from tests.soak.tables import (
    HIGHEST_BAND,
    band_of,
    is_unfit,
    is_unfit_in_sentence,
    listed_ways,
    never_say,
    ways,
)


class Asked(NamedTuple):
    """What the items were asked for, as far as it decides whether they are right.

    Attributes:
        band: highest band.
        accents: as ``--accent`` takes them.
        r_joins: whether a vowel and its R are one sound.
    """

    band: int = HIGHEST_BAND
    accents: str = ""
    r_joins: bool = False


def faults(item: ItemShape, asked: Asked) -> list[str]:
    """Say all that is wrong or unfit; nothing for a good item."""
    return word_faults(item) + answer_faults(item, asked)


def word_faults(item: ItemShape) -> list[str]:
    """Say what is wrong or unfit in the words of an item, whatever was asked for."""
    wrong = made_up.faults(item) if item.made_up else _wrong_words(item)
    return [f"unfit: {what}" for what in _unfit(item)] + [f"wrong: {what}" for what in wrong]


def answer_faults(item: ItemShape, asked: Asked) -> list[str]:
    """Say whether the answer is not right, for every listener that was asked for."""
    if item.made_up:
        return []
    found = [
        f"wrong: {word} is of band {band_of(word)}"
        for word in _drilled(item)
        if not 1 <= band_of(word) <= asked.band
    ]
    if not _RIGHT[item.task](item, asked):
        found.append(f"wrong: not a true {item.task} at {item.at}")
    return found


def describe(item: ItemShape) -> str:
    """Write an item in short, for a report of faults."""
    choices = ", ".join(choice.word for choice in item.choices)
    foil = item.foil.word if item.foil else ""
    return (
        f"{item.task} {item.at}: {item.stimulus or choices} ({foil}) /{item.sound.sounds}/"
        f" /{item.new.sounds}/ {[part.sounds for part in item.parts]} -> {item.answer}"
    )


def line_faults(item: ItemShape, asked: str, answered: str) -> list[str]:
    """Say what is wrong with the lines that a teacher reads out for an item.

    Args:
        item: the item.
        asked: the question.
        answered: the answer line.
    """
    found = [
        f"unfit: {word} in a line"
        for word in spelled_words(f"{asked} {answered}")
        if is_unfit_in_sentence(word)
    ]
    said = spelled_words(asked)
    shown = [item.stimulus] if item.stimulus else [choice.word for choice in item.choices]
    found += [f"wrong: {word} is not asked" for word in shown if word not in said]
    if item.answer and item.answer not in spelled_words(answered):
        found.append("wrong: the answer line has not the answer")
    return found


_SIGNS = re.compile(r"/[^/]*/")
_WORD = re.compile(r"[a-z]+(?:['’-][a-z]+)*")


def spelled_words(line: str) -> list[str]:
    """Return the words of a line, lower case, without what stands between slashes."""
    return _WORD.findall(_SIGNS.sub(" ", line).lower())


def words_of(item: ItemShape) -> set[str]:
    """Return every word that is said or shown."""
    words = {item.stimulus, item.answer, item.sound.word, item.new.word, *item.also}
    words.update(part.word for part in item.parts)
    words.update(choice.word for choice in item.choices)
    if item.foil:
        words.add(item.foil.word)
    return words - {""}


def _unfit(item: ItemShape) -> Iterator[str]:
    yield from filter(is_unfit, words_of(item))
    named: list[Sounding] = [item.stimulus_said, item.answer_said]
    for said in [*named, item.sound, item.new, *item.parts]:
        if said.stress and _sounds_unfit(said.sounds, said.stress):
            yield f"the sounds {said.sounds}"
    is_turned = item.task == "reverse" and item.at == "syllable"
    if is_turned and for_gate(_phones(item.answer_said)) in never_say().sounds:
        yield f"the sounds {item.answer_said.sounds}"


@cache
def _sounds_unfit(sounds: str, stress: str) -> bool:
    """Whether a part with a vowel is unfit, weak vowels said weak or in full."""
    forms = {for_gate(_plain_said(sounds, stress)), for_gate(phones_of(sounds))}
    return not forms.isdisjoint(never_say().alone)


def _said(item: ItemShape) -> list[tuple[str, Sounding]]:
    """Return the words that are asked, compared or answered, and how they are said."""
    found = [(choice.word, choice.said) for choice in item.choices]
    if item.stimulus:
        found.append((item.stimulus, item.stimulus_said))
    if item.foil:
        found.append((item.foil.word, item.foil.said))
    if item.answer and item.task != "isolate":
        found.append((item.answer, item.answer_said))
    return found


def _drilled(item: ItemShape) -> list[str]:
    return [word for word, _ in _said(item)]


def _wrong_words(item: ItemShape) -> Iterator[str]:
    """Say which words are not said as given, not familiar, or given twice."""
    for word, said in _said(item):
        if stressed(said.sounds, said.stress) not in listed_ways(word):
            yield f"{word} is not listed as {said.sounds}"
    for word in item.also:
        if not 1 <= band_of(word) <= HIGHEST_BAND:
            yield f"{word} is of band {band_of(word)}"
        if _phones(item.answer_said) not in ways(word):
            yield f"{word} does not sound like {item.answer}"
    for part in (item.sound, item.new, *item.parts):
        if part.word and not any(
            is_said_as(way, phones_of(part.sounds)) for way in ways(part.word)
        ):
            yield f"{part.word} is not said {part.sounds}"
    shown = [choice.word for choice in item.choices] + ([item.foil.word] if item.foil else [])
    if len(shown) != len(set(shown)) or item.answer in item.also:
        yield "a word is there twice"


@cache
def _plain_said(sounds: str, stress: str) -> Phones:
    return plain(stressed(sounds, stress))


def _phones(said: Sounding) -> Phones:
    return _plain_said(said.sounds, said.stress)


def _listeners(asked: Asked, *words: Phones) -> set[tuple[Phones, ...]]:
    return _heard_by(asked.accents, words)


@cache
def _heard_by(accents: str, words: tuple[Phones, ...]) -> set[tuple[Phones, ...]]:
    return set(zip(*(heard(word, accents) for word in words), strict=True))


def _has_at(phones: Phones, part: Phones, item: ItemShape, asked: Asked) -> bool:
    found = cut(phones, str(item.at), r_joins=asked.r_joins)
    return bool(found and is_said_as(found[1], part))


def _isolated(item: ItemShape, asked: Asked) -> bool:
    part = phones_of(item.sound.sounds)
    if item.answer_said.sounds != item.sound.sounds or item.answer != item.sound.word:
        return False
    for (phones,) in _listeners(asked, _phones(item.stimulus_said)):
        if item.at == "syllable":
            if not is_said_as(phones[: len(part)], part):
                return False
        elif not _has_at(phones, part, item, asked):
            return False
    return True


def _compared(item: ItemShape, asked: Asked) -> bool:
    part = phones_of(item.sound.sounds)
    if item.task == "identify":
        odd, alike, shown = item.foil, [*item.choices], 3
    else:
        odd = next((choice for choice in item.choices if choice.word == item.answer), None)
        alike, shown = [choice for choice in item.choices if choice != odd], 2
    if odd is None or len(alike) != shown:
        return False
    if item.task == "categorize" and not _has_at(
        _phones(odd.said), phones_of(item.new.sounds), item, asked
    ):
        return False
    return all(
        _has_at(phones, part, item, asked)
        for choice in alike
        for (phones,) in _listeners(asked, _phones(choice.said))
    ) and not any(
        _has_at(phones, part, item, asked) for (phones,) in _listeners(asked, _phones(odd.said))
    )


def _apart(item: ItemShape, asked: Asked) -> bool:
    said = item.stimulus_said if item.stimulus else item.answer_said
    phones = _phones(said)
    parts = [phones_of(part.sounds) for part in item.parts]
    if len(parts) < 2 or not is_said_as(phones, tuple(phone for part in parts for phone in part)):
        return False
    if item.at == "each":
        longest = [part for part in parts if len(part) > 1]
        return all(
            asked.r_joins and len(part) == 2 and part[1] == "R" and vowels_of(part[:1])
            for part in longest
        )
    if item.at == "onset":
        return len(parts) == 2 and not vowels_of(parts[0]) and bool(vowels_of(parts[1][:1]))
    return all(map(vowels_of, parts))


def _manipulated(item: ItemShape, asked: Asked) -> bool:
    one, two = _phones(item.stimulus_said), _phones(item.answer_said)
    if item.at == "syllable":
        return _by_syllable(item, one, two)
    test = {"delete": _is_deleted, "add": _is_added, "substitute": _is_changed}[item.task]
    return all(test(item, asked, a, b) for a, b in _listeners(asked, one, two))


def _is_deleted(item: ItemShape, asked: Asked, one: Phones, two: Phones) -> bool:
    found = cut(one, str(item.at), r_joins=asked.r_joins)
    part = phones_of(item.sound.sounds)
    return bool(found and is_said_as(found[1], part) and found[0] + found[2] == two)


def _is_added(item: ItemShape, asked: Asked, one: Phones, two: Phones) -> bool:
    return _is_deleted(item, asked, two, one)


def _is_changed(item: ItemShape, asked: Asked, one: Phones, two: Phones) -> bool:
    a, b = (cut(phones, str(item.at), r_joins=asked.r_joins) for phones in (one, two))
    return bool(
        a
        and b
        and (a[0], a[2]) == (b[0], b[2])
        and a[1] != b[1]
        and is_said_as(a[1], phones_of(item.sound.sounds))
        and is_said_as(b[1], phones_of(item.new.sounds))
    )


def _by_syllable(item: ItemShape, one: Phones, two: Phones) -> bool:
    part = phones_of(item.sound.sounds)
    size = len(part)

    def joined(short: Phones, long: Phones) -> bool:
        return (is_said_as(long[:size], part) and long[size:] == short) or (
            is_said_as(long[-size:], part) and long[:-size] == short
        )

    if item.task == "delete":
        return joined(two, one)
    if item.task == "add":
        return joined(one, two)
    new = phones_of(item.new.sounds)
    return (
        is_said_as(one[:size], part)
        and is_said_as(two[: len(new)], new)
        and one[size:] == two[len(new) :]
    ) or (
        is_said_as(one[-size:], part)
        and is_said_as(two[-len(new) :], new)
        and one[:-size] == two[: -len(new)]
    )


def _reversed(item: ItemShape, asked: Asked) -> bool:
    one, two = _phones(item.stimulus_said), _phones(item.answer_said)
    if item.at == "each":
        return bool(item.answer) and all(b[::-1] == a for a, b in _listeners(asked, one, two))
    if len(item.parts) != 2:
        return False
    first, second = reversed(item.parts)
    sounds = phones_of(first.sounds), phones_of(second.sounds)
    return (
        first.word + second.word == item.stimulus
        and is_said_as(one, sounds[0] + sounds[1])
        and is_said_as(two, sounds[1] + sounds[0])
    )


_RIGHT: dict[str, Callable[[ItemShape, Asked], bool]] = {
    "isolate": _isolated,
    "identify": _compared,
    "categorize": _compared,
    "blend": _apart,
    "segment": _apart,
    "delete": _manipulated,
    "add": _manipulated,
    "substitute": _manipulated,
    "reverse": _reversed,
}
