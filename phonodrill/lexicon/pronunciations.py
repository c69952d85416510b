"""From the dictionary to checked pronunciations (install time only).

CMUdict's entries, mended by our table, judged by the second dictionary, given
the regular forms they lack, and each compared with its base + ending.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from phonodrill.errors import PhonodrillError
from phonodrill.lexicon import sources
from phonodrill.lexicon.entry import DERIVED, LISTED, MENDED
from phonodrill.lexicon.familiarity import OLDER
from phonodrill.lexicon.inflected import (
    Expected,
    keeps_base_sounds,
    spelled_ending,
    with_ending,
)
from phonodrill.lexicon.second_opinion import SecondDictionary, Verdict, judge
from phonodrill.lexicon.sources import Inflection
from phonodrill.lexicon.wordlists import Fix, Wordlists
from phonodrill.sounds.normal import normal_form
from phonodrill.sounds.notation import parse_arpabet

ACCEPTED = "accepted"


@dataclass(frozen=True, slots=True)
class PronunciationRow:
    """A row of table ``pronunciation``; columns in the schema's order."""

    word: str
    place: int
    sounds: str
    stress: str
    normal: str
    rhyme: int
    origin: str
    second_opinion: str
    with_base: str = ""
    usable: bool = False
    meaning: str = ""


Pronunciations = dict[str, list[PronunciationRow]]


def read_pronunciations(
    cmudict: Mapping[str, list[str]], tables: Wordlists, second: SecondDictionary
) -> Pronunciations:
    """Make the rows of every word in CMUdict or in our tables, mended and judged.

    Args:
        cmudict: word -> the phones of its variants.
        tables: our tables.
        second: the second dictionary.
    """
    readings: dict[str, dict[str, str]] = {}
    for reading in tables.heteronyms:
        readings.setdefault(reading.word, {})[reading.phones] = reading.meaning
    found: Pronunciations = {}
    for word in sorted({*cmudict, *tables.fixes, *readings}):
        fixes = tables.fixes.get(word, [])
        meanings = readings.get(word, {})
        listed = list(meanings) or mended(cmudict.get(word, []), fixes)
        found[word] = [
            _pronunciation(word, place, phones, cmudict, fixes, second, meanings.get(phones, ""))
            for place, phones in enumerate(listed)
        ]
    return found


def mended(listed: list[str], fixes: list[Fix]) -> list[str]:
    """Apply our fixes to the pronunciations CMUdict lists for one word.

    ``say`` rows replace the whole list, ``drop`` takes one out, ``add`` puts
    one behind, ``accept`` changes nothing here.

    Raises:
        PhonodrillError: if a ``drop`` or ``accept`` names a pronunciation that
            is not listed (the dictionary has changed: look at the fix again).
    """
    said = [fix.phones for fix in fixes if fix.action == "say"]
    result = said or list(listed)
    for fix in fixes:
        if fix.action in ("drop", "accept") and fix.phones not in result:
            raise PhonodrillError(
                f"pronunciation_fixes.tsv: {fix.word} is not listed as {fix.phones}",
                "look at that fix again",
            )
        if fix.action == "drop":
            result.remove(fix.phones)
        elif fix.action == "add":
            result.append(fix.phones)
    return result


def _pronunciation(
    word: str,
    place: int,
    phones: str,
    cmudict: Mapping[str, list[str]],
    fixes: list[Fix],
    second: SecondDictionary,
    meaning: str,
) -> PronunciationRow:
    sounds, stress = parse_arpabet(phones)
    reviewed = bool(meaning) or any(fix.phones == phones for fix in fixes)
    opinion: str = judge(sounds, stress, word, second)
    if reviewed and opinion != Verdict.CONFIRMED:
        opinion = ACCEPTED
    return PronunciationRow(
        word,
        place,
        sounds,
        stress,
        normal_form(sounds, stress),
        len(sources.rhyming_part(phones).split()),
        LISTED if phones in cmudict.get(word, []) else MENDED,
        opinion,
        meaning=meaning,
    )


def derive_missing(
    pronunciations: Pronunciations, inflections: list[Inflection], tables: Wordlists
) -> None:
    """Give regular forms that CMUdict lacks the sounds of a familiar base + ending."""
    missing: Pronunciations = {}
    for row in inflections:
        base = tables.vocabulary.get(row.base)
        familiar = base is not None and 0 < base.band < OLDER
        if (
            familiar
            and row.form not in pronunciations
            and keeps_base_sounds(spelled_ending(row.form, row.base, row.inflection))
        ):
            for said in trusted(pronunciations[row.base]):
                sounds, stress = with_ending((said.sounds, said.stress), row.inflection)
                derived = replace(
                    said,
                    word=row.form,
                    place=len(missing.setdefault(row.form, [])),
                    sounds=sounds,
                    stress=stress,
                    normal=normal_form(sounds, stress),
                    rhyme=said.rhyme + len(sounds) - len(said.sounds),
                    origin=DERIVED,
                    second_opinion=Verdict.NOT_LISTED,
                )
                if all(derived.normal != other.normal for other in missing[row.form]):
                    missing[row.form].append(derived)
    pronunciations |= missing


def trusted(rows: list[PronunciationRow]) -> list[PronunciationRow]:
    """Leave out what the second dictionary contradicts, unless that is all there is."""
    return [row for row in rows if row.second_opinion != Verdict.CONTRADICTED] or rows


def checked_against_bases(
    pronunciations: Pronunciations, expected: Expected, exceptions: frozenset[str]
) -> Pronunciations:
    """Return every pronunciation, by word, with ``with_base`` and ``usable`` filled."""
    checked: Pronunciations = {}
    for word in sorted(pronunciations):
        by_base = {} if word in exceptions else expected.get(word, {})
        wanted = frozenset().union(*by_base.values())
        stressed = any("1" in row.stress for row in pronunciations[word])
        checked[word] = []
        for row in pronunciations[word]:
            with_base = "" if not by_base else "agrees" if row.normal in wanted else "differs"
            compared = replace(row, with_base=with_base)
            # A weak form (the wuz of "was") is not how a word is said alone.
            weak = stressed and "1" not in row.stress
            checked[word].append(replace(compared, usable=not weak and _usable(compared)))
    return checked


def _usable(row: PronunciationRow) -> bool:
    if row.second_opinion == Verdict.NOT_LISTED:
        return row.with_base == "agrees" or (row.with_base == "" and row.place == 0)
    return row.second_opinion != Verdict.CONTRADICTED
