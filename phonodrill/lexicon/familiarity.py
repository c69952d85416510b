"""From reviewed words to the band of every word (install time only)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from phonodrill.lexicon.entry import UNFIT_REASONS
from phonodrill.lexicon.sources import Inflection
from phonodrill.lexicon.wordlists import Wordlists

NOT_REVIEWED = "not reviewed"
OLDER = 4
COMMON_FORM = 4.0
"""Zipf from which a form takes its base's band whatever its part of speech."""
VERB_IN_USE = 3.0
"""Zipf of the -ing form from which a word is in use as a verb (*raining*, not *eyeing*)."""
RARE_FORM = 2.0
"""Zipf below which a form is left out even if its base is well known."""
RARER_THAN_BASE = 2.0
"""How far below its base's Zipf a form may lie (*safety* is common, *safeties* is not)."""
RIVAL = 0.3
"""How far below a rival spelling's Zipf a form may lie (*buses*, not *busses*)."""


def is_familiar(
    row: Inflection,
    tables: Wordlists,
    zipf: Mapping[str, float],
    best: Mapping[tuple[str, str], float],
) -> bool:
    """Whether children who know the base meet this form.

    Forms of the base's main part of speech for a child (*ears*, not *eared*), or
    of a verb in use, that are not much rarer than the base or than a rival
    spelling; and all common forms.
    """
    base = tables.vocabulary.get(row.base)
    if base is None or base.band == 0 or zipf[row.form] < best[row.base, row.inflection] - RIVAL:
        return False
    if zipf[row.form] >= COMMON_FORM:
        return True
    floor = max(RARE_FORM, zipf[row.base] - RARER_THAN_BASE)
    verb_in_use = best.get((row.base, "present participle"), 0.0) >= VERB_IN_USE
    fits = row.part_of_speech == base.part_of_speech or (
        row.part_of_speech == "verb" and verb_in_use
    )
    return fits and zipf[row.form] >= floor


def band_of(
    word: str,
    rows: Sequence[Inflection],
    familiar: Sequence[Inflection],
    tables: Wordlists,
    *,
    known: bool,
) -> tuple[int, str]:
    """Return the band of a word, and the reason if it is 0 or was not reviewed.

    A word has its own judgement, or else the youngest band among the bases of
    which it is a familiar form; a form of an unfit base is unfit. Words never
    reviewed are band 4 if a dictionary knows them, else taken for names.

    Args:
        word: the spelling.
        rows: its rows as an inflected form.
        familiar: those of them that children meet.
        tables: our tables.
        known: whether a dictionary lists it as no name.
    """
    judged = tables.vocabulary.get(word)
    if judged:
        return judged.band, judged.reason
    for row in rows:
        base = tables.vocabulary.get(row.base)
        if base and base.reason in UNFIT_REASONS:
            return 0, base.reason
    if familiar:
        return min(tables.vocabulary[row.base].band for row in familiar), ""
    return (OLDER, NOT_REVIEWED) if known or rows else (0, "name")
