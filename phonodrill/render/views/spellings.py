"""How the spellings of a sound, or the sounds of a spelling, are shown."""

from __future__ import annotations

from typing import TYPE_CHECKING

from phonodrill.graphemes.correspondence import write_sounds
from phonodrill.reading.spellings import Share
from phonodrill.render.document import Document, Section, Table
from phonodrill.sounds.notation import SCRIPT, Notation

if TYPE_CHECKING:
    from phonodrill.render.fields import reading


def document(shares: list[Share], sound: str, spelling: str, notation: Notation | None) -> Document:
    """Show shares by word and by use.

    Args:
        shares: the commonest by word first.
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
        "shares": [_record(share) for share in shares],
    }
    records = [{**_record(share), "examples": ", ".join(share.examples)} for share in shares]
    about = "base words of the vocabulary; 'of text' weighs each word by how often it is used"
    return Document(title, about, (Section("", Table(headings, rows)),), data, records)


def _record(share: Share) -> reading.SpellingShare:
    return {
        "spelling": share.spelling,
        "arpabet": write_sounds(share.sound, Notation.ARPABET),
        "words": share.words,
        "share_of_words": round(share.of_words, 4),
        "share_of_uses": round(share.of_uses, 4),
        "regular": share.is_regular,
        "examples": list(share.examples),
    }
