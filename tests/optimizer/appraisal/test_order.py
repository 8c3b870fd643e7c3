"""Edges on shared lines."""

import pytest

from optimizer.appraisal import aligned_share, unaligned_ft
from optimizer.layout import Layout, Placement
from optimizer.site import Site


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


@pytest.mark.parametrize(("off_in", "share"), [(0.9, 5 / 30), (1.1, 0.0)])
def test_an_inch_is_on_the_line(site: Site, off_in: float, share: float) -> None:
    """Within 1 in an edge lies on the line, beyond it does not."""
    layout = Layout((room("a", 10 + off_in / 12, 22, 10, 5),))
    assert aligned_share(site, layout) == pytest.approx(share)


def test_no_rooms_no_disorder(site: Site) -> None:
    """An empty layout is in order."""
    assert aligned_share(site, Layout(())) == 1
