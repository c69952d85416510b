"""From results to documents: what is shown of each kind of result."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from phonodrill.endings.classify import Ending
from phonodrill.endings.sort import By, Sort
from phonodrill.lexicon.entry import Entry, Pronunciation
from phonodrill.render.document import Document, Questions, Section, Table, Words
from phonodrill.sounds.notation import Notation, symbols
from phonodrill.tasks import phrases
from phonodrill.tasks.item import Item
from phonodrill.tasks.warmup import WarmUp

SCRIPT = Notation.MARKS
"""How sounds are written in what a teacher says, unless asked otherwise."""


def warmup(result: WarmUp, notation: Notation | None) -> Document:
    """Show a warm-up: lines to say, answers, and both in sounds."""
    script = notation or SCRIPT
    lines = tuple(
        (
            phrases.ask(item, script),
            phrases.answer(item),
            f"/{_spaced(item.stimulus_said, script)}/ → /{_spaced(item.answer_said, script)}/",
        )
        for item in result.items
    )
    records = [_item(item, script, notation or Notation.IPA) for item in result.items]
    data = {
        "task": result.task,
        "at": str(result.at),
        "seed": result.seed,
        "notes": list(result.notes),
        "items": records,
    }
    return Document(
        f"Oral warm-up: {phrases.TITLES[result.task, result.at].lower()}",
        f"{_count(len(lines), 'item')}, words of band {result.query.band} or lower, "
        f"seed {result.seed}",
        (Section("", Questions(lines)),),
        data,
        records,
    )


def sort(result: Sort, notation: Notation | None, seed: int) -> Document:
    """Show a sort: the mixed list, then the groups as the answer key."""
    records = [
        _ending(ending) for group in result.groups for ending in group.words
    ]
    sections = [Section("To sort", Words(result.to_sort))]
    for group in result.groups:
        heading = _label(group.label, result.by, notation or SCRIPT)
        sections.append(
            Section(f"{heading}  ({len(group.words)})", Words(tuple(e.word for e in group.words)))
        )
    watch_outs = tuple((r["word"], r["watch_out"]) for r in records if r["watch_out"])
    if watch_outs:
        sections.append(Section("Watch out", Table(("word", "why"), watch_outs)))
    data = {
        "by": str(result.by),
        "seed": seed,
        "groups": [
            {
                str(result.by): group.label,
                "words": [_ending(ending) for ending in group.words],
            }
            for group in result.groups
        ],
        "left_out": [{"word": word, "why": why} for word, why in result.left_out],
    }
    what = "sound" if result.by is By.SOUND else "spelling"
    about = f"{_count(len(records), 'word')}, seed {seed}; the groups are the answer key"
    return Document(f"Sort by the {what} of the ending", about, tuple(sections), data, records)


def word(
    entry: Entry,
    notation: Notation | None,
    *,
    forms: list[str],
    bases: list[str],
    homophones: list[str],
    rhymes: list[str],
    fit: str,
) -> Document:
    """Show all that is known of a word."""
    said = entry.pronunciations
    facts = {
        "band": f"{entry.band} ({entry.reason})" if entry.reason else str(entry.band),
        "in class": fit,
        "frequency (Zipf)": f"{entry.zipf:.2f}",
        "parts of speech": ", ".join(entry.parts_of_speech) or "-",
        "base word": ", ".join(bases) or "-",
        "forms": ", ".join(forms) or "-",
        "sounds the same": ", ".join(homophones) or "-",
        "rhymes with": ", ".join(rhymes) or "-",
    }
    ways = tuple(
        (
            f"/{_spaced(way, notation or SCRIPT)}/",
            way.arpabet,
            str(way.syllables),
            way.origin,
            way.second_opinion or "not listed",
            way.meaning or "-",
        )
        for way in said
    )
    data = {
        "word": entry.word,
        "band": entry.band,
        "zipf": entry.zipf,
        "parts_of_speech": list(entry.parts_of_speech),
        "pronunciations": [_pronunciation(way) for way in said],
        "bases": bases,
        "forms": forms,
        "homophones": homophones,
        "rhymes": rhymes,
        "in_class": fit,
    }
    records = [
        {"word": entry.word, "band": entry.band, "zipf": entry.zipf} | _pronunciation(way)
        for way in said
    ]
    headings = ("sounds", "ARPAbet", "syllables", "from", "second dictionary", "reading")
    sections = (
        Section("", Table(("what", "value"), tuple(facts.items()))),
        Section("How it is said", Table(headings, ways)),
    )
    return Document(entry.word, "", sections, data, records)


def lexicon(
    sources: list[tuple[str, str, str, str, str]], counts: Mapping[str, int], checks: Table
) -> Document:
    """Show where the words come from, how many there are, and what differs."""
    names = ("name", "version", "license", "credit", "used_for")
    records = [dict(zip(names, source, strict=True)) for source in sources]
    shown = tuple((name, f"{number:,}") for name, number in counts.items())
    sections = [
        Section("Sources", Table(("source", "version", "license", "used for"),
                                 tuple((s[0], s[1], s[2], s[4]) for s in sources))),
        Section("Credits", Table(("source", "credit"), tuple((s[0], s[3]) for s in sources))),
        Section("Counts", Table(("what", "how many"), shown)),
    ]
    if checks.rows:
        sections.append(Section("Forms that are not base + ending", checks))
    data = {
        "sources": records,
        "counts": dict(counts),
        "disagreements": [dict(zip(checks.headings, row, strict=True)) for row in checks.rows],
    }
    return Document("The lexicon", "", tuple(sections), data, records)


def _item(item: Item, script: Notation, notation: Notation) -> dict[str, Any]:
    return {
        "task": item.task,
        "at": str(item.at),
        "stimulus": item.stimulus,
        "stimulus_arpabet": item.stimulus_said.arpabet,
        "stimulus_ipa": item.stimulus_said.ipa,
        "sound": phrases.sound_of(item, notation),
        "answer": item.answer,
        "answer_arpabet": item.answer_said.arpabet,
        "answer_ipa": item.answer_said.ipa,
        "also": list(item.also),
        "say": phrases.ask(item, script),
        "answer_line": phrases.answer(item),
        "band": item.band,
        "difficulty": item.difficulty,
        "made_up": item.made_up,
    }


def _ending(ending: Ending) -> dict[str, Any]:
    return {
        "word": ending.word,
        "base": ending.base,
        "ending": ending.ending,
        "sound": ending.sound,
        "rule": ending.rule,
        "arpabet": ending.said.arpabet,
        "part_of_speech": ", ".join(ending.parts_of_speech),
        "watch_out": ending.watch_out,
    }


def _pronunciation(way: Pronunciation) -> dict[str, Any]:
    return {"arpabet": way.arpabet, "ipa": way.ipa, "syllables": way.syllables}


def _label(label: str, by: By, notation: Notation) -> str:
    if by is By.SPELLING:
        return f"-{label}"
    if notation is Notation.IPA:
        return f"/{label}/"
    sounds = label.replace("aɪ", "I")
    stress = "1" if label in ("iz", "aɪz") else "0" * (len(sounds) - 1)
    return f"/{''.join(symbols(sounds, stress, notation))}/"


def _spaced(said: Pronunciation, notation: Notation) -> str:
    return " ".join(symbols(said.sounds, said.stress, notation))


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}" + "s" * (number != 1)
