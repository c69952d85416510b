"""What a wrongly spelled word shows: in its ending, its base, or one of its spellings."""

from __future__ import annotations

from collections.abc import Iterator

from phonodrill.endings.classify import Ending, classify
from phonodrill.endings.rule import Rule
from phonodrill.endings.table import row_of
from phonodrill.graphemes.chunk import Chunk
from phonodrill.lesson.focus import write_sound
from phonodrill.lexicon.store import Lexicon
from phonodrill.records.confused_sounds import LETTER_NAMES, swapped
from phonodrill.sounds.inventory import VOWELS

_AS_HEARD = {"s": "s", "z": "z", "ɪz": "iz", "t": "t", "d": "d", "ɪd": "id"}


def confused_in_form(word: str, said: str, lexicon: Lexicon) -> str:
    """Say which step of adding an ending went wrong.

    Args:
        word: the form that was to be written.
        said: what was written instead.
        lexicon: the open lexicon.
    """
    written = _letters(said)
    ways = classify(word, lexicon, lexicon.ending_exceptions())
    found = (_in_form(way, row_of(way, lexicon), written) for way in ways if written != word)
    return next(filter(None, found), "")


def _in_form(way: Ending, rule: Rule, said: str) -> str:
    base, added = way.base, rule.adds
    old, new = rule.turns
    silent = base.removesuffix("e")
    ends_in_e = silent != base
    is_only_added = said in {base + ending for ending in (added, way.suffix, f"e{way.suffix}")}
    heard = _AS_HEARD.get(way.sound)
    return _first_true(
        (said == base, "leaves the ending out"),
        (is_only_added and rule.doubles, "does not double the consonant"),
        (is_only_added and (old, new) == ("e", ""), "does not drop the e"),
        (is_only_added and old and new, f"does not change {old} to {new}"),
        (said == f"{base}s" and added == "es", "adds only s where es is needed"),
        (said == f"{base}es" and added == "s", "adds es where only s is added"),
        (
            ends_in_e and said == silent + silent[-1:] + added,
            "drops the e and doubles the consonant",
        ),
        (said == base + base[-1] + added, "doubles a consonant that stays single"),
        (ends_in_e and said == silent + added and old != "e", "drops an e that stays"),
        (
            heard and said in {f"{base}{heard}", f"{silent}{heard}"},
            "writes the ending as it sounds",
        ),
    )


def _first_true(*cases: tuple[object, str]) -> str:
    """Return the text of the first case that holds; empty if none does."""
    return next((text for holds, text in cases if holds), "")


def confused_base(word: str, base: str, said: str, lexicon: Lexicon) -> str:
    """Say which step of taking an ending off went wrong.

    Args:
        word: the form it was taken off.
        base: what is right.
        said: what was written instead.
        lexicon: the open lexicon.
    """
    written = _letters(said)
    ways = classify(word, lexicon, lexicon.ending_exceptions())
    way = next((way for way in ways if way.base == base), None)
    if way is None or written == base:
        return ""
    rule = row_of(way, lexicon)
    old, new = rule.turns
    silent = base.removesuffix("e")
    return _first_true(
        (written == word, "leaves the ending on"),
        (rule.doubles and written == base + base[-1], "leaves the doubled consonant"),
        (old == "e" and not new and written == silent, "does not put the e back"),
        (old == "y" and written.startswith(base[:-1]), "does not put the y back"),
        (old and written == base.removesuffix(old) + new, f"does not turn {new} back to {old}"),
        (written == f"{base}e", "takes the e of the ending for one of the base"),
    )


def confused_spelling(word: str, said: str, lexicon: Lexicon) -> str:
    """Say which spelling of a word went wrong, and how.

    Args:
        word: that was to be written.
        said: what was written instead.
        lexicon: the open lexicon.
    """
    written = _letters(said)
    entry = lexicon.get(word)
    if not written or written == word or entry is None or not entry.usable_pronunciations:
        return ""
    pronounced = entry.usable_pronunciations[0]
    chunks = lexicon.chunks(pronounced.chunks)
    if written in _by_name(word, chunks, pronounced.sounds):
        return "spells by the letter’s name"
    for number, chunk in enumerate(chunks):
        own = "".join(pronounced.sounds[i] for i in chunk.sounds)
        found = _in_chunk(word, chunk, own, written, lexicon)
        if found:
            among = _beside_consonant(chunks, number, pronounced.sounds)
            return found + " of the cluster" * (among and found.startswith("leaves"))
    return ""


def _by_name(word: str, chunks: tuple[Chunk, ...], sounds: str) -> Iterator[str]:
    """Yield the word as written if a run of its sounds is taken for the name of a letter."""
    for start in range(len(chunks)):
        for end in range(start + 1, min(start + 3, len(chunks)) + 1):
            run = chunks[start:end]
            heard = "".join(sounds[i] for chunk in run for i in chunk.sounds)
            places = sorted(place for chunk in run for place in chunk.letters)
            for letter, name in LETTER_NAMES.items():
                if name == heard or (letter == "u" and heard == "u"):
                    yield _replaced(word, places, letter)


def _replaced(word: str, places: list[int], letters: str) -> str:
    return "".join(
        letters if place == places[0] else "" if place in places else letter
        for place, letter in enumerate(word)
    )


def _in_chunk(word: str, chunk: Chunk, sounds: str, written: str, lexicon: Lexicon) -> str:
    """Say what stands for one spelling of a word, if all the rest of it is right."""
    instead = _instead(word, sorted(chunk.letters), written)
    if instead is None or not sounds:
        return ""
    shown = "".join(map(write_sound, sounds))
    rows = [r.correspondence for r in lexicon.correspondences()]
    meant = [row for row in rows if row.spelling == instead and row.is_regular]
    sound = meant[0].sound if meant else ""
    is_one_for_one = len(sound) == len(sounds) == 1 and (sound in VOWELS) == (sounds in VOWELS)
    return _first_true(
        (not instead, f"leaves out {shown}"),
        (any(sounds in row.sounds for row in meant), f"spells {shown} in another way: {instead}"),
        (is_one_for_one, swapped(sounds, sound) if is_one_for_one else ""),
    )


def _instead(word: str, places: list[int], written: str) -> str | None:
    """Return what was written for some letters of a word, if all around it is right.

    Between the letters of a split vowel stands the rest of the word, so that a spelling
    put in the place of a_e may be split, too.
    """
    before, inside, after = word[: places[0]], "", word[places[-1] + 1 :]
    if len(places) != places[-1] - places[0] + 1:
        inside = word[places[0] + 1 : places[-1]]
    fits = written.startswith(before) and written.endswith(after)
    if not fits or len(written) < len(before) + len(after):
        return None
    instead = written[len(before) : len(written) - len(after)]
    if not inside:
        return instead
    head, found, tail = instead.partition(inside)
    return f"{head}_{tail}".strip("_") if found else None


def _beside_consonant(chunks: tuple[Chunk, ...], number: int, sounds: str) -> bool:
    """Whether the sound of a chunk and one beside it are consonants."""

    def is_consonant(place: int) -> bool:
        inside = 0 <= place < len(chunks) and chunks[place].sounds
        return bool(inside) and all(sounds[i] not in VOWELS for i in chunks[place].sounds)

    return is_consonant(number) and (is_consonant(number - 1) or is_consonant(number + 1))


def _letters(text: str) -> str:
    return "".join(char for char in text.lower() if char.isalpha())
