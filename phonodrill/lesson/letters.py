"""Say-and-spell review: the correspondences that the words of a lesson are made of."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from phonodrill.graphemes.correspondence import Correspondence, Kind, write_sounds
from phonodrill.lesson.focus import spellings_of_sound
from phonodrill.lesson.plan import REVIEW
from phonodrill.lesson.request import Context
from phonodrill.lesson.tree import Letter, Review
from phonodrill.lesson.words import Words
from phonodrill.lexicon.entry import Counted
from phonodrill.sounds.normal import WEAK
from phonodrill.sounds.notation import symbols
from phonodrill.taught.tokens import usual

R_VOWEL = "ɝ"
SCRIPT = (
    "Show the letters: the class says the sound. Then say the sound, letters hidden: "
    "the class writes the letters."
)


def compose_review(context: Context, words: Words, minutes: int, count: int) -> Review:
    """Choose the correspondences: those of the focus, then those of most words of the lesson."""
    key_words: dict[str, str] = {}
    counts: dict[str, int] = {}
    # The shortest word shows its letters best.
    for word in sorted((*words.listed, *words.build, *words.rule), key=len):
        for code in dict.fromkeys(context.lexicon.chunks_of(word)):
            counts[code] = counts.get(code, 0) + 1
            key_words.setdefault(code, word)
    by_code = {row.code: row for row in _usual_rows(context)}
    focus = {row.code: row for row in context.focus.rows if row.code in key_words}
    others = sorted(
        (row for code, row in by_code.items() if code in counts and code not in focus),
        # Spellings of several letters are what a class forgets: they go first.
        # So do those of the ending, each in every sound it has here.
        key=lambda row: (
            not _is_of_focus(row, context),
            len(row.correspondence.spelling) == 1,
            -counts[row.code],
            row.code,
        ),
    )
    rows = [row for row in (*focus.values(), *others) if _is_shown(row)][:count]
    letters = tuple(
        Letter(
            shown(row.correspondence),
            _heard_in(key_words[row.code], row, context),
            key_words[row.code],
            tuple(_also_right(row, rows, context)),
        )
        for row in rows
    )
    return Review(REVIEW, minutes, "Say and spell", SCRIPT, letters)


def _also_right(row: Counted, rows: Sequence[Counted], context: Context) -> Iterator[str]:
    """Yield what else a class may write for the sound: all it was taught, as in the dictation."""
    found = row.correspondence
    if found.kind is Kind.ENDING:
        others = [other for other in rows if other.correspondence.kind is Kind.ENDING]
        others = [other for other in others if _sound(other) == _sound(row)]
    else:
        others = [
            o for o in spellings_of_sound(found.sound, context.lexicon) if is_taught(o, context)
        ]
    yield from dict.fromkeys(
        shown(other.correspondence) for other in others if other.code != row.code
    )


def is_taught(row: Counted, context: Context) -> bool:
    """Whether the class was taught a correspondence; without a list, every one."""
    return context.known is None or row.code in context.known.things


def _heard_in(word: str, row: Counted, context: Context) -> str:
    """Write the sound as its word has it: er in *bigger* is weak, in *her* it is not."""
    entry = context.lexicon.get(word)
    if R_VOWEL not in _sound(row) or entry is None:
        return heard(row.correspondence, context)
    said = entry.usable_pronunciations[0]
    signs = symbols(said.shown, said.stress, context.style)
    chunks = context.lexicon.chunks(said.chunks)
    own = (chunk.sounds for chunk in chunks if chunk.correspondence == row.correspondence)
    places = next(own, ())
    written = "".join(signs[place] for place in places)
    return f"/{written}/" if written else heard(row.correspondence, context)


def _usual_rows(context: Context) -> list[Counted]:
    """Return each spelling with its usual sound, and the endings with each of theirs."""
    by_spelling: dict[str, list[Counted]] = {}
    endings = []
    for row in context.lexicon.correspondences():
        if row.correspondence.kind is Kind.ENDING:
            endings.append(row)
        else:
            by_spelling.setdefault(row.correspondence.spelling, []).append(row)
    return [*endings, *(usual(spelling, rows) for spelling, rows in by_spelling.items())]


def shown(found: Correspondence) -> str:
    """Write a spelling as it is shown: an ending with its hyphen."""
    return f"-{found.spelling}" if found.kind is Kind.ENDING else found.spelling


def heard(found: Correspondence, context: Context) -> str:
    """Write its sound between slashes; the weak vowel of an ending as the endings have it."""
    sounds = found.sound.replace(WEAK, "ɪ") if found.kind is Kind.ENDING else found.sound
    return f"/{write_sounds(sounds, context.style).replace(' ', '')}/"


def _is_of_focus(row: Counted, context: Context) -> bool:
    found = row.correspondence
    return found.kind is Kind.ENDING and found.spelling in context.focus.endings


def _sound(row: Counted) -> str:
    return row.correspondence.sound


def _is_shown(row: Counted) -> bool:
    found = row.correspondence
    return found.is_regular and bool(found.sound) and not found.is_weak and not found.is_before_rr
