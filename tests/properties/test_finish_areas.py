"""Whatever is paved is field, border or accent, and nothing is counted twice."""

from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, union_all

from optimizer.appraisal import finish_plan
from optimizer.brief import FinishWish
from optimizer.layout import Layout, placed_of, rectangle
from tests.yards import PLAIN_SITE, sized, stand

KINDS = ("gathering", "arrival", "nook", "lawn")
NAMES = ("a", "b", "c", "d")
SPOTS = st.tuples(st.integers(0, 3), st.integers(0, 3), st.sampled_from(KINDS), st.sampled_from([3, 6]))


@settings(max_examples=60, deadline=None)
@given(st.lists(SPOTS, max_size=4, unique_by=lambda spot: spot[:2]))
def test_the_parts_of_a_finish_make_up_the_paved_ground(spots):
    """Rooms in cells of 6 ft, some touching, some with gaps."""
    named = list(zip(NAMES, spots, strict=False))
    rooms = tuple(sized(name, kind, side, side) for name, (_, _, kind, side) in named)
    places = tuple(stand(name, 10 + 6 * x, 14 + 6 * y, side, side) for name, (x, y, _, side) in named)
    plan = finish_plan(PLAIN_SITE, FinishWish(), placed_of(rooms, Layout(places)), (), Polygon())
    paved = [rectangle(place) for place, room in zip(places, rooms, strict=True) if room.rules.paved]
    parts = [plan.accent, plan.accent_border, *(p for t in plan.terraces for p in (t.field, t.border))]
    total = union_all(parts).area
    assert abs(total - union_all(paved).area) < 1e-3
    assert abs(total - sum(part.area for part in parts)) < 1e-3
    assert sorted(name for terrace in plan.terraces for name in terrace.rooms) == sorted(
        room.name for room in rooms if room.rules.paved
    )
