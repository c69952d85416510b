"""Every public function, given anything of the right type: a result or a clear refusal.

The table below has a row for each; one that is missing fails the first test, so a new public
name cannot go without. Texts are what a file or a page can hold (no halves of surrogate pairs).
"""

from __future__ import annotations

import copy
import inspect
import json
import os
import random
import traceback
from collections.abc import Callable
from enum import Enum
from functools import cache
from itertools import islice
from typing import Any, NamedTuple

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import phonodrill
from phonodrill import TASKS, By, Lexicon, Notation, PhonodrillError, Position, Query, Request
from phonodrill.lesson import from_data
from phonodrill.lesson.compose import Prepared, prepare
from phonodrill.overlay import NO_OVERLAY, Overlay, Rule
from phonodrill.render.json_schema import KINDS
from phonodrill.sounds.accents import EVERY_ACCENT, Accents
from phonodrill.sounds.units import RVowels
from phonodrill.tasks.difficulty import Level
from phonodrill.tasks.history import parse_history
from phonodrill.taught.known import Known
from phonodrill.taught.steps import parse_steps
from tests.fuzz.targets import mutate_data

LONG_RUN = int(os.environ.get("PHONODRILL_EXAMPLES", "0"))
"""For a long run: so many examples of each, other ones each time."""
EXAMPLES = 4
COSTLY = {"choose_words", "make_card", "make_warmup", "sort_vocabulary", "Task.candidates"}
"""What takes up to a second with a query that few words fit."""
COSTLY_EXAMPLES = 2
ENOUGH = 3
"""Results that are taken of what yields one after another."""

Draw = Callable[[st.SearchStrategy[Any]], Any]


class Bench(NamedTuple):
    """What a function is called with: drawn values, and what is costly to make."""

    draw: Draw
    lexicon: Lexicon
    readings: Any

    def pool(self) -> Any:
        """The words for a drawn query."""
        return phonodrill.select(self.lexicon, self.query(), overlay=self.draw(OVERLAYS))

    def query(self) -> Query:
        """A drawn query."""
        return query_of(self.draw(QUERIES), self.lexicon)

    def chance(self) -> random.Random:
        """A source of chance."""
        return random.Random(self.draw(SEEDS))


KNOWN_WORDS = (
    *("gulls", "torches", "ferries", "ropes", "ship", "crab", "skies", "lady", "hedge", "hoped"),
    *("hopping", "read", "sailors'", "gull's", "ice cream", "x-ray", "fish", "bus", "", " ", "I"),
)
SIGNS = "aeiouyst'’-_= #:,;.\n\r\t\x00\x1b\u00a0\u0301\u200d\u2028\u202e\ufeff1٣İıßﬁאж海😀ŋə"
ANY_TEXT = st.one_of(st.text(max_size=30), st.text(SIGNS, max_size=12))
LONG_TEXT = st.builds(lambda text, times: text * times, ANY_TEXT, st.sampled_from((1, 1, 1, 400)))
WORDS = st.one_of(st.sampled_from(KNOWN_WORDS), LONG_TEXT)
CODES = st.one_of(st.text("szɪiaʌbkdtfŋʃʧŝr", max_size=6), ANY_TEXT)
SEEDS = st.integers(-5, 2**70)
COUNTS = st.integers(-2, 4)
BANDS = st.integers(-1, 5)
SUFFIXES = st.one_of(st.sampled_from(("s", "ed", "ing", "er", "est", "ly", "y", "'s")), ANY_TEXT)
HISTORIES = st.builds(
    lambda text, rest: parse_history(text, rest=rest), LONG_TEXT, st.integers(-1, 9)
)
RULES = st.builds(
    Rule, st.sampled_from(("add", "block")), st.sampled_from(KNOWN_WORDS[:14]), st.integers(1, 3)
)
OVERLAYS = st.one_of(
    st.just(NO_OVERLAY),
    st.lists(RULES, max_size=3).map(lambda rules: Overlay({rule.word: rule for rule in rules})),
)
QUERIES = st.fixed_dictionaries(
    {
        "band": BANDS,
        "endings": st.frozensets(st.one_of(st.sampled_from(("s", "es", "ies")), ANY_TEXT)),
        "sound": CODES,
        "words": st.lists(WORDS, max_size=4).map(tuple),
        "r_vowels": st.sampled_from((None, *RVowels)),
        "made_up": st.booleans(),
        "taught": st.one_of(st.none(), st.lists(st.sampled_from(("s", "a", "sh", "-es", "t, p")))),
    }
)
FOCI = st.one_of(
    st.sampled_from(("es,ies", "sh", "i:e", "/k/", "segment", "", "c=s", "-", "es,sh", "x" * 999)),
    ANY_TEXT,
)
REQUESTS = st.builds(
    Request,
    focus=FOCI,
    band=BANDS,
    minutes=st.sampled_from((-1, 0, 1, 5, 8, 8, 8, 500)),
    seed=SEEDS,
    day=st.integers(-1, 3),
    notation=st.sampled_from(("ipa", "marks", "arpabet")),
    taught=st.sampled_from(((), (), ("s, a, t, p, i, n, sh",), ("\x00",))),
    review=st.lists(WORDS, max_size=2).map(tuple),
)
JSON = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(), st.floats(), ANY_TEXT),
    lambda inner: st.one_of(
        st.lists(inner, max_size=3),
        st.dictionaries(st.sampled_from(("lesson", "lessons", "request", "sections")), inner),
    ),
    max_leaves=8,
)


def query_of(drawn: dict[str, Any], lexicon: Lexicon) -> Query:
    fields = dict(drawn)
    taught = fields.pop("taught")
    known: Known | None = None
    if taught is not None:
        known = parse_steps(taught, lexicon.correspondences()).known()
    return Query(**fields, known=known, accents=EVERY_ACCENT)


def entry(bench: Bench) -> Any:
    return bench.lexicon.get(bench.draw(st.sampled_from(KNOWN_WORDS[:12])))


def pronunciation(bench: Bench) -> Any:
    return entry(bench).pronunciations[0]


def accents(bench: Bench) -> Accents:
    try:
        return phonodrill.parse_accents(bench.draw(st.sampled_from(("", "cot-caught,pin-pen"))))
    except PhonodrillError:
        return EVERY_ACCENT


def warmup(bench: Bench) -> Any:
    task = TASKS[bench.draw(st.sampled_from(sorted(TASKS)))]
    return phonodrill.make_warmup(
        bench.lexicon,
        task,
        bench.draw(st.sampled_from(list(task.positions))),
        bench.query(),
        count=bench.draw(COUNTS),
        seed=bench.draw(SEEDS),
        level=bench.draw(st.sampled_from((None, *Level))),
        history=bench.draw(HISTORIES),
        overlay=bench.draw(OVERLAYS),
    )


def candidates(bench: Bench) -> Any:
    task = TASKS[bench.draw(st.sampled_from(sorted(TASKS)))]
    at = bench.draw(st.sampled_from(list(task.positions)))
    pool = bench.pool()
    return list(islice(task.candidates(pool, pool.query, at), ENOUGH))


def chain(bench: Bench) -> Any:
    pool = bench.pool()
    start, end = bench.draw(WORDS), bench.draw(WORDS)
    return phonodrill.shortest_chain(pool, pool.query, start, end)


def long_chain(bench: Bench) -> Any:
    pool = bench.pool()
    steps, seed = bench.draw(COUNTS), bench.draw(SEEDS)
    return phonodrill.varied_chain(pool, pool.query, bench.draw(WORDS), steps, seed=seed)


def lessons(bench: Bench) -> Any:
    """Anything at all, or a lesson in which one thing was changed."""
    written = {"lesson": bench.readings.data}
    data = bench.draw(st.one_of(JSON, st.integers().map(lambda n: changed(written, n))))
    return phonodrill.read_lessons(data, bench.lexicon, bench.draw(OVERLAYS))


def changed(data: Any, seed: int) -> Any:
    return mutate_data(data, random.Random(seed))


def swap(bench: Bench) -> Any:
    words = st.one_of(WORDS, st.sampled_from(sorted(bench.readings.read.choice.words.every)))
    return phonodrill.swap_word(bench.readings.read, bench.draw(words), bench.draw(words))


def gate(bench: Bench) -> Any:
    return phonodrill.open_gate(bench.lexicon, bench.draw(st.lists(WORDS, max_size=3)))


def draws(bench: Bench) -> dict[str, Any]:
    """What the functions that draw words are given."""
    drawn = {"count": bench.draw(COUNTS), "rng": bench.chance(), "overlay": bench.draw(OVERLAYS)}
    return {"lexicon": bench.lexicon, "query": bench.query(), **drawn}


FUNCTIONS: dict[str, Callable[[Bench], object]] = {
    "add_ending": lambda b: phonodrill.add_ending(
        b.draw(WORDS),
        b.draw(SUFFIXES),
        b.lexicon,
        said=pronunciation(b) if b.draw(st.booleans()) else None,
    ),
    "choose_words": lambda b: phonodrill.choose_words(**draws(b)),
    "classify": lambda b: phonodrill.classify(
        b.draw(WORDS), b.lexicon, b.lexicon.ending_exceptions()
    ),
    "find_bases": lambda b: phonodrill.find_bases(b.draw(WORDS), b.lexicon),
    "find_lookalikes": lambda b: phonodrill.find_lookalikes(**draws(b)),
    "guess_reading": lambda b: phonodrill.guess_reading(b.draw(WORDS), b.lexicon),
    "make_card": lambda b: phonodrill.make_card(
        b.lexicon,
        b.draw(SUFFIXES),
        band=b.draw(BANDS),
        per_kind=b.draw(COUNTS),
        rng=b.chance(),
        overlay=b.draw(OVERLAYS),
    ),
    "make_days": lambda b: phonodrill.make_days(
        b.lexicon, b.draw(REQUESTS), b.draw(COUNTS), history=b.draw(HISTORIES)
    ),
    "make_lesson": lambda b: phonodrill.make_lesson(
        b.lexicon, b.draw(REQUESTS), history=b.draw(HISTORIES)
    ),
    "make_warmup": warmup,
    "open_gate": gate,
    "parse_accents": lambda b: phonodrill.parse_accents(b.draw(LONG_TEXT)),
    "parse_history": lambda b: phonodrill.parse_history(b.draw(LONG_TEXT)),
    "read_lessons": lessons,
    "select": lambda b: list(islice(b.pool().stimuli(), ENOUGH)),
    "shortest_chain": chain,
    "sort_vocabulary": lambda b: phonodrill.sort_vocabulary(
        b.lexicon, b.query(), b.draw(st.sampled_from(By)), b.draw(COUNTS), b.chance()
    ),
    "json_schema": lambda b: phonodrill.json_schema(b.draw(st.sampled_from([*KINDS]) | WORDS)),
    "sounds_of_endings": lambda b: list(
        phonodrill.sounds_of_endings(b.draw(st.lists(WORDS, max_size=5)), b.lexicon)
    ),
    "sort_words": lambda b: phonodrill.sort_words(
        b.lexicon,
        b.draw(st.lists(WORDS, max_size=5)),
        b.draw(st.sampled_from(By)),
        b.chance(),
        b.draw(st.lists(SUFFIXES, min_size=1, max_size=3)),
    ),
    "swap_word": swap,
    "varied_chain": long_chain,
    "Accents.heard_alike": lambda b: accents(b).heard_alike(b.draw(CODES)),
    "Accents.is_steady": lambda b: accents(b).is_steady(b.draw(CODES)),
    "Accents.merge_known": lambda b: accents(b).merge_known(b.draw(CODES)),
    "Accents.realizations": lambda b: accents(b).realizations(b.draw(WORDS), b.draw(CODES)),
    "Gate.allows": lambda b: gate(b).allows(b.draw(WORDS), b.draw(st.lists(CODES, max_size=3))),
    "Gate.allows_join": lambda b: gate(b).allows_join(
        b.draw(st.lists(CODES, max_size=3)), b.draw(st.lists(CODES, max_size=3))
    ),
    "History.back": lambda b: b.draw(HISTORIES).back(b.draw(st.lists(WORDS))),
    "History.with_set": lambda b: b.draw(HISTORIES).with_set(
        b.draw(ANY_TEXT), b.draw(st.lists(WORDS))
    ),
    "Lexicon.bases_of": lambda b: b.lexicon.bases_of(b.draw(WORDS)),
    "Lexicon.chunks": lambda b: b.lexicon.chunks(
        b.lexicon.chunks_of(b.draw(st.sampled_from(KNOWN_WORDS)))
    ),
    "Lexicon.chunks_of": lambda b: b.lexicon.chunks_of(b.draw(WORDS)),
    "Lexicon.close": lambda _: Lexicon().close(),
    "Lexicon.correspondences": lambda b: b.lexicon.correspondences(),
    "Lexicon.count": lambda b: b.lexicon.count(
        b.draw(st.sampled_from(("word", "pronunciation", "sentence")))
    ),
    "Lexicon.derived_words": lambda b: b.lexicon.derived_words(b.draw(WORDS)),
    "Lexicon.disagreements": lambda b: b.lexicon.disagreements(),
    "Lexicon.ending_exceptions": lambda b: b.lexicon.ending_exceptions(),
    "Lexicon.ending_spellings": lambda b: b.lexicon.ending_spellings(),
    "Lexicon.entries": lambda b: list(
        islice(b.lexicon.entries(highest_band=b.draw(BANDS)), ENOUGH)
    ),
    "Lexicon.every_sound": lambda b: b.lexicon.every_sound(),
    "Lexicon.forms_ending_in": lambda b: b.lexicon.forms_ending_in(b.draw(WORDS)),
    "Lexicon.forms_of": lambda b: b.lexicon.forms_of(b.draw(WORDS)),
    "Lexicon.get": lambda b: b.lexicon.get(b.draw(WORDS)),
    "Lexicon.heard_as": lambda b: b.lexicon.heard_as(b.draw(CODES)),
    "Lexicon.high_frequency": lambda b: b.lexicon.high_frequency(),
    "Lexicon.is_listed": lambda b: b.lexicon.is_listed(b.draw(CODES)),
    "Lexicon.listed_forms": lambda b: list(islice(b.lexicon.listed_forms(), ENOUGH)),
    "Lexicon.matching": lambda b: list(
        islice(
            b.lexicon.matching(
                highest_band=b.draw(BANDS),
                endings=b.draw(st.frozensets(SUFFIXES, max_size=3)),
                keep=bool,
                rng=b.chance(),
            ),
            ENOUGH,
        )
    ),
    "Lexicon.meta": lambda b: b.lexicon.meta(b.draw(st.sampled_from(("schema", "fingerprint")))),
    "Lexicon.never_say": lambda b: list(islice(b.lexicon.never_say(), ENOUGH)),
    "Lexicon.not_inflected": lambda b: b.lexicon.not_inflected(),
    "Lexicon.only_looks_inflected": lambda b: b.lexicon.only_looks_inflected(b.draw(WORDS)),
    "Lexicon.plain_words": lambda b: b.lexicon.plain_words(b.draw(BANDS)),
    "Lexicon.reader": lambda b: b.lexicon.reader(),
    "Lexicon.recall": lambda b: b.lexicon.recall(("test", b.draw(WORDS)), lambda: 1),
    "Lexicon.rhyming_with": lambda b: b.lexicon.rhyming_with(
        b.draw(CODES), highest_band=b.draw(BANDS)
    ),
    "Lexicon.sentences": lambda b: b.lexicon.sentences(b.draw(WORDS)),
    "Lexicon.all_sentences": lambda b: b.lexicon.all_sentences(),
    "Lexicon.sounding_like": lambda b: b.lexicon.sounding_like(b.draw(CODES)),
    "Lexicon.sources": lambda b: b.lexicon.sources(),
    "Lexicon.spelled": lambda b: b.lexicon.spelled(
        highest_band=b.draw(st.integers(-1, 1)), one_syllable=b.draw(st.booleans())
    ),
    "Lexicon.words": lambda b: b.lexicon.words(highest_band=b.draw(BANDS)),
    "Pool.can_read": lambda b: b.pool().can_read(entry(b)),
    "Pool.companions": lambda b: b.pool().companions(),
    "Pool.ending_in": lambda b: list(
        islice(b.pool().ending_in(tuple(b.draw(st.lists(SUFFIXES, max_size=3)))), ENOUGH)
    ),
    "Pool.entry_of": lambda b: b.pool().entry_of(b.draw(WORDS)),
    "Pool.find": lambda b: b.pool().find(b.draw(WORDS)),
    "Pool.heard_as": lambda b: b.pool().heard_as(b.draw(CODES)),
    "Pool.stands_alone": lambda b: b.pool().stands_alone(b.draw(CODES)),
    "Pool.stimuli": lambda b: list(islice(b.pool().stimuli(), ENOUGH)),
    "Pronunciation.spaced": lambda b: pronunciation(b).spaced(b.draw(st.sampled_from(Notation))),
    "Pronunciation.write": lambda b: pronunciation(b).write(b.draw(st.sampled_from(Notation))),
    "Task.candidates": candidates,
}


def public_functions() -> set[str]:
    """Name the public functions, and the public methods of public classes."""
    found = set()
    for name in phonodrill.__all__:
        thing = getattr(phonodrill, name)
        if inspect.isfunction(thing):
            found.add(name)
        elif inspect.isclass(thing) and not issubclass(thing, Enum):
            methods = (key for key, value in vars(thing).items() if inspect.isfunction(value))
            found |= {f"{name}.{method}" for method in methods if not method.startswith("_")}
    return found


class Readings(NamedTuple):
    """A lesson as it is written and as it is read."""

    data: Any
    read: Any


@pytest.fixture(scope="module")
def readings(lexicon: Lexicon) -> Readings:
    from phonodrill.lesson.as_data import as_data

    lesson = phonodrill.make_lesson(lexicon, Request("es,ies", minutes=8, seed=3))
    data = json.loads(json.dumps(as_data(lesson)))
    return Readings(data, phonodrill.read_lessons({"lesson": copy.deepcopy(data)}, lexicon)[0])


@pytest.fixture
def _prepared_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """Words of a focus are gathered once, which is what a lesson costs."""

    @cache
    def once(lexicon: Lexicon, request: Request) -> Prepared:
        return prepare(lexicon, request)

    def prepared(lexicon: Lexicon, request: Request, overlay: Overlay = NO_OVERLAY) -> Prepared:
        asked = request._replace(seed=1, day=1, minutes=8, review=())
        return prepare(lexicon, request, overlay) if overlay.rules else once(lexicon, asked)

    monkeypatch.setattr(from_data, "prepare", prepared)


def test_every_public_function_has_a_row() -> None:
    assert public_functions() == {*FUNCTIONS}


@pytest.mark.usefixtures("_prepared_once")
@pytest.mark.parametrize("name", sorted(FUNCTIONS))
def test_a_result_or_a_clear_refusal(name: str, lexicon: Lexicon, readings: Readings) -> None:
    wrong: list[str] = []

    @settings(
        max_examples=LONG_RUN or (COSTLY_EXAMPLES if name in COSTLY else EXAMPLES),
        deadline=None,
        derandomize=not LONG_RUN,
        database=None,
        suppress_health_check=list(HealthCheck),
    )
    @given(data=st.data())
    def call(data: st.DataObject) -> None:
        drawn: list[object] = []

        def draw(strategy: st.SearchStrategy[Any]) -> Any:
            drawn.append(data.draw(strategy))
            return drawn[-1]

        try:
            FUNCTIONS[name](Bench(draw, lexicon, readings))
        except PhonodrillError as error:
            if not (error.message and error.message.isprintable()):
                wrong.append(f"{error.message!r} for {drawn!r:.500}")
        except Exception:  # noqa: BLE001  # whatever it is, it is what is looked for
            wrong.append(f"{drawn!r:.500}\n{traceback.format_exc(limit=-4)}")

    call()
    assert not wrong, wrong[0]


@given(st.text())
@settings(max_examples=20)
def test_the_choices_are_read_from_their_names(text: str) -> None:
    for choice in (By, Level, Notation, Position):
        names = {member.value for member in choice}
        assert text not in names or choice(text) == text
