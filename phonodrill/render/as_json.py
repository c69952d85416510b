"""JSON, the contract for other programs."""

from __future__ import annotations

import json

from phonodrill.render.document import Document
from phonodrill.version import VERSION

SCHEMA = 1


def render(document: Document) -> str:
    """Write the document's data as JSON, with the versions of program and schema."""
    head = {"phonodrill": {"version": VERSION, "schema": SCHEMA}}
    return json.dumps(head | document.data, ensure_ascii=False, indent=2) + "\n"
