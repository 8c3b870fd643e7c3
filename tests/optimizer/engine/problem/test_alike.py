"""States compared many at once, as layouts are compared two by two."""

import pytest

from optimizer.catalogue import sized_rooms
from optimizer.engine.problem import posed_layout_of
from optimizer.engine.problem.alike import Archive
from optimizer.layout import difference
from optimizer.scenario import load_scenario
from tests.explored import explored, states

DIAGONAL_FT = 120.0


@pytest.mark.parametrize("name", ["fernhollow-court", "wattle-rise"])
def test_the_same_figure_as_for_layouts(name):
    """To the most alike of a handful, for states with other rooms, choices and sides."""
    scenario = load_scenario(f"scenarios/{name}.yaml")
    explorer = explored(scenario, sized_rooms(scenario.brief), rebuilds=25)
    problem, found = explorer.board.problem, states(explorer)
    archive, known = Archive(problem, DIAGONAL_FT), found[::5]
    assert archive.least_difference(found[0]) == 1.0
    for state in known:
        archive.add(state)
    for state in found[1::4]:
        layouts = [posed_layout_of(problem, other) for other in (state, *known)]
        expected = min(difference(layouts[0], other, diagonal_ft=DIAGONAL_FT) for other in layouts[1:])
        assert archive.least_difference(state) == pytest.approx(expected, abs=1e-9)
