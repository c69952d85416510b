"""Items derived again from raw CMUdict, in a few lines that share nothing with the engine."""

from __future__ import annotations

import random
from collections.abc import Callable

import pytest

from phonodrill import Item, Lexicon
from phonodrill.sounds.inventory import BY_CODE
from tests.raw_cmudict import plain, raw_cmudict


def names(text: str) -> list[str]:
    return text.split()


SAMPLE = 100_000
VOWELS = {
    "@",
    *["AA", "AE", "AH", "AO", "AW", "AY", "EH", "ER", "EY", "IH", "IY", "OW", "OY", "UH", "UW"],
}
Phones = tuple[str, ...]


def ways(word: str) -> set[Phones]:
    return {plain(phones) for phones in raw_cmudict().get(word, [])}


def named(sounds: str) -> Phones:
    """The phones of a part; any weak vowel may stand for any other."""
    return tuple(BY_CODE[code].arpabet for code in sounds)


def vowels_of(phones: Phones) -> list[int]:
    return [index for index, phone in enumerate(phones) if phone in VOWELS]


def is_said_as(phones: Phones, part: Phones) -> bool:
    weak = {"AH", "IH", "UH"}
    return len(phones) == len(part) and all(
        one == two or (one == "@" and two in weak) for one, two in zip(phones, part, strict=True)
    )


def cut(phones: Phones, at: str) -> tuple[Phones, Phones, Phones]:
    """Left, middle and right of the place, for words that have it."""
    vowels = vowels_of(phones)
    first, last = (vowels[0], vowels[-1]) if vowels else (0, 0)
    start, end = {
        "first": (0, 1),
        "last": (len(phones) - 1, len(phones)),
        "vowel": (first, first + 1),
        "onset2": (1, 2),
        "coda1": (last + 1, last + 2),
        "onset": (0, first),
        "rime": (first, len(phones)),
    }[at]
    return phones[:start], phones[start:end], phones[end:]


def without(phones: Phones, at: str) -> Phones:
    left, _, right = cut(phones, at)
    return left + right


def changed(one: Phones, two: Phones, at: str) -> bool:
    a, b = cut(one, at), cut(two, at)
    return (a[0], a[2]) == (b[0], b[2]) and a[1] != b[1]


def isolated(item: Item) -> bool:
    at, part = str(item.at), named(item.sound.sounds)
    if at == "syllable":
        return any(is_said_as(way[: len(part)], part) for way in ways(item.stimulus))
    return any(is_said_as(cut(way, at)[1], part) for way in ways(item.stimulus))


def compared(item: Item) -> bool:
    at, part = str(item.at), named(item.sound.sounds)
    odd = item.answer or (item.foil.word if item.foil else "")
    alike = [choice.word for choice in item.choices if choice.word != odd]
    # CMUdict lists some ways that we do not use (get as G IH T), so one way is enough.
    return all(any(cut(way, at)[1] == part for way in ways(word)) for word in alike) and any(
        cut(way, at)[1] != part for way in ways(odd)
    )


def apart(item: Item) -> bool:
    parts = tuple(phone for part in item.parts for phone in named(part.sounds))
    return any(is_said_as(way, parts) for way in ways(item.stimulus or item.answer))


def pairs(item: Item, fits: Callable[[Phones, Phones], bool]) -> bool:
    return all(
        any(fits(one, two) for one in ways(item.stimulus) for two in ways(answer))
        for answer in (item.answer, *item.also)
    )


def by_syllable(item: Item) -> bool:
    part = named(item.sound.sounds)

    def joined(short: Phones, long: Phones) -> bool:
        n = len(part)
        return (is_said_as(long[:n], part) and long[n:] == short) or (
            is_said_as(long[-n:], part) and long[:-n] == short
        )

    if item.task == "delete":
        return pairs(item, lambda one, two: joined(two, one))
    if item.task == "add":
        return pairs(item, joined)
    new = named(item.new.sounds)
    a, b = len(part), len(new)
    return pairs(
        item,
        lambda one, two: (
            (is_said_as(one[:a] + two[:b], part + new) and one[a:] == two[b:])
            or (is_said_as(one[-a:] + two[-b:], part + new) and one[:-a] == two[:-b])
        ),
    )


def reversed_(item: Item) -> bool:
    if item.answer:
        return pairs(item, lambda one, two: one[::-1] == two)
    first, second = reversed(item.parts)
    return first.word + second.word == item.stimulus


def manipulated(item: Item) -> bool:
    at = str(item.at)
    if at == "syllable":
        return by_syllable(item)
    tests: dict[str, Callable[[Phones, Phones], bool]] = {
        "delete": lambda one, two: without(one, at) == two,
        "add": lambda one, two: without(two, at) == one,
        "substitute": lambda one, two: changed(one, two, at),
    }
    return pairs(item, tests[item.task])


CHECKS: dict[str, Callable[[Item], bool]] = {
    "isolate": isolated,
    "identify": compared,
    "categorize": compared,
    "blend": apart,
    "segment": apart,
    "delete": manipulated,
    "add": manipulated,
    "substitute": manipulated,
    "reverse": reversed_,
}


def holds(item: Item) -> bool:
    return CHECKS[item.task](item)


@pytest.mark.source("CMUdict 1.1.3, read anew by tests/raw_cmudict.py")
def test_a_hundred_thousand_items_hold_in_raw_cmudict(
    lexicon: Lexicon, every_item: list[Item]
) -> None:
    mended = {  # not CMUdict's
        entry.word
        for entry in lexicon.entries(highest_band=3)
        if any(said.origin == "mended" for said in entry.pronunciations)
    }
    sample = random.Random(6).sample(every_item, min(SAMPLE, len(every_item)))
    assert len(sample) == SAMPLE
    checked = [item for item in sample if mended.isdisjoint(item.words)]
    assert len(checked) > 0.95 * SAMPLE
    wrong = [item for item in checked if not holds(item)]
    assert not wrong, [
        (i.task, str(i.at), i.stimulus, i.sound.sounds, i.answer, [c.word for c in i.choices])
        for i in wrong[:20]
    ]


def test_the_checker_itself_can_fail(every_item: list[Item]) -> None:
    by_kind = {(item.task, item.at): item for item in every_item}
    for item in by_kind.values():
        broken = item._replace(
            stimulus=item.stimulus and "crab",
            answer=item.answer and "lighthouse",
            sound=item.sound._replace(sounds="ʒ"),
            parts=item.parts[:1] * 3,
            choices=item.choices[:1] * 3,
        )
        if item.task == "reverse" and not item.answer:
            continue
        assert not holds(broken), item
