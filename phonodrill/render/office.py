"""What files of word processors and slide programs share: both are ZIP files of XML."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import datetime
from io import BytesIO
from typing import Any, BinaryIO
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

LANGUAGE = "en-US"
FONT = "Verdana"
"""On most computers, legible, and with signs for sounds; another is put in where it is not."""
CREATED = datetime(2026, 1, 1)  # noqa: DTZ001 - such files hold a time without a zone, in UTC
"""The moment written into every file, so that equal results are equal files."""

_NOT_IN_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def xml_text(text: str) -> str:
    r"""Put a space where XML 1.0 has no such character (section 2.2, Char).

    >>> xml_text("gull\x0c\ud800crab")
    'gull  crab'
    """
    return _NOT_IN_XML.sub(" ", text)


def describe(properties: Any, title: str) -> None:
    """Fill in the properties of a file.

    Args:
        properties: core properties, of python-docx or python-pptx.
        title: what the file is.
    """
    properties.title = xml_text(title)[:255]
    properties.author = properties.last_modified_by = "phonodrill"
    properties.language = LANGUAGE
    properties.comments = ""
    properties.created = properties.modified = CREATED
    properties.revision = 1


def pack(save: Callable[[BinaryIO], None]) -> bytes:
    """Return what ``save`` writes, each part dated :data:`CREATED`."""
    saved, packed = BytesIO(), BytesIO()
    save(saved)
    with ZipFile(saved) as old, ZipFile(packed, "w") as new:
        for name in old.namelist():
            entry = ZipInfo(name, CREATED.timetuple()[:6])
            entry.compress_type = ZIP_DEFLATED
            entry.create_system = 0  # else it tells on which system it was made
            new.writestr(entry, old.read(name))
    return packed.getvalue()
