"""Where rooms stand while the explorer works: steps, not feet; and the layout that it stands for."""

from dataclasses import dataclass

from shapely import Point

from optimizer.catalogue import FOCAL_KIND
from optimizer.engine.grid.held import held_front, of_whole_cells, with_exact_corner
from optimizer.engine.problem.problem import Problem
from optimizer.engine.terms import Rect
from optimizer.layout import Front, Layout, Placement


@dataclass(frozen=True, slots=True)
class Spot:
    """A variant at a lower left corner, in steps."""

    variant: int
    x: int
    y: int


State = tuple[Spot | None, ...]
"""One spot a room, in the problem's order; None for a room that is left out."""


def is_later(problem: Problem, room: int, spot: Spot) -> bool:
    """Whether a placed room only has its pad and stubs: it counts as left out."""
    return problem.rooms[room].variants[spot.variant].is_later


def is_whole(problem: Problem, state: State) -> bool:
    """Whether every wished room is there, and built now."""
    return all(spot is not None and not is_later(problem, room, spot) for room, spot in enumerate(state))


def rect_of(problem: Problem, room: int, spot: Spot) -> Rect:
    """A placed room in steps."""
    variant = problem.rooms[room].variants[spot.variant]
    return Rect(spot.x, spot.y, variant.width, variant.depth, variant.is_round)


def layout_of(problem: Problem, state: State) -> Layout:
    """The state as a layout on the plan."""
    on_plan = problem.context.pose.layout_back(posed_layout_of(problem, state))
    return Layout(tuple(with_exact_corner(problem.context, placement) for placement in on_plan.placements))


def posed_layout_of(problem: Problem, state: State) -> Layout:
    """The state as a layout in the canonical pose: the same for a yard and its turned or mirrored copy."""
    lattice = problem.context.lattice
    placements = []
    for index, spot in enumerate(state):
        if spot is None:
            continue
        variant = problem.rooms[index].variants[spot.variant]
        room = problem.context.rooms[index]
        choice = room.choices[variant.choice]
        placements.append(
            Placement(
                room=room.name,
                choice=choice.label,
                x_ft=lattice.x_ft(spot.x),
                y_ft=lattice.y_ft(spot.y),
                width_ft=variant.width * lattice.step_ft,
                depth_ft=variant.depth * lattice.step_ft,
                front=variant.front or _front(problem, state, index),
                shape=choice.shape,
            )
        )
    return Layout(tuple(placements))


def _front(problem: Problem, state: State, index: int) -> Front:
    """Front of a room that serves to no side: along its choice's width, away from the buildings' middle or home.

    A square room looks along the axis on which it lies farther from that middle.
    """
    spot = state[index]
    assert spot is not None
    held = held_front(problem.context, problem.rooms[index].name)
    if held is not None:
        return held
    variant, lattice = problem.rooms[index].variants[spot.variant], problem.context.lattice
    choice = problem.context.rooms[index].choices[variant.choice]
    at = (lattice.x_ft(spot.x + variant.width / 2), lattice.y_ft(spot.y + variant.depth / 2))
    off = [at[axis] - _house_middle(problem, axis) for axis in (0, 1)]
    upright = variant.is_upright
    if lattice.need(choice.width_ft) == lattice.need(choice.depth_ft):
        upright = abs(off[1]) >= abs(off[0])
    sign = "+" if (off[upright] >= 0) != _looks_home(problem, index, Point(at)) else "-"
    return f"{sign}{'y' if upright else 'x'}"  # type: ignore[return-value]


def _looks_home(problem: Problem, index: int, middle: Point) -> bool:
    """Whether a room opens towards the buildings: a fire does, and a nook that lies nearer to the boundary."""
    context, kind = problem.context, problem.context.rooms[index].rules.kind
    if kind != "nook" or not context.buildings:
        return kind == FOCAL_KIND
    away_ft = min(outline.distance(middle) for outline in context.buildings)
    return bool(context.boundary.exterior.distance(middle) < away_ft)


def _house_middle(problem: Problem, axis: int) -> float:
    outlines = problem.context.buildings or (problem.context.boundary,)
    return float(sum(outline.centroid.coords[0][axis] for outline in outlines) / len(outlines))


def state_of(problem: Problem, layout: Layout) -> State | None:
    """The layout before any growth as a state; None where it is none of this problem: other grid, rooms or sizes."""
    state = what_fits(problem, layout)
    return state if sum(spot is not None for spot in state) == len(layout.placements) else None


def what_fits(problem: Problem, layout: Layout) -> State:
    """Those rooms of a layout before any growth, of this problem or another, that may stand here as they do there."""
    posed = problem.context.pose.layout(layout.base)
    places = (posed.of(room.name) for room in problem.rooms)
    return tuple(None if p is None else _spot_of(problem, n, p) for n, p in enumerate(places))


def _spot_of(problem: Problem, room: int, placement: Placement) -> Spot | None:
    lattice = problem.context.lattice
    placement = of_whole_cells(problem.context, placement)
    x = lattice.line(placement.x_ft, origin_ft=lattice.x0_ft)
    y = lattice.line(placement.y_ft, origin_ft=lattice.y0_ft)
    data, choices = problem.rooms[room], problem.context.rooms[room].choices
    for index, variant in enumerate(data.variants):
        size = (variant.width * lattice.step_ft, variant.depth * lattice.step_ft)
        same_size = abs(size[0] - placement.width_ft) + abs(size[1] - placement.depth_ft) < 1e-3
        same_front = variant.front in (None, placement.front)
        if same_size and same_front and choices[variant.choice].label == placement.choice and None not in (x, y):
            rows, columns = data.allowed[index].shape
            inside = 0 <= y < rows and 0 <= x < columns  # type: ignore[operator]
            return Spot(index, x, y) if inside and data.allowed[index][y, x] else None  # type: ignore[arg-type]
    return None
