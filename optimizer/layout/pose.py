"""The one pose in which the solver sees a yard and ways are laid in it, however it lies on the plan.

A yard that is shifted, turned by quarter turns or mirrored is the same problem; solved in the same pose it gives the
same concepts with the same ways, step by step, whatever ties a search has to break.
"""

from dataclasses import dataclass, replace
from typing import Final

from optimizer.layout.placement import DIGITS, FRONT_VECTORS, Front, Layout, Placement
from optimizer.site import Building, Point, Ring, Site, Wall

Matrix = tuple[int, int, int, int]
SYMMETRIES: Final[tuple[Matrix, ...]] = (
    (1, 0, 0, 1),
    (0, -1, 1, 0),
    (-1, 0, 0, -1),
    (0, 1, -1, 0),
    (-1, 0, 0, 1),
    (1, 0, 0, -1),
    (0, 1, 1, 0),
    (0, -1, -1, 0),
)


@dataclass(frozen=True, slots=True)
class Pose:
    """posed = matrix x plan + shift; the matrix is one of the eight symmetries of the square."""

    matrix: Matrix
    shift: Point
    digits: int = DIGITS
    """Decimals to which posed coordinates are rounded: what turning and shifting adds is less."""

    def point(self, point: Point) -> Point:
        """Plan point in the pose [ft]."""
        x, y = turned(self.matrix, point)
        return (round(x + self.shift[0], self.digits), round(y + self.shift[1], self.digits))

    def back(self, point: Point) -> Point:
        """Posed point on the plan [ft]."""
        a, b, c, d = self.matrix
        x, y = point[0] - self.shift[0], point[1] - self.shift[1]
        return (a * x + c * y, b * x + d * y)

    def front(self, front: Front) -> Front:
        """Plan direction in the pose."""
        return _named(turned(self.matrix, FRONT_VECTORS[front]))

    def front_back(self, front: Front) -> Front:
        """Posed direction on the plan."""
        a, b, c, d = self.matrix
        return _named(turned((a, c, b, d), FRONT_VECTORS[front]))

    def site(self, site: Site) -> Site:
        """The site's geometry in the pose. Its compass is left as it was: sun is asked on the plan."""
        return replace(
            site,
            boundary=tuple(map(self.point, site.boundary)),
            buildings=tuple(self._building(building) for building in site.buildings),
            entrances=tuple(
                replace(e, at=self.point(e.at), inward=turned(self.matrix, e.inward)) for e in site.entrances
            ),
            structures=tuple(replace(s, outline=self._ring(s.outline)) for s in site.structures),
            paving=tuple(replace(p, outline=self._ring(p.outline)) for p in site.paving),
            walls=tuple(self._wall(wall) for wall in site.walls),
            trees=tuple(replace(t, at=self.point(t.at)) for t in site.trees),
            keep_outs=tuple(replace(k, outline=self._ring(k.outline)) for k in site.keep_outs),
            utilities=tuple(replace(u, at=self.point(u.at)) for u in site.utilities),
            utility_lines=tuple(replace(u, line=self._ring(u.line)) for u in site.utility_lines),
            surroundings=tuple(
                replace(
                    s,
                    outline=None if s.outline is None else self._ring(s.outline),
                    line=None if s.line is None else tuple(map(self.point, s.line)),
                    at=None if s.at is None else self.point(s.at),
                )
                for s in site.surroundings
            ),
            levels=tuple(replace(level, at=self.point(level.at)) for level in site.levels),
        )

    def layout(self, layout: Layout) -> Layout:
        """A plan's layout in the pose."""
        return Layout(tuple(self._placement(p, inverse=False) for p in layout.placements))

    def layout_back(self, layout: Layout) -> Layout:
        """A posed layout on the plan."""
        return Layout(tuple(self._placement(p, inverse=True) for p in layout.placements))

    def _placement(self, placement: Placement, *, inverse: bool) -> Placement:
        if not placement.has_grown:
            return self._rectangle(placement, inverse=inverse)
        now, base = (self._rectangle(p, inverse=inverse) for p in (placement, placement.base))
        before = {f"base_{name}": getattr(base, name) for name in ("x_ft", "y_ft", "width_ft", "depth_ft")}
        return replace(now, **before)

    def _rectangle(self, placement: Placement, *, inverse: bool) -> Placement:
        move = self.back if inverse else self.point
        one, other = move((placement.x_ft, placement.y_ft)), move((placement.right_ft, placement.top_ft))
        x, y = min(one[0], other[0]), min(one[1], other[1])
        front = self.front_back(placement.front) if inverse else self.front(placement.front)
        return replace(
            placement,
            x_ft=round(x, self.digits),
            y_ft=round(y, self.digits),
            width_ft=round(abs(other[0] - one[0]), self.digits),
            depth_ft=round(abs(other[1] - one[1]), self.digits),
            front=front,
        )

    def _ring(self, ring: Ring) -> Ring:
        return tuple(map(self.point, ring))

    def _wall(self, wall: Wall) -> Wall:
        openings = tuple(replace(opening, at=self.point(opening.at)) for opening in wall.openings)
        return replace(wall, line=self._ring(wall.line), openings=openings)

    def _building(self, building: Building) -> Building:
        return replace(
            building,
            outline=self._ring(building.outline),
            doors=tuple(
                replace(d, at=self.point(d.at), outward=turned(self.matrix, d.outward)) for d in building.doors
            ),
            windows=tuple(
                replace(w, at=self.point(w.at), outward=turned(self.matrix, w.outward)) for w in building.windows
            ),
        )


def canonical_pose(site: Site) -> Pose:
    """The pose that every shifted, turned or mirrored copy of the site shares; lower left corner at (0, 0)."""
    return min((_pose(site, matrix) for matrix in SYMMETRIES), key=lambda pose: _signature(site, pose))


def turned(matrix: Matrix, vector: tuple[float, float]) -> Point:
    """Matrix times vector."""
    a, b, c, d = matrix
    return (a * vector[0] + b * vector[1], c * vector[0] + d * vector[1])


def _pose(site: Site, matrix: Matrix) -> Pose:
    corners = [turned(matrix, corner) for corner in site.boundary]
    return Pose(matrix, (-min(x for x, _ in corners), -min(y for _, y in corners)))


def _signature(site: Site, pose: Pose) -> tuple[Point, ...]:
    """What a pose looks like, independent of where rings start: things in file order, corners sorted."""
    rings = [site.boundary, *(b.outline for b in site.buildings), *(s.outline for s in site.structures)]
    rings += [*(k.outline for k in site.keep_outs), *(u.line for u in site.utility_lines)]
    rings += [*(p.outline for p in site.paving), *(w.line for w in site.walls)]
    openings = [opening for wall in site.walls for opening in wall.openings]
    groups = (site.doors, site.windows, site.entrances, site.trees, site.utilities, openings)
    points = [[thing.at] for group in groups for thing in group]
    posed = [sorted(_rounded(pose.point(point)) for point in group) for group in (*map(list, rings), *points)]
    return tuple(point for group in posed for point in group)


def _rounded(point: Point) -> Point:
    # Far coarser than what conversion from metres adds, so that copies of a yard compare alike.
    return (round(point[0], 3) + 0.0, round(point[1], 3) + 0.0)


def _named(vector: tuple[float, float]) -> Front:
    return next(name for name, unit in FRONT_VECTORS.items() if unit == (round(vector[0]), round(vector[1])))
