"""Words that change one sound at a time."""

from __future__ import annotations

from typing import TYPE_CHECKING

from phonodrill.errors import PhonodrillError
from phonodrill.render.views import chain as view
from phonodrill.selection import Query, nearest_words, select
from phonodrill.services.made import Made
from phonodrill.tasks.chain import shortest_chain, varied_chain

if TYPE_CHECKING:
    from phonodrill.lexicon.store import Lexicon
    from phonodrill.overlay import Overlay
    from phonodrill.sounds.notation import Notation

HIGHEST_STEPS = 60
USUAL_STEPS = 8


def chain(
    lexicon: Lexicon,
    query: Query,
    start: str,
    end: str,
    *,
    steps: int,
    seed: int,
    overlay: Overlay,
    notation: Notation | None = None,
) -> Made:
    """Make a chain: the shortest to a word, or a varied one of so many steps.

    Args:
        lexicon: the open lexicon.
        query: which words may be used.
        start: the first word.
        end: the last; empty for a varied chain.
        steps: how many, without an end.
        seed: makes the same varied chain again.
        overlay: a teacher's own words.
        notation: how sounds are written.

    Raises:
        PhonodrillError: if a word is not known or not fit, or there is no chain.
    """
    pool = select(lexicon, query, overlay=overlay)
    for word in filter(None, (start, end)):
        if lexicon.get(word.strip()) is None:
            near = nearest_words(lexicon, word)
            raise PhonodrillError(
                f"{word!r} is not in the lexicon",
                f"phonodrill chain {near[0]}" if near else "check the spelling",
            )
    first, last = start.strip().lower(), end.strip().lower()
    if last:
        result = shortest_chain(pool, query, first, last)
    else:
        result = varied_chain(pool, query, first, steps, seed=seed)
    return Made(view.document(result, notation), result.notes)
