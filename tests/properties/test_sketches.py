"""Any sketch in the yard is checked, measured, priced, written and drawn, however wild it is."""

import json
import math

from hypothesis import HealthCheck, Phase, assume, example, given, settings
from hypothesis import strategies as st
from shapely import Polygon, box

from optimizer.brief import Sketch, SketchedRoom
from optimizer.concepts.case import Case
from optimizer.concepts.sketched import sketched_option
from optimizer.export import plan_svg
from optimizer.pipeline import plan_drawing
from optimizer.results import option_record
from optimizer.scenario import load_scenario

YARDS = [load_scenario(f"scenarios/{name}.yaml") for name in ("thimble-yard", "tumbledown-bank")]

SIZES = st.floats(0.02, 40) | st.integers(1, 40).map(float)
FRONTS = st.sampled_from(["+x", "-x", "+y", "-y"])


@st.composite
def sketches(draw):
    """A yard and some of its rooms, each at least in part in it: on each other, on the house, too small or too large."""
    yard = draw(st.sampled_from(YARDS))
    xs, ys = zip(*yard.site.boundary, strict=True)
    ground, rooms = Polygon(yard.site.boundary), []
    for wish in draw(st.lists(st.sampled_from(yard.brief.rooms), min_size=1, unique=True)):
        width, depth = draw(SIZES), draw(SIZES)
        x, y = draw(st.floats(min(xs) - width, max(xs))), draw(st.floats(min(ys) - depth, max(ys)))
        if draw(st.booleans()):
            x, y = float(round(x)), float(round(y))
        assume(ground.intersection(box(x, y, x + width, y + depth)).area > 0)
        rooms.append(SketchedRoom(wish.name, (x, y), width, depth, draw(FRONTS)))
    return yard, tuple(rooms)


IN_A_LINE = (
    SketchedRoom("summer kitchen", (92, 21), 14, 1, "+y"),
    SketchedRoom("forecourt", (61.981191653614474, 101.87786051631409), 24.391984779542554, 16, "+y"),
    SketchedRoom("fern bed", (62, 2), 19, 1, "-y"),
)
"""A square where ways meet that touches the paved ground in a mere line."""


@settings(
    max_examples=15,
    deadline=None,
    phases=(Phase.explicit, Phase.generate),
    derandomize=True,
    suppress_health_check=list(HealthCheck),
)
@given(sketches())
@example((YARDS[1], IN_A_LINE))
def test_any_sketch_is_measured(drawn):
    """Every figure is a number, the record is JSON, the plan is drawn; what breaks a rule says by how much."""
    yard, rooms = drawn
    case = Case.of(yard)
    option = sketched_option(case, Sketch("wild", rooms), 1)
    assert math.isfinite(option.score)
    assert json.loads(json.dumps(option_record(case.rooms, option), allow_nan=False))["sketch"] == "wild"
    assert plan_svg(plan_drawing(yard, option)).startswith("<svg")
    assert all(finding.words and math.isfinite(finding.amount) and finding.amount > 0 for finding in option.findings)
