"""What could be added to hide the steps that a guest sees."""

from dataclasses import replace
from decimal import Decimal

import pytest
from shapely import Polygon, box

from optimizer.appraisal import appraise
from optimizer.appraisal.arrival import arrival_view
from optimizer.catalogue import book_for
from optimizer.concepts import remedies_for
from optimizer.derived import Derived
from optimizer.fields import ground_at_ft
from optimizer.fields.sight import Screen
from optimizer.layout import Layout, placed_of
from optimizer.site import Entrance, KeepOut
from tests.optimizer.grading.slopes import on_plane
from tests.yards import plain_rooms, plain_yard, stand

BOOK = book_for("USD")
GATE = Entrance("gate", (64, -40), 5, (0, 1))
LAYOUT = Layout((stand("fire", 60, 30, 8, 10), stand("nook", 60, 40, 8, 10)))
CORNERS = [(x, y) for x in (61.5, 66.5) for y in (36.5, 40)]


def found(*, rise=0.2, keep_outs=(), **changes):
    """Remedies on a yard that rises to the north, seen from a gate in the south."""
    site = replace(on_plane(north=rise), entrances=(GATE,), keep_outs=keep_outs, trees=())
    scenario = replace(plain_yard(ceiling=None), site=site, **changes)
    appraisal = appraise(Derived(scenario, placed_of(plain_rooms(), LAYOUT)), BOOK)
    return site, remedies_for(scenario, placed_of(plain_rooms(), LAYOUT), BOOK, appraisal)


def test_a_bed_before_the_steps():
    """Four risers, 5 ft wide, in the middle of an 8 ft room: the bed is square to the view, just before the room,
    5 ft deep, as long as the flight and a foot more at either end as seen from the gate, at 14 a square foot.
    """
    site, (remedy,) = found()
    bed = Polygon(remedy.outline)
    left, low, right, high = bed.bounds
    assert high == pytest.approx(30)
    assert low == pytest.approx(25)
    assert (left + right) / 2 == pytest.approx(64)
    assert 5 < right - left < 7
    assert remedy.amount == Decimal(str(round(bed.area, 2))) * 14
    assert remedy.words.startswith("A bed 5 ft wide, ")
    assert remedy.words.endswith(f"hides the 4 risers from fire to nook seen from gate: {remedy.amount:,.0f} USD")
    view = arrival_view(site, placed_of(plain_rooms(), LAYOUT), GATE)
    screen = Screen(bed, ground_at_ft(site, (64, 27.5)) + 3.0)
    assert all(view.sees(at, ground_at_ft(site, at)) for at in CORNERS)
    assert not any(view.sees(at, ground_at_ft(site, at), (screen,)) for at in CORNERS)


def test_where_no_bed_may_be_it_moves_to_where_one_may():
    """Ground kept from beds before the room: the bed lies beyond it, and still covers the view."""
    kept = KeepOut("drain strip", ((0, 20), (140, 20), (140, 30), (0, 30)), allow=("path", "lawn"))
    _, (remedy,) = found(keep_outs=(kept,))
    bed = Polygon(remedy.outline)
    assert not bed.intersects(box(0, 20.01, 140, 29.99))
    assert bed.bounds[3] == pytest.approx(20)


def test_no_remedy_without_room_for_one_or_without_steps():
    """A yard in which nothing may be planted, and one in which nothing is to be hidden."""
    everywhere = KeepOut("field", ((-40, -40), (140, -40), (140, 140), (-40, 140)), allow=("path", "fire", "nook"))
    assert found(keep_outs=(everywhere,))[1] == ()
    assert found(rise=0.0)[1] == ()


def test_words_in_the_yards_own_unit():
    """A scenario in metres speaks of metres."""
    _, (remedy,) = found(units="m")
    assert remedy.words.startswith("A bed 1.5 m wide, ")
    assert " and 0.9 m high " in remedy.words
