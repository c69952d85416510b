"""JSON, the contract for other programs."""

from __future__ import annotations

import json
from typing import Any

from phonodrill.render.document import Document
from phonodrill.version import VERSION

SCHEMA = 1


def render(document: Document) -> str:
    """Write the document's data as JSON, with the versions of program and schema."""
    return json.dumps(data_of(document), ensure_ascii=False, indent=2) + "\n"


def data_of(document: Document) -> dict[str, Any]:
    """Return the document's data with the versions of program and schema."""
    return {**version_data(), **document.data}


def version_data() -> dict[str, Any]:
    """Return the versions of program and schema, with which all data begins."""
    return {"phonodrill": {"version": VERSION, "schema": SCHEMA}}
