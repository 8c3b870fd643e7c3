"""Whatever rooms and ways leave of a yard is bed, lawn, left as it is or unused, and nothing is two of them."""

from itertools import combinations

from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import box, union_all

from optimizer.brief import Relation
from optimizer.fields import door_zone, open_yard
from optimizer.layout import Layout, placed_of, rectangle
from optimizer.planting import planting_of
from tests.yards import PLAIN_SITE, sized, stand

NAMES = ("a", "b", "c", "d", "e")
KINDS = ("gathering", "reserve", "nook", "lawn")
OFFSETS = st.sampled_from([0.0, 0.5, 1 / 3, 3.2])
SPOTS = st.tuples(st.integers(0, 4), st.integers(0, 3), OFFSETS, OFFSETS, st.sampled_from(KINDS))


def lengths_ft(low, high):
    """Lengths to a millionth: numbers next to nothing are no lengths, and overflow in a buffer."""
    return st.floats(low, high).map(lambda length: round(length, 6))


PATHS = st.tuples(lengths_ft(0, 55), lengths_ft(12, 38), st.sampled_from([3, 4, 5]), lengths_ft(1, 40))
RELATIONS = (Relation(("a", "rear eye"), "out_of_view"), Relation(("b", "street eye"), "out_of_view"))


@settings(max_examples=60, deadline=None)
@given(st.lists(SPOTS, max_size=5, unique_by=lambda spot: spot[:2]), st.lists(PATHS, max_size=3))
def test_the_parts_of_a_planting_make_up_the_open_ground(spots, paths):
    """Rooms in cells of 11 by 6.3 ft behind a house, ways across everything, a strip for lawn and ways only."""
    named = list(zip(NAMES, spots, strict=False))
    rooms = tuple(sized(name, kind, 7, 6) for name, (*_, kind) in named)
    places = tuple(stand(name, 11 * x + dx, 12.5 + 6.3 * y, 7, 6 - dy) for name, (x, y, dx, dy, _) in named)
    paved = union_all([box(x, y, x + long, y + wide) for x, y, wide, long in paths])
    found = planting_of(PLAIN_SITE, RELATIONS, placed_of(rooms, Layout(places)), paved)
    house = PLAIN_SITE.buildings[0]
    taken = union_all([paved, door_zone(PLAIN_SITE, house, house.doors[0]), *map(rectangle, places)])
    free = open_yard(PLAIN_SITE).difference(taken)
    parts = [*found.lawns, *(bed.outline for bed in found.beds), found.left, found.unused]
    assert abs(sum(part.area for part in parts) - free.area) < 0.1
    assert union_all(parts).symmetric_difference(free).area < 0.1
    assert all(one.intersection(other).area < 0.01 for one, other in combinations(parts, 2))
    assert all(lawn.is_valid and lawn.area >= 79.99 for lawn in found.lawns)
