"""How walls, fences and hedges that stand in the yard are drawn: on plan, in legend, section and in three dimensions."""

from dataclasses import replace

import pytest
from shapely import Polygon

from optimizer.drawing.section import draw_section
from optimizer.drawing.sheet import LEGEND_WORDS, words_in_use
from optimizer.drawing.site_marks import standing_marks
from optimizer.drawing.site_names import site_names
from optimizer.drawing.wall_marks import wall_marks
from optimizer.figures import yard_3d
from optimizer.layout import Layout, placed_of
from optimizer.site import Wall, WallOpening
from tests.yards import PLAIN_SITE, plain_yard

WALLS = (
    Wall("garden wall", ((2, 20), (20, 20)), "wall", 5.0),
    Wall(
        "side fence", ((30, 14), (30, 38)), "fence", 6.0, (WallOpening((30, 20), 4, "locked"), WallOpening((30, 30), 6))
    ),
    Wall("box hedge", ((36, 20), (50, 20)), "hedge"),
)
SITE = replace(PLAIN_SITE, walls=WALLS)
NOTHING = placed_of((), Layout(()))


def test_openings_interrupt_the_line_and_gates_close_it():
    """The fence is drawn in three parts, its gate as one, and the other opening is left open."""
    drawn = [(mark.role, mark.points) for mark in wall_marks(SITE)]
    assert drawn == [
        ("garden_wall", ((2, 20), (20, 20))),
        ("fence", ((30, 14), (30, 18))),
        ("fence", ((30, 22), (30, 27))),
        ("fence", ((30, 33), (30, 38))),
        ("gate", ((30, 18), (30, 22))),
        ("hedge", ((36, 20), (50, 20))),
    ]
    assert set(wall_marks(SITE)) <= set(standing_marks(SITE))


def test_the_legend_says_what_they_are():
    """Each kind that is drawn has its words, and no other."""
    words = words_in_use(LEGEND_WORDS, wall_marks(SITE))
    assert words == {"garden_wall": "wall that stands", "fence": "fence", "hedge": "hedge", "gate": "gate"}
    assert words_in_use(LEGEND_WORDS, wall_marks(replace(SITE, walls=WALLS[:1]))) == {"garden_wall": "wall that stands"}


def test_they_have_their_names_on_the_plan():
    """A name stands beside its wall, and does not lie on it."""
    names = {
        text.text: text.box
        for text in site_names(SITE, taken=(), shunned=Polygon(), plan_box=(-8, -8, 68, 48), scale=1.0)
    }
    assert {"garden wall", "side fence", "box hedge"} <= set(names)
    assert names["garden wall"][1] > 20
    assert names["side fence"][0] > 30


@pytest.mark.parametrize(("y", "names"), [(16, {"side fence"}), (20, {"side fence"}), (30, set())])
def test_a_section_cuts_them(y, names):
    """A section along x meets the fence and its gate, and passes through the opening without one."""
    scenario = replace(plain_yard(), site=replace(SITE, walls=WALLS[1:2]))
    drawing = draw_section(scenario, NOTHING, {}, ((-4, y), (64, y)), when=None, title="section")
    assert {text.text for text in drawing.texts if text.text == "side fence"} == names


def test_they_stand_in_three_dimensions():
    """Each rises to its height, a hedge without one to the usual 5 ft."""
    figure = yard_3d(replace(plain_yard(), site=SITE), NOTHING, {}, None)
    tops = {
        name: max(max(t.z) for t in figure.data if t.name == name)
        for name in ("garden wall", "side fence", "box hedge")
    }
    assert tops == pytest.approx({"garden wall": 5.0, "side fence": 6.0, "box hedge": 5.0})
    ends = {round(float(y), 1) for t in figure.data if t.name == "side fence" for y in t.y}
    assert not [y for y in ends if 27.1 < y < 32.9]
