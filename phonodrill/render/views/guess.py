"""How a guessed reading is shown: always marked as a guess."""

from __future__ import annotations

from phonodrill.graphemes.chunk import Chunk
from phonodrill.guess import Guess
from phonodrill.render.document import Document, Section, Table
from phonodrill.sounds.notation import SCRIPT, Notation

ABOUT = "a guess: no dictionary used here has this word, so check it by ear"


def document(guess: Guess, notation: Notation | None) -> Document:
    """Show a guessed reading."""
    said = guess.said
    facts = (
        ("sounds", f"/{said.spaced(notation or SCRIPT)}/ (a guess)"),
        ("ARPAbet", said.arpabet),
        ("syllables", str(said.syllables)),
        ("letters", " ".join(chunk.written(guess.word) for chunk in guess.chunks)),
        ("guessed from", " + ".join(guess.parts) or "its letters"),
    )
    way = {
        "arpabet": said.arpabet,
        "ipa": said.ipa,
        "syllables": said.syllables,
        "origin": said.origin,
    }
    chunks = [
        {
            "letters": chunk.written(guess.word),
            "at": list(chunk.letters),
            "arpabet": _phones(guess, chunk),
            "irregular": not chunk.is_regular,
        }
        for chunk in guess.chunks
    ]
    data = {
        "word": guess.word,
        "guess": True,
        "guessed_from": list(guess.parts),
        "pronunciations": [way | {"chunks": chunks}],
    }
    sections = (Section("", Table(("what", "value"), facts)),)
    return Document(guess.word, ABOUT, sections, data, [{"word": guess.word, "guess": True} | way])


def _phones(guess: Guess, chunk: Chunk) -> list[str]:
    phones = guess.said.arpabet.split()
    return [phones[place] for place in chunk.sounds]
