"""Where a room stands, by name."""

from dataclasses import replace

import pytest

from optimizer.concepts.whereabouts import OUT_IN_THE_GARDEN, nearest_edge, off_house_ft, whereabouts
from optimizer.layout import Placement
from optimizer.site import Building, Door, Structure, Tree
from tests.yards import plain_yard

SITE = replace(
    plain_yard(ceiling=None).site,
    boundary=((0, 0), (100, 0), (100, 90), (0, 90)),
    edge_names=("street", "right side", "rear", "edge 4"),
    setbacks=plain_yard(ceiling=None).site.setbacks[:1] * 4,
    buildings=(
        Building(
            "house",
            ((20, 10), (60, 10), (60, 30), (20, 30)),
            doors=(Door("garden door", (30, 30), 3, (0, 1)), Door("side door", (60, 14), 3, (1, 0))),
        ),
    ),
    structures=(Structure("old roof", ((40, 50), (50, 50), (50, 60), (40, 60)), 9, 0.5),),
    trees=(Tree("red oak", (80, 70), 1, 6),),
)


@pytest.mark.parametrize(
    ("x", "y", "words"),
    [
        (41, 51, "under the old roof"),
        (44, 51, "under the old roof"),
        (47, 51, "beside the old roof"),
        (26, 34, "outside the garden door"),
        (64, 10, "outside the side door"),
        (48, 32, "beside the house"),
        (26, 2, "beside the house"),
        (68, 66, "by the red oak"),
        (44, 80, "towards the rear"),
        (10, 50, OUT_IN_THE_GARDEN),
        (25, 50, OUT_IN_THE_GARDEN),
    ],
)
def test_a_room_of_8_by_8(x, y, words):
    """The first thing that tells where it is; behind a wall is not outside its door, a number is no name."""
    assert whereabouts(Placement("nook", "one", x, y, 8, 8, "+y"), SITE) == words


def test_how_it_lies_to_house_and_edges():
    """Edge to edge: 20 ft from the house, and the rear is its nearest edge."""
    placement = Placement("nook", "one", 30, 50, 8, 8, "+y")
    assert off_house_ft(placement, SITE) == 20
    assert nearest_edge(replace(placement, y_ft=75), SITE) == "rear"
