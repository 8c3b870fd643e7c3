"""Where an idea's rooms may stand on the grid, held against what the idea's test says in real geometry."""

from dataclasses import replace

import numpy as np
import pytest
from shapely import box

from optimizer.catalogue import idea_rules, sized_rooms
from optimizer.concepts.ideas import TESTS, Plan
from optimizer.engine.grid.context import context_of
from optimizer.engine.grid.variants import Variant
from optimizer.engine.ideas import Places
from optimizer.fields import ground_of, main_openings
from optimizer.fields.terraces import garden_doors
from optimizer.layout import Layout, Placement, placed_of
from optimizer.scenario import load_scenario
from tests.sample_run import sample_option

YARDS = ("fernhollow-court", "tumbledown-bank", "wattle-rise")


class Case:
    """A demonstration yard in its pose, with one variant of its table and corners drawn at random."""

    def __init__(self, name):
        self.scenario = load_scenario(f"scenarios/{name}.yaml")
        self.rooms = sized_rooms(self.scenario.brief)
        self.context = context_of(self.scenario, self.rooms)
        self.places = Places(self.context)
        lattice = self.context.lattice
        choice = self.rooms[0].choices[0]
        width, depth = lattice.need(choice.width_ft), lattice.need(choice.depth_ft)
        self.variant = Variant(0, width, depth, None, (width, depth))
        random = np.random.default_rng(5)
        x = random.integers(0, lattice.columns - width, 400)
        y = random.integers(0, lattice.rows - depth, 400)
        self.corners = list(zip(x.tolist(), y.tolist(), strict=True))

    def placement(self, x, y):
        """The table at a corner, in the pose."""
        lattice, room = self.context.lattice, self.rooms[0]
        size = (self.variant.width * lattice.step_ft, self.variant.depth * lattice.step_ft)
        return Placement(room.name, room.choices[0].label, lattice.x_ft(x), lattice.y_ft(y), *size, "+y")

    def plan(self, x, y):
        """The same on the plan, with nothing else."""
        layout = self.context.pose.layout_back(Layout((self.placement(x, y),)))
        return Plan(self.scenario, placed_of(self.rooms, layout), sample_option().appraisal)

    def agree(self, cells, test):
        """At every corner; how often it is so."""
        found = [(bool(cells[y, x]), bool(test(self.plan(x, y)))) for x, y in self.corners]
        assert [here for here, _ in found] == [there for _, there in found]
        return sum(here for here, _ in found)


@pytest.fixture(scope="module", params=YARDS)
def case(request):
    return Case(request.param)


def test_at_the_house_and_in_the_garden(case):
    """Grid and geometry say the same of every corner."""
    at_house = case.agree(case.places.at_house(case.variant), lambda plan: plan.is_at_house(plan.table))
    in_garden = case.agree(case.places.in_garden(case.variant), lambda plan: plan.is_in_garden(plan.table))
    assert 20 < at_house < 380
    assert 20 < in_garden < 400 - at_house


def test_beside_the_house(case):
    """The same, and somewhere."""
    assert case.agree(case.places.beside(case.variant), TESTS["beside the house"]) > 0


def test_under_a_structure(case):
    """Where nearly all of the smaller of the two lies in the other."""
    structures = case.context.site.structures
    for structure in structures:
        cells = case.places.under(structure, case.variant)
        case.corners = [*case.corners, *((int(x), int(y)) for y, x in np.argwhere(cells))]
        assert case.agree(cells, lambda plan: bool(plan.roofed)) > 0


def test_on_the_line_of_an_opening(case):
    """Within a foot of the line, ahead of it."""
    for opening in main_openings(case.context.site):
        cells = case.places.on_axis_of(opening, case.variant)
        (at_x, at_y), (out_x, out_y) = opening.at, opening.outward
        for x, y in case.corners:
            middle = case.placement(x, y).centre
            off = (middle[0] - at_x) * out_y - (middle[1] - at_y) * out_x
            ahead = (middle[0] - at_x) * out_x + (middle[1] - at_y) * out_y
            assert bool(cells[y, x]) == (abs(off) <= 1.01 and ahead > 0.01)
        both = case.places.on_axis_at_house(opening, case.variant)
        assert (both == (cells & case.places.at_house(case.variant))).all()
        assert both.any()


def test_ground_below_the_door(case):
    """A foot lower under the middle than 4 ft in front of the garden door; nowhere where the ground is not known."""
    cells, ground = case.places.below(case.variant), ground_of(case.scenario.site)
    if not ground.is_known:
        assert not cells.any()
        return
    door = garden_doors(case.scenario.site, case.scenario.brief)[0]
    ahead = np.array([door.at]) + 4.0 * np.array([door.outward])
    least = float(ground.z_ft(ahead)[0]) - idea_rules().step_down_ft
    for x, y in case.corners:
        middle = case.context.pose.back(case.placement(x, y).centre)
        assert bool(cells[y, x]) == (float(ground.z_ft(np.array([middle]))[0]) <= least)


def test_what_is_asked_of_a_table_that_is_held(case):
    """Distances from it, and about its place; without one what the house alone says."""
    x, y = next((x, y) for x, y in case.corners if case.places.at_house(case.variant)[y, x])
    stands = case.placement(x, y)
    held = box(stands.x_ft, stands.y_ft, stands.right_ft, stands.top_ft)
    court, apart = case.places.in_court_of(held, case.variant), case.places.apart_from(held, case.variant)
    about = case.places.held_at(held, case.variant)
    in_garden, at_house = case.places.in_garden(case.variant), case.places.at_house(case.variant)
    for column, row in case.corners:
        other = case.placement(column, row)
        gap = box(other.x_ft, other.y_ft, other.right_ft, other.top_ft).distance(held)
        assert bool(court[row, column]) == (gap <= idea_rules().court_ft + 0.02)
        assert bool(apart[row, column]) == bool(in_garden[row, column] and gap > idea_rules().apart_ft)
    assert about[y, x]
    far = [(abs(a - x), abs(b - y)) for b, a in np.argwhere(about)]
    assert max(max(pair) for pair in far) * case.context.lattice.step_ft <= 2.02
    assert not (about & ~at_house).any()
    assert (case.places.held_at(None, case.variant) == at_house).all()
    assert (case.places.apart_from(None, case.variant) == in_garden).all()
    assert case.places.in_court_of(None, case.variant).all()


def test_nobody_goes_out_of_a_door():
    """Without a trip through a door nothing lies beside the house or below it."""
    case = Case("tumbledown-bank")
    scenario = replace(case.scenario, brief=replace(case.scenario.brief, trips=()))
    places = Places(context_of(scenario, case.rooms))
    assert not places.beside(case.variant).any()
    assert not places.below(case.variant).any()
