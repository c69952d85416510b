"""Steps taught: what each opens, and which come next."""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.errors import PhonodrillError
from phonodrill.gate import open_gate
from phonodrill.lexicon.store import Lexicon
from phonodrill.overlay import NO_OVERLAY, Overlay
from phonodrill.reading.material import (
    frequent_targets,
    read_words,
    sentence_targets,
    whole_targets,
    word_targets,
)
from phonodrill.selection import may_be_shown
from phonodrill.taught.check import Checked, check_steps, leave_out_unfit
from phonodrill.taught.order import PASSES
from phonodrill.taught.steps import Taught
from phonodrill.taught.suggest import Goal, Material, Suggestion, suggest
from phonodrill.taught.tokens import always_open

DEFAULT_SEED = 1


class NextSteps(NamedTuple):
    """What order is wanted.

    Attributes:
        goal: what it is to open soonest.
        steps: how many steps to add at most; all if None.
        seed: of the search.
        passes: how thorough the search is; 0 for the quickest.
    """

    goal: Goal = Goal.DECODABLE
    steps: int | None = None
    seed: int = DEFAULT_SEED
    passes: int = PASSES


def check_taught(
    lexicon: Lexicon, taught: Taught, band: int, overlay: Overlay = NO_OVERLAY
) -> tuple[list[Checked], tuple[str, ...]]:
    """Check steps one by one.

    Args:
        lexicon: the open lexicon.
        taught: the steps.
        band: highest band of the words counted.
        overlay: a teacher's own words.

    Returns:
        The checked steps, and a line on each line that could not be used.
    """
    gate = open_gate(lexicon, overlay.words("block"))

    def is_fit(word: str) -> bool:
        entry = lexicon.get(word)
        return may_be_shown(entry, gate) if entry else gate.allows(word, [], alone=False)

    known = leave_out_unfit(taught, is_fit)
    words = word_targets(lexicon, read_words(lexicon, gate, band))
    whole = whole_targets(lexicon, (word for step in known.steps for word in step.words))
    return check_steps(known, words, whole, lexicon.correspondences()), known.problems


def suggest_steps(
    lexicon: Lexicon,
    wish: NextSteps,
    band: int,
    start: Taught | None = None,
    overlay: Overlay = NO_OVERLAY,
    name: str = "the list",
) -> Suggestion:
    """Work out which steps to teach next.

    Args:
        lexicon: the open lexicon.
        wish: what order is wanted.
        band: highest band of the words counted.
        start: what was taught already; None if nothing was.
        overlay: a teacher's own words.
        name: what ``start`` is called if it leaves nothing to teach.

    Raises:
        PhonodrillError: if nothing is left to teach.
    """
    inventory = lexicon.correspondences()
    known = start or Taught((), always_open(inventory))
    gate = open_gate(lexicon, overlay.words("block"))
    material = Material(
        inventory,
        word_targets(lexicon, read_words(lexicon, gate, band)),
        sentence_targets(lexicon, gate) if wish.goal is Goal.SENTENCES else (),
        frequent_targets(lexicon, gate),
    )
    result = suggest(material, wish.goal, wish.seed, known, wish.steps, wish.passes)
    if len(result.lines) == result.started:
        raise PhonodrillError(f"{name} leaves nothing to teach", "a shorter list")
    return result
