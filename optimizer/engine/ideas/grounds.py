"""Ground that an idea leaves to rooms, for tours that follow it: a guide, on which no bound and no test rests.

What joins two rooms is asked of the place where the table stands in a layout that is known already.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property, partial

import numpy as np
from shapely import Polygon, box

from optimizer.brief import RoomKind
from optimizer.catalogue import AIM_KINDS, AWAY_KINDS, IDEAS, IdeaName
from optimizer.engine.explorer import Ground
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.ideas.places import Places, Where
from optimizer.engine.problem import Problem, Spot, State, rect_of
from optimizer.fields import main_openings, on_axis

Part = Mapping[int, Where]
"""One way to follow an idea: by room, where it may stand."""


@dataclass(frozen=True, eq=False)
class IdeaGrounds:
    """Grounds of a problem's ideas."""

    problem: Problem

    @cached_property
    def offered(self) -> tuple[IdeaName, ...]:
        """Ideas for which there is ground in the yard."""
        return tuple(name for name in IDEAS if self.ground(name))

    def of_turn(self, turn: int, best: Sequence[State], met: frozenset[str] = frozenset()) -> Ground | None:
        """Ground of the idea whose turn it is, another way to follow it each time; None where the yard offers none. An
        idea that is `met` has no turn while another is not.

        `best` are known layouts, best first: the table may be held where it stands in one of them.
        """
        names = tuple(name for name in self.offered if name not in met) or self.offered
        if not names:
            return None
        again, place = divmod(turn, len(names))
        name, held = names[place], self._held(best[again % len(best) :]) if best else None
        ground = None if held is None else self.ground(name, again, held)
        return self.ground(name, again) if ground is None else ground

    def ground(self, name: IdeaName, again: int = 0, held: Polygon | None = None) -> Ground | None:
        """Ground of an idea, of its ways to be followed the next in turn; None where every way lacks it for some room.

        `held` is a table that stays about where it is, in the pose [ft].
        """
        if self._table is None:
            return None
        parts = list(self._parts(name, self._table, held))
        turned = (parts[(again + n) % len(parts)] for n in range(len(parts)))
        return next((Ground(name, cells) for part in turned if (cells := self._cells(part))), None)

    def _cells(self, part: Part) -> dict[tuple[int, int], Cells]:
        """Corners by room and variant; empty where some room has none."""
        cells = {}
        for room, where in part.items():
            data = self.problem.rooms[room]
            own = [where(variant) & allowed for variant, allowed in zip(data.variants, data.allowed, strict=True)]
            if not any(there.any() for there in own):
                return {}
            cells.update({(room, v): there for v, there in enumerate(own)})
        return cells

    def _parts(self, name: IdeaName, table: int, held: Polygon | None) -> Iterator[Part]:
        """Every way to follow an idea."""
        at, away, kitchens = self._places, self._of_kind(*AWAY_KINDS), self._of_kind("kitchen")
        stays: dict[int, Where] = {table: partial(at.held_at, held)}
        match name:
            case "round the water":
                yield from (stays | {pool: partial(at.in_court_of, held)} for pool in self._of_kind("pool"))
            case "under the old roof":
                yield from self._roofs((table, *kitchens))
            case "beside the house":
                yield {table: at.beside}
            case "out in the garden":
                yield {table: at.in_garden}
            case "along one axis":
                yield from self._axes(table)
            case "stepping down":
                yield stays | dict.fromkeys(away, at.below)
            case "a court and a garden room":
                yield from (stays | {room: partial(at.apart_from, held)} for room in away)
            case "one court at the house":
                yield stays | dict.fromkeys(away, partial(at.in_court_of, held))
            case "in a row along the house":
                yield dict.fromkeys((table, *kitchens, *away), at.at_house)

    def _roofs(self, rooms: Sequence[int]) -> Iterator[Part]:
        """Each structure with each of the rooms that it may hold."""
        for structure in self.problem.context.site.structures:
            holds = (room for room in rooms if self.problem.rooms[room].name in structure.may_hold)
            yield from ({room: partial(self._places.under, structure)} for room in holds)

    def _axes(self, table: int) -> Iterator[Part]:
        """Table and another room, or a tree, on the centre line of a main opening."""
        site, at = self.problem.context.site, self._places
        for opening in main_openings(site):
            at_house, anywhere = partial(at.on_axis_at_house, opening), partial(at.on_axis_of, opening)
            if any(on_axis(opening, *map(np.array, tree.at)) for tree in site.trees):
                yield {table: at_house}
            yield from ({table: at_house, room: anywhere} for room in self._of_kind(*AIM_KINDS))

    def _held(self, best: Sequence[State]) -> Polygon | None:
        """The table of the first layout in which it stands at the house, in the pose [ft]."""
        for state in best:
            spot = None if self._table is None else state[self._table]
            if spot is not None and self._is_at_house(spot):
                return self._shape(spot)
        return None

    def _is_at_house(self, spot: Spot) -> bool:
        assert self._table is not None
        return bool(self._places.at_house(self.problem.rooms[self._table].variants[spot.variant])[spot.y, spot.x])

    def _shape(self, spot: Spot) -> Polygon:
        assert self._table is not None
        rect, lattice = rect_of(self.problem, self._table, spot), self.problem.context.lattice
        left, low = lattice.x_ft(rect.x), lattice.y_ft(rect.y)
        return box(left, low, left + rect.width * lattice.step_ft, low + rect.depth * lattice.step_ft)

    @cached_property
    def _places(self) -> Places:
        return Places(self.problem.context)

    @cached_property
    def _table(self) -> int | None:
        """The gathering that must be there, or else the first."""
        return min(self._of_kind("gathering"), key=lambda room: not self.problem.rooms[room].required, default=None)

    def _of_kind(self, *kinds: RoomKind) -> list[int]:
        return [n for n, room in enumerate(self.problem.context.rooms) if room.rules.kind in kinds]
