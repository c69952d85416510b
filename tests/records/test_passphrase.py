from __future__ import annotations

import stat
from pathlib import Path

import pytest

from phonodrill import PhonodrillError
from phonodrill.records import passphrase

WORDS = "salt water torches"


@pytest.fixture(autouse=True)
def _own_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))


@pytest.mark.source("RFC 9106, section 4: argon2id with 64 MiB, 3 passes and 4 lanes")
def test_only_a_hash_is_kept() -> None:
    assert not passphrase.has_passphrase()
    passphrase.keep_passphrase(WORDS)
    assert passphrase.has_passphrase()
    kept = passphrase.passphrase_path()
    assert kept.read_text().startswith("$argon2id$v=19$m=65536,t=3,p=4$")
    assert WORDS not in kept.read_text()
    assert stat.S_IMODE(kept.stat().st_mode) == 0o600
    assert stat.S_IMODE(kept.parent.stat().st_mode) == 0o700
    assert passphrase.is_passphrase(WORDS)
    assert not passphrase.is_passphrase(WORDS.upper())
    passphrase.keep_passphrase("another one")
    assert not passphrase.is_passphrase(WORDS)


def test_what_is_no_passphrase() -> None:
    with pytest.raises(PhonodrillError, match="no passphrase was set"):
        passphrase.is_passphrase(WORDS)
    with pytest.raises(PhonodrillError, match="at least 10"):
        passphrase.keep_passphrase("gull")
    assert not passphrase.has_passphrase()
    passphrase.keep_passphrase(WORDS)
    for content in (b"gulls", b"\xff\xfe", b"$argon2id$v=19$m=65536,t=3,p=4$AA$AA"):
        passphrase.passphrase_path().write_bytes(content)
        with pytest.raises(PhonodrillError):
            passphrase.is_passphrase(WORDS)


def test_an_emptied_file_makes_no_key() -> None:
    """A key made of nothing could be worked out by all."""
    passphrase.keep_passphrase(WORDS)
    assert passphrase.derive_key("pages")
    assert passphrase.passphrase_path().stat().st_mode & 0o077 == 0
    passphrase.passphrase_path().write_bytes(b"")
    assert passphrase.derive_key("pages") is None
