"""Write a lesson as plain data for JSON."""

from __future__ import annotations

from typing import Any


def as_data(node: Any) -> Any:
    """Turn a tree of records into dictionaries and lists.

    Args:
        node: a record of ``tree.py``, a tuple of them, text or a number.
    """
    if isinstance(node, tuple) and hasattr(node, "_asdict"):
        return {name: as_data(value) for name, value in node._asdict().items()}
    if isinstance(node, tuple):
        return [as_data(value) for value in node]
    return str(node) if isinstance(node, str) else node
