"""The proof of a program whose rooms have few places: one room after another, at one place after another.

What any two places cost each other stands in a table. Of a room that does not stand yet each place costs what it costs
beside those that do, and at least half of what it costs with each other one; what this floor lifts to the limit is cut
off. Where each room has a dozen places this is hundreds of times as fast as the solver, by measurement on quadratic
assignment; where it has hundreds, the tables alone are too large.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final, NamedTuple

import numpy as np
from numpy.typing import NDArray

from optimizer.engine.pairs import FORBIDDEN
from optimizer.engine.pairs.stamp import Cents
from optimizer.engine.problem import Spot, State, modelled_value
from optimizer.engine.problem.problem import Problem
from optimizer.engine.prover.places import Places

MOST_PLACES: Final = 16
"""Places of one room in all its turns and sizes."""
NODE_S: Final = 1e-4
"""What counts as work of the solver for each begun layout, so that a limit of work repeats exactly."""


@dataclass(frozen=True, slots=True, eq=False)
class PlaceTables:
    """`own[i, p]` is what the i-th room costs at its place p, `between[i, k, p, q]` what it costs with the k-th at its
    place q [cents]; FORBIDDEN where there is no such place.
    """

    spots: dict[int, list[Spot]]
    own: Cents
    between: Cents

    @classmethod
    def of(cls, places: Places, limit: int) -> "PlaceTables | None":
        """Tables of what may belong to something below a limit [cents]; None where these are too many places."""
        tables = places.open_tables(limit)
        found = {room: [place for table in own for place in table.places()] for room, own in tables.items()}
        if max(len(own) for own in found.values()) > MOST_PLACES:
            return None
        own = np.full((len(found), MOST_PLACES), FORBIDDEN, dtype=np.int64)
        for row, costs in zip(own, found.values(), strict=True):
            row[: len(costs)] = [cents for cents, _ in costs]
        spots = {room: [spot for _, spot in costs] for room, costs in found.items()}
        return cls(spots, own, _between(places, spots))


def _between(places: Places, spots: dict[int, list[Spot]]) -> Cents:
    result = np.zeros((len(spots), len(spots), MOST_PLACES, MOST_PLACES), dtype=np.int64)
    for i, (room, own) in enumerate(spots.items()):
        for k, (other, there) in enumerate(spots.items()):
            if i != k:
                result[i, k, : len(own), : len(there)] = [
                    [places.between(room, p, other, q) for q in there] for p in own
                ]
    return result


class Begun(NamedTuple):
    """A begun layout: the place of each room that stands, what these cost, and the tables of rooms that are free."""

    taken: tuple[tuple[int, int], ...]
    cents: int
    free: NDArray[np.intp]
    own: Cents


class PlaceTree:
    """One search. `spent(work)` says whether to end it early, after so many seconds of work."""

    def __init__(self, problem: Problem, places: Places, tables: PlaceTables, spent: Callable[[float], bool]) -> None:
        self._problem, self._places, self._tables, self._spent = problem, places, tables, spent
        self._rooms = list(tables.spots)
        self._nodes = 0
        self.best: State | None = None
        self.floor, self.is_done = 0, True

    @property
    def work_s(self) -> float:
        """Work so far, in the solver's own measure."""
        return self._nodes * NODE_S

    def run(self, limit: int) -> None:
        """Find the best layout below a limit [cents]; there is none where `best` is None and the search `is_done`.

        Where it is not, what is left costs `floor` at least.
        """
        self._limit = limit
        rooms = np.arange(len(self._rooms))
        self._open(Begun((), self._places.absent, rooms, self._tables.own))

    def _open(self, begun: Begun) -> None:
        """Try what may follow a begun layout, the cheapest first."""
        self._nodes += 1
        if not len(begun.free):
            self._take(begun)
            return
        for floor, longer in self._following(begun):
            if floor >= self._limit:
                return
            if not begun.taken:
                self.floor = floor
            self._open(longer)
            if self._spent(self.work_s):
                self.is_done = False
                return

    def _take(self, begun: Begun) -> None:
        """A whole layout: order, which is in no table, may lift it to the limit."""
        spots = {self._rooms[i]: self._tables.spots[self._rooms[i]][p] for i, p in begun.taken}
        state = self._places.whole(tuple(spots.get(room) for room in range(len(self._problem.rooms))))
        value = modelled_value(self._problem, state)
        if value < self._limit:
            self.best, self._limit = state, value

    def _following(self, begun: Begun) -> Iterator[tuple[int, Begun]]:
        """The room whose places differ most at each of its places, with the floors of what follows."""
        between = self._tables.between[np.ix_(begun.free, begun.free)]
        shut = np.where(begun.own < FORBIDDEN, 0, FORBIDDEN)
        doubled = 2 * begun.own + (between + shut[None, :, None, :]).min(axis=3).sum(axis=1)
        leasts = doubled.min(axis=1)
        room = int(np.argmax(np.partition(doubled, 1, axis=1)[:, 1] - leasts))
        floors = begun.cents - (-(doubled[room] + leasts.sum() - leasts[room]) // 2)
        others = np.arange(len(begun.free)) != room
        for place in np.argsort(floors, kind="stable").tolist():
            yield (
                int(floors[place]),
                Begun(
                    (*begun.taken, (int(begun.free[room]), place)),
                    begun.cents + int(begun.own[room, place]),
                    begun.free[others],
                    begun.own[others] + between[others, room, :, place],
                ),
            )
