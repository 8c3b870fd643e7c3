"""When nothing fits: the reason, and ways out that were really tried."""

import threading
from dataclasses import replace
from decimal import Decimal

from optimizer.brief import Hold
from optimizer.concepts.case import Case
from optimizer.concepts.run import ConceptRun
from optimizer.events import to_nobody
from optimizer.pipeline import RunSettings, make_options
from optimizer.scenario import load_scenario

FERNHOLLOW = load_scenario("scenarios/fernhollow-court.yaml")


def changed(**changes):
    """The example with another brief."""
    return replace(FERNHOLLOW, brief=replace(FERNHOLLOW.brief, **changes))


def answer(scenario):
    """What the main job says of a scenario."""
    return make_options(scenario, RunSettings(seconds=20, processes=0))


def test_a_room_that_fits_nowhere():
    """A required terrace larger than the yard: named, with the way out of leaving it to choice.

    The other rooms have 16 seats, 70 % of 22 people.
    """
    room = FERNHOLLOW.brief.rooms[0]
    huge = replace(room, choices=(replace(room.choices[0], width_ft=90.0, depth_ft=70.0),))
    budget = replace(FERNHOLLOW.brief.budget, ceiling=None)
    found = answer(changed(rooms=(huge, *FERNHOLLOW.brief.rooms[1:]), budget=budget))
    assert found.search.status == "nothing_fits"
    assert "gathering area fits nowhere" in found.conflict.words
    assert [way.text for way in found.conflict.ways_out] == [
        "leave the gathering area to choice, and plan for a party of 22"
    ]


def test_a_ceiling_below_the_floor():
    """The floor and the ceiling are named, and the raised ceiling of the way out gives concepts when it is applied."""
    found = answer(changed(budget=replace(FERNHOLLOW.brief.budget, ceiling=Decimal(9000))))
    assert found.search.status == "nothing_fits"
    assert "9,000" in found.conflict.words
    ((operation, path, value),) = found.conflict.ways_out[0].patch
    assert (operation, path) == ("replace", "/budget/ceiling")
    assert answer(changed(budget=replace(FERNHOLLOW.brief.budget, ceiling=Decimal(value)))).options


def test_relations_that_clash_on_the_ground():
    """A fire within 5 ft of the house cannot keep 12 ft from it: the relation that has to give is named and tried."""
    relations = list(FERNHOLLOW.brief.relations)
    near_house = replace(relations[3], kind="near", at_least_ft=None, within_ft=5.0, by="straight")
    rooms = tuple(replace(room, required=room.kind == "fire") for room in FERNHOLLOW.brief.rooms)
    found = answer(changed(relations=(*relations, near_house), rooms=rooms))
    assert found.search.status == "nothing_fits"
    assert "leave out: fire feature near house" in [way.text for way in found.conflict.ways_out]
    assert "near" in [rule for rule, _, _ in found.conflict.rules]


def test_stopped_at_once():
    """Stopped before it began, a run says so and claims no proof."""
    stop = threading.Event()
    stop.set()
    run = ConceptRun(Case.of(FERNHOLLOW), count=3, seconds=20, seed=1, repeatable=False, processes=0)
    found = run.run(emit=to_nobody, stop=stop)
    assert found.search.stopped
    assert found.search.status == ("bounded" if found.options else "undecided")
    assert found.search.bound is None


def test_a_paved_share_below_what_is_required():
    """Where the required rooms alone pave more than the site allows, that rule is named without long asking."""
    site = replace(FERNHOLLOW.site, paved_share_limit=0.001)
    found = make_options(replace(FERNHOLLOW, site=site), RunSettings(seconds=2, processes=0))
    assert found.search.status == "nothing_fits"
    assert ("paved_share", ("gathering area",)) in [(rule, rooms) for rule, _, rooms in found.conflict.rules]
    assert "no single rule" not in found.conflict.words


def test_a_room_held_where_it_cannot_stand():
    """A fire held 4 ft from the rear: the rule and the amount are said, and the way out of letting go was tried."""
    found = answer(changed(holds=(Hold("fire feature", at_ft=(48.0, 100.0)),)))
    assert found.search.status == "nothing_fits"
    assert "fire feature cannot stand where it is held: fire feature is 4.00 ft from rear" in found.conflict.words
    assert "the setback is 10.00 ft" in found.conflict.words
    (way,) = [way for way in found.conflict.ways_out if "hold" in way.text]
    assert way.text == "let go of the hold: fire feature at 48, 100 ft"
    assert way.patch == (("remove", "/brief/holds/0", None),)


def test_an_area_that_is_too_small_for_what_is_held_in_it():
    """A terrace that must be there, held in 6 x 6 ft."""
    area = ((40.0, 70.0), (46.0, 70.0), (46.0, 76.0), (40.0, 76.0))
    found = answer(changed(holds=(Hold("gathering area", within=area),)))
    assert found.search.status == "nothing_fits"
    assert "The gathering area fits nowhere as it is held, whatever the other rooms do." in found.conflict.words
