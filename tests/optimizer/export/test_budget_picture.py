"""The picture of what each budget buys."""

import re
from dataclasses import replace
from decimal import Decimal
from xml.etree import ElementTree as ET

import pytest

from optimizer.export.budget_picture import budget_picture
from tests.sample_budgets import sample_budgets

SVG = "{http://www.w3.org/2000/svg}"


def drawn(found=None):
    return ET.fromstring(budget_picture("A & B's yard", found or sample_budgets(), "USD"))


def test_points_are_numbered_where_money_and_worth_say():
    """From left to right with rising worth; each has a line of words with its ceiling."""
    circles = [(float(c.get("cx")), float(c.get("cy"))) for c in drawn().iter(f"{SVG}circle")]
    (x1, y1), (x2, y2) = circles
    assert x1 < x2
    assert y1 > y2
    words = [text.text for text in drawn().iter(f"{SVG}text")]
    assert {"1", "2", "64,000", "95,000", "For about 31,000 USD more: the fire."} <= set(words)


def test_materials_are_told_of_every_point():
    """Of a point that changes nothing of them too; nothing where the yard offers none."""
    found = sample_budgets()
    in_good = replace(found, points=tuple(replace(point, level="good") for point in found.points))
    words = [text.text for text in drawn(in_good).iter(f"{SVG}text")]
    assert "For about 31,000 USD more: the fire. Still in good materials." in words
    changed = replace(in_good, points=(in_good.points[0], replace(in_good.points[1], level_before="plain")))
    assert not [text.text for text in drawn(changed).iter(f"{SVG}text") if "Still in" in text.text]


def test_worth_is_to_scale():
    """Heights over the base line are as the worths."""
    base = next(float(re.match(r"M[\d.]+ ([\d.]+)H", path.get("d"))[1]) for path in drawn().iter(f"{SVG}path"))
    low, high = (base - float(c.get("cy")) for c in drawn().iter(f"{SVG}circle"))
    assert high / low == pytest.approx(30.0 / 20.0, abs=1e-3)


def test_what_is_possible_is_dashed_and_never_below_what_was_found():
    dashed = [path.get("d") for path in drawn().iter(f"{SVG}path") if path.get("stroke-dasharray")]
    assert len(dashed) == 1
    highest = min(float(y) for y in re.findall(r"V([\d.]+)", dashed[0]))
    assert highest <= min(float(c.get("cy")) for c in drawn().iter(f"{SVG}circle"))


def test_one_point_alone():
    """A stair of one step is drawn too."""
    one = sample_budgets()
    found = replace(one, points=one.points[:1], options=one.options[:1], possible=((Decimal(100), 20.0),))
    assert len(list(drawn(found).iter(f"{SVG}circle"))) == 1


def test_nothing_to_draw():
    with pytest.raises(ValueError, match="at least one point"):
        budget_picture("yard", replace(sample_budgets(), points=(), options=()), "USD")


@pytest.mark.parametrize("limit", [50_000, 80_000, 120_000])
def test_the_familys_own_limit_is_an_upright_line(limit):
    """Below, between and above the two points, to the same scale as they are; without one there is none."""
    found = sample_budgets()
    own = ET.fromstring(budget_picture("yard", found, "USD", Decimal(limit)))
    xs = [float(circle.get("cx")) for circle in own.iter(f"{SVG}circle")]
    (line,) = (
        path.get("d") for path in own.iter(f"{SVG}path") if re.fullmatch(r"M[\d.]+ [\d.]+V[\d.]+", path.get("d"))
    )
    ceilings = [float(point.ceiling) for point in found.points]
    wanted = xs[0] + (limit - ceilings[0]) * (xs[1] - xs[0]) / (ceilings[1] - ceilings[0])
    assert float(re.match(r"M([\d.]+)", line)[1]) == pytest.approx(wanted, abs=0.2)
    assert f"your limit, {limit:,}" in [text.text for text in own.iter(f"{SVG}text")]
    assert not [text for text in drawn().iter(f"{SVG}text") if "your limit" in text.text]
