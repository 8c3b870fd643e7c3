"""How paving that is there already is drawn: what stays, what goes, and what a room covers."""

from dataclasses import replace

import pytest
from shapely import Polygon, box

from optimizer.drawing import draw_plan
from optimizer.drawing.backdrop import under_marks
from optimizer.drawing.paving_marks import paving_marks
from optimizer.figures import yard_3d
from optimizer.layout import Layout, placed_of
from optimizer.site import Paving
from tests.yards import PLAIN_SITE, plain_rooms, plain_yard, stand

PIECES = (
    Paving("drive", ((0, 14), (8, 14), (8, 20), (0, 20)), "asphalt", "keep"),
    Paving("old patio", ((24, 16), (40, 16), (40, 30), (24, 30)), "concrete", "reuse"),
    Paving("old walk", ((0, 2), (8, 2), (8, 6), (0, 6)), "brick", "lift"),
)
SITE = replace(PLAIN_SITE, paving=PIECES)
LAYOUT = Layout((stand("table", 24, 16, 14, 12),))


def area(marks, role) -> float:
    return sum(Polygon(mark.rings[0], mark.rings[1:]).area for mark in marks if mark.role == role)


def test_what_stays_is_drawn_without_what_rooms_cover():
    """The drive and the strips of the patio beside the table; the walk as an outline only."""
    marks = tuple(paving_marks(SITE, [box(24, 16, 38, 28)]))
    assert area(marks, "old_paving") == pytest.approx(48 + 16 * 14 - 14 * 12)
    assert area(marks, "lifted_paving") == pytest.approx(32)
    assert tuple(paving_marks(PLAIN_SITE, [])) == ()
    assert area(under_marks(SITE, LAYOUT), "old_paving") == pytest.approx(48 + 16 * 14 - 14 * 12)


def test_the_plan_and_its_legend_have_it():
    """The legend says so where there is any, and the pieces that stay have their names."""

    def words(site):
        scenario = replace(plain_yard(), site=site)
        drawing = draw_plan(scenario, placed_of(plain_rooms(), LAYOUT), (), title="plan")
        return {text.text for text in drawing.texts}

    assert {"paving that stays", "paving to be lifted", "drive"} <= words(SITE)
    assert "old walk" not in words(SITE)
    assert not {"paving that stays", "paving to be lifted"} & words(PLAIN_SITE)


def test_it_lies_in_three_dimensions():
    """Over the drive and over what the table leaves of the patio, on the ground or at the level that the site gives."""
    scenario = replace(plain_yard(), site=SITE)
    figure = yard_3d(scenario, placed_of(plain_rooms(), LAYOUT), {}, None)
    (there,) = [trace for trace in figure.data if trace.name == "paving that stays"]
    assert (min(there.x), max(there.x)) == (0, 40)
    assert {round(float(z), 2) for z in there.z} == {0.0}
    raised = replace(SITE, paving=(replace(PIECES[0], z_ft=0.4), *PIECES[1:]))
    figure = yard_3d(replace(scenario, site=raised), placed_of(plain_rooms(), LAYOUT), {}, None)
    (there,) = [trace for trace in figure.data if trace.name == "paving that stays"]
    assert {(float(x) <= 8, round(float(z), 2)) for x, z in zip(there.x, there.z, strict=True)} == {
        (True, 0.4),
        (False, 0.0),
    }
