"""Sight past random walls: what single rays say, less in the way never hides more, all turned changes nothing."""

from dataclasses import replace
from math import inf

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import LineString, Point, Polygon, affinity, box

from optimizer.fields.seen import Target, seen_part, seen_share
from optimizer.fields.sight import Eye, Screen, blocked

PLACES = st.integers(-30, 30)
SIZES = st.integers(1, 20)
TARGET = box(-6, -4, 6, 4)
ROUNDING = 1e-6
ANGLE = Polygon([(0, 0), (12, 0), (12, 5), (4, 5), (4, 14), (0, 14)])


@st.composite
def screens(draw):
    """A few walls and fences of any height."""
    result = []
    for _ in range(draw(st.integers(1, 4))):
        x, y, width, depth = draw(PLACES), draw(PLACES), draw(SIZES), draw(SIZES)
        outline = draw(st.sampled_from((
            box(x, y, x + width, y + depth), LineString([(x, y), (x + width, y + depth)]), affinity.translate(ANGLE, x, y)
        )))  # fmt: skip
        top = draw(st.floats(0, 25))
        result.append(Screen(outline, top, draw(st.sampled_from((-inf, top / 3)))))
    return tuple(result)


EYES = st.builds(Eye, st.tuples(PLACES, PLACES), st.floats(3, 20))


def seen(eye, standing):
    """Share of the target that is seen."""
    return seen_share(eye, Target(TARGET, 1.5), standing)


@given(EYES, screens(), st.sampled_from((1.5, 4.0, 9.0)))
def test_what_rays_say(eye, standing, z_ft):
    """Of 400 points those lie in the seen part that a ray reaches; none is asked within 0.01 ft of the part's edge.

    No eye is in the face of a wall: just at its top a ray from there is either hidden from its first point, or not at all.
    """
    assume(all(_face(screen).distance(Point(eye.at)) > 0 for screen in standing))
    x, y = np.meshgrid(np.linspace(-5.9, 5.9, 25), np.linspace(-3.9, 3.9, 16))
    ends = np.column_stack([x.ravel(), y.ravel(), np.full(x.size, z_ft)])
    hidden = blocked(np.broadcast_to([*eye.at, eye.z_ft], ends.shape), ends, standing)
    part = seen_part(eye, Target(TARGET, z_ft), standing)
    for (px, py, _), is_hidden in zip(ends, hidden, strict=True):
        assert part.boundary.distance(Point(px, py)) < 0.01 or part.covers(Point(px, py)) != is_hidden


def _face(screen):
    """The line of a fence, or round what stands."""
    return screen.outline if isinstance(screen.outline, LineString) else screen.outline.boundary


@given(EYES, screens(), st.floats(0.34, 1))
def test_lower_never_hides_more(eye, standing, share):
    """A lower wall or fence never hides more."""
    lower = tuple(replace(screen, top_z_ft=screen.top_z_ft * share) for screen in standing)
    assert seen(eye, lower) >= seen(eye, standing) - ROUNDING


@given(EYES, screens())
def test_fewer_never_hide_more(eye, standing):
    """Without one of the screens no less is seen; without any all is."""
    assert 0 <= seen(eye, standing) <= seen(eye, standing[1:]) + ROUNDING
    assert seen(eye, ()) == 1


@given(EYES, screens())
def test_half_a_turn(eye, standing):
    """Turned by half a turn about the target's middle, as much is seen."""
    turned = tuple(replace(s, outline=affinity.rotate(s.outline, 180, origin=(0, 0))) for s in standing)
    assert seen(Eye((-eye.at[0], -eye.at[1]), eye.z_ft), turned) == pytest.approx(seen(eye, standing), abs=ROUNDING)
