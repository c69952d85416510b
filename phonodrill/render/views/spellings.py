"""How the spellings of a sound, or the sounds of a spelling, are shown."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from phonodrill.graphemes.correspondence import write_sounds
from phonodrill.reading.letter_places import Habit
from phonodrill.reading.spellings import Share
from phonodrill.render.document import Document, Section, Table
from phonodrill.sounds.notation import SCRIPT, Notation

if TYPE_CHECKING:
    from phonodrill.render.fields import reading


Habits = Mapping[tuple[str, str], Habit]
"""By spelling and sound."""


def document(
    shares: Sequence[Share], habits: Habits, sound: str, spelling: str, notation: Notation | None
) -> Document:
    """Show shares by word and by use, and where the spellings stand.

    Args:
        shares: the commonest by word first.
        habits: where the spellings stand in words of one syllable.
        sound: codes of the sound that was asked for, or empty for all.
        spelling: the letters that were asked for, or empty.
        notation: how sounds are written.
    """
    style = notation or SCRIPT
    rows = tuple(
        (
            f"/{write_sounds(share.sound, style)}/",
            share.spelling,
            f"{share.of_words:.1%}",
            f"{share.of_uses:.1%}",
            str(share.words),
            "" if share.is_regular else "irregular",
            ", ".join(share.examples),
        )
        for share in shares
    )
    title = f"Sounds of {spelling}" if spelling else "Spellings of every sound"
    if sound:
        title = f"Spellings of /{write_sounds(sound, style)}/"
    headings = ("sound", "spelling", "of words", "of text", "words", "", "examples")
    data: reading.Spellings = {
        "sound": write_sounds(sound, Notation.ARPABET),
        "spelling": spelling,
        "shares": [_record(share, habits) for share in shares],
    }
    about = "base words of the vocabulary; 'of text' weighs each word by how often it is used"
    sections = (Section("", Table(headings, rows)), *_places(shares, habits, style))
    return Document(title, about, sections, data, [_row(share) for share in data["shares"]])


def _places(shares: Sequence[Share], habits: Habits, style: Notation) -> Iterator[Section]:
    """Yield the table of where the spellings stand, if anything can be said of them."""
    # A spelling of two sounds that many say alike is in the list of either.
    keys = dict.fromkeys((share.spelling, share.sound) for share in shares)
    rows = tuple(
        (
            f"/{write_sounds(sound, style)}/",
            spelling,
            habit.where,
            ", ".join(place.word for place in (*habit.breaking, *habit.instead)),
        )
        for spelling, sound in keys
        if (habit := habits.get((spelling, sound)))
    )
    headings = ("sound", "spelling", "stands", "exceptions")
    if rows:
        yield Section("In words of one syllable", Table(headings, rows))


def _row(share: reading.SpellingShare) -> dict[str, object]:
    """Write a share as a row of a table: lists of words as texts."""
    return {
        key: ", ".join(value) if isinstance(value, list) else value for key, value in share.items()
    }


def _record(share: Share, habits: Habits) -> reading.SpellingShare:
    habit = habits.get((share.spelling, share.sound))
    return {
        "spelling": share.spelling,
        "arpabet": write_sounds(share.sound, Notation.ARPABET),
        "words": share.words,
        "share_of_words": round(share.of_words, 4),
        "share_of_uses": round(share.of_uses, 4),
        "regular": share.is_regular,
        "examples": list(share.examples),
        "place": str(habit.where) if habit else "",
        "otherwise": [place.word for place in habit.breaking] if habit else [],
        "instead": [place.word for place in habit.instead] if habit else [],
    }
