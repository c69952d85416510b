"""How a sort is shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from phonodrill.endings.classify import Ending
from phonodrill.endings.reasons import Explained, Reason
from phonodrill.endings.sort import By, Sort
from phonodrill.endings.sounds import written_sound
from phonodrill.graphemes.correspondence import write_sounds
from phonodrill.render.document import Document, Section, Table, Words, counted
from phonodrill.sounds.inventory import VOICELESS
from phonodrill.sounds.notation import SCRIPT, Notation

if TYPE_CHECKING:
    from phonodrill.render.fields import endings

TITLES = {
    By.SOUND: "Sort by the sound of the ending",
    By.SPELLING: "Sort by the spelling of the ending",
    By.RULE: "Sort by the rule of the ending",
    By.BASE: "Sort by the base word",
}


def document(result: Sort, notation: Notation | None, seed: int) -> Document:
    """Show a sort: the mixed list, then the groups as the answer key."""
    records = [_ending(ending) for group in result.groups for ending in group.words]
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
    about = f"{counted(len(records), 'word')}, seed {seed}; the groups are the answer key"
    return Document(TITLES[result.by], about, tuple(sections), data, records)


def reasons(sort: Sort, explained: Explained, notation: Notation | None) -> tuple[Section, ...]:
    """Show why each word is where it is, the same words by spelling, and what is left out.

    Args:
        sort: the sort that is shown.
        explained: its reasons.
        notation: how sounds are written.
    """
    style = notation or SCRIPT
    sections = []
    if sort.by is By.SOUND:
        by_spelling: dict[str, list[str]] = {}
        for reason in explained.reasons:
            by_spelling.setdefault(reason.ending.ending, []).append(reason.ending.word)
        spellings = tuple(
            (_label(spelled, By.SPELLING, style), ", ".join(words))
            for spelled, words in by_spelling.items()
        )
        sections = [Section("The same words by spelling", Table(("spelled", "words"), spellings))]
    rows = tuple(
        (
            reason.ending.word,
            reason.ending.base,
            f"-{reason.ending.ending}" if reason.ending.ending else "-",
            reason.spelled,
            written_sound(reason.ending.sound, style) or "-",
            _why_said(reason, style),
        )
        for reason in explained.reasons
    )
    headings = ("word", "base", "ending", "why so spelled", "it says", "why so said")
    sections.append(Section("The reason of each", Table(headings, rows)))
    if explained.left_out:
        sections.append(Section("Left out", Table(("word", "why"), explained.left_out)))
    return tuple(sections)


def _why_said(reason: Reason, style: Notation) -> str:
    ending = reason.ending
    if not reason.before:
        return "an exception: see Watch out" if ending.watch_out else "always"
    before = f"/{write_sounds(reason.before, style)}/"
    if ending.ending == "ies":
        return f"the base ends in {before}"
    if ending.sound in ("ɪz", "ɪd"):
        return f"after {before}: a syllable of its own"
    return f"after {before}, said {'without' if reason.before in VOICELESS else 'with'} voice"


def _ending(ending: Ending) -> endings.SortedWord:
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


def _label(label: str, by: By, notation: Notation) -> str:
    if by is By.SPELLING:
        return f"-{label}"
    return written_sound(label, notation) if by is By.SOUND else label
