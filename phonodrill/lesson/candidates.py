"""The words a lesson may draw on: each with its condition and how it is sorted."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from collections.abc import Set as AbstractSet
from typing import NamedTuple

from phonodrill.endings.classify import Ending
from phonodrill.endings.kinds import kind_of
from phonodrill.endings.sounds import written_sound
from phonodrill.endings.suffix import PARTS_OF, SUFFIX_OF
from phonodrill.endings.vocabulary import known_endings, some_of_each_kind, words_with_endings
from phonodrill.graphemes.chunk import CLOSING_CODE, ODD_CODE
from phonodrill.graphemes.correspondence import Kind as CorrespondenceKind
from phonodrill.lesson.focus import Kind, spellings_of_sound, write_sound
from phonodrill.lesson.request import Context
from phonodrill.lexicon.entry import Counted, Spelled
from phonodrill.reading.decodable import Wanted, find_words
from phonodrill.sounds.accents import MERGERS, Merger
from phonodrill.sounds.features import distance
from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.units import has_r_vowel, hides_y
from phonodrill.taught.tokens import usual

ENOUGH = 3
"""Words a condition must have to be one that every lesson covers."""
ENOUGH_RIVALS = 6
MOST_TAKEN_APART = 700
"""Words with an ending that lessons draw on: enough for ten that share none, and read soon."""
NO_WORDS: frozenset[str] = frozenset()
SPLIT = "_"
ANY_OTHER = "any other base"
"""What the last row of a rule table says of its base, which ends in nothing of its own."""
_BANG = Merger("bang", "Eæ", before="ŋ")
"""Many say the vowel of *rang* near that of *rain* (Labov, Ash & Boberg 2006; from memory)."""
_LOOKS_SPLIT = re.compile(r"[aeiou][^aeiou]{1,2}e")
"""How *have* ends: as *cave* does, though its a says what it says in *cat*."""
FIRST, INSIDE, LAST = "at the beginning", "in the middle", "at the end"
BEFORE_E = "before an e at the end"
FEWEST_SOUNDS, MOST_SOUNDS = 2, 5
MOST_SYLLABLES = 2
_PLAIN = (CorrespondenceKind.SINGLE, CorrespondenceKind.DOUBLED, CorrespondenceKind.DIGRAPH)


class Candidate(NamedTuple):
    """A word that may be in the lesson.

    Attributes:
        word: the word.
        base: its base word, or itself.
        condition: which condition of the focus it meets; empty for a rival.
        spelling, sound: under which headings it is sorted.
        syllables: how many it has.
        parts_of_speech: how it is used; empty where not yet looked up.
        ending: the word taken apart, for a focus on endings.
        normal: normal form of how it is said.
    """

    word: str
    base: str
    condition: str
    spelling: str
    sound: str
    syllables: int
    parts_of_speech: tuple[str, ...] = ()
    ending: Ending | None = None
    normal: str = ""


class Vocabulary(NamedTuple):
    """All words for a focus.

    Attributes:
        words: those with the focus, by spelling.
        rivals: those to sort against it, by spelling.
        review: short known words without it.
        conditions: those that a lesson covers, the commonest first.
        rare: conditions that too few words have to be covered every time.
    """

    words: Mapping[str, Candidate]
    rivals: Mapping[str, Candidate]
    review: tuple[str, ...]
    conditions: tuple[str, ...]
    rare: tuple[str, ...]


def gather(context: Context) -> Vocabulary:
    """Find every word that fits the focus, the band, the gate and what was taught."""
    focus = context.focus
    words: dict[str, Candidate]
    rivals: dict[str, Candidate] = {}
    # Beside endings only the easiest words come, for review.
    plain = _plain_words(context, 1 if focus.kind is Kind.ENDINGS else context.request.band)
    if focus.kind is Kind.ENDINGS:
        words = {c.word: c for c in with_endings(context)}
        review = _easy(plain, context)
    elif focus.kind is Kind.TASK:
        words = {c.word: c for c in _by_count(plain, context)}
        review = iter(())
    else:
        rows = focus.rows
        all_rows = (*rows, *_rivals(context, plain))
        words = {c.word: c for c in _with_rows(plain, rows, all_rows, context)}
        rival_rows = all_rows[len(rows) :]
        rivals = {c.word: c for c in _with_rows(plain, rival_rows, all_rows, context)}
        barred = _codes_near(all_rows, context)
        review = (w for w in _easy(plain, context) if barred.isdisjoint(w.chunks))
    sizes: dict[str, int] = {}
    for candidate in words.values():
        sizes[candidate.condition] = sizes.get(candidate.condition, 0) + 1
    ranked = sorted(sizes, key=lambda condition: (-sizes[condition], condition))
    covered = [condition for condition in ranked if sizes[condition] >= ENOUGH] or ranked
    rare = tuple(condition for condition in ranked if condition not in covered)
    return Vocabulary(words, rivals, tuple(w.word for w in review), tuple(covered), rare)


def _codes_near(rows: tuple[Counted, ...], context: Context) -> frozenset[str]:
    """Return the codes of the letters and of the sounds of some rows, however combined.

    Beside c as in *cent* neither *prince* nor *cat* is a word without the focus.
    """
    sounds = {row.correspondence.sound for row in rows}
    letters = {row.correspondence.spelling for row in rows}
    return frozenset(
        row.code
        for row in context.lexicon.correspondences()
        if row.correspondence.sound in sounds or row.correspondence.spelling in letters
    )


def _easy(plain: Iterable[Spelled], context: Context) -> Iterator[Spelled]:
    """Yield short familiar words of plain spellings: what may be mixed in for review."""
    easy = {
        row.code
        for row in context.lexicon.correspondences()
        if row.correspondence.kind in _PLAIN and row.correspondence.is_regular
    }
    for word in plain:
        is_short = len(word.stress) == 1 and FEWEST_SOUNDS < len(word.sounds) <= MOST_SOUNDS
        if word.band == 1 and is_short and not word.endings and easy.issuperset(word.chunks):
            yield word


def _odd_codes(context: Context) -> frozenset[str]:
    """Return the codes that make a word no good example of a pattern."""
    rows = context.lexicon.correspondences()
    return frozenset(row.code for row in rows if not row.correspondence.is_regular) | {ODD_CODE}


def readings_of(candidate: Candidate, context: Context) -> tuple[str, ...]:
    """Return how a word is used, the usual way first; looked up only now."""
    if candidate.parts_of_speech:
        return candidate.parts_of_speech
    entry = context.lexicon.get(candidate.word)
    return entry.parts_of_speech if entry else ()


def _plain_words(context: Context, band: int) -> list[Spelled]:
    wanted = Wanted(context.known)
    return find_words(context.lexicon, context.gate, wanted, highest_band=band)


def with_endings(context: Context, only: frozenset[str] = NO_WORDS) -> Iterator[Candidate]:
    """Yield words with the endings of the focus.

    Args:
        context: what is asked for.
        only: which words; by default all, or of very many the most familiar of each kind.
    """
    query = context.pool.query._replace(endings=frozenset(context.focus.endings))
    words = words_with_endings(context.lexicon, query, context.overlay)
    if only:
        words = [word for word in words if word in only]
    else:
        most = MOST_TAKEN_APART * len({SUFFIX_OF[spelled] for spelled in query.endings})
        words = some_of_each_kind(words, most, context.lexicon)
    for ending in known_endings(context.lexicon, query, ways_of=context.ways_of, words=words):
        candidate = candidate_of_ending(ending, context)
        if candidate:
            yield candidate


def candidate_of_ending(ending: Ending, context: Context) -> Candidate | None:
    """Make a candidate of a word with an ending, if its base may be shown, too."""
    base = context.lexicon.get(ending.base)
    entry = context.lexicon.get(ending.word)
    if base is None or entry is None or not 0 < base.band <= context.request.band:
        return None
    if not context.gate.allows(base.word, (said.normal for said in base.pronunciations)):
        return None
    if not context.pool.can_read(entry):
        return None
    usual_part = base.parts_of_speech
    parts = tuple(part for part in ending.parts_of_speech if part in PARTS_OF[ending.suffix])
    first_usual = sorted(
        parts, key=lambda part: usual_part.index(part) if part in usual_part else 9
    )
    return Candidate(
        ending.word,
        ending.base,
        f"{_ends_in(kind_of(ending))}, says {written_sound(ending.sound, context.style)}",
        ending.ending,
        ending.sound,
        ending.said.syllables,
        tuple(first_usual) or usual_part[:1],
        ending,
        ending.said.normal,
    )


def _ends_in(kind: str) -> str:
    """Write what the base ends in, so that it reads on: base ends in ..."""
    tail = kind.removeprefix("silent e: ").removesuffix(" at the end")
    tail = tail.removeprefix("some nouns in ").removesuffix(" (listed)")
    if tail.startswith("consonant + y"):
        return "base ends in a consonant and y"
    if tail == ANY_OTHER:
        return tail
    return f"base ends in {tail}"


def _by_count(plain: Iterable[Spelled], context: Context) -> Iterator[Candidate]:
    """Yield short words by the number of their sounds, for a task."""
    odd = _odd_codes(context)
    for word in plain:
        number = len(word.sounds)
        is_short = len(word.stress) == 1 and FEWEST_SOUNDS <= number <= MOST_SOUNDS
        # A class counts these in two ways, or by their letters.
        is_doubtful = has_r_vowel(word.sounds) or hides_y(word.sounds) or "x" in word.word
        if is_short and not is_doubtful and "qu" not in word.word and not odd & {*word.chunks}:
            label = f"{number} sounds"
            yield Candidate(word.word, word.base, label, "", label, 1, normal=word.normal)


def _with_rows(
    plain: Iterable[Spelled],
    rows: tuple[Counted, ...],
    all_rows: tuple[Counted, ...],
    context: Context,
) -> Iterator[Candidate]:
    """Yield words with exactly one of these correspondences, and none that competes with it."""
    own = {row.code: row for row in rows}
    odd = _odd_codes(context)
    sounds = {code for row in all_rows for code in row.correspondence.sounds}
    has_split = any(SPLIT in row.correspondence.spelling for row in all_rows)
    for word in plain:
        met = [code for code in word.chunks if code in own]
        if len(met) != 1 or len(word.stress) > MOST_SYLLABLES or odd.intersection(word.chunks):
            continue
        found = own[met[0]].correspondence
        if sum(word.sounds.count(sound) for sound in sounds) != 1:
            continue
        if _is_disputed(word.normal, sounds):
            continue
        if has_split and SPLIT not in found.spelling and _LOOKS_SPLIT.search(word.word[-4:]):
            continue
        # Circle has two letters c: which of them is meant?
        if SPLIT not in found.spelling and word.word.count(found.spelling) != 1:
            continue
        yield Candidate(
            word.word,
            word.base,
            _condition(word, met[0], own[met[0]], context),
            found.spelling,
            found.sound,
            len(word.stress),
            normal=word.normal,
        )


def _is_disputed(normal: str, sounds: AbstractSet[str]) -> bool:
    """Whether a word has one of two sounds to be told apart where many say them alike.

    Beside /ĕ/ *pin* is not fair: in the South it has the vowel of *pen*. Sounds that fall
    together nearly everywhere (*cot*, *caught*) are a focus that a teacher chose knowingly.
    """
    return any(
        sounds >= {*merger.alike} and bool(merger.before) and bool(merger.places(normal))
        for merger in (*MERGERS, _BANG)
    )


def _condition(word: Spelled, code: str, row: Counted, context: Context) -> str:
    kind = context.focus.kind
    spelling, sound = row.correspondence.spelling, row.correspondence.sound
    if kind is Kind.SOUND:
        return f"spelled {spelling}"
    if kind is Kind.CONTRAST:
        return f"says {write_sound(sound)}"
    place = _place(word, code, spelling)
    return f"{spelling} {place}" if SPLIT not in spelling else f"{spelling} in {_shape(word)}"


def _place(word: Spelled, code: str, spelling: str) -> str:
    start = word.chunks.index(code)
    if start == 0:
        return FIRST
    # The e that closes a split vowel stands behind the last sound: rice ends in the sound of c.
    if start < len(word.chunks.rstrip(CLOSING_CODE)) - 1:
        return INSIDE
    return LAST if word.word.endswith(spelling) else BEFORE_E


def _shape(word: Spelled) -> str:
    return "a word of one syllable" if len(word.stress) == 1 else "a longer word"


def _rivals(context: Context, plain: list[Spelled]) -> tuple[Counted, ...]:
    """Find what the focus is sorted against: another spelling of its sound, and a near sound."""
    focus = context.focus
    if focus.kind is Kind.CONTRAST or not focus.rows:
        return ()
    # Two spellings that are the focus already make two groups.
    own = {row.code for row in focus.rows}
    met = "".join(word.chunks for word in plain)
    rivals: list[Counted] = []
    main = focus.rows[0].correspondence
    if focus.kind is Kind.SPELLING and len(focus.rows) == 1:
        others = sorted(
            spellings_of_sound(main.sound, context.lexicon),
            # Beside a spelling of several letters a single one is no plain rival.
            key=lambda row: len(main.spelling) > 1 and len(row.correspondence.spelling) == 1,
        )
        rivals += [r for r in others if r.code not in own and met.count(r.code) >= ENOUGH_RIVALS][
            :1
        ]
    if len({row.correspondence.sound for row in focus.rows}) == 1 and len(main.sound) == 1:
        near = _near_sound(main.spelling, main.sound, context, met)
        rivals += [row for row in near if row.code not in own][:1]
    return tuple(rivals)


def _near_sound(spelling: str, sound: str, context: Context, met: str) -> list[Counted]:
    """Return correspondences that say a sound near this one; for a_e what a says alone."""
    inventory = context.lexicon.correspondences()
    if SPLIT in spelling:
        alone = [r for r in inventory if r.correspondence.spelling == spelling[0]]
        return [usual(spelling[0], alone)]
    near = [
        row
        for row in inventory
        if len(row.correspondence.sound) == 1
        and row.correspondence.is_regular
        and not row.correspondence.is_weak
        and row.correspondence.sound != sound
        and (row.correspondence.sound in VOWELS) == (sound in VOWELS)
        and met.count(row.code) >= ENOUGH_RIVALS
        and row.correspondence.spelling != spelling
    ]
    return sorted(near, key=lambda row: (distance(sound, row.correspondence.sound), -row.words))


def builds_cleanly(word: str, context: Context) -> bool:
    """Whether no start of a word is itself unfit to show, as it stands there for a while."""
    for end in range(2, len(word)):
        start = word[:end]
        entry = context.lexicon.get(start)
        normals = [said.normal for said in entry.usable_pronunciations] if entry else []
        if not context.gate.allows(start, normals):
            return False
    return True


def is_plain_to_hear(word: str, context: Context) -> bool:
    """Whether no other known word sounds the same, so that it can be dictated alone."""
    entry = context.lexicon.get(word)
    return entry is not None and all(
        other == word
        for said in entry.usable_pronunciations[:1]
        for other in context.lexicon.heard_as(said.normal)
    )
