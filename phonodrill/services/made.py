"""What a service hands back: a document, and what the user has to be told about it."""

from __future__ import annotations

from typing import NamedTuple

from phonodrill.render.document import Document


class Made(NamedTuple):
    """A finished result.

    Attributes:
        document: ready for every format.
        notes: one line each on what was left out, or could not be done in full.
    """

    document: Document
    notes: tuple[str, ...] = ()
