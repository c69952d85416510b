"""Texts for paper in which sounds stand between slashes."""

from __future__ import annotations

import re

from phonodrill.paper.page import Script, Text

SOUNDS = re.compile(r"(/[^/\n]+/)")


def runs_of(text: str) -> tuple[Text, ...]:
    """Part a text into letters and sounds, which have a font of their own.

    >>> [run.text for run in runs_of("it says /ĭz/, not /s/")]
    ['it says ', '/ĭz/', ', not ', '/s/']
    """
    return tuple(
        Text(part, Script.SOUNDS if SOUNDS.fullmatch(part) else Script.LETTERS)
        for part in SOUNDS.split(text)
        if part
    )
