"""The first free place is that of asking about every one, and most of them are not asked about."""

import numpy as np
import pytest
import shapely

from optimizer.drawing import free_space
from optimizer.drawing.free_space import boxes_about, by_distance, centres_within, first_free, union_of

CENTRES = by_distance(centres_within((0, 0, 40, 40), width_ft=3, height_ft=2, step_ft=0.8), (20.0, 20.0))


@pytest.mark.parametrize("only", [0, 15, 16, 17, 47, 48, 1000, len(CENTRES) - 1])
def test_the_only_free_place_is_found(only):
    """Wherever it stands in the order, and whichever thing takes the others."""
    others = np.delete(CENTRES, only, axis=0)
    things = (union_of(shapely.multipoints(others[::2])), union_of(shapely.multipoints(others[1::2])))
    assert first_free(CENTRES, *things, width_ft=0.1, height_ft=0.1) == tuple(map(float, CENTRES[only]))
    assert first_free(others, *things, width_ft=0.1, height_ft=0.1) is None


@pytest.mark.parametrize(("taken", "most"), [((0, 0, 1, 1), 16), ((17, 17, 23, 23), 1200)])
def test_places_behind_a_free_one_are_not_asked_about(monkeypatch, taken, most):
    """Names of the site mostly stand where they should: of thousands of places one batch is looked at."""
    asked = []

    def counted(points, **size):
        asked.append(len(points))
        return boxes_about(points, **size)

    monkeypatch.setattr(free_space, "boxes_about", counted)
    assert first_free(CENTRES, shapely.box(*taken), width_ft=3, height_ft=2)
    assert sum(asked) <= most < len(CENTRES)


def test_places_are_sorted_by_distance():
    away = np.hypot(*(CENTRES - 20).T)
    assert (np.diff(np.round(away, 3)) >= 0).all()
