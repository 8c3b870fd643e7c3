"""Phases that the brief leaves open: worth coming for, reached by machines, of use by themselves."""

from dataclasses import replace
from decimal import Decimal

import pytest

from optimizer.brief import Trip
from optimizer.catalogue import SizedRoom
from optimizer.check import CHECKS, CheckCase
from optimizer.derived import Derived
from optimizer.layout import placed_of
from optimizer.site import Entrance
from tests.yards import on_site, plain_layout, plain_rooms, plain_yard, sized, stand

MACHINES = Entrance("gate", (0, 20), 10, (1, 0), ("guests", "machines"))
ENOUGH = {1: Decimal(60000), 2: Decimal(25000)}
LATER = "plain, in phase 2"


def may_wait(room: SizedRoom) -> SizedRoom:
    """A room with a choice that waits for phase 2 beside its own."""
    (now,) = room.choices
    return replace(room, choices=(replace(now, label=LATER, prepares=now.label, phase=2), now))


ROOMS = plain_rooms(*(may_wait(room) for room in plain_rooms() if room.name != "table"))


def later(name):
    """Where a room stands in the layout that keeps every rule, waiting there."""
    return replace(next(p for p in plain_layout().placements if p.room == name), choice=LATER)


def found(*placements, costs=ENOUGH, trips=None, site=None, rooms=ROOMS):
    """What the rule says of a layout with these rooms moved."""
    yard = on_site(plain_yard(ceiling=None), **(site or {}))
    brief = replace(yard.brief, trips=yard.brief.trips if trips is None else trips)
    derived = Derived(replace(yard, brief=brief), placed_of(rooms, plain_layout(*placements)))
    return list(CHECKS["phases"](CheckCase(derived, price=lambda phase: costs.get(phase, Decimal(0)))))


@pytest.mark.parametrize(
    ("costs", "short"),
    [
        (ENOUGH, []),
        ({**ENOUGH, 2: Decimal("24999.99")}, [0.01]),
        ({**ENOUGH, 1: Decimal(24000)}, [1000]),
        ({1: Decimal(60000)}, []),
    ],
)
def test_each_phase_is_worth_coming_for(costs, short):
    """25,000 at the least, each; all rooms whose phase is open are to blame. A phase of nothing is none."""
    findings = found(later("fire"), costs=costs)
    assert [finding.amount for finding in findings] == pytest.approx(short)
    assert {finding.rooms for finding in findings} <= {("cooker", "fire", "nook")}


def test_where_nothing_waits_nothing_is_asked():
    """Phases that the brief gives are the brief's own: of small ones a caution speaks."""
    fixed = plain_rooms(replace(sized("fire", "fire", 8, 8, fuel="gas"), phase=2))
    assert not found(costs={1: Decimal(100), 2: Decimal(100)})
    assert not found(costs={1: Decimal(100), 2: Decimal(100)}, rooms=fixed)


def test_machines_come_to_heavy_work_past_what_stands():
    """A fire behind the table is shut out where the table is built first; at the drive, or in phase 1, it is not."""
    wide, here = stand("table", 24, 12, 14, 28), stand("fire", 46, 20, 8, 8, choice=LATER)
    (finding,) = found(wide, here, site={"entrances": (MACHINES,), "structures": ()})
    assert finding.rooms[:2] == ("fire", "table")
    assert finding.unit == "ft"
    assert finding.amount > 3
    site = {"entrances": (MACHINES,), "structures": ()}
    assert not found(wide, replace(here, choice="plain"), later("nook"), site=site)
    assert not found(wide, later("fire"), site=site)


def test_where_no_machine_comes_in_any_case_the_work_is_done_by_hand():
    """Behind a gate of 4 ft, and where no entrance is named."""
    wide, here = stand("table", 24, 12, 14, 28), stand("fire", 46, 20, 8, 8, choice=LATER)
    for entrances in ((replace(MACHINES, width_ft=4),), (replace(MACHINES, used_by=("guests",)),)):
        assert not found(wide, here, site={"entrances": entrances, "structures": ()})


def test_nobody_builds_what_people_cannot_come_to_yet():
    """A nook to which people come from the fire alone is of no use before it, and is once they come from the gate too."""
    trips = (Trip("fire", "nook", 4), Trip("gate", "table", 4))
    (finding,) = found(later("fire"), trips=trips)
    assert finding.rooms == ("nook", "fire")
    assert not found(later("fire"), trips=(*trips, Trip("gate", "nook", 1)))
    assert not found(later("fire"), later("nook"), trips=trips)
