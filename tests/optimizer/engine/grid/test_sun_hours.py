"""A roof over a room as a choice: its hours are those of the appraisal, and it is bought where it pays."""

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from optimizer.appraisal import sun_of
from optimizer.brief import Choice, RoomWish, SunWish
from optimizer.catalogue import book_for, sized_rooms
from optimizer.derived import Derived
from optimizer.engine.grid.sun_hours import mean_hours
from optimizer.engine.problem import build_problem, layout_of
from optimizer.layout import Layout, Placement, placed_of
from optimizer.scenario import load_scenario
from tests.explored import explored, states
from tests.yards import plain_yard

FERNHOLLOW = load_scenario("scenarios/fernhollow-court.yaml")
LEVEL = replace(FERNHOLLOW, site=replace(FERNHOLLOW.site, levels=()))
ROOMS = sized_rooms(LEVEL.brief)


@cache
def built():
    """The problem of the yard on level ground, made once it is asked for."""
    return build_problem(LEVEL, ROOMS, book_for("USD"))


def placement_at(room: int, variant: int, row: int, column: int) -> Placement:
    lattice, chosen = built().context.lattice, built().rooms[room].variants[variant]
    size = (chosen.width * lattice.step_ft, chosen.depth * lattice.step_ft)
    posed = Placement(
        ROOMS[room].name, ROOMS[room].choices[chosen.choice].label, lattice.x_ft(column), lattice.y_ft(row), *size, "+y"
    )
    return built().context.pose.layout_back(Layout((posed,))).placements[0]


@pytest.mark.parametrize("room", [0, 3])
def test_tables_score_as_the_appraisal_does(room):
    """At 30 places of every variant, covered and not, in a shade wish and in a sun wish; on level ground."""
    random = np.random.default_rng(4)
    for index, variant in enumerate(built().rooms[room].variants):
        places = np.argwhere(built().rooms[room].allowed[index])
        hours = mean_hours(built().context, ROOMS[room], variant)
        for row, column in places[random.integers(0, len(places), 30)]:
            layout = Layout((placement_at(room, index, int(row), int(column)),))
            ((_, found, _),) = sun_of(Derived(LEVEL, placed_of(ROOMS, layout)))
            assert hours[row, column] == pytest.approx(found, abs=0.02)


def bought(sun_weight: float) -> set[str]:
    """Choices of a table without a tree or roof near, as the best layout of a short search has them."""
    wish = RoomWish(
        "table",
        "gathering",
        required=True,
        choices=(Choice("six", 14, 12, 6, 5.0),),
        sun=SunWish("shade", 11, 14, (6,)),
    )
    plain = plain_yard(ceiling=None)
    weights = replace(plain.brief.weights, sun=sun_weight)
    brief = replace(plain.brief, rooms=(wish,), trips=(), weights=weights)
    scenario = replace(plain, brief=brief, site=replace(plain.site, structures=(), trees=()))
    explorer = explored(scenario, sized_rooms(brief), rebuilds=20)
    return {placement.choice for placement in layout_of(explorer.board.problem, states(explorer)[0]).placements}


def test_a_roof_is_bought_where_shade_is_worth_its_price():
    """The roof counts 1,063, a tenth of 168 sq ft x 55 x 1.15: too much at the usual weight of sun, not at four times."""
    assert bought(sun_weight=1.0) == {"six"}
    assert bought(sun_weight=4.0) == {"six, covered"}
