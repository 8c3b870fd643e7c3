"""The strip below the plan."""

from itertools import combinations

import pytest
from shapely import Point, box

from optimizer.drawing import Area, Circle
from optimizer.drawing.sheet import LEGEND_WORDS, SheetStrip, scale_bar, sheet_strip
from optimizer.drawing.words import Units


def strip(*, width_ft: float, scale: float, north_deg: float = 0.0, units: Units = "ft") -> SheetStrip:
    """A strip with every word of the legend and a long title."""
    plan_box = (-8.0, -8.0, width_ft - 8.0, 60.0)
    heading = ("Concept 1: the long table under the old roof, fire at the far end", "Fernhollow Court")
    return sheet_strip(
        plan_box, LEGEND_WORDS, heading=heading, cautions=(), north_deg=north_deg, units=units, scale=scale
    )


@pytest.mark.parametrize(("width_ft", "scale"), [(40.0, 0.8), (116.0, 1.0), (260.0, 2.0)])
@pytest.mark.parametrize("north_deg", [0.0, 100.0, 180.0, 290.0])
@pytest.mark.parametrize("units", ["ft", "m"])
def test_nothing_in_the_strip_lies_on_anything_else(
    width_ft: float, scale: float, north_deg: float, units: Units
) -> None:
    """Texts keep clear of each other, of the north arrow and of the swatches, on narrow and on wide sheets."""
    below = strip(width_ft=width_ft, scale=scale, north_deg=north_deg, units=units)
    texts = [box(*text.box) for text in below.texts]
    ring = next(mark for mark in below.marks if mark.role == "north_ring")
    assert isinstance(ring, Circle)
    shapes = [box(*mark_box(mark)) for mark in below.marks if isinstance(mark, Area) and mark.role in LEGEND_WORDS]
    shapes.append(Point(ring.centre).buffer(ring.radius_ft))
    assert len(shapes) > 10
    assert not [1 for one, other in combinations(texts, 2) if one.intersects(other)]
    assert not [1 for text in texts for shape in shapes if text.intersects(shape)]
    assert all(box(*below.sheet_box).contains(text) for text in texts)


def mark_box(mark: Area) -> tuple[float, float, float, float]:
    """Bounds of an area."""
    xs, ys = [x for x, _ in mark.rings[0]], [y for _, y in mark.rings[0]]
    return (min(xs), min(ys), max(xs), max(ys))


@pytest.mark.parametrize(("units", "length_ft", "last"), [("ft", 20.0, "20 ft"), ("m", 6 / 0.3048, "6 m")])
def test_the_scale_bar_is_as_long_as_it_says(units: Units, length_ft: float, last: str) -> None:
    """The bar measures 20 ft, or 6 m, of the ground."""
    marks, figures = scale_bar((50.0, 0.0), units, 1.0)
    boxes = [mark_box(mark) for mark in marks if isinstance(mark, Area)]
    assert max(b[2] for b in boxes) - min(b[0] for b in boxes) == pytest.approx(length_ft)
    assert figures[-1].text == last
