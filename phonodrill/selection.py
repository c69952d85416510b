"""A query for words and the one function that answers it.

Everything that says, shows or prints a word takes it from the pool built here,
so the gate, the bands and the rules about names, heteronyms and doubtful
pronunciations hold everywhere.
"""

from __future__ import annotations

import random
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from itertools import chain
from typing import TYPE_CHECKING, NamedTuple

from phonodrill.gate import Gate, open_gate
from phonodrill.lexicon.entry import UNFIT_REASONS, Entry, Pronunciation, Spelled
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.sounds.accents import EVERY_ACCENT, Accents
from phonodrill.sounds.units import RVowels
from phonodrill.taught.known import Known

if TYPE_CHECKING:
    from phonodrill.guess import Guess

HIGHEST_KNOWN_BAND = 3
"""Words beyond this band are taken as unknown to every class."""
NO_CAPITAL = "{word!r} would stand without its capital"
"""Why a word that needs a capital may not be used."""


class Query(NamedTuple):
    """What a set of words or items is wanted for.

    Attributes:
        band: highest familiarity band used, 1-3.
        endings: spelled endings the words must have (s, es, ies, ves, ed, ing);
            empty for base words.
        sound: code of the phoneme an item must be about; empty for any.
        words: the teacher's own words, in any band; empty for the vocabulary's.
        r_vowels: whether a vowel + R counts as one sound or two; None: two, and
            words with it are not used where sounds are counted.
        accents: for whom an item must be right.
        made_up: whether items are made of made-up words instead of real ones.
        known: what the class has been taught; words it cannot read are left out.
    """

    band: int = 2
    endings: frozenset[str] = frozenset()
    sound: str = ""
    words: tuple[str, ...] = ()
    r_vowels: RVowels | None = None
    accents: Accents = EVERY_ACCENT
    made_up: bool = False
    known: Known | None = None


class Spoken(NamedTuple):
    """A word in one of its pronunciations."""

    entry: Entry
    said: Pronunciation


class Own(NamedTuple):
    """A teacher's own words.

    Attributes:
        by_word: each with the band the teacher gave.
        by_sound: the same by normal form.
    """

    by_word: Mapping[str, Entry]
    by_sound: Mapping[str, Sequence[Entry]]


NO_OWN = Own({}, {})


class Pool(NamedTuple):
    """The words that may be used for a query, fetched as they are needed.

    A word is used only if it is reviewed (bands 1-3), no name, no heteronym,
    passes the gate in every way it may be said, and has a pronunciation that no
    check contradicts. Words of the teacher's own list may be heteronyms and of
    any band above 0.

    Attributes:
        lexicon: the open lexicon.
        query: what is wanted.
        gate: the never-say check.
        own: a teacher's own words.
        rng: mixes the order of the stimuli; None leaves it as stored.
    """

    lexicon: Lexicon
    query: Query
    gate: Gate
    own: Own = NO_OWN
    rng: random.Random | None = None

    @property
    def choice(self) -> tuple[object, ...]:
        """What a teacher's own words change, to tell pools of one lexicon apart."""
        return (
            self.gate.spellings,
            *((word, entry.band) for word, entry in self.own.by_word.items()),
        )

    def entry_of(self, word: str) -> Entry | None:
        """Look a word up: as the teacher added it, or as it is stored."""
        return self.own.by_word.get(word) or self.lexicon.get(word)

    def stimuli(self, keep: Callable[[str], bool] = lambda _: True) -> Iterator[Entry]:
        """Yield the entries to make items from, each once.

        Args:
            keep: says of a normal form whether a word said so can give an item;
                the others are passed over at little cost.
        """
        query = self.query
        entries: Iterator[Entry]
        if query.words:
            found = look_up(query.words, self.lexicon, self.own.by_word)
            wanted = query.endings
            entries = (e for e in found if not wanted or not wanted.isdisjoint(e.endings))
        else:
            stored = self.lexicon.matching(
                highest_band=query.band, endings=query.endings, keep=keep, rng=self.rng
            )
            entries = chain(filter(self._is_own_choice, self.own.by_word.values()), stored)
        yield from filter(self._may_start, entries)

    def ending_in(self, letters: tuple[str, ...]) -> Iterator[Entry]:
        """Yield those of :meth:`stimuli` that end in one of these letters, in the same order.

        No other word is looked up. For a query without words and endings of its own.
        """
        words = [*self.lexicon.plain_words(self.query.band)]
        if self.rng:
            self.rng.shuffle(words)
        stored = filter(None, (self.lexicon.get(w) for w in words if w.endswith(letters)))
        own = (entry for word, entry in self.own.by_word.items() if word.endswith(letters))
        yield from filter(self._may_start, chain(filter(self._is_own_choice, own), stored))

    def _may_start(self, entry: Entry) -> bool:
        """Whether an item may start from an entry."""
        asked_for = bool(self.query.words) or not entry.is_heteronym
        return asked_for and may_be_said(entry, self.gate) and self.can_read(entry)

    def can_read(self, entry: Entry) -> bool:
        """Whether the class can read a word by what it has been taught, if that is asked."""
        known = self.query.known
        return known is None or known.reads(spelled_of(entry), self.lexicon.chunks_of)

    def companions(self) -> Mapping[str, list[str]]:
        """Return ``word -> its normal forms`` of the words that may stand beside a stimulus."""
        if self.query.words or self.query.endings:
            return {e.word: [way.normal for way in e.pronunciations] for e in self.stimuli()}
        own = {
            word: [way.normal for way in entry.pronunciations]
            for word, entry in self.own.by_word.items()
        }
        words = {**self.lexicon.plain_words(self.query.band), **own}
        known = self.query.known
        if known is None:
            return words
        spelled = self.lexicon.spelled(highest_band=self.query.band)
        readable = {w.word for w in spelled if known.reads(w, self.lexicon.chunks_of)}
        return {word: normals for word, normals in words.items() if word in readable}

    def find(self, word: str) -> Spoken | None:
        """Return a word in its first listed way, if it may be used for the query."""
        entry = self.entry_of(word)
        if entry is None or entry.is_heteronym or not may_be_said(entry, self.gate):
            return None
        if entry.band > self.query.band and word not in self.query.words:
            return None
        if not self.can_read(entry):
            return None
        ways = entry.usable_pronunciations
        return Spoken(entry, ways[0]) if ways[0].is_listed else None

    def heard_as(self, normal: str) -> tuple[Spoken, ...]:
        """Return the known words that a dictionary lists with these sounds, familiar first."""
        found = []
        stored = filter(None, map(self.lexicon.get, self.lexicon.heard_as(normal)))
        own = {entry.word: entry for entry in self.own.by_sound.get(normal, ())}
        for entry in {**{entry.word: entry for entry in stored}, **own}.values():
            if may_be_said(entry, self.gate) and self.can_read(entry):
                ways = (said for said in entry.usable_pronunciations if said.normal == normal)
                found += [Spoken(entry, said) for said in ways if said.is_listed][:1]
        return tuple(sorted(found, key=_familiarity))

    def _is_own_choice(self, entry: Entry) -> bool:
        """Whether one of the teacher's own words fits the query and is not stored anyway."""
        query = self.query
        fits = bool(query.endings & {*entry.endings}) if query.endings else not entry.endings
        stored = self.lexicon.get(entry.word)
        is_new = stored is None or not _is_ordinary(stored) or not 1 <= stored.band <= query.band
        return fits and is_new and entry.band <= query.band

    def stands_alone(self, normal: str) -> bool:
        """Whether no accent makes this sound fall together with another known word.

        The other way to say the same word (*top* with either vowel) is no harm.
        """
        others = {
            word
            for other in self.query.accents.heard_alike(normal) - {normal}
            for word in self.lexicon.heard_as(other)
        }
        return not others or others <= set(self.lexicon.heard_as(normal))


def select(
    lexicon: Lexicon,
    query: Query,
    rng: random.Random | None = None,
    overlay: Overlay = NO_OVERLAY,
) -> Pool:
    """Build the pool for a query.

    Args:
        lexicon: the open lexicon; it must stay open while the pool is used.
        query: what is wanted.
        rng: mixes the order, so that the first few are a fair choice.
        overlay: a teacher's own words.
    """
    gate = open_gate(lexicon, overlay.words("block"))
    return Pool(lexicon, query, gate, _index(own_entries(lexicon, overlay)), rng)


def spelled_of(entry: Entry, said: Pronunciation | None = None) -> Spelled:
    """Return what reading an entry takes, by default in its first usable pronunciation."""
    said = said or next(iter(entry.usable_pronunciations), entry.pronunciations[0])
    return Spelled(
        entry.word,
        entry.band,
        entry.zipf,
        entry.base,
        entry.endings,
        said.sounds,
        said.stress,
        said.normal,
        said.chunks,
        tuple(way.normal for way in entry.pronunciations),
    )


def own_entries(lexicon: Lexicon, overlay: Overlay) -> dict[str, Entry]:
    """Return the entries of the words a teacher added, with the bands the teacher gave.

    They are ordinary words then, whether or not they are written with a capital.
    """
    return {
        entry.word: entry._replace(
            band=overlay.rules[word].band,
            is_name=False,
            parts_of_speech=tuple(part.removeprefix("proper ") for part in entry.parts_of_speech),
        )
        for word in overlay.words("add")
        if (entry := lexicon.get(word))
    }


def look_up(words: Iterable[str], lexicon: Lexicon, own: Mapping[str, Entry]) -> list[Entry]:
    """Look words up, each once: as the teacher added them, or as they are stored."""
    found = (own.get(word) or lexicon.get(word) for word in dict.fromkeys(words))
    return [entry for entry in found if entry]


def _index(own: Mapping[str, Entry]) -> Own:
    by_sound: dict[str, list[Entry]] = {}
    for entry in own.values():
        for normal in {said.normal for said in entry.pronunciations}:
            by_sound.setdefault(normal, []).append(entry)
    return Own(own, by_sound)


def may_be_said(entry: Entry, gate: Gate) -> bool:
    """Whether an entry may be said by itself at all: by band, evidence and gate.

    Letters (*a*, *i*), contractions (*I'll*) and interjections (*shh*) are no
    words for a drill.
    """
    return (
        len(entry.word) > 1
        and entry.word.isalpha()
        and entry.parts_of_speech[:1] != ("interjection",)
        and bool(entry.usable_pronunciations)
        and may_be_printed(entry, gate)
    )


def may_be_printed(entry: Entry, gate: Gate) -> bool:
    """Whether an entry may stand on a page for a class that a teacher asks for.

    Also a word that is none for a drill: a letter (*a*), a contraction (*don't*), one
    that is said in several ways (*the*, *was*). No word that needs a capital: it would
    be printed without.
    """
    return (
        entry.band > 0
        and _is_ordinary(entry)
        and gate.allows(entry.word, (said.normal for said in entry.pronunciations))
    )


def fit_to_say(lexicon: Lexicon, gate: Gate) -> Callable[[str], bool]:
    """Return a check of spellings: whether a word is known and may be said."""

    def is_fit(word: str) -> bool:
        entry = lexicon.get(word)
        return entry is not None and may_be_said(entry, gate)

    return is_fit


def may_be_shown(entry: Entry, gate: Gate) -> bool:
    """Whether an entry may be shown to an adult who looks it up."""
    return entry.reason not in UNFIT_REASONS and gate.allows(
        entry.word, (said.normal for said in entry.pronunciations), alone=False
    )


def may_show_guess(guess: Guess, lexicon: Lexicon, gate: Gate) -> bool:
    """Whether a guessed reading may be shown.

    It may not sound, in any likely reading, like a word that is not for class,
    nor be such a word joined to another one.
    """
    normals = (guess.said.normal, *guess.also)
    alike = (entry for normal in normals for entry in lexicon.sounding_like(normal))
    return (
        gate.allows(guess.word, normals)
        and all(entry.reason not in UNFIT_REASONS for entry in alike)
        and not any(
            (head in gate.spellings and lexicon.get(tail))
            or (tail in gate.spellings and lexicon.get(head))
            # Two letters or more: gunk is not gun and k.
            for cut in range(2, len(guess.word) - 1)
            for head, tail in [(guess.word[:cut], guess.word[cut:])]
        )
    )


def nearest_words(lexicon: Lexicon, word: str, *, count: int = 3) -> list[str]:
    """Return known words spelled most like this one, all fit for class."""
    gate = open_gate(lexicon)
    known = lexicon.words(highest_band=HIGHEST_KNOWN_BAND)
    import difflib

    near = difflib.get_close_matches(word.lower(), known, n=2 * count)
    entries = filter(None, map(lexicon.get, near))
    return [entry.word for entry in entries if may_be_said(entry, gate)][:count]


def _is_ordinary(entry: Entry) -> bool:
    return not entry.is_name and not entry.needs_capital


def _familiarity(spoken: Spoken) -> tuple[bool, int, float]:
    entry = spoken.entry
    return entry.is_heteronym, entry.band, -entry.zipf
