"""Wishes to see, or not to see, that a layout does not keep."""

from typing import Final

from shapely import LineString, Point
from shapely.geometry.base import BaseGeometry

from optimizer.brief import Relation
from optimizer.circulation import outline
from optimizer.layout import Layout
from optimizer.scenario import Scenario
from optimizer.site import Building, Site, Surrounding

_TOUCH_FT: Final = 0.02
"""A line that runs no farther than this through something only touches it."""


def sight_missed(scenario: Scenario, layout: Layout) -> tuple[tuple[str, str], ...]:
    """Pairs whose weighted wish to be in view, or out of view, is not kept; pairs with an end left out are passed over.

    Sight is the straight line from centre to centre: in view where it crosses no building, out of view where it
    crosses a building or a thing outside the boundary.
    """
    return tuple(
        relation.between
        for relation in scenario.brief.relations
        if not relation.is_hard and _is_kept(scenario.site, layout, relation) is False
    )


def _is_kept(site: Site, layout: Layout, relation: Relation) -> bool | None:
    """Whether a wish about sight is kept; None for any other relation and where an end is not there."""
    start, end = (_centre(site, layout, name) for name in relation.between)
    if relation.kind not in {"in_view", "out_of_view"} or start is None or end is None:
        return None
    screens: tuple[Building | Surrounding, ...] = site.buildings
    if relation.kind == "out_of_view":
        screens = (*screens, *site.surroundings)
    line = LineString([start, end])
    hidden = any(
        line.intersection(outline(thing.outline)).length > _TOUCH_FT
        for thing in screens
        if thing.outline is not None and thing.name not in relation.between
    )
    return hidden is (relation.kind == "out_of_view")


def _centre(site: Site, layout: Layout, name: str) -> BaseGeometry | None:
    placement, point, ring = layout.of(name), site.point_of(name), site.outline_of(name)
    if placement is not None:
        return Point(placement.centre)
    if point is not None:
        return Point(point)
    return outline(ring).centroid if ring is not None else None
