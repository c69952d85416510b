"""An estimate of how hard an item is, to order a set from easy to hard.

The order is drawn from published findings; the sizes of the steps are ours:

* taking off the last sound is easier than the first for the youngest
  (Content, Kolinsky, Morais & Bertelson 1986, *JECP* 42, 49-72);
* a sound that is a whole onset is easier than one inside a cluster
  (Treiman & Zukowski 1996, *JECP* 61, 193-215); a final cluster does less harm
  (Treiman & Weatherston 1992, *JEP* 84, 174-181);
* short words are easier than long ones (the same study);
* tr and dr are heard as one sound (Read 1971), so splitting them is hardest;
* less familiar words are harder, and so is taking off a vowel (common
  practice, no source).
"""

from __future__ import annotations

from phonodrill.sounds.inventory import VOWELS
from phonodrill.sounds.units import splits_heard_affricate
from phonodrill.tasks.item import Position

WEIGHTS = {
    "first sound": 1.0,
    "first of a cluster": 2.0,
    "last of a cluster": 0.5,
    "tr or dr split": 2.0,
    "a vowel taken off": 0.5,
    "each sound past three": 0.25,
    "each band past the first": 0.5,
}


def deletion_difficulty(sounds: str, at: Position, band: int) -> float:
    """Estimate how hard it is to take one sound off a word.

    Args:
        sounds: the stimulus, one code a phoneme.
        at: first or last.
        band: the highest band among stimulus and answer, 1-3.

    Returns:
        0 for the easiest; no unit.

    >>> deletion_difficulty("rOp", Position.LAST, 1) < deletion_difficulty(
    ...     "rOp", Position.FIRST, 1) < deletion_difficulty("stɑp", Position.FIRST, 1)
    True
    """
    score = WEIGHTS["each sound past three"] * max(0, len(sounds) - 3)
    score += WEIGHTS["each band past the first"] * (band - 1)
    index = 0 if at is Position.FIRST else len(sounds) - 1
    neighbor = sounds[1] if at is Position.FIRST else sounds[-2]
    clustered = sounds[index] not in VOWELS and neighbor not in VOWELS
    if at is Position.FIRST:
        score += WEIGHTS["first sound"] + clustered * WEIGHTS["first of a cluster"]
    else:
        score += clustered * WEIGHTS["last of a cluster"]
    if sounds[index] in VOWELS:
        score += WEIGHTS["a vowel taken off"]
    if splits_heard_affricate(sounds, index):
        score += WEIGHTS["tr or dr split"]
    return score
