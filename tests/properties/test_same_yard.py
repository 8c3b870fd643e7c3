"""The same yard renamed, turned, mirrored, shifted or written in metres gives the same concepts, up to that change."""

from dataclasses import fields, is_dataclass, replace

import pytest

from optimizer.circulation import ways
from optimizer.concepts.case import Case
from optimizer.engine.explorer import Explorer, board_of
from optimizer.engine.portfolio import Purse, first_tours
from optimizer.engine.problem import layout_of
from optimizer.layout import Layout, placed_of
from optimizer.layout.pose import Pose
from optimizer.pipeline import RunSettings, make_options
from optimizer.scenario import load_scenario
from tests.explored import NEVER, problem_of

METRE = 0.3048
MIRROR = Pose((-1, 0, 0, 1), (3.7, 3.7))


def plain():
    """The example without wishes for sun and without wind, which a mirrored yard cannot share."""
    scenario = load_scenario("scenarios/fernhollow-court.yaml")
    rooms = tuple(replace(room, sun=None) for room in scenario.brief.rooms)
    site = replace(scenario.site, wind_from_deg=None)
    return replace(scenario, site=site, brief=replace(scenario.brief, rooms=rooms))


def concepts(scenario):
    """Layouts of a few concepts, best first."""
    found = make_options(scenario, RunSettings(count=2, seconds=3.0, repeatable=True, processes=0))
    assert len(found.options) == 2
    return [option.layout for option in found.options]


def same_places(one: Layout, other: Layout) -> bool:
    """Whether all rooms stand in the same places, to a hundredth of a foot."""
    return all(
        a.choice == b.choice and max(abs(p - q) for p, q in zip(places(a), places(b), strict=True)) < 0.01
        for a, b in zip(one.placements, other.placements, strict=True)
    )


def places(placement):
    """Corner and size of a placement [ft]."""
    return (placement.x_ft, placement.y_ft, placement.width_ft, placement.depth_ft)


def through_metres(thing):
    """Anything of a scenario, with every length written in metres to eleven digits and read back."""
    if isinstance(thing, float):
        return float(f"{thing * METRE:.11g}") / METRE
    if isinstance(thing, tuple):
        return tuple(through_metres(part) for part in thing)
    if is_dataclass(thing):
        return replace(thing, **{f.name: through_metres(getattr(thing, f.name)) for f in fields(thing) if f.init})
    return thing


def renamed(thing):
    """Anything of a scenario, with another name for every room, thing and door."""
    if isinstance(thing, tuple):
        return tuple(renamed(part) for part in thing)
    if isinstance(thing, str):
        return f"z{thing[::-1]}"
    names = ("name", "start", "end", "between", "may_hold")
    if is_dataclass(thing):
        parts = ("buildings", "doors", "windows", "entrances", "structures", "trees", "paving", "walls", "keep_outs")
        parts += ("surroundings",)
        parts += ("rooms", "relations", "trips")
        changes = {f.name: renamed(getattr(thing, f.name)) for f in fields(thing) if f.name in names + parts}
        return replace(thing, **changes)
    return thing


def test_turned_renamed_and_in_metres():
    """All at once, since each is a run of its own: turned by 90 degrees and shifted by 3.7 ft, another name for every room,
    door and thing, and every length written in metres, the grid step too.
    """
    plainly, pose = plain(), Pose((0, -1, 1, 0), (3.7, 3.7))
    turned = pose.site(plainly.site)
    site = replace(through_metres(renamed(turned)), place=turned.place)
    options = replace(plainly.brief.options, grid_step=METRE)
    other = replace(plainly, units="m", site=site, brief=replace(renamed(plainly.brief), options=options))
    assert all(same_places(pose.layout(one), two) for one, two in zip(concepts(plainly), concepts(other), strict=True))


def test_mirrored():
    """Mirrored, and shifted by 3.7 ft. A counter is built from left to right, so its grill does not come to stand where
    a mirror has it, and a flame too near to steps is refused: concepts are compared without the kitchen.
    """
    scenario = without("outdoor kitchen", plain())
    mirrored = concepts(replace(scenario, site=MIRROR.site(scenario.site)))
    assert all(same_places(MIRROR.layout(one), other) for one, other in zip(concepts(scenario), mirrored, strict=True))


def test_the_engine_and_the_ways_are_mirrored():
    """With all rooms, the engine passes the same layouts at the same values, and ways are laid where a mirror has them."""
    scenario = plain()
    mirrored = replace(scenario, site=MIRROR.site(scenario.site))
    passed = explored(scenario)
    assert passed
    assert explored(mirrored) == passed
    case = Case.of(scenario)
    problem = problem_of(scenario, case.rooms)
    for _, state in passed[:12]:
        layout = layout_of(problem, state)
        plain_legs = ways(scenario.site, scenario.brief, placed_of(case.rooms, layout)).legs
        legs = ways(mirrored.site, scenario.brief, placed_of(case.rooms, MIRROR.layout(layout))).legs
        for leg, other in zip(plain_legs, legs, strict=True):
            assert (leg.use, leg.width_ft, leg.trips) == (other.use, pytest.approx(other.width_ft), other.trips)
            ends = [pytest.approx(MIRROR.point(point), abs=0.01) for point in leg.points]
            assert list(other.points) == ends


def test_what_is_judged_is_mirrored():
    """Without the kitchen: the same is refused, and what holds has the same losses to what rounding changes."""
    scenario = without("outdoor kitchen", plain())
    case, other = Case.of(scenario), Case.of(replace(scenario, site=MIRROR.site(scenario.site)))
    problem = problem_of(scenario, case.rooms)
    layouts = [layout_of(problem, state) for _, state in explored(scenario, tours=3)[:70]]
    held = 0
    for layout in layouts:
        one, two = case.judged(layout), other.judged(MIRROR.layout(layout))
        assert one.holds == two.holds
        if one.holds:
            held += 1
            assert dict(one.losses) == pytest.approx(dict(two.losses), abs=1.0)
    assert held >= 10


def explored(scenario, tours=1):
    """Values and layouts, in the engine's own pose, that so many short tours pass."""
    case = Case.of(scenario)
    problem = problem_of(scenario, case.rooms)
    explorer = Explorer(board_of(problem))
    for seed in range(1, tours + 1):
        for tour in first_tours(seed, (), Purse(problem).set_aside(0)):
            explorer.run(tour, stop=NEVER)
    return explorer.pool.ranked()


def without(name, scenario):
    """A scenario without one of its rooms."""
    brief = scenario.brief
    rooms = tuple(room for room in brief.rooms if room.name != name)
    relations = tuple(relation for relation in brief.relations if name not in relation.between)
    trips = tuple(trip for trip in brief.trips if name not in (trip.start, trip.end))
    return replace(scenario, brief=replace(brief, rooms=rooms, relations=relations, trips=trips))
