"""The oral warm-up of a lesson: at most two tasks, linked to the focus.

One or two skills at a time teach better than many, and letters help: the warm-up
has two tasks at most, and the rest of the lesson shows letters (Ehri, Nunes,
Willows, Schuster, Yaghoub-Zadeh & Shanahan 2001, *RRQ* 36, 250-287).
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from collections.abc import Set as AbstractSet
from typing import NamedTuple

from phonodrill.endings.together import belongs_together
from phonodrill.lesson.candidates import FIRST, LAST, Vocabulary
from phonodrill.lesson.focus import Kind
from phonodrill.lesson.plan import WARMUP
from phonodrill.lesson.request import Context
from phonodrill.lesson.tree import Activity, Oral, WarmUp
from phonodrill.lexicon.store import Lexicon
from phonodrill.reading.decodable import spelled_words
from phonodrill.reading.pairs import Pair, minimal_pairs, said_with_either_vowel
from phonodrill.selection import Query, select
from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.notation import Notation
from phonodrill.sounds.places import Position
from phonodrill.tasks import script
from phonodrill.tasks.history import NO_HISTORY, History
from phonodrill.tasks.item import Item
from phonodrill.tasks.registry import TASKS
from phonodrill.tasks.warmup import draw_items

MOST_TASKS = 2
SAMPLED = 160
"""Words of the focus that items are looked for among: a fair choice, and quick."""
DRAWN_BY_CHANCE = frozenset({"identify", "categorize"})
"""Tasks that draw the words beside a word: an item is found again in some tries."""
TRIES = 60
ORAL_ENDINGS = frozenset({"s", "es", "ies", "ed", "ing"})
SCRIPT = "Say each line; the class answers aloud, all together. No letters yet."


class Idea(NamedTuple):
    """One way to practice the focus by ear.

    Attributes:
        task, at: what is done, and where in the word.
        query: from which words.
        keep: whether an item belongs to the focus.
    """

    task: str
    at: Position
    query: Query
    keep: Callable[[Item], bool]


class Drawn(NamedTuple):
    """Items of one task."""

    task: str
    at: Position
    items: tuple[Item, ...]


def draw_oral(
    context: Context,
    vocabulary: Vocabulary,
    count: int,
    history: History,
    rng: random.Random,
) -> tuple[tuple[Drawn, ...], list[str]]:
    """Choose the items of the warm-up.

    Returns:
        Up to two tasks with their items, and a note on what is missing.
    """
    ideas = list(_ideas(context, vocabulary, rng))
    drawn = _try(context, ideas, count, history, rng)
    notes = []
    if _size(drawn) < count and history.resting:
        again = _try(context, ideas, count, NO_HISTORY, rng)
        if _size(again) > _size(drawn):
            drawn = again
            notes.append("oral warm-up: words of recent lessons again")
    said = words_of_items(drawn)
    if context.focus.endings and said and said.isdisjoint(vocabulary.words):
        notes.append("oral warm-up: with the bases, as the ending is heard in more than one way")
    if not drawn:
        notes.append("no oral warm-up: no item fits the focus")
    elif _size(drawn) < count:
        notes.append(f"oral warm-up: {_size(drawn)} of {count} items fit the focus")
    return drawn, notes


def _size(drawn: tuple[Drawn, ...]) -> int:
    return sum(len(one.items) for one in drawn)


def _try(
    context: Context, ideas: list[Idea], count: int, history: History, rng: random.Random
) -> tuple[Drawn, ...]:
    drawn: list[Drawn] = []
    first: Idea | None = None
    used: set[str] = set()
    for idea in ideas:
        left = count - _size(tuple(drawn))
        if len(drawn) == MOST_TASKS or not left:
            break
        share = left if drawn else (count + 1) // 2
        items = draw_for(context, idea, share, history, used, rng)
        if len(items) >= min(2, share):
            drawn.append(Drawn(idea.task, idea.at, items))
            used.update(word for item in items for word in item.words)
            first = first or idea
    if first and len(drawn) == 1 and _size(tuple(drawn)) < count:
        more = draw_for(context, first, count, history, set(), rng)
        drawn = [max(drawn[0]._replace(items=more), drawn[0], key=lambda one: len(one.items))]
    return tuple(drawn)


def draw_for(
    context: Context,
    idea: Idea,
    count: int,
    history: History,
    used: AbstractSet[str],
    rng: random.Random,
) -> tuple[Item, ...]:
    """Draw up to ``count`` items for one idea, none with a word that is used."""
    band = context.request.band
    chance = random.Random(rng.randrange(1_000_000))
    items = draw_items(
        select(context.lexicon, idea.query, chance, context.overlay),
        TASKS[idea.task],
        idea.at,
        count=count,
        history=history,
        keep=lambda item: item.band <= band and used.isdisjoint(item.words) and idea.keep(item),
    )
    return tuple(items)


def _ideas(context: Context, vocabulary: Vocabulary, rng: random.Random) -> Iterator[Idea]:
    """Yield ways to practice, the one nearest the focus first; days begin with another one."""
    kinds = {
        Kind.ENDINGS: _for_endings,
        Kind.SPELLING: _for_sounds,
        Kind.SOUND: _for_sounds,
        Kind.CONTRAST: _for_contrast,
        Kind.TASK: ideas_of_task,
    }
    near = list(kinds[context.focus.kind](context, vocabulary, rng))
    turn = (context.request.day - 1) % len(near) if near else 0
    yield from (*near[turn:], *near[:turn])
    words = _sample(context, vocabulary, rng)
    query = _query(context, words)
    tasks = {idea.task for idea in near}
    for task in ("segment", "blend"):
        if task not in tasks:
            yield Idea(task, Position.EACH, query, _any)
    bases = sorted({c.base for c in vocabulary.words.values() if c.ending})
    if bases:
        # The weak vowel of -est is heard in more than one way: then the bases are practiced.
        query = _query(context, rng.sample(bases, min(SAMPLED, len(bases))))
        for task in ("segment", "blend"):
            yield Idea(task, Position.EACH, query, _any)
    longer = [c.word for c in vocabulary.words.values() if c.syllables > 1]
    query = _query(context, rng.sample(longer, min(SAMPLED, len(longer))))
    for task in ("segment", "blend") if longer else ():
        yield Idea(task, Position.SYLLABLE, query, _any)


def _query(context: Context, words: Sequence[str] = ()) -> Query:
    """Ask for words that are said, not read: what was taught does not matter."""
    return Query(context.request.band, words=tuple(words))


def _any(_: Item) -> bool:
    return True


def _sample(context: Context, vocabulary: Vocabulary, rng: random.Random) -> list[str]:
    """Draw words of the focus, short ones if there are any, of those that sound alike one.

    Words that were missed before are always among them.
    """
    short = [c for c in vocabulary.words.values() if c.syllables == 1]
    by_sound = {c.normal: c.word for c in short or vocabulary.words.values()}
    words = list(by_sound.values())
    again = [word for word in words if word in context.request.review]
    drawn = rng.sample(words, min(SAMPLED, len(words)))
    return list(dict.fromkeys([*again, *drawn]))


def _for_endings(context: Context, vocabulary: Vocabulary, rng: random.Random) -> Iterator[Idea]:
    endings = frozenset(context.focus.endings) & ORAL_ENDINGS
    if endings:
        query = _query(context)._replace(endings=endings)
        for at in (Position.FIRST, Position.LAST):
            yield Idea("delete", at, query, _keeps_ending(context.lexicon))
    else:
        whole = _query(context, list(vocabulary.words))
        yield Idea("delete", Position.LAST, whole, _leaves_base(vocabulary))
    yield Idea("segment", Position.EACH, _query(context, _sample(context, vocabulary, rng)), _any)


def _keeps_ending(lexicon: Lexicon) -> Callable[[Item], bool]:
    def keeps(item: Item) -> bool:
        stimulus, answer = lexicon.get(item.stimulus), lexicon.get(item.answer)
        return bool(stimulus and answer and belongs_together(stimulus, answer))

    return keeps


def _leaves_base(vocabulary: Vocabulary) -> Callable[[Item], bool]:
    def leaves(item: Item) -> bool:
        known = vocabulary.words.get(item.stimulus)
        return known is not None and known.base in (item.answer, *item.also)

    return leaves


def _for_sounds(context: Context, vocabulary: Vocabulary, rng: random.Random) -> Iterator[Idea]:
    sounds = frozenset(context.focus.sounds)
    query = _query(context, _sample(context, vocabulary, rng))

    def is_about(item: Item) -> bool:
        return item.sound.sounds in sounds or item.new.sounds in sounds

    if sounds <= VOWELS:
        places = [Position.VOWEL]
    else:
        seen = " ".join(vocabulary.conditions)
        # A focus on a sound has no place in its conditions: both ends are tried.
        both = FIRST not in seen and LAST not in seen
        places = [
            at
            for at, name in ((Position.FIRST, FIRST), (Position.LAST, LAST))
            if both or name in seen
        ]
    for at in places:
        yield Idea("isolate", at, query, is_about)
    for at in places:
        task = "substitute" if at is Position.VOWEL else "delete"
        yield Idea(task, at, query, is_about)


def _for_contrast(context: Context, vocabulary: Vocabulary, rng: random.Random) -> Iterator[Idea]:
    pairs = pairs_of(context, vocabulary)
    rng.shuffle(pairs)
    words = [word.word for pair in pairs[:SAMPLED] for word in (pair.a, pair.b)]
    wanted = set(context.focus.sounds)
    is_vowel = context.focus.sounds[0] in VOWELS
    places = [Position.VOWEL] if is_vowel else [Position.FIRST, Position.LAST]
    query = _query(context, list(dict.fromkeys(words)))

    def changes_one_to_other(item: Item) -> bool:
        return {item.sound.sounds, item.new.sounds} == wanted

    for at in places if words else ():
        yield Idea("substitute", at, query, changes_one_to_other)
    heard = _query(context, _sample(context, vocabulary, rng))
    for at in places:
        yield Idea("isolate", at, heard, lambda item: item.sound.sounds in wanted)


def pairs_of(context: Context, vocabulary: Vocabulary) -> list[Pair]:
    """Return the minimal pairs of a contrast, of words that may be in the lesson."""
    spelled = spelled_words(context.lexicon, context.request.band)
    words = [word for word in spelled if word.word in vocabulary.words]
    either = said_with_either_vowel(context.lexicon.correspondences())
    return list(minimal_pairs(words, either, sounds=context.focus.sounds))


def ideas_of_task(context: Context, vocabulary: Vocabulary, rng: random.Random) -> Iterator[Idea]:
    """Yield each kind of a task that words of one syllable allow."""
    query = _query(context, _sample(context, vocabulary, rng))
    for at in TASKS[context.focus.task].positions:
        if at not in (Position.SYLLABLE, Position.RIME):
            yield Idea(context.focus.task, at, query, _any)


def compose_warmup(drawn: tuple[Drawn, ...], minutes: int, style: Notation) -> WarmUp:
    """Write out the items of a warm-up."""
    activities = compose_activities(drawn, style)
    items = [item for one in drawn for item in one.items]
    how = tuple(script.how_to_say(items, style))
    return WarmUp(WARMUP, minutes, "Oral warm-up", SCRIPT, activities, how)


def compose_activities(drawn: tuple[Drawn, ...], style: Notation) -> tuple[Activity, ...]:
    """Write out items by task and place."""
    return tuple(
        Activity(
            one.task,
            str(one.at),
            script.title(one.task, one.at),
            tuple(write_item(item, style) for item in one.items),
        )
        for one in drawn
    )


def words_of_items(drawn: Iterable[Drawn]) -> frozenset[str]:
    """Return every word that items say or show."""
    return frozenset(word for one in drawn for item in one.items for word in item.words)


def write_item(item: Item, style: Notation) -> Oral:
    """Write out one item."""
    phrase = script.say(item, style)
    return Oral(
        tuple(sorted(item.words)),
        item.stimulus,
        script.sound_of(item, style),
        script.write_part(item.new, style),
        item.answer,
        item.stimulus_said.arpabet,
        item.answer_said.arpabet,
        phrase.ask,
        phrase.answer,
        phrase.correct,
        _heard(item, style),
    )


def _heard(item: Item, style: Notation) -> str:
    """Write how an item sounds; for choices each of them."""
    ways = [choice.said for choice in item.choices]
    if item.foil:
        ways.append(item.foil.said)
    if not ways:
        ways = list(dict.fromkeys((item.stimulus_said, item.answer_said)))
    return " → ".join(f"/{way.spaced(style)}/" for way in ways if way.sounds)


def find_item(
    context: Context, task: str, at: Position, words: Sequence[str], said: Mapping[str, str]
) -> Item | None:
    """Find an item again among all that its words give; None if they do not give it.

    Args:
        context: what the lesson rests on.
        task: name of the task.
        at: where in the word.
        words: every word that is said or shown.
        said: its stimulus, sound, new and answer, as :class:`Oral` has them.
    """
    query = _query(context, words)
    for chance in range(TRIES if task in DRAWN_BY_CHANCE else 1):
        pool = select(context.lexicon, query, random.Random(chance), context.overlay)
        for item in TASKS[task].candidates(pool, query, at):
            found = write_item(item, context.style)
            same = all(getattr(found, name) == value for name, value in said.items())
            if same and {*found.words} <= {*words}:
                return item
    return None
