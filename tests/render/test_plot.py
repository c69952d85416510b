from __future__ import annotations

from itertools import pairwise
from xml.etree import ElementTree as ET

from phonodrill.render.plot import HEIGHT, WIDTH, line_chart

SVG = "{http://www.w3.org/2000/svg}"
CURVES = {"this order": [0, 2, 40], "by <alphabet>": [0, 0, 40]}


def test_a_chart_is_whole_and_black_and_white() -> None:
    text = line_chart("Growth", "steps", "words", CURVES)
    root = ET.fromstring(text)
    assert root.get("role") == "img"
    assert root.find(f"{SVG}title") is not None
    told = root.findtext(f"{SVG}desc") or ""
    assert "by <alphabet>: 40 at the end" in told
    assert {e.get("stroke") for e in root.iter() if e.get("stroke")} == {"black"}
    assert "href" not in text
    curves = root.findall(f"{SVG}polyline")
    assert len({curve.get("stroke-dasharray") for curve in curves}) == len(CURVES)


def test_curves_stay_in_the_frame_and_rise() -> None:
    root = ET.fromstring(line_chart("Growth", "steps", "words", CURVES))
    first = root.findall(f"{SVG}polyline")[0].get("points") or ""
    points = [tuple(map(float, point.split(","))) for point in first.split()]
    assert all(0 < across < WIDTH and 0 < down < HEIGHT for across, down in points)
    assert [down for _, down in points] == sorted((down for _, down in points), reverse=True)
    assert len({round(b[0] - a[0], 1) for a, b in pairwise(points)}) == 1


def test_a_single_value_is_no_trouble() -> None:
    assert ET.fromstring(line_chart("t", "a", "b", {"one": [0]})) is not None
