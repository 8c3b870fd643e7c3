"""The nearest place at which a room can stand: with the others where they are, or with all of them free to move."""

import math
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import islice
from typing import Final

import numpy as np
from numpy.typing import NDArray

from optimizer.concepts.case import Case
from optimizer.concepts.whys.changes import Change
from optimizer.concepts.whys.question import hold_added
from optimizer.concepts.whys.stands import with_room
from optimizer.concepts.whys.trying import Found, tried
from optimizer.concepts.whys.words import length, place
from optimizer.engine.explorer import Ground, board_of
from optimizer.engine.explorer.between import between
from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.problem import Problem, Spot, build_problem, layout_of, what_fits
from optimizer.layout import Layout, Placement

MOST_JUDGED: Final = 25
RADII_FT: Final = (6.0, 12.0, 24.0, 48.0)


@dataclass(frozen=True, slots=True)
class Near:
    """Where the room is asked for: its corner [ft], and until when the machine's clock may be looked at."""

    room: str
    at_ft: tuple[float, float]
    until: float

    def off_ft(self, layout: Layout) -> float:
        """How far off the room's corner lies in a layout [ft]."""
        placed = layout.of(self.room)
        return math.inf if placed is None else math.dist((placed.x_ft, placed.y_ft), self.at_ft)


def nearest_beside(case: Case, layout: Layout, near: Near) -> Found | None:
    """The nearest place with every other room where it stands in the layout; the judge says what holds."""
    problem = build_problem(case.scenario, case.rooms, case.book, rules_only=True)
    for placement in islice(_free_places(problem, layout, near), MOST_JUDGED):
        moved = with_room(case, layout, placement)
        verdict = case.judged(moved)
        if verdict.holds:
            return Found(moved, verdict)
        if time.monotonic() >= near.until:
            break
    return None


def nearest_of_any(case: Case, near: Near, *, stop: threading.Event) -> Found | None:
    """A plan with the room near the place, all rooms free to move: looked for in wider and wider rounds."""
    rooms = tuple(replace(room, required=room.required or room.name == near.room) for room in case.rooms)
    case = replace(case, rooms=rooms)
    problem = build_problem(case.scenario, case.rooms, case.book)
    index = [room.name for room in problem.rooms].index(near.room)
    for radius_ft in RADII_FT:
        seconds = near.until - time.monotonic()
        if seconds <= 0 or stop.is_set():
            return None
        cells = {(index, v): _off_ft(problem, index, v, near) <= radius_ft for v in _variants(problem, index)}
        ground = Ground("near", cells)
        trial = tried(case, seconds=seconds, stop=stop, problem=problem, enough=2, ground=ground)
        if trial.holds:
            return min(trial.holding, key=lambda found: near.off_ft(found.layout))
    return None


def moved_to(case: Case, near: Near, found: Found) -> Change:
    """The change that holds the room at the place found."""
    placed = found.layout.of(near.room)
    assert placed is not None
    at_ft, unit_ft = (placed.x_ft, placed.y_ft), case.scenario.unit_ft
    hold = {"room": near.room, "at": [round(figure / unit_ft, 6) + 0.0 for figure in at_ft]}
    off = length(case.scenario, near.off_ft(found.layout))
    words = f"move it {off}: hold the {near.room} at {place(case.scenario, at_ft)}"
    return Change(words, (hold_added(case, hold),))


def _free_places(problem: Problem, layout: Layout, near: Near) -> Iterator[Placement]:
    """Places of the room by the engine's tables, the nearest first, that the others leave it."""
    board, state = board_of(problem), what_fits(problem, layout)
    index = [room.name for room in problem.rooms].index(near.room)
    others = [(room, spot) for room, spot in enumerate(state) if spot is not None and room != index]
    for spot in _by_distance(problem, index, near):
        if all(between(board, (index, spot), other) < FORBIDDEN for other in others):
            alone = tuple(spot if room == index else None for room in range(len(problem.rooms)))
            yield layout_of(problem, alone).placements[0]


def _by_distance(problem: Problem, index: int, near: Near) -> list[Spot]:
    found = []
    for v in _variants(problem, index):
        off = _off_ft(problem, index, v, near)
        rows, columns = np.nonzero(problem.rooms[index].allowed[v])
        found += [(float(off[y, x]), v, int(x), int(y)) for y, x in zip(rows, columns, strict=True)]
    return [Spot(v, x, y) for _, v, x, y in sorted(found)]


def _off_ft(problem: Problem, index: int, v: int, near: Near) -> NDArray[np.float64]:
    """How far off a variant's lower left corner on the plan lies, at each of its places [ft]."""
    context, variant = problem.context, problem.rooms[index].variants[v]
    step_ft, pose = context.lattice.step_ft, context.pose
    rows, columns = problem.rooms[index].allowed[v].shape
    x, y = np.meshgrid(np.arange(columns), np.arange(rows))
    start = np.array(pose.back((context.lattice.x0_ft, context.lattice.y0_ft)))
    along, up = (
        np.array(pose.back((context.lattice.x0_ft + dx, context.lattice.y0_ft + dy))) - start
        for dx, dy in ((step_ft, 0.0), (0.0, step_ft))
    )
    corners = [
        start + (x + right)[..., None] * along + (y + top)[..., None] * up
        for right, top in ((0, 0), (variant.width, variant.depth))
    ]
    return np.asarray(np.linalg.norm(np.minimum(*corners) - np.array(near.at_ft), axis=-1))


def _variants(problem: Problem, index: int) -> range:
    return range(len(problem.rooms[index].variants))
