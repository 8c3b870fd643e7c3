"""A grown yard is read, explored, judged and modelled, and exponents are those of the figures."""

import xml.etree.ElementTree as ET

import pytest

from tests.benchmarks.growth import COLUMNS, Point, exponent, measured, table
from tests.benchmarks.growth_plot import plot


def test_a_small_yard_has_all_figures():
    """Every figure of a point is there; memory may stay below what was had before."""
    figures = measured(Point(4, 60, 60, 2))
    assert tuple(figures) == COLUMNS
    assert min(figures["read s"], figures["rebuild ms"], figures["judge ms"], figures["variables"]) > 0


def test_the_exponent_is_the_slope_of_logarithms():
    """Squares grow with exponent 2, and a table says so of each column, over all points and at the end."""
    assert exponent([2, 4, 8], [4, 16, 64]) == pytest.approx(2)
    points = [(Point(rooms, 60, 60, 1), dict.fromkeys(COLUMNS, rooms**2)) for rooms in (4, 8, 16)]
    lines = list(table({"rooms": points}))
    assert [line.split()[2:] for line in lines[-2:]] == [["2.00"] * 5, ["2.00"] * 5]


def test_the_plot_is_svg():
    """It can be read, and has a line a column."""
    drawn = ET.fromstring(plot({"rooms": [(4, [1, 1, 1, 1, 1]), (8, [2, 4, 8, 3, 1])]}, COLUMNS))
    assert len(drawn.findall(".//{http://www.w3.org/2000/svg}polyline")) == len(COLUMNS)
