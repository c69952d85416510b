"""Where a teacher's own words are kept, and how they are read and written."""

from __future__ import annotations

from pathlib import Path

from phonodrill.cli.report import report
from phonodrill.errors import PhonodrillError
from phonodrill.home import config_folder
from phonodrill.overlay import NO_OVERLAY, Overlay, read_overlay

FILE_NAME = "words.txt"


def own_words_path() -> Path:
    """Return the file in the user's configuration folder.

    Raises:
        PhonodrillError: if no home folder is known.
    """
    return config_folder() / FILE_NAME


def own_words() -> Overlay:
    """Read the teacher's words and report the lines that cannot be read.

    Raises:
        PhonodrillError: if the file is there but cannot be read.
    """
    try:
        path = own_words_path()
    except PhonodrillError as error:
        report([f"your own words are not known: {error.message}"])
        return NO_OVERLAY
    overlay = read_overlay(path)
    report(list(overlay.problems))
    return overlay
