"""An estimate of how hard an item is, to order a set from easy to hard.

It is an estimate, not a measurement of a child. The order is drawn from
published findings; the sizes of the steps are ours, all of them in `WEIGHTS`:

* syllables are easier than onset and rime, these easier than single sounds
  (Liberman, Shankweiler, Fischer & Carter 1974, *JECP* 18, 201-212; Treiman &
  Zukowski 1991; Anthony et al. 2003, *RRQ* 38, 470-487);
* same sound and single sounds before blending, then segmenting, then adding,
  taking off, changing (Common Core, Appendix A; Adams 1990, *Beginning to
  Read*; Yopp 1988, *RRQ* 23, 159-177); what an item is made of counts for more
  than the kind of task (Stahl & Murray 1994, *JEP* 86, 221-234);
* taking off the last sound is easier than the first for the youngest (Content,
  Kolinsky, Morais & Bertelson 1986, *JECP* 42, 49-72); elsewhere the first
  sound goes before the last, and both before the vowel (the order in which the
  standards name them);
* a sound that is a whole onset is easier than one inside a cluster (Treiman &
  Zukowski 1996, *JECP* 61, 193-215), the second of a cluster is hardest (Bruck &
  Treiman 1990, *JECP* 50, 156-178); a final cluster does less harm (Treiman &
  Weatherston 1992, *JEP* 84, 174-181);
* short words are easier than long ones (the same study); two sounds before
  three, vowel + consonant before consonant + vowel (Uhry & Ehri 1999, *JEP* 91,
  594-603);
* a vowel holds on to a liquid, less to a nasal (Treiman 1984, *JVLVB* 23, 343-356);
* tr and dr are heard as one sound (Read 1971), so splitting them is hardest;
* near foils are harder (Hogan 2010, *J. Learn. Disab.* 43, 346-356), those that
  differ in voice alone most (Treiman et al. 1998, *JECP* 68, 3-21);
* letters that hide a sound mislead: x, qu (Ehri & Wilce 1980, *Appl.
  Psycholing.* 1, 371-385);
* a made-up word is no harder than a real one (Schreuder & van Bon 1989);
* less familiar words are harder, and so are taking off a vowel and blending from
  a stop, which cannot be held (common practice, no source).
"""

from __future__ import annotations

from enum import StrEnum
from typing import NamedTuple

from phonodrill.sounds.inventory import BY_CODE, VOWELS, Kind
from phonodrill.sounds.places import Position
from phonodrill.sounds.units import splits_heard_affricate

WEIGHTS = {
    # what is done
    "identify": 0.0,
    "isolate": 0.5,
    "categorize": 0.75,
    "blend": 1.0,
    "segment": 2.0,
    "add": 3.0,
    "delete": 3.25,
    "substitute": 3.5,
    "reverse": 4.5,
    # where
    "syllable": 0.0,
    "onset": 0.75,
    "rime": 0.75,
    "first": 1.25,
    "last": 1.5,
    "each": 1.75,
    "vowel": 2.0,
    "coda1": 2.5,
    "onset2": 3.25,
    "delete last": 1.25,
    "delete first": 1.5,
    # what it is made of
    "first of a cluster": 1.0,
    "last of a cluster": 0.25,
    "a cluster to take apart": 0.5,
    "tr or dr split": 2.0,
    "a vowel taken off": 0.5,
    "each sound past two": 0.25,
    "begins with a consonant": 0.1,
    "liquid behind a vowel": 0.5,
    "nasal behind a vowel": 0.25,
    "blending from a stop": 0.25,
    "x or qu": 0.5,
    "a near foil": 1.5,
    "a foil of another voice": 0.5,
    "each band past the first": 0.5,
}
"""Every step, in points without a unit: change them here."""

EASY_UP_TO = 0.75
MIDDLE_UP_TO = 1.75
"""Points that the make-up of an item may add to its kind at a level."""

_TAKEN_OUT = ("isolate", "delete", "substitute", "add")
_TAKEN_APART = ("segment", "blend", "reverse")


class Level(StrEnum):
    """How hard an item is among those of its kind."""

    EASY = "easy"
    MIDDLE = "middle"
    HARD = "hard"


class Nearness(NamedTuple):
    """How a foil compares with what it is told from.

    Attributes:
        near: whether one feature or one sound tells them apart.
        voice_only: whether that feature is the voice.
    """

    near: bool = False
    voice_only: bool = False


NO_FOIL = Nearness()


def kind_score(task: str, at: Position) -> float:
    """Return the points of a task at a place, whatever the word."""
    place = WEIGHTS.get(f"{task} {at}", WEIGHTS[at])
    return WEIGHTS[task] + place


def estimate(
    task: str,
    at: Position,
    sounds: str,
    band: int,
    *,
    spelling: str = "",
    nearness: Nearness = NO_FOIL,
) -> float:
    """Estimate how hard an item is.

    Args:
        task: name of the task.
        at: where in the word.
        sounds: the word that has the sound, one code a phoneme: the stimulus, or
            the answer where a sound is added.
        band: the highest band among the words, 1-3.
        spelling: how that word is written.
        nearness: of the foil, where there is one.

    Returns:
        Points; no unit.

    >>> estimate("delete", Position.LAST, "rOp", 1) < estimate(
    ...     "delete", Position.FIRST, "rOp", 1) < estimate("delete", Position.FIRST, "stɑp", 1)
    True
    """
    score = kind_score(task, at)
    score += WEIGHTS["each sound past two"] * max(0, len(sounds) - 2)
    score += WEIGHTS["begins with a consonant"] * (sounds[0] not in VOWELS)
    score += WEIGHTS["each band past the first"] * (band - 1)
    score += WEIGHTS["x or qu"] * ("x" in spelling or "qu" in spelling)
    score += WEIGHTS["a near foil"] * nearness.near
    score += WEIGHTS["a foil of another voice"] * nearness.voice_only
    return round(score + _of_clusters(task, at, sounds) + _of_sounds(task, at, sounds), 3)


def level_of(task: str, at: Position, difficulty: float) -> Level:
    """Return how hard an item is among those of its kind.

    >>> level_of("isolate", Position.FIRST, 1.75 + 0.35)
    <Level.EASY: 'easy'>
    """
    added = difficulty - kind_score(task, at)
    if added <= EASY_UP_TO:
        return Level.EASY
    return Level.MIDDLE if added <= MIDDLE_UP_TO else Level.HARD


def _of_clusters(task: str, at: Position, sounds: str) -> float:
    starts = len(sounds) > 1 and VOWELS.isdisjoint(sounds[:2])
    ends = len(sounds) > 1 and VOWELS.isdisjoint(sounds[-2:])
    if at is Position.FIRST:
        return WEIGHTS["first of a cluster"] * starts
    if at is Position.LAST:
        return WEIGHTS["last of a cluster"] * ends
    if at is Position.EACH:
        return WEIGHTS["a cluster to take apart"] * (starts + ends)
    if at in (Position.VOWEL, Position.RIME, Position.ONSET) and task in _TAKEN_OUT:
        return WEIGHTS["a cluster to take apart"] * starts
    return 0.0


def _of_sounds(task: str, at: Position, sounds: str) -> float:
    score = 0.0
    index = {Position.FIRST: 0, Position.ONSET2: 1, Position.LAST: len(sounds) - 1}.get(at)
    if index is not None:
        score += WEIGHTS["tr or dr split"] * splits_heard_affricate(sounds, index)
        score += WEIGHTS["a vowel taken off"] * (task == "delete" and sounds[index] in VOWELS)
    if at is Position.EACH and sounds[:2] in ("tr", "dr"):
        score += WEIGHTS["tr or dr split"] / 2
    if at is Position.CODA1 or (at is Position.EACH and task in _TAKEN_APART):
        last = max((i for i, code in enumerate(sounds) if code in VOWELS), default=0)
        after = sounds[last + 1 : last + 2]
        kind = BY_CODE[after].kind if after else None
        score += WEIGHTS["liquid behind a vowel"] * (kind is Kind.LIQUID)
        score += WEIGHTS["nasal behind a vowel"] * (kind is Kind.NASAL)
    if task == "blend" and at is Position.EACH:
        score += WEIGHTS["blending from a stop"] * (BY_CODE[sounds[0]].kind is Kind.STOP)
    return score
