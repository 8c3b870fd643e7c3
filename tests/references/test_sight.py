"""Sight over walls and counters against similar triangles, worked by hand."""

import numpy as np
import pytest
from shapely import LineString, box

from optimizer.catalogue.sides import side_kind
from optimizer.catalogue.sight import sight_figure
from optimizer.fields.sight import Eye, Screen, visible_share

FENCE = Screen(LineString([(4, -50), (4, 50)]), 6.0)


def sees(eye: Eye, screen: Screen, away_ft: float, height_ft: float) -> bool:
    """Whether a point straight ahead is seen."""
    return visible_share((eye,), np.array([[away_ft, 0.0, height_ft]]), (screen,)) == 1.0


@pytest.mark.parametrize(("height_ft", "hidden_to_ft"), [(0.0, 7.0), (3.0, 5.5), (5.0, 4.5)])
def test_over_a_fence(height_ft: float, hidden_to_ft: float) -> None:
    """An eye at 14 ft, 4 ft before a 6 ft fence: hidden to 4 x (14 - h) / (14 - 6) from the eye (similar triangles)."""
    eye = Eye((0, 0), 14.0)
    assert not sees(eye, FENCE, hidden_to_ft - 0.01, height_ft)
    assert sees(eye, FENCE, hidden_to_ft + 0.01, height_ft)
    assert sees(eye, FENCE, 3.9, 0.0)


def test_over_a_counter() -> None:
    """Standing 4 ft before a 36 in counter 2 ft deep: water seen 1.5 ft up is hidden to 6 x 3.75 / 2.25 = 10 ft.

    The far edge hides the most. Eye 5.25 ft (common practice), 36 in (NKBA heights, check-values), the rest by hand.
    """
    counter = Screen(box(4, -9, 6, 9), side_kind("counter").height_ft)
    eye = Eye((0, 0), sight_figure("standing_eye"))
    assert not sees(eye, counter, 9.99, 1.5)
    assert sees(eye, counter, 10.01, 1.5)
    assert sees(eye, counter, 6.5, 3.1)


def test_seated_behind_a_bar() -> None:
    """Seated eyes, 3.75 ft up and 2 ft from a 42 in bar, see nothing of the ground before 2 x 3.75 / 0.25 = 30 ft."""
    bar = Screen(LineString([(2, -90), (2, 90)]), side_kind("bar").height_ft)
    eye = Eye((0, 0), sight_figure("seated_eye"))
    assert not sees(eye, bar, 29.9, 0.0)
    assert sees(eye, bar, 30.1, 0.0)
