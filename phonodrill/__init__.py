"""Word-study drills in which every word, sound and answer was checked.

The public interface: open the lexicon, ask for a warm-up or a sort.

>>> from phonodrill import Lexicon, Position, Query, TASKS, make_warmup
>>> with Lexicon() as lexicon:
...     warmup = make_warmup(
...         lexicon, TASKS["delete"], Position.FIRST, Query(band=1), count=3, seed=1
...     )
>>> len(warmup.items)
3
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

from phonodrill.version import VERSION

if TYPE_CHECKING:
    from phonodrill.endings.add import Added as Added
    from phonodrill.endings.add import add_ending as add_ending
    from phonodrill.endings.bulk import sounds_of_endings as sounds_of_endings
    from phonodrill.endings.choose import Chosen as Chosen
    from phonodrill.endings.choose import choose_words as choose_words
    from phonodrill.endings.classify import Ending as Ending
    from phonodrill.endings.classify import classify as classify
    from phonodrill.endings.lookalikes import find_lookalikes as find_lookalikes
    from phonodrill.endings.sort import By as By
    from phonodrill.endings.sort import Sort as Sort
    from phonodrill.endings.sort import sort_vocabulary as sort_vocabulary
    from phonodrill.endings.sort import sort_words as sort_words
    from phonodrill.endings.table import make_card as make_card
    from phonodrill.endings.undo import find_bases as find_bases
    from phonodrill.errors import PhonodrillError as PhonodrillError
    from phonodrill.gate import Gate as Gate
    from phonodrill.gate import open_gate as open_gate
    from phonodrill.guess import Guess as Guess
    from phonodrill.guess import guess_reading as guess_reading
    from phonodrill.lesson.compose import make_lesson as make_lesson
    from phonodrill.lesson.days import make_days as make_days
    from phonodrill.lesson.from_data import read_lessons as read_lessons
    from phonodrill.lesson.request import Request as Request
    from phonodrill.lesson.swap import swap_word as swap_word
    from phonodrill.lesson.tree import Lesson as Lesson
    from phonodrill.lexicon.entry import Entry as Entry
    from phonodrill.lexicon.entry import Inflection as Inflection
    from phonodrill.lexicon.entry import Pronunciation as Pronunciation
    from phonodrill.lexicon.store import Lexicon as Lexicon
    from phonodrill.render.json_schema import json_schema as json_schema
    from phonodrill.selection import Pool as Pool
    from phonodrill.selection import Query as Query
    from phonodrill.selection import select as select
    from phonodrill.sounds.accents import Accents as Accents
    from phonodrill.sounds.accents import parse_accents as parse_accents
    from phonodrill.sounds.notation import Notation as Notation
    from phonodrill.sounds.places import Position as Position
    from phonodrill.tasks.chain import Chain as Chain
    from phonodrill.tasks.chain import shortest_chain as shortest_chain
    from phonodrill.tasks.chain import varied_chain as varied_chain
    from phonodrill.tasks.difficulty import Level as Level
    from phonodrill.tasks.history import History as History
    from phonodrill.tasks.history import parse_history as parse_history
    from phonodrill.tasks.item import Item as Item
    from phonodrill.tasks.registry import TASKS as TASKS
    from phonodrill.tasks.registry import Task as Task
    from phonodrill.tasks.warmup import WarmUp as WarmUp
    from phonodrill.tasks.warmup import make_warmup as make_warmup

# Names are fetched when they are first used, so that a command pays only for its own modules.
_HOMES = {
    "Accents": "phonodrill.sounds.accents",
    "Added": "phonodrill.endings.add",
    "By": "phonodrill.endings.sort",
    "Chain": "phonodrill.tasks.chain",
    "Chosen": "phonodrill.endings.choose",
    "Ending": "phonodrill.endings.classify",
    "Entry": "phonodrill.lexicon.entry",
    "Gate": "phonodrill.gate",
    "Guess": "phonodrill.guess",
    "History": "phonodrill.tasks.history",
    "Inflection": "phonodrill.lexicon.entry",
    "Item": "phonodrill.tasks.item",
    "Lesson": "phonodrill.lesson.tree",
    "Level": "phonodrill.tasks.difficulty",
    "Lexicon": "phonodrill.lexicon.store",
    "Notation": "phonodrill.sounds.notation",
    "PhonodrillError": "phonodrill.errors",
    "Pool": "phonodrill.selection",
    "Position": "phonodrill.sounds.places",
    "Pronunciation": "phonodrill.lexicon.entry",
    "Query": "phonodrill.selection",
    "Request": "phonodrill.lesson.request",
    "Sort": "phonodrill.endings.sort",
    "TASKS": "phonodrill.tasks.registry",
    "Task": "phonodrill.tasks.registry",
    "WarmUp": "phonodrill.tasks.warmup",
    "add_ending": "phonodrill.endings.add",
    "choose_words": "phonodrill.endings.choose",
    "classify": "phonodrill.endings.classify",
    "guess_reading": "phonodrill.guess",
    "find_bases": "phonodrill.endings.undo",
    "find_lookalikes": "phonodrill.endings.lookalikes",
    "json_schema": "phonodrill.render.json_schema",
    "make_card": "phonodrill.endings.table",
    "make_days": "phonodrill.lesson.days",
    "make_lesson": "phonodrill.lesson.compose",
    "make_warmup": "phonodrill.tasks.warmup",
    "open_gate": "phonodrill.gate",
    "parse_accents": "phonodrill.sounds.accents",
    "parse_history": "phonodrill.tasks.history",
    "read_lessons": "phonodrill.lesson.from_data",
    "select": "phonodrill.selection",
    "shortest_chain": "phonodrill.tasks.chain",
    "sort_vocabulary": "phonodrill.endings.sort",
    "sort_words": "phonodrill.endings.sort",
    "sounds_of_endings": "phonodrill.endings.bulk",
    "swap_word": "phonodrill.lesson.swap",
    "varied_chain": "phonodrill.tasks.chain",
}

__version__ = VERSION
__all__ = ["__version__", *_HOMES]  # noqa: PLE0604


if not TYPE_CHECKING:
    # Seen by a type checker, it would make any misspelled name right.
    def __getattr__(name: str) -> Any:
        if name in _HOMES:
            return getattr(import_module(_HOMES[name]), name)
        raise AttributeError(f"module 'phonodrill' has no attribute {name!r}")


def __dir__() -> list[str]:
    return sorted(__all__)
