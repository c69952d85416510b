"""Tie the letters of a word to its sounds, by correspondences of the inventory only.

All ways to split a word make a lattice; the best is Viterbi's by the trained
prices. Where the inventory has no way through, letters may stand for other
sounds at a high price, and that chunk is irregular: nothing is dropped.

Conventions where two ways of splitting are both sensible:

* A long vowel, one consonant and a silent e are a split vowel (c-a_e-k); after
  any other vowel the e goes with the consonant before it (g-i-ve, h-ou-se).
* Two consonants stand inside a split vowel only if they are st (p-a_e-s-t).
* A vowel keeps the single R behind it where the two are a spelling of the
  inventory (c-ar, st-or-y), else not (v-e-r-y, c-a-rr-y).
* The letters of a regular ending are one chunk (b-r-u-sh-es, s-k-ies, j-u-m-p-ed);
  a silent e before -s stays with the base word (r-o_e-p-s), a sounded one goes
  with the ending (r-o-s-es).
* Apostrophe and hyphen are chunks of their own, without sound.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from phonodrill.graphemes.chunk import Chunk
from phonodrill.graphemes.inventory import Inventory, aligned_form
from phonodrill.graphemes.lattice import (
    CLOSES,
    ODD,
    Allow,
    Edge,
    Lattice,
    best_path,
    build_lattice,
)


class Job(NamedTuple):
    """A word to align, its ending set apart.

    Attributes:
        letters, sounds: the word without its ending; sounds as compared.
        ending: the last chunk, or None.
    """

    letters: str
    sounds: str
    ending: Chunk | None


def set_ending_apart(inventory: Inventory, word: str, sounds: str, stress: str, ending: str) -> Job:
    """Take the chunk of a regular ending off a word.

    Args:
        inventory: the correspondences.
        word: the spelling, lower case.
        sounds: codes, one a phoneme.
        stress: one digit a vowel.
        ending: letters of the regular ending that the word has as an inflected
            form (s, es, ies, ed), or empty.
    """
    form = aligned_form(sounds, stress)
    found = [
        (letters, reading.sounds, reading.row)
        for letters in (("s", "es") if ending == "s" else (ending,))
        for reading in inventory.endings.get(letters, ())
        if word.endswith(letters) and form.endswith(reading.sounds)
        # An odd ending (axes of axis) is its own, not -s behind a vowel (sees).
        if letters == ending or inventory.rows[reading.row].is_regular
    ]
    if not found:
        return Job(word, form, None)
    # The most sounds: after a silent e, -s is heard with that e (hedg-es).
    letters, said, row = max(found, key=lambda match: (len(match[1]), -len(match[0])))
    first, heard = len(word) - len(letters), len(form) - len(said)
    chunk = Chunk(
        tuple(range(first, len(word))), tuple(range(heard, len(form))), inventory.rows[row]
    )
    return Job(word[:first], form[:heard], chunk)


def align(
    inventory: Inventory, prices: Sequence[float], job: Job, lattice: Lattice | None = None
) -> tuple[Chunk, ...]:
    """Tie letters to sounds.

    Args:
        inventory: the correspondences.
        prices: the trained price of each.
        job: from :func:`set_ending_apart`.
        lattice: from :func:`lattice_of`, if it was built before.

    Returns:
        Chunks in the order of their first letters; together they have every
        letter and every sound once. None for an abbreviation, where a letter
        would stand for more than a few sounds.
    """
    tries = (build_lattice(inventory, job.letters, job.sounds, allow) for allow in Allow)
    lattice = lattice or next(filter(None, tries), None)
    if lattice is None:
        return ()
    chunks = _chunks(inventory, best_path(lattice, prices))
    return (*chunks, job.ending) if job.ending else chunks


def lattice_of(inventory: Inventory, job: Job) -> Lattice | None:
    """Return the lattice of a word by correspondences only, or None."""
    return build_lattice(inventory, job.letters, job.sounds)


def _chunks(inventory: Inventory, path: Sequence[Edge]) -> tuple[Chunk, ...]:
    chunks: list[Chunk] = []
    opened = 0
    for edge in path:
        if edge.row == CLOSES:
            split = chunks[opened]
            chunks[opened] = split._replace(letters=(*split.letters, edge.start.letter))
            continue
        if edge.end.split >= 0 and edge.start.split < 0:
            opened = len(chunks)
        chunks.append(
            Chunk(
                tuple(range(edge.start.letter, edge.end.letter)),
                tuple(range(edge.start.sound, edge.end.sound)),
                None if edge.row == ODD else inventory.rows[edge.row],
            )
        )
    return tuple(chunks)
