"""The way in of what is built later: the first of its vehicles that finds one, or what bars the last of them."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from math import cos, radians, sin
from typing import Final

import numpy as np
import shapely
from shapely import LineString, Polygon
from shapely.affinity import affine_transform
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import SURFACES, FutureKind, Surface, Vehicle, roughness, vehicle
from optimizer.derived.futures.barred import Barred, why_barred
from optimizer.derived.futures.course import Course, Numbers
from optimizer.derived.futures.drive import Drive, drive
from optimizer.derived.futures.obstacles import Obstacle, PhaseOne, obstacles, surfaces
from optimizer.derived.futures.street import driven_ground, gates_of, opening_of
from optimizer.derived.futures.sweep import swept_along
from optimizer.fields import ground_of, site_shapes
from optimizer.layout import PlacedRoom, Pose, canonical_pose
from optimizer.site import Point, Ring

_HAIR_FT: Final = 0.02  # no drawing shows less


@dataclass(frozen=True, slots=True)
class Access:
    """How a future comes in. `vehicle` finds a way along `line` over the ground `swept` [ft], through `gate`; or, where
    there is no such way, `barred` says of each of its vehicles what bars it.

    `crosses` is the ground that has to be put back, by what it is [sq ft]; `steepest` is rise per run.
    """

    vehicle: str
    width_ft: float
    gate: str | None = None
    line: tuple[Point, ...] = ()
    swept: tuple[Ring, ...] = ()
    length_ft: float = 0.0
    steepest: float = 0.0
    crosses: tuple[tuple[str, float], ...] = ()
    barred: tuple[Barred, ...] = ()

    @property
    def is_found(self) -> bool:
        """Whether a vehicle comes in."""
        return self.gate is not None


class WaysIn:
    """Ways in of one layout, each vehicle's to each reserve sought once."""

    def __init__(self, built: PhaseOne) -> None:
        self._built, self._site = built, built.site
        self._pose = canonical_pose(built.site)
        self._over = surfaces(built)
        self._found: dict[tuple[str, Vehicle], Drive | Barred] = {}

    def to(self, room: PlacedRoom, future: FutureKind) -> Access:
        """The way in of a future of a reserve."""
        tried = [vehicle(name, self._site.machine) for name in future.comes]
        barred: list[Barred] = []
        for one in tried:
            found = self._way(room, one)
            if isinstance(found, Drive):
                return self._access(one, found, tuple(barred))
            barred.append(found)
        return Access(tried[0].name, tried[0].width_ft, barred=tuple(barred))

    def _way(self, room: PlacedRoom, one: Vehicle) -> Drive | Barred:
        key = (room.name, one)
        if key not in self._found:
            self._found[key] = self._of_larger(room, one) or self._sought(room, one)
        return self._found[key]

    def _of_larger(self, room: PlacedRoom, one: Vehicle) -> Drive | None:
        """A way that was found for a larger vehicle, where it is not too steep for this one."""
        for (to, other), way in self._found.items():
            if to == room.name and isinstance(way, Drive) and way.steepest <= one.steepest and _is_larger(other, one):
                return _driven_on(way, (other.length_ft - one.length_ft) / 2)
        return None

    def _sought(self, room: PlacedRoom, one: Vehicle) -> Drive | Barred:
        gates = tuple(gates_of(self._site, self._pose))
        if not gates:
            return Barred(one.name, one.width_ft, "gate")
        there = list(obstacles(self._built, one.height_ft))
        course = Course(
            ground=_posed(self._pose, driven_ground(self._site, there)),
            goal=_posed(self._pose, room.shape),
            gates=gates,
            vehicle=one,
            height_ft=self._on_plan(ground_of(self._site).z_ft),
            rough=self._on_plan(self._roughness),
        )
        found = drive(course)
        if isinstance(found, Drive):
            return found
        barred = why_barred(course, found, [Obstacle(o.name, _posed(self._pose, o.ground)) for o in there])
        return self._shown(barred, there)

    def _shown(self, barred: Barred, there: Sequence[Obstacle]) -> Barred:
        """What bars a vehicle with the ground of it, all on the plan."""
        grounds = {gate.name: opening_of(gate) for gate in gates_of(self._site)} if barred.because == "gate" else {}
        for name in set(barred.by) - set(grounds):
            grounds[name] = shapely.union_all([obstacle.ground for obstacle in there if obstacle.name == name])
        at = None if barred.at is None else _rounded(self._pose.back(barred.at))
        return replace(barred, grounds=tuple(tuple(_rings(grounds[name])) for name in barred.by), at=at)

    def _on_plan(self, of: Callable[[Numbers], Numbers]) -> Callable[[Numbers], Numbers]:
        """A figure of points on the plan, asked of points in the pose."""
        a, b, c, d = self._pose.matrix
        matrix, shift = np.array([(a, b), (c, d)]), np.array(self._pose.shift)
        return lambda points: of((points - shift) @ matrix)

    def _roughness(self, points: Numbers) -> Numbers:
        rough = np.full(len(points), roughness("lawn"))
        for surface, ground in self._over.items():
            shapely.prepare(ground)
            rough[shapely.contains_xy(ground, *points.T)] = roughness(surface)
        return rough

    def _access(self, one: Vehicle, found: Drive, barred: tuple[Barred, ...]) -> Access:
        yard = site_shapes(self._site).boundary
        line = _longest(LineString([self._pose.back((float(x), float(y))) for x, y, _ in found.poses]), yard)
        swept = _back(self._pose, swept_along(one, found.poses)).intersection(yard)
        return Access(
            vehicle=one.name,
            width_ft=one.width_ft,
            gate=found.gate,
            line=_points(line.simplify(_HAIR_FT)),
            swept=tuple(_rings(swept)),
            length_ft=float(line.length),
            steepest=round(found.steepest, 4),
            crosses=tuple(self._crossed(swept)),
            barred=barred,
        )

    def _crossed(self, swept: BaseGeometry) -> Iterator[tuple[str, float]]:
        """Ground of a way by what it is; held ground that it ends on is dug anyway."""
        held = [room.shape for room in self._built.placed.of_kind("reserve")]
        left = swept.difference(shapely.union_all(held))
        for surface in SURFACES:
            if surface in self._over:
                yield from _area(surface, left.intersection(self._over[surface]))
        yield from _area("lawn", left.difference(shapely.union_all([*self._over.values()])))


def _driven_on(way: Drive, ahead_ft: float) -> Drive:
    """A way that goes straight on at its end: so far a shorter vehicle stays within the ground of a longer one."""
    x, y, heading_deg = way.poses[-1]
    end = (x + ahead_ft * cos(radians(heading_deg)), y + ahead_ft * sin(radians(heading_deg)), heading_deg)
    return replace(way, poses=np.vstack([way.poses, end]))


def _is_larger(one: Vehicle, other: Vehicle) -> bool:
    """Whether a way for one is wide, high and easy enough for the other."""
    sizes = [(v.width_ft, v.length_ft, v.height_ft, v.turning_radius_ft) for v in (one, other)]
    return all(more >= less for more, less in zip(*sizes, strict=True))


def _posed(pose: Pose, ground: BaseGeometry) -> BaseGeometry:
    return affine_transform(ground, [*pose.matrix, *pose.shift])


def _back(pose: Pose, ground: BaseGeometry) -> BaseGeometry:
    a, b, c, d = pose.matrix
    x, y = pose.shift
    return affine_transform(ground, [a, c, b, d, -(a * x + c * y), -(b * x + d * y)])


def _longest(line: LineString, yard: Polygon) -> LineString:
    """The part of a line that lies in the yard, without what is on the street."""
    return max(shapely.get_parts(line.intersection(yard)), key=lambda part: float(part.length))


def _points(line: LineString) -> Ring:
    """Corners of a line to the thousandth of a foot."""
    return tuple(map(_rounded, line.coords))


def _rounded(point: Sequence[float]) -> Point:
    return (round(float(point[0]), 3), round(float(point[1]), 3))


def _rings(ground: BaseGeometry) -> Iterator[Ring]:
    for part in shapely.get_parts(ground.simplify(_HAIR_FT)):
        if isinstance(part, Polygon):
            yield _points(part.exterior)[:-1]


def _area(surface: Surface, ground: BaseGeometry) -> Iterator[tuple[str, float]]:
    area_sqft = round(float(ground.area), 2)
    if surface != "hard paving" and area_sqft > 0.5:
        yield surface, area_sqft
