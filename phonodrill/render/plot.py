"""A small line chart as SVG: black on white, lines told apart by style, readable by ear."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape

WIDTH, HEIGHT = 720, 440
_LEFT, _RIGHT, _TOP, _BOTTOM = 70, 20, 50, 60
_DASHES = ("", "10 5", "2 5", "10 4 2 4")
_TICKS = 5
_LINE = 20
"""Height of a line of the legend, which stands below: curves may be anywhere above."""
_STEPS = (1, 2, 5, 10, 20, 50, 100)
_MOST_MARKS = 10


def line_chart(
    title: str,
    across: str,
    up: str,
    curves: Mapping[str, Sequence[int | None]],
    *,
    marks: Sequence[str] = (),
    name: str = "chart",
    inline: bool = False,
) -> str:
    """Draw curves that give a count for 0, 1, 2 ...

    Args:
        title: what is shown.
        across: what is counted along the horizontal axis.
        up: what the curves count.
        curves: name -> values, at most four, at least one not empty; None where nothing
            is known yet, never at the end.
        marks: what stands under 0, 1, 2 ... instead of the numbers.
        name: letters that no other picture of the same page has.
        inline: whether it becomes a part of a page, whose color it then takes.

    Returns:
        One self-contained SVG document, or an element for a page.
    """
    ink = "currentColor" if inline else "black"
    height = HEIGHT + _LINE * len(curves)
    paper = "" if inline else f'<rect width="{WIDTH}" height="{height}" fill="white"/>'
    last = max(len(values) for values in curves.values()) - 1
    highest = max(value for values in curves.values() for value in values if value is not None)
    frame = _Frame(max(last, 1), _round_up(highest), ink)
    told = "; ".join(f"{name}: {values[-1]:,} at the end" for name, values in curves.items())
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {height}" role="img" '
        f'aria-labelledby="{name}-title {name}-desc" '
        f'font-family="sans-serif" font-size="13" fill="{ink}">'
    )
    parts = [
        head,
        f'<title id="{name}-title">{escape(title)}</title>',
        f'<desc id="{name}-desc">{escape(f"{up} by {across}. {told}.")}</desc>',
        paper,
        _text(WIDTH / 2, 24, title, anchor="middle", size=16),
        *frame.axes(across, up, marks),
        *(
            frame.curve(values, dash)
            for values, dash in zip(curves.values(), _DASHES, strict=False)
        ),
        *_legend(list(curves), ink),
        "</svg>",
    ]
    return "\n".join(filter(None, parts)) + "\n"


class _Frame:
    """The place of the axes, and where a value lies in it."""

    def __init__(self, last: int, highest: int, ink: str) -> None:
        self.ink = ink
        self.last = last
        self.highest = highest

    def at(self, step: float, value: float) -> tuple[float, float]:
        """Return the place of a value in the picture."""
        across = _LEFT + (WIDTH - _LEFT - _RIGHT) * step / self.last
        down = HEIGHT - _BOTTOM - (HEIGHT - _TOP - _BOTTOM) * value / self.highest
        return round(across, 1), round(down, 1)

    def curve(self, values: Sequence[int | None], dash: str) -> str:
        """Return one curve; it begins where something is known."""
        known = [(step, value) for step, value in enumerate(values) if value is not None]
        if len(known) == 1:
            across, down = self.at(*known[0])
            return f'<circle cx="{across}" cy="{down}" r="4" fill="{self.ink}"/>'
        points = " ".join("{},{}".format(*self.at(*point)) for point in known)
        style = f' stroke-dasharray="{dash}"' if dash else ""
        ink = f'fill="none" stroke="{self.ink}"'
        return f'<polyline points="{points}" {ink} stroke-width="2"{style}/>'

    def axes(self, across: str, up: str, named: Sequence[str]) -> list[str]:
        """Return both axes with their marks and names."""
        left, bottom = self.at(0, 0)
        right, top = self.at(self.last, self.highest)
        parts = [
            f'<path d="M{left},{top} V{bottom} H{right}" fill="none" stroke="{self.ink}"/>',
            _text((left + right) / 2, HEIGHT - 16, across, anchor="middle"),
            _text(left, top - 10, up, anchor="start"),
        ]
        for tick in range(_TICKS + 1):
            value = self.highest * tick // _TICKS
            parts.append(_text(left - 8, self.at(0, value)[1] + 4, f"{value:,}", anchor="end"))
        each = next((each for each in _STEPS if self.last <= each * _MOST_MARKS), self.last)
        marks = range(0, self.last + 1, each)
        below = bottom + 20
        return parts + [
            _text(self.at(step, 0)[0], below, named[step] if named else str(step), anchor="middle")
            for step in marks
        ]


def _legend(names: Sequence[str], ink: str) -> list[str]:
    parts = []
    for number, (name, dash) in enumerate(zip(names, _DASHES, strict=False)):
        down = HEIGHT + _LINE * number
        style = f' stroke-dasharray="{dash}"' if dash else ""
        parts += [
            f'<path d="M{_LEFT + 20},{down} h50" stroke="{ink}" stroke-width="2"{style}/>',
            _text(_LEFT + 80, down + 4, name, anchor="start"),
        ]
    return parts


def _text(across: float, down: float, text: str, *, anchor: str, size: int = 13) -> str:
    return (
        f'<text x="{across}" y="{down}" text-anchor="{anchor}" font-size="{size}">'
        f"{escape(text)}</text>"
    )


def _round_up(value: int) -> int:
    """Return the next number with one digit that is not 0 and divides well.

    >>> _round_up(5123), _round_up(904), _round_up(0)
    (6000, 1000, 5)
    """
    unit = int(10 ** (len(str(value)) - 1))
    return max(-(-value // unit) * unit, _TICKS)
