"""A few rounds on a small yard: the same concepts of a turned and a mirrored copy, and never worse for more rounds."""

from dataclasses import replace
from functools import cache

import pytest

from optimizer.brief import OptionsWanted
from optimizer.concepts.case import Case
from optimizer.concepts.run import ConceptRun
from optimizer.events import to_nobody
from optimizer.layout import Pose
from tests.explored import NEVER
from tests.yards import on_site, plain_rooms, plain_yard

COUNT = 4
TURNED = Pose((0, -1, 1, 0), (3.7, 3.7))
MIRRORED = Pose((-1, 0, 0, 1), (3.7, 3.7))


def yard():
    """The plain yard on a coarse grid, without a kitchen, whose counter has a hand."""
    plain = on_site(plain_yard(ceiling=None), structures=())
    trips = tuple(trip for trip in plain.brief.trips if trip.end != "cooker")
    return replace(plain, brief=replace(plain.brief, trips=trips, options=OptionsWanted(COUNT, 2.0, 1)))


def searched(scenario, seconds, *, seed=1, processes=0):
    """Concepts of so many rounds, best first."""
    rooms = tuple(room for room in plain_rooms() if room.name != "cooker")
    case = Case(scenario, rooms, Case.of(scenario).book)
    run = ConceptRun(case, COUNT, seconds, seed, repeatable=True, processes=processes)
    return run.run(emit=to_nobody, stop=NEVER).options


@cache
def original(seconds=4.0, seed=1):
    """Concepts of the yard as it is."""
    return searched(yard(), seconds, seed=seed)


def corners(layout):
    """Rooms with their choices and places, to a hundredth of a foot."""
    return {(p.room, p.choice, round(p.x_ft, 2), round(p.y_ft, 2), round(p.width_ft, 2)) for p in layout.placements}


@pytest.mark.parametrize("seed", [1, 6])
@pytest.mark.parametrize("pose", [TURNED, MIRRORED], ids=["turned", "mirrored"])
def test_a_copy_has_the_same_concepts(pose, seed):
    """Each where the copy has it, with the same losses, in the same order."""
    plain = yard()
    copies = searched(replace(plain, site=pose.site(plain.site)), 4.0, seed=seed)
    assert len(copies) == COUNT
    for one, other in zip(original(seed=seed), copies, strict=True):
        assert corners(pose.layout(one.layout)) == corners(other.layout)
        assert dict(one.losses) == pytest.approx(dict(other.losses), abs=0.5)


@pytest.mark.parametrize("seed", [2])
def test_more_rounds_never_give_a_worse_first_concept(seed):
    """Two, four and eight rounds of one seed."""
    best = [original(seconds, seed)[0].score for seconds in (2.7, 5.4, 10.7)]
    assert best == sorted(best, reverse=True)


def test_repeatable_is_the_same_with_a_process_beside():
    """The same layouts at the same scores with the same proofs."""
    beside = searched(yard(), 4.0, processes=1)
    assert [(one.layout, one.score, one.proof) for one in beside] == [
        (one.layout, one.score, one.proof) for one in original()
    ]
