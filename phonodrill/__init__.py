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

from phonodrill.endings.classify import Ending, classify
from phonodrill.endings.sort import By, Sort, sort_vocabulary, sort_words
from phonodrill.errors import PhonodrillError
from phonodrill.gate import Gate, open_gate
from phonodrill.lexicon.entry import Entry, Inflection, Pronunciation
from phonodrill.lexicon.store import Lexicon
from phonodrill.selection import Pool, Query, select
from phonodrill.sounds.notation import Notation
from phonodrill.tasks.item import Item, Position
from phonodrill.tasks.registry import TASKS, Task
from phonodrill.tasks.warmup import WarmUp, make_warmup
from phonodrill.version import VERSION as __version__

__all__ = [
    "TASKS",
    "By",
    "Ending",
    "Entry",
    "Gate",
    "Inflection",
    "Item",
    "Lexicon",
    "Notation",
    "PhonodrillError",
    "Pool",
    "Position",
    "Pronunciation",
    "Query",
    "Sort",
    "Task",
    "WarmUp",
    "__version__",
    "classify",
    "make_warmup",
    "open_gate",
    "select",
    "sort_vocabulary",
    "sort_words",
]
