"""Edges on shared lines."""

from dataclasses import replace

import pytest

from optimizer.appraisal import OrderMeasures, aligned_share, order_loss, unaligned_ft
from optimizer.appraisal.order import disorder_ft, near_miss_ft
from optimizer.catalogue import rates
from optimizer.layout import Layout, Placement
from optimizer.site import Door, Site


def room(name: str, x: float, y: float, width: float, depth: float) -> Placement:
    """A placed room."""
    return Placement(name, "c", x, y, width, depth, "+y")


def test_a_room_alone_shares_nothing(site: Site) -> None:
    """A room whose four edges lie on no line of house or roof is off by its whole outline."""
    layout = Layout((room("a", 3, 22, 10, 5),))
    assert unaligned_ft(site, layout) == 30
    assert aligned_share(site, layout) == 0


def test_lines_of_house_and_structure_count(site: Site) -> None:
    """Left edge on the house's line x = 10, top on the roof's line y = 32: 12 + 8 of 40 ft."""
    layout = Layout((room("a", 10, 20.5, 8, 11.5),))
    assert aligned_share(site, layout) == pytest.approx((11.5 + 8) / 39)


def test_neighbours_share_their_lines_but_not_with_themselves(site: Site) -> None:
    """Two rooms flush at their backs share those two edges and the edge between them, and nothing else."""
    layout = Layout((room("a", 3, 22, 10, 5), room("b", 13, 22, 6, 7)))
    shared = 10 + 6 + 5 + 7
    assert unaligned_ft(site, layout) == 30 + 26 - shared


@pytest.mark.parametrize(("off_in", "unaligned"), [(0, 10), (0.9, 10), (1.1, 20)])
def test_centred_on_a_structure_is_in_line_with_it(site: Site, off_in: float, unaligned: float) -> None:
    """The roof's middle is at x = 47.5: a room of 5 x 5 ft centred on it has its upright edges in line; rule 23."""
    layout = Layout((room("a", 45 + off_in / 12, 22.3, 5, 5),))
    assert unaligned_ft(site, layout) == unaligned


@pytest.mark.parametrize(("off_in", "share"), [(0.9, 5 / 30), (1.1, 0.0)])
def test_an_inch_is_on_the_line(site: Site, off_in: float, share: float) -> None:
    """Within 1 in an edge lies on the line, beyond it does not."""
    layout = Layout((room("a", 10 + off_in / 12, 22, 10, 5),))
    assert aligned_share(site, layout) == pytest.approx(share)


def test_no_rooms_no_disorder(site: Site) -> None:
    """An empty layout is in order."""
    assert aligned_share(site, Layout(())) == 1


@pytest.mark.parametrize(("off_ft", "missed"), [(0.0, 0), (0.05, 0), (1.0, 5 + 5), (1.95, 0), (2.0, 0)])
def test_neighbours_that_nearly_meet(site: Site, off_ft: float, missed: float) -> None:
    """Two rooms one above the other, of 5 ft and 10 ft: both pairs of upright edges lie off by as much."""
    layout = Layout((room("a", 25, 12, 4, 5), room("b", 25 + off_ft, 22, 4, 10)))
    assert near_miss_ft(site, layout) == missed


def test_a_room_that_nearly_meets_the_house(site: Site) -> None:
    """Its left edge of 5 ft lies 1 ft beside the house's corner line x = 10, 10 ft above it; at 13 ft it is no neighbour."""
    assert near_miss_ft(site, Layout((room("a", 11, 20, 8, 5),))) == 5
    assert near_miss_ft(site, Layout((room("a", 11, 23, 8, 5),))) == 0


def test_a_fifth_may_lie_on_no_line(site: Site) -> None:
    """Of 30 ft none is on a line, and 6 may be; flush with a second room all but a fifth are."""
    alone = Layout((room("a", 3, 22, 10, 5),))
    assert disorder_ft(site, alone) == pytest.approx(24)
    in_order = Layout((room("a", 10, 10, 10, 5), room("b", 20, 10, 6, 5)))  # only the right edge, 5 of 52 ft
    assert disorder_ft(site, in_order) == 0


def test_every_measure_of_order_costs() -> None:
    """Each at its rate, and what is in order nothing."""
    rate = rates()
    each = {
        "unaligned_ft": rate.order,
        "disorder_ft": rate.disorder,
        "near_miss_ft": rate.near_miss,
        "off_structure_ft": rate.off_structure,
        "off_axis": rate.off_axis,
        "across_contour_ft": rate.across_contour,
    }
    for name, money in each.items():
        assert order_loss(replace(OrderMeasures(), **{name: 2})) == 2 * money > 0
    assert order_loss(OrderMeasures(centred=("table",))) == 0


def test_a_circle_has_no_edges_to_set_in_line(site: Site) -> None:
    """It adds nothing to what is out of line, to near misses and to all edges, and lends nobody a line."""
    table = room("a", 3, 22, 10, 5)
    ring = Placement("b", "c", 20, 22.5, 10, 10, "+y", shape="circle")
    alone, both = Layout((table,)), Layout((table, ring))
    assert unaligned_ft(site, both) == unaligned_ft(site, alone) == 30
    assert near_miss_ft(site, both) == near_miss_ft(site, alone)
    assert unaligned_ft(site, Layout((table, replace(ring, y_ft=22.0, shape="rectangle")))) < 30 + 40
    assert unaligned_ft(site, Layout((table, replace(ring, y_ft=22.0)))) == 30
    assert aligned_share(site, Layout((ring,))) == 1


def test_a_circle_on_an_axis_is_in_line(site: Site) -> None:
    """In line with the roof's middle it counts as two edges 10 ft long, with both axes as four, off them as nothing."""
    roof = site.structures[0].outline
    middle = [(min(axis) + max(axis)) / 2 for axis in zip(*roof, strict=True)]
    bare = replace(site, buildings=())
    table, ring = room("a", 3, 22.3, 10, 5), Placement("b", "c", 2.3, middle[1] - 5, 10, 10, "+y", shape="circle")
    assert aligned_share(bare, Layout((table, ring))) == pytest.approx(20 / 50)
    assert aligned_share(bare, Layout((table, replace(ring, y_ft=ring.y_ft + 1)))) == 0
    both = replace(ring, x_ft=middle[0] - 5)
    assert aligned_share(bare, Layout((table, both))) == pytest.approx(40 / 70)
    # A door at (20, 12) that looks along y: a circle ahead of it, half a foot off its middle, then two feet off.
    opened = replace(
        site, structures=(), buildings=(replace(site.buildings[0], doors=(Door("door", (20, 12), 6, (0, 1)),)),)
    )
    for off_ft, share in ((0.5, 20 / 50), (2.0, 0.0)):
        ahead = Placement("b", "c", 15 + off_ft, 22.3, 10, 10, "+y", shape="circle")
        assert aligned_share(opened, Layout((table, ahead))) == pytest.approx(share)
