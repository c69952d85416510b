"""Odd files: what editors, systems and other alphabets make of a file that was right."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable

LARGE = 10_000_000
"""Bytes of the largest line."""


def _each_line(data: bytes, ending: bytes) -> bytes:
    return ending.join(data.splitlines()) + ending


def _text(data: bytes) -> str:
    return data.decode("utf-8", "replace")


def _in_the_middle(data: bytes, put: str) -> bytes:
    text = _text(data)
    middle = len(text) // 2
    return f"{text[:middle]}{put}{text[middle:]}".encode("utf-8", "surrogatepass")


def _one_line(data: bytes) -> bytes:
    line = b" ".join(data.split())
    return (line * (LARGE // len(line) + 1))[:LARGE] + b"\n"


ODDITIES: dict[str, Callable[[bytes], bytes]] = {
    "nothing": lambda _: b"",
    "only blanks": lambda _: b" \n\t\n\r\n",
    "no line end at the end": lambda data: data.rstrip(),
    "line ends of Windows": lambda data: _each_line(data, b"\r\n"),
    "line ends of old": lambda data: _each_line(data, b"\r"),
    "byte order mark": lambda data: b"\xef\xbb\xbf" + data,
    "two byte order marks": lambda data: b"\xef\xbb\xbf" * 2 + data,
    "UTF-16": lambda data: _text(data).encode("utf-16"),
    "UTF-16 without a mark": lambda data: _text(data).encode("utf-16-le"),
    "UTF-32": lambda data: _text(data).encode("utf-32"),
    "bytes that are no UTF-8": lambda data: data + b"caf\xe9\n",
    "half of a pair": lambda data: _in_the_middle(data, "\ud83d"),
    "NUL": lambda data: _in_the_middle(data, "\0"),
    "a letter that screens obey": lambda data: _in_the_middle(data, "\x1b[2J\x07\x08"),
    "right to left": lambda data: _in_the_middle(data, "\nשלום עולם\nسفينة\n"),
    "signs that turn the direction": lambda data: _in_the_middle(data, "\u202egulls\u2066\u200f"),
    "signs without width": lambda data: _in_the_middle(data, "\u200b\u200d\u2060\ufeff"),
    "parted accents": lambda data: unicodedata.normalize("NFD", _text(data) + "\nnaïve\n").encode(),
    "dotless and dotted i": lambda data: _in_the_middle(data, "\nıİ\nİPS\nshıp\n"),
    "other spaces and line ends": lambda data: _in_the_middle(data, "\u00a0\u2028\x85\x0b\x1c"),
    "other figures": lambda data: _in_the_middle(data, "\n٣\n²\n①\n"),
    "one line of 10 MB": _one_line,
    "one word of 10 MB": lambda _: b"s" * LARGE,
    "21 MB": lambda data: data + b"\n" * 21_000_000,
}

ODD_JSON: dict[str, bytes] = {
    "nested without end": b"[" * 1_000_000,
    "nested deep": b'{"lesson":' + b"[" * 900 + b"]" * 900 + b"}",
    "nested keys": b'{"lesson":' * 20_000 + b"1" + b"}" * 20_000,
    "a number without end": b'{"lesson": ' + b"9" * 100_000 + b"}",
    "too large for a number": b'{"lesson": {"request": 1e400}}',
    "no number": b'{"lessons": [NaN, Infinity, -Infinity]}',
    "half of a pair": b'{"lesson": "\\ud800"}',
    "a key twice": b'{"lesson": 1, "lesson": {"request": {}, "request": []}}',
    "no record": b'"lesson"',
    "nothing": b"null",
    "two values": b"{} {}",
}
"""JSON that is odd in itself."""
