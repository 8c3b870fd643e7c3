"""Where the smoke of fires and grills goes: straight downwind, as wide as smoke spreads and as far as it bothers.

Buildings and fences do not turn the wind here; that smoke lies in the lee of a house, say, is not counted.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, Literal

import numpy as np
import shapely
from shapely import LineString
from shapely.geometry.base import BaseGeometry

from optimizer.brief import Brief
from optimizer.catalogue import SizedRoom
from optimizer.catalogue.data_files import data
from optimizer.catalogue.sizing.run import USUAL, known
from optimizer.fields.wind import Floats, share_from, wind_rose
from optimizer.site import Door, Point, Site, Window

SmokeSource = Literal["wood", "gas", "grill"]
_ALL_ROUND_DEG: Final = 360.0


@dataclass(frozen=True, slots=True)
class SmokedPlace:
    """A convex shape on the plan that smoke may reach [ft]; an opening is reached only from the side it looks to."""

    name: str
    shape: BaseGeometry
    outward: Point | None = None


def smoke_source(brief: Brief, room: SizedRoom) -> SmokeSource | None:
    """What smokes in a room: its fire, or the hot equipment of a kitchen; None for any other room."""
    if room.rules.kind == "fire":
        return room.fuel or "gas"
    if room.rules.kind != "kitchen":
        return None
    wish = brief.room(room.name)
    equipment = (wish.all_equipment if wish else ()) or USUAL
    return "grill" if any(known(item)["hot"] for item in equipment) else None


def smoke_factor(source: SmokeSource) -> float:
    """How much an hour in the smoke of a source counts, a wood fire's being 1."""
    return float(data("smoke.yaml")["sources"][source]["factor"])


def smoke_reach_ft(source: SmokeSource) -> float:
    """How far the smoke of a source bothers [ft]."""
    return float(data("smoke.yaml")["sources"][source]["reach_ft"])


def openings_to_air(site: Site) -> tuple[SmokedPlace, ...]:
    """Doors, and windows that open, as places."""
    windows = (window for window in site.windows if window.opens)
    return (*map(_opening, site.doors), *map(_opening, windows))


def smoke_share(site: Site, source: SmokeSource, place: SmokedPlace, x: Floats, y: Floats) -> Floats:
    """Share of the using season in which a place lies in the smoke of a source at each point.

    It does when the wind blows from the source to any part of the place, give or take the half angle of the smoke, and
    the place is within reach; a source inside the place is in it whenever there is wind.

    Parameters
    ----------
    x, y
        Points of the plan [ft], one shape.

    Returns
    -------
    Shares, same shape, 0 to 1; 0 where the site gives no wind.
    """
    rose = wind_rose(site)
    x, y = np.asarray(x, dtype=np.float64), np.asarray(y, dtype=np.float64)
    if rose is None:
        return np.zeros(np.broadcast(x, y).shape)
    middle_deg, low_deg, high_deg = _seen_deg(place.shape, x, y)
    half_deg = float(data("smoke.yaml")["half_angle_deg"])
    from_deg = middle_deg + low_deg - half_deg + site.place.plan_up_bearing_deg + 180.0
    shares = share_from(rose, from_deg, high_deg - low_deg + 2 * half_deg)
    return np.where(_reached(place, smoke_reach_ft(source), x, y), shares, 0.0)


def door_smoke(site: Site, source: SmokeSource, x: Floats, y: Floats) -> Floats:
    """Sum over doors and opening windows of their share in the smoke of a source at each point [same shape]."""
    shares = [smoke_share(site, source, place, x, y) for place in openings_to_air(site)]
    return np.sum(shares, axis=0) if shares else np.zeros(np.broadcast(x, y).shape)


def _opening(thing: Door | Window) -> SmokedPlace:
    (x, y), (out_x, out_y), half = thing.at, thing.outward, thing.width_ft / 2
    line = LineString([(x - half * out_y, y + half * out_x), (x + half * out_y, y - half * out_x)])
    return SmokedPlace(thing.name, line, thing.outward)


def _seen_deg(shape: BaseGeometry, x: Floats, y: Floats) -> tuple[Floats, Floats, Floats]:
    """Bearing of a convex shape's middle from +y as seen from each point, and how far it reaches to either side."""
    middle_deg = _bearing_deg(shape.centroid.x - x, shape.centroid.y - y)
    sides = np.stack(list(_sides_deg(shape, middle_deg, x, y)))
    inside = shapely.distance(shape, shapely.points(x, y)) == 0
    low_deg = np.where(inside, -_ALL_ROUND_DEG / 2, sides.min(axis=0))
    return middle_deg, low_deg, np.where(inside, _ALL_ROUND_DEG / 2, sides.max(axis=0))


def _sides_deg(shape: BaseGeometry, middle_deg: Floats, x: Floats, y: Floats) -> Iterator[Floats]:
    """Turn from the middle to each corner, -180 to 180."""
    for corner_x, corner_y in shapely.get_coordinates(shape):
        yield (_bearing_deg(corner_x - x, corner_y - y) - middle_deg + 180.0) % 360.0 - 180.0


def _bearing_deg(along_x: Floats, along_y: Floats) -> Floats:
    return np.asarray(np.degrees(np.arctan2(along_x, along_y)))


def _reached(place: SmokedPlace, reach_ft: float, x: Floats, y: Floats) -> Floats:
    """Whether each point is near enough to a place, and on the side that it looks to."""
    near = shapely.distance(place.shape, shapely.points(x, y)) <= reach_ft
    if place.outward is None:
        return np.asarray(near)
    middle = place.shape.centroid
    ahead = (x - middle.x) * place.outward[0] + (y - middle.y) * place.outward[1]
    return np.asarray(near & (ahead > 0.0))
