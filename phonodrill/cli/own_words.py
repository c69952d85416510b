"""Where a teacher's own words are kept, and how they are read and written."""

from __future__ import annotations

from pathlib import Path

from platformdirs import user_config_path

from phonodrill.cli.report import report
from phonodrill.overlay import Overlay, read_overlay

FILE_NAME = "words.txt"


def own_words_path() -> Path:
    """Return the file in the user's configuration folder."""
    return user_config_path("phonodrill", appauthor=False) / FILE_NAME


def own_words() -> Overlay:
    """Read the teacher's words and report the lines that cannot be read."""
    overlay = read_overlay(own_words_path())
    report(list(overlay.problems))
    return overlay
