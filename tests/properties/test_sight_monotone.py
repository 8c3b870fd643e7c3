"""Sight past random walls: less in the way never hides more, and nothing changes when all is turned."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, affinity, box

from optimizer.fields.sight import Eye, Screen, sample_points, visible_share

PLACES = st.integers(-30, 30)
SIZES = st.integers(1, 20)
TARGET = box(-6, -4, 6, 4)


@st.composite
def screens(draw):
    """A few walls and fences of any height."""
    result = []
    for _ in range(draw(st.integers(1, 4))):
        x, y, width, depth = draw(PLACES), draw(PLACES), draw(SIZES), draw(SIZES)
        outline = (
            box(x, y, x + width, y + depth) if draw(st.booleans()) else LineString([(x, y), (x + width, y + depth)])
        )
        result.append(Screen(outline, draw(st.floats(0, 25))))
    return tuple(result)


EYES = st.builds(Eye, st.tuples(PLACES, PLACES), st.floats(3, 20))


def seen(eye, standing):
    """Share of the target that is seen."""
    return visible_share((eye,), sample_points(TARGET, 1.5), standing)


@given(EYES, screens(), st.floats(0, 1))
def test_lower_never_hides_more(eye, standing, share):
    """A lower wall or fence never hides more."""
    lower = tuple(replace(screen, top_z_ft=screen.top_z_ft * share) for screen in standing)
    assert seen(eye, lower) >= seen(eye, standing)


@given(EYES, screens())
def test_fewer_never_hide_more(eye, standing):
    """Without one of the screens no less is seen; without any all is."""
    assert 0 <= seen(eye, standing) <= seen(eye, standing[1:])
    assert seen(eye, ()) == 1


@given(EYES, screens())
def test_half_a_turn(eye, standing):
    """Turned by half a turn about the target's middle, as much is seen."""
    turned = tuple(replace(s, outline=affinity.rotate(s.outline, 180, origin=(0, 0))) for s in standing)
    assert seen(Eye((-eye.at[0], -eye.at[1]), eye.z_ft), turned) == seen(eye, standing)
