"""What the tasks share that turn one word into another, or name sounds of one.

An item must be right however its words may be said: in each listed way, and in
each accent asked for. *Agree* below is the task's own test of two forms: does
this change lead from the one to the other?
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from phonodrill.lexicon.entry import Entry, Pronunciation
from phonodrill.lexicon.store import Lexicon
from phonodrill.selection import Pool, Query, Spoken
from phonodrill.sounds.accents import COT_CAUGHT
from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.places import NUCLEI, UNKNOWN, Cut, Position, cut_at
from phonodrill.sounds.units import RVowels
from phonodrill.tasks.item import Part

Agree = Callable[[str, str], bool]
Frames = dict[tuple[str, str], list[str]]
"""What stands before and behind a place -> the known words that have it so."""
_OF_ONE_SYLLABLE = (Position.VOWEL, Position.ONSET, Position.RIME)
_NO_NUCLEI = str.maketrans("", "", "".join(NUCLEI))


class Words:
    """Words of a pool with what was worked out about them, each once.

    Args:
        pool: the words that may be used.
        query: what is wanted.
    """

    def __init__(self, pool: Pool, query: Query) -> None:
        self.pool = pool
        self.query = query
        self.r_joins = query.r_vowels is RVowels.ONE
        # Kept for the next set of items: a page makes one after another.
        kept = partial(pool.lexicon.recall, make=dict)
        accents = query.accents
        self._cuts: dict[tuple[str, Position], Cut | None] = kept(("cuts", self.r_joins))
        self._heard: dict[tuple[str, str], tuple[str, ...]] = kept(("heard", accents))
        self._steady: dict[tuple[str, str, Position], bool] = kept(
            ("steady", accents, self.r_joins)
        )
        self._answers: dict[str, tuple[Spoken, ...]] = kept(
            ("answers", accents, query.band, pool.query.known, pool.choice)
        )

    def stimuli(self, keep: Callable[[str], bool] = lambda _: True) -> Iterator[Spoken]:
        """Yield the words to start from, each in its first way.

        Only ways that a dictionary lists: a form built from base + ending is
        good for a sort, but an oral item rests on dictionary entries. A
        heteronym is asked for in each reading.
        """
        for entry in self.pool.stimuli(keep):
            usable = [said for said in entry.usable_pronunciations if said.is_listed]
            for said in usable if entry.is_heteronym else usable[:1]:
                yield Spoken(entry, said)

    def cut(self, sounds: str, at: Position) -> Cut | None:
        """Cut a form at a place, R joined to its vowel if the query says so."""
        key = (sounds, at)
        if key not in self._cuts:
            self._cuts[key] = cut_at(sounds, at, r_joins=self.r_joins)
        return self._cuts[key]

    def is_steady_at(self, spoken: Spoken, at: Position) -> bool:
        """Whether the sound at a place may be named: the same in every way and every accent."""
        key = (spoken.entry.word, spoken.said.normal, at)
        if key not in self._steady:

            def find(form: str) -> str | None:
                here = self.cut(form, at)
                return here.middle if here else None

            self._steady[key] = self.is_steady(spoken, find)
        return self._steady[key]

    def answers(self, normal: str) -> tuple[Spoken, ...]:
        """Return the words heard as this form, or none if the answer would not be plain.

        It is plain if its most familiar word is within the band, no heteronym,
        said so in its first way, and no accent confuses it with another word.
        """
        found = self._answers.get(normal)
        if found is None:
            found = self.pool.heard_as(normal)
            plain = bool(found) and self._is_plain(found[0].entry, normal)
            if not (plain and self.pool.stands_alone(normal)):
                found = ()
            found = tuple(sorted(found, key=self._doubts))
            self._answers[normal] = found
        return found

    def _doubts(self, answer: Spoken) -> tuple[bool, int, int]:
        """Rank homophones: *ant* is a better answer than *aunt*, which many say another way.

        Familiar words go first (*or*, not *ore*). Of the ways to say a word all that a
        dictionary lists count, also those that no item uses.
        """
        entry = answer.entry
        ways = {self._merge(way.normal) for way in entry.pronunciations}
        return entry.is_heteronym, entry.band, len(ways)

    def is_wanted(self, stimulus: Entry, answer: Entry) -> bool:
        """Whether an answer is no past or plural form, unless the stimulus is one too."""
        return not answer.endings or bool(stimulus.endings) or bool(self.query.endings)

    def _is_plain(self, answer: Entry, normal: str) -> bool:
        first = answer.usable_pronunciations[0].normal
        return answer.band <= self.query.band and not answer.is_heteronym and first == normal

    def realizations(self, spoken: Spoken) -> tuple[str, ...]:
        """Return how every listener has a word."""
        key = (spoken.entry.word, spoken.said.normal)
        if key not in self._heard:
            self._heard[key] = self.query.accents.realizations(*key)
        return self._heard[key]

    def holds(self, stimulus: Spoken, answer: Spoken, agree: Agree) -> bool:
        """Whether the change leads from stimulus to answer in every way and every accent."""
        return (
            agree(stimulus.said.normal, answer.said.normal)
            and all(
                agree(first, second) and UNKNOWN not in first + second
                for first, second in self._listeners(stimulus, answer)
            )
            and self.every_way_agrees(stimulus, answer, agree)
        )

    def _listeners(self, stimulus: Spoken, answer: Spoken) -> set[tuple[str, str]]:
        pairs = zip(self.realizations(stimulus), self.realizations(answer), strict=True)
        return {*pairs} - {(stimulus.said.normal, answer.said.normal)}

    def every_way_agrees(self, stimulus: Spoken, answer: Spoken, agree: Agree) -> bool:
        """Whether each way to say the stimulus leads to a way to say the answer."""
        if stimulus.entry.is_heteronym:
            return True
        ends = {self._merge(way.normal) for way in answer.entry.usable_pronunciations}
        starts = {self._merge(way.normal) for way in stimulus.entry.usable_pronunciations}
        return all(any(agree(start, end) for end in ends) for start in starts)

    def _merge(self, normal: str) -> str:
        # The dictionary lists cot and caught vowels at random: spelling tells them apart
        # (see `low_back.py`), so that here they count as one.
        return COT_CAUGHT.merge(self.query.accents.merge_known(normal))

    def is_steady(self, spoken: Spoken, find: Callable[[str], str | None]) -> bool:
        """Whether what an item names of a word is the same in every way and every accent.

        Args:
            spoken: the word.
            find: gives what is named, from a form of the word.
        """
        named = find(spoken.said.normal)
        if not named or not self.query.accents.is_steady(named):
            return False
        if any(find(form) != named for form in self.realizations(spoken)):
            return False
        if spoken.entry.is_heteronym:
            return True
        merge = self.query.accents.merge_known
        return all(find(merge(way.normal)) == named for way in spoken.entry.usable_pronunciations)

    def may_be_said(self, part: str) -> bool:
        """Whether a part of a word (a rime, a syllable) may be said by itself."""
        return NUCLEI.isdisjoint(part) or self.pool.gate.allows("", [part])

    def frames(self, at: Position) -> Frames:
        """Return the known words by what stands around a place: one look-up finds all changes."""
        lexicon, r_joins = self.pool.lexicon, self.r_joins
        return lexicon.recall(("frames", at, r_joins), lambda: _frames(lexicon, at, r_joins))


def _frames(lexicon: Lexicon, at: Position, r_joins: bool) -> Frames:
    table: Frames = {}
    for normal in lexicon.every_sound():
        if at in _OF_ONE_SYLLABLE and len(normal) - len(normal.translate(_NO_NUCLEI)) != 1:
            continue  # Thousands of longer words: no cut is tried.
        cut = cut_at(normal, at, r_joins=r_joins)
        if cut:
            table.setdefault((cut.left, cut.right), []).append(normal)
    return table


def part_of(said: Pronunciation, start: int, end: int) -> Part:
    """Take a run of sounds out of a pronunciation, with the stress of its vowels."""
    before = sum(code in VOWELS for code in said.sounds[:start])
    inside = sum(code in VOWELS for code in said.sounds[start:end])
    stress = said.stress[before : before + inside]
    return Part(said.sounds[start:end], stress, before_r=said.sounds.startswith("r", end))


def middle_part(said: Pronunciation, cut: Cut) -> Part:
    """Return the middle of a cut made on the normal form, as it is said."""
    return part_of(said, len(cut.left), len(cut.left) + len(cut.middle))


def part_said(part: Part) -> Pronunciation:
    """Write a part as a pronunciation, to give it as an answer."""
    return Pronunciation(part.sounds, part.stress, part.sounds)
