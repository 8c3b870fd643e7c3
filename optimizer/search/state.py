"""Where rooms stand while the explorer works: steps, not feet; and the layout that it stands for."""

from dataclasses import dataclass

from shapely import Point

from optimizer.catalogue import FOCAL_KIND
from optimizer.instance import Instance
from optimizer.layout import Front, Layout, Placement


@dataclass(frozen=True, slots=True)
class Spot:
    """A variant at a lower left corner, in steps."""

    variant: int
    x: int
    y: int


State = tuple[Spot | None, ...]
"""One spot a room, in the instance's order; None for a room that is left out."""


def layout_of(instance: Instance, state: State) -> Layout:
    """The state as a layout on the plan."""
    return instance.context.pose.layout_back(posed_layout_of(instance, state))


def posed_layout_of(instance: Instance, state: State) -> Layout:
    """The state as a layout in the canonical pose: the same for a yard and its turned or mirrored copy."""
    lattice = instance.context.lattice
    placements = []
    for index, spot in enumerate(state):
        if spot is None:
            continue
        variant = instance.rooms[index].variants[spot.variant]
        room = instance.context.rooms[index]
        choice = room.choices[variant.choice]
        placements.append(
            Placement(
                room=room.name,
                choice=choice.label,
                x_ft=lattice.x_ft(spot.x),
                y_ft=lattice.y_ft(spot.y),
                width_ft=variant.width * lattice.step_ft,
                depth_ft=variant.depth * lattice.step_ft,
                front=variant.front or _front(instance, state, index),
            )
        )
    return Layout(tuple(placements))


def _front(instance: Instance, state: State, index: int) -> Front:
    """Front of a room that serves to no side: along its choice's width, away from the buildings' middle or home.

    A square room looks along the axis on which it lies farther from that middle.
    """
    spot = state[index]
    assert spot is not None
    variant, lattice = instance.rooms[index].variants[spot.variant], instance.context.lattice
    choice = instance.context.rooms[index].choices[variant.choice]
    at = (lattice.x_ft(spot.x + variant.width / 2), lattice.y_ft(spot.y + variant.depth / 2))
    off = [at[axis] - _house_middle(instance, axis) for axis in (0, 1)]
    upright = variant.width == lattice.need(choice.width_ft)
    if variant.width == variant.depth:
        upright = abs(off[1]) >= abs(off[0])
    sign = "+" if (off[upright] >= 0) != _looks_home(instance, index, Point(at)) else "-"
    return f"{sign}{'y' if upright else 'x'}"  # type: ignore[return-value]


def _looks_home(instance: Instance, index: int, middle: Point) -> bool:
    """Whether a room opens towards the buildings: a fire does, and a nook that lies nearer to the boundary."""
    context, kind = instance.context, instance.context.rooms[index].rules.kind
    if kind != "nook" or not context.buildings:
        return kind == FOCAL_KIND
    away_ft = min(outline.distance(middle) for outline in context.buildings)
    return bool(context.boundary.exterior.distance(middle) < away_ft)


def _house_middle(instance: Instance, axis: int) -> float:
    outlines = instance.context.buildings or (instance.context.boundary,)
    return float(sum(outline.centroid.coords[0][axis] for outline in outlines) / len(outlines))


def state_of(instance: Instance, layout: Layout) -> State | None:
    """The layout as a state, or None where it is not one of this instance: another grid, other rooms or sizes."""
    posed = instance.context.pose.layout(layout)
    names = [room.name for room in instance.rooms]
    if any(placement.room not in names for placement in posed.placements):
        return None
    spots = [None if (p := posed.of(name)) is None else _spot_of(instance, names.index(name), p) for name in names]
    placed = sum(spot is not None for spot in spots)
    return tuple(spots) if placed == len(posed.placements) else None


def _spot_of(instance: Instance, room: int, placement: Placement) -> Spot | None:
    lattice = instance.context.lattice
    x = lattice.line(placement.x_ft, origin_ft=lattice.x0_ft)
    y = lattice.line(placement.y_ft, origin_ft=lattice.y0_ft)
    data, choices = instance.rooms[room], instance.context.rooms[room].choices
    for index, variant in enumerate(data.variants):
        size = (variant.width * lattice.step_ft, variant.depth * lattice.step_ft)
        same_size = abs(size[0] - placement.width_ft) + abs(size[1] - placement.depth_ft) < 1e-3
        same_front = variant.front in (None, placement.front)
        if same_size and same_front and choices[variant.choice].label == placement.choice and None not in (x, y):
            rows, columns = data.allowed[index].shape
            inside = 0 <= y < rows and 0 <= x < columns  # type: ignore[operator]
            return Spot(index, x, y) if inside and data.allowed[index][y, x] else None  # type: ignore[arg-type]
    return None
