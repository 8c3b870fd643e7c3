"""Where rooms stand while the explorer works: steps, not feet; and the layout that it stands for."""

from dataclasses import dataclass

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
    return instance.context.pose.layout_back(Layout(tuple(placements)))


def _front(instance: Instance, state: State, index: int) -> Front:
    """Front of a room that serves to no side: along its choice's width, away from the middle of the buildings."""
    spot = state[index]
    assert spot is not None
    variant = instance.rooms[index].variants[spot.variant]
    choice = instance.context.rooms[index].choices[variant.choice]
    lattice = instance.context.lattice
    upright = variant.width == lattice.need(choice.width_ft)
    axis = 1 if upright else 0
    at = lattice.y_ft(spot.y + variant.depth / 2) if upright else lattice.x_ft(spot.x + variant.width / 2)
    middle = _house_middle(instance, axis)
    sign = "+" if at >= middle else "-"
    return f"{sign}{'y' if upright else 'x'}"  # type: ignore[return-value]


def _house_middle(instance: Instance, axis: int) -> float:
    outlines = instance.context.buildings or (instance.context.boundary,)
    return float(sum(outline.centroid.coords[0][axis] for outline in outlines) / len(outlines))
