"""Whether a lesson holds together, worked out from its JSON, raw CMUdict and our tables.

The lesson is asked for with sounds in ARPAbet (``notation: arpabet``), so that every sound it
names can be compared with the dictionary.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import combinations
from typing import Any

from tests.raw_cmudict import plain
from tests.soak.checker import Asked, answer_faults, spelled_words, word_faults
from tests.soak.oral import bare_phones, rebuild
from tests.soak.phones import Phones, is_said_as
from tests.soak.tables import (
    band_of,
    bases_of,
    is_unfit,
    is_unfit_in_sentence,
    listed_ways,
    ways,
    written_habits,
)

Data = dict[str, Any]
ORDER = (
    *("warmup", "review", "rule", "build", "list", "sentences"),
    *("sort", "bases", "dictation", "check", "next"),
)
_NOT_OURS = re.compile("phonodrill lesson [^;]*")
SECOND_TIME = "a second time"
"""What a lesson says when words had to come twice."""


def faults(lesson: Data) -> list[str]:
    """Say all that is wrong in a lesson; nothing for a good one."""
    sections = {section["name"]: section for section in lesson["sections"]}
    found = [*_structure(lesson), *_texts(lesson), *_twice(lesson, sections)]
    for name, check in _CHECKS.items():
        if name in sections:
            found += (f"{name}: {what}" for what in check(sections[name], lesson))
    return found


def _structure(lesson: Data) -> Iterator[str]:
    names = [section["name"] for section in lesson["sections"]]
    minutes = [section["minutes"] for section in lesson["sections"]]
    if names != [name for name in ORDER if name in names]:
        yield f"sections {names}"
    if not {"rule", "list", "next"} <= {*names}:
        yield "a section is missing"
    if sum(minutes) > lesson["request"]["minutes"] or any(
        (count < 1) != (name == "next") for name, count in zip(names, minutes, strict=True)
    ):
        yield f"minutes {minutes}"
    oral = sum(s["minutes"] for s in lesson["sections"] if s["name"] == "warmup")
    if lesson["oral_minutes"] < oral:
        yield "fewer oral minutes than the warm-up has"
    if not (lesson["title"] and "not a diagnosis" in lesson["caution"]):
        yield "no title or no caution"


def _strings(node: Any) -> Iterator[str]:
    if isinstance(node, str):
        yield node
    elif isinstance(node, dict):
        for child in node.values():
            yield from _strings(child)
    elif isinstance(node, list):
        for child in node:
            yield from _strings(child)


def _texts(lesson: Data) -> Iterator[str]:
    """No word of any line may be one that is not even said in a sentence."""
    for text in _strings([lesson["title"], lesson["notes"], lesson["sections"]]):
        for word in spelled_words(_NOT_OURS.sub("", text)):
            if is_unfit_in_sentence(word):
                yield f"unfit: {word}"


def _listed(section: Data) -> list[str]:
    """Return the words that a section gives to read, write or sort."""
    name = section["name"]
    if name == "rule":
        return [row["word"] for row in section["points"]]
    if name == "check":
        return [row["word"] for row in section["questions"]]
    if name == "sort":
        return list(section["words"])
    return [row["word"] for row in section["words"]]


_LISTS = ("rule", "build", "list", "sort", "bases", "dictation", "check")


def _twice(lesson: Data, sections: dict[str, Data]) -> Iterator[str]:
    """No word twice in a list; none in two lists, unless the lesson says that words are few."""
    lists = {name: _listed(sections[name]) for name in _LISTS if name in sections}
    by_ear = lesson["kind"] == "task"
    for name, words in lists.items():
        if len(words) != len(set(words)):
            yield f"{name}: a word is there twice"
        for word in words:
            if not 1 <= band_of(word) <= lesson["request"]["band"]:
                yield f"{name}: {word} is of band {band_of(word)}"
            if is_unfit(word):
                yield f"{name}: unfit: {word}"
    few = any(SECOND_TIME in note for note in lesson["notes"])
    for one, two in combinations(lists, 2):
        shared = {*lists[one]} & {*lists[two]}
        # What is sorted is never dictated or asked: the answer would lie on the table.
        strict = "sort" in (one, two) and {one, two} & {"dictation", "check"} and not by_ear
        if shared and (strict or not few) and not (by_ear and {one, two} & {"rule", "check"}):
            yield f"{sorted(shared)} in {one} and {two}"


def _oral(section: Data, lesson: Data) -> Iterator[str]:
    asked = Asked(lesson["request"]["band"])
    for activity in section["activities"]:
        heard = [row["arpabet"] + row["say"] for row in activity["items"]]
        if len(heard) != len(set(heard)):
            yield "an item is there twice"
        for row in activity["items"]:
            item = rebuild(activity["task"], activity["at"], row)
            for fault in (*word_faults(item), *answer_faults(item, asked)):
                yield f"{fault} | {row['say']}"
            if row["answer"] and row["answer"] not in spelled_words(row["answer_line"]):
                yield f"the answer line has not the answer | {row['say']}"
            yield from (f"unfit: {word}" for word in row["words"] if is_unfit(word))


def _warmup(section: Data, lesson: Data) -> Iterator[str]:
    yield from _oral(section, lesson)
    if len(section["activities"]) > 2:
        yield "more than two tasks"


def _review(section: Data, _: Data) -> Iterator[str]:
    rows = [(row["letters"], row["sound"]) for row in section["letters"]]
    if len(rows) != len(set(rows)):
        yield "letters twice"
    for row in section["letters"]:
        letters, sound = row["letters"].strip("-"), bare_phones(row["sound"])
        # CMUdict writes one sound now so, now so (raw, vampire); the letters tell which it is.
        habits = {sound}.union(*(group for group in written_habits(letters) if sound in group))
        if not _has_letters(row["key_word"], letters):
            yield f"{row['key_word']} has not {letters}"
        if not any(_has_sound(way, said) for way in _ways(row["key_word"]) for said in habits):
            yield f"{row['key_word']} does not say {row['sound']}"
        if row["letters"] in row["also"]:
            yield f"{letters} beside itself"


def _has_letters(word: str, letters: str) -> bool:
    first, _, last = letters.partition("_")
    return re.search(f"{first}.+{last}" if last else first, word) is not None


def _has_sound(way: Phones, sound: Phones) -> bool:
    return any(is_said_as(way[start : start + len(sound)], sound) for start in range(len(way)))


def _ways(word: str) -> frozenset[Phones]:
    """Return how a word is said; what CMUdict lacks is said as base + ending."""
    listed = ways(word)
    if listed:
        return listed
    return frozenset(way + _tail(way, word) for base in bases_of(word) for way in ways(base))


_TAILS = {
    "ing": ("@", "NG"),
    "est": ("@", "S", "T"),
    "er": ("ER",),
    "ly": ("L", "IY"),
    "y": ("IY",),
}


def _tail(base: Phones, form: str) -> Phones:
    """Say a regular ending behind a base, by its last sound."""
    last = base[-1]
    if form.endswith("ed"):
        return ("@", "D") if last in ("T", "D") else ("T",) if last in _VOICELESS else ("D",)
    if form.endswith("s"):
        return ("@", "Z") if last in _HISSING else ("S",) if last in _VOICELESS else ("Z",)
    return next((tail for ending, tail in _TAILS.items() if form.endswith(ending)), ())


_VOICELESS = frozenset({"P", "T", "K", "F", "TH", "S", "SH", "CH"})
_HISSING = frozenset({"S", "Z", "SH", "ZH", "CH", "JH"})


def _rule(section: Data, lesson: Data) -> Iterator[str]:
    for point in section["points"]:
        yield from _ending(point["word"], point["base"], point["sound"], lesson)
        if not point["says"]:
            yield f"nothing is said of {point['word']}"
    yield from _oral(section, lesson)


def _ending(word: str, base: str, sound: str, lesson: Data) -> Iterator[str]:
    """Say whether a form does not come from its base, or does not say the sound."""
    if base and base not in bases_of(word):
        yield f"{word} does not come from {base}"
    if not sound or not sound.startswith("/"):
        return
    said = bare_phones(sound)
    if lesson["kind"] == "endings":
        fits = any(is_said_as(way[-len(said) :], said) for way in _ways(word))
    else:
        fits = any(_has_sound(way, said) for way in _ways(word))
    if not fits:
        yield f"{word} does not say {sound}"


def _build(section: Data, lesson: Data) -> Iterator[str]:
    for row in section["words"]:
        shows = [step["shows"] for step in row["steps"]]
        if not shows or shows[-1] != row["word"] or (row["base"] and shows[0] != row["base"]):
            yield f"{row['word']} is not built: {shows}"
        yield from _ending(row["word"], row["base"], row["sound"], lesson)


def _list(section: Data, _: Data) -> Iterator[str]:
    for row in section["words"]:
        word, phones = row["word"], tuple(row["arpabet"].split())
        places = [place for piece in row["pieces"] for place in piece["at"]]
        signs = [sign for piece in row["pieces"] for sign in piece["sounds"]]
        if sorted(places) != list(range(len(word))):
            yield f"{word}: letters {places}"
        # The vowel of -es and -ed is always shown as IH0; CMUdict writes AH0 or IH0.
        if plain(signs) != plain(phones):
            yield f"{word}: {signs} is not {phones}"
        for piece in row["pieces"]:
            spelled = "".join(word[place] for place in piece["at"])
            if spelled != piece["letters"].replace("_", ""):
                yield f"{word}: {piece['letters']} is not at {piece['at']}"
        yield from _said(word, row["arpabet"])


def _said(word: str, arpabet: str) -> Iterator[str]:
    """Say whether a dictionary does not have a word said so."""
    phones = tuple(arpabet.split())
    bare = tuple(phone.rstrip("012") for phone in phones)
    if phones not in listed_ways(word) and not any(is_said_as(way, bare) for way in _ways(word)):
        yield f"{word} is not said {arpabet}"


def _sentences(section: Data, _: Data) -> Iterator[str]:
    texts = [line["text"] for line in section["lines"]]
    if len(texts) != len(set(texts)):
        yield "a sentence is there twice"
    for line in section["lines"]:
        words = spelled_words(line["text"])
        if words.count(line["word"]) != 1:
            yield f"{line['word']} is not once in: {line['text']}"
        filled = line["gap"].replace("____", line["word"])
        if line["gap"].count("____") != 1 or filled.lower() != line["text"].lower():
            yield f"the gap of: {line['text']}"
        if not {*line["not_yet"]} <= {*words} - {line["word"]}:
            yield f"not yet read: {line['not_yet']} of: {line['text']}"


def _sort(section: Data, lesson: Data) -> Iterator[str]:
    for sorting in section["sortings"]:
        keyed = [word for group in sorting["groups"] for word in group["words"]]
        headings = [group["heading"] for group in sorting["groups"]]
        if sorted(keyed) != sorted(section["words"]):
            yield f"the key by {sorting['by']} has other words"
        if len(headings) < 2 or len(headings) != len(set(headings)):
            yield f"the groups {headings}"
        for group in sorting["groups"]:
            for word in group["words"]:
                yield from _sorted(word, sorting["by"], group["heading"], lesson)


def _sorted(word: str, by: str, heading: str, lesson: Data) -> Iterator[str]:
    if by == "number of sounds":
        fits = any(len(way) == int(heading.partition(" ")[0]) for way in _ways(word))
    elif by == "sound" and heading.startswith("/"):
        fits = not list(_ending(word, "", heading, lesson))
    elif by == "spelling" and re.fullmatch("-?[a-z_]+", heading):
        letters = heading.strip("-")
        fits = word.endswith(letters) if heading.startswith("-") else _has_letters(word, letters)
    else:
        fits = True
    if not fits:
        yield f"{word} under {heading}"


def _bases(section: Data, _: Data) -> Iterator[str]:
    for row in section["words"]:
        for base in row["bases"]:
            if base not in bases_of(row["word"]):
                yield f"{row['word']} does not come from {base}"
        if not row["why"]:
            yield f"neither a base nor a reason for {row['word']}"


def _dictation(section: Data, lesson: Data) -> Iterator[str]:
    for row in section["words"]:
        yield from _said(row["word"], row["arpabet"])
    sounds = [row["sound"] for row in section["sounds"]]
    if len(sounds) != len(set(sounds)):
        yield "a sound is there twice"
    for row in section["sounds"]:
        if not row["spellings"] or len(row["spellings"]) != len(set(row["spellings"])):
            yield f"the spellings of {row['sound']}"
    sorts = [s["words"] for s in lesson["sections"] if s["name"] == "sort"]
    if sorts and not {*spelled_words(section["sentence"])}.isdisjoint(sorts[0]):
        yield "the sentence has a word of the sort"


def _check(section: Data, lesson: Data) -> Iterator[str]:
    for row in section["questions"]:
        word, answer, how = row["word"], row["answer"], row["how"]
        if not (answer and row["shows"] and row["ask"]):
            yield f"no answer for {word}"
        if how in ("spell with the ending", "read", "write"):
            shown = spelled_words(row["ask"])
            fits = answer == word and word in shown
        elif how == "find the base":
            fits = answer in bases_of(word)
        elif how == "say the ending":
            fits = not list(_ending(word, "", answer, lesson))
        elif how == "say the sound":
            fits = any(_has_sound(way, bare_phones(answer)) for way in _ways(word))
        elif how == "ending or not":
            fits = answer == "no"
        else:
            fits = how == "by ear"
        if not fits:
            yield f"{how}: {answer} for {word}"
    yield from _oral(section, lesson)


_CHECKS: dict[str, Callable[[Data, Data], Iterator[str]]] = {
    "warmup": _warmup,
    "review": _review,
    "rule": _rule,
    "build": _build,
    "list": _list,
    "sentences": _sentences,
    "sort": _sort,
    "bases": _bases,
    "dictation": _dictation,
    "check": _check,
}
