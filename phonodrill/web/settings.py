"""How the page is served."""

from __future__ import annotations

from enum import StrEnum
from ipaddress import ip_address
from pathlib import Path
from typing import NamedTuple

LOOPBACK_NAMES = ("127.0.0.1", "localhost", "[::1]")
LARGEST_BODY = 1_000_000
"""Bytes of a request: a passage of 100,000 words is shorter."""
LARGEST_HEAD = 64_000
"""Bytes of a request's address and headers: what the server takes if they come in parts."""
MOST_CONNECTIONS = 500
SLOWEST_BODY = 15.0
"""Seconds within which a request must have arrived."""
LONGEST_WORK = 30.0
"""Seconds after which a request that still waits is told that the page is busy."""


class Records(StrEnum):
    """Whether the page has records, and who may see them.

    Attributes:
        OFF: it has none.
        OWN: whoever uses this machine; with the passphrase, if one was set.
        SHARED: only with the passphrase, as others can reach the page.
    """

    OFF = "off"
    OWN = "own"
    SHARED = "shared"


class Settings(NamedTuple):
    """What the page may do and who may ask it.

    Attributes:
        hosts: names under which the page answers; others may be an attack by DNS rebinding.
        words_file: where the teacher's own words are kept; None where they cannot be
            changed, because many share the page.
        taught_folder: where lists of steps taught are kept by name; None likewise.
        secure: whether cookies go over HTTPS only.
        records: whether there are pages with records, and for whom.
    """

    hosts: tuple[str, ...] = LOOPBACK_NAMES
    words_file: Path | None = None
    taught_folder: Path | None = None
    secure: bool = False
    records: Records = Records.OFF


def settings_for(
    host: str,
    names: tuple[str, ...],
    words_file: Path,
    *,
    https: bool = False,
    records: bool = False,
) -> Settings:
    """Work out how the page is served.

    A page that has a name is reached by others, through a proxy; what one teacher keeps
    in it would be changed by all.

    Args:
        host: address to listen on.
        names: under which it is reached from elsewhere.
        words_file: where the teacher's own words are kept; steps taught lie beside it.
        https: whether it is reached over HTTPS.
        records: whether it has records.
    """
    hosts = dict.fromkeys((*LOOPBACK_NAMES, address_part(host).lower(), *names))
    if is_shared(host, names):
        shown = Records.SHARED if records else Records.OFF
        return Settings(tuple(hosts), secure=https, records=shown)
    shown = Records.OWN if records else Records.OFF
    return Settings(tuple(hosts), words_file, words_file.with_name("taught"), https, shown)


def is_shared(host: str, names: tuple[str, ...]) -> bool:
    """Whether others than who uses this machine can reach the page.

    >>> is_shared("127.0.0.1", ()), is_shared("127.0.0.1", ("drills.harbor.example",))
    (False, True)
    """
    return bool(names) or not is_loopback(host)


def address_part(host: str) -> str:
    """Write a host as it stands in an address.

    >>> address_part("::1"), address_part("localhost")
    ('[::1]', 'localhost')
    """
    return f"[{host}]" if ":" in host and not host.startswith("[") else host


def is_loopback(host: str) -> bool:
    """Whether an address can be reached from this machine only.

    >>> is_loopback("127.0.0.1"), is_loopback("0.0.0.0")
    (True, False)
    """
    if host == "localhost":
        return True
    try:
        return ip_address(host.strip("[]")).is_loopback
    except ValueError:
        return False
