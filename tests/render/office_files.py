"""Files of word processors and slide programs, read without our code."""

from __future__ import annotations

import io
import shutil
import subprocess
from pathlib import Path
from zipfile import ZipFile

import pdfplumber
import pytest

SOFFICE = shutil.which("soffice")
needs_soffice = pytest.mark.skipif(not SOFFICE, reason="no LibreOffice here")


def dates_in(content: bytes) -> set[tuple[int, ...]]:
    with ZipFile(io.BytesIO(content)) as archive:
        return {entry.date_time for entry in archive.infolist()}


def part(content: bytes, name: str) -> str:
    with ZipFile(io.BytesIO(content)) as archive:
        return archive.read(name).decode("utf-8")


def pages_of(content: bytes, name: str, folder: Path) -> list[str]:
    """Convert a file with LibreOffice and return the text of each page."""
    assert SOFFICE
    (folder / name).write_bytes(content)
    subprocess.run(
        [
            *(SOFFICE, f"-env:UserInstallation={(folder / 'profile').as_uri()}", "--headless"),
            *("--convert-to", "pdf", "--outdir", str(folder), str(folder / name)),
        ],
        check=True,
        capture_output=True,
        timeout=120,
    )
    with pdfplumber.open((folder / name).with_suffix(".pdf")) as pdf:
        return [page.extract_text() for page in pdf.pages]
