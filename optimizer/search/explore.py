"""The explorer: ruin and recreate with exact insertion, keeping the best layout of every arrangement it passes."""

import threading
from dataclasses import dataclass, field
from itertools import combinations

import numpy as np

from optimizer.search.board import FORBIDDEN, Board, insisting, thrifty
from optimizer.search.connected import is_connected
from optimizer.search.insertion import ABSENT_REQUIRED, best_spot
from optimizer.search.state import State
from optimizer.search.value import value_of

Key = tuple[tuple[int, ...], tuple[int, ...]]


@dataclass
class Pool:
    """The best state of every arrangement seen, by its key."""

    best: dict[Key, tuple[int, State]] = field(default_factory=dict)
    seen: set[Key] = field(default_factory=set)

    def ranked(self) -> list[tuple[int, State]]:
        """States from best to worst; ties by where rooms stand, so that the order never depends on the clock."""
        return sorted(self.best.values(), key=lambda entry: (entry[0], _places(entry[1])))


@dataclass(frozen=True, slots=True)
class Tour:
    """One run of the explorer: how many rebuilds, rooms that it leaves out or insists on, the share of the estimated
    ways that it sets money aside for, and where it starts.
    """

    rebuilds: int
    seed: int
    without: frozenset[int] = frozenset()
    insist: frozenset[int] = frozenset()
    thrift: float = 1.0
    start: State | None = None


def explore(board: Board, pool: Pool, tour: Tour, *, stop: threading.Event) -> None:
    """Run a tour and keep what it passes in the pool."""
    board = insisting(thrifty(board, tour.thrift), tour.insist)
    random = np.random.default_rng(tour.seed)
    state = tour.start or tuple(None for _ in board.instance.rooms)
    state = _recreate(board, state, _missing(state, tour), random, noise_cents=0)
    value = value_of(board, state)
    _keep(board, pool, value, state)
    heat = _heat(board)
    for turn in range(tour.rebuilds):
        if stop.is_set():
            return
        candidate = _rebuilt(board, state, tour, random)
        candidate_value = value_of(board, candidate)
        if candidate_value <= value + heat * (1 - turn / tour.rebuilds) * random.random():
            state, value = candidate, candidate_value
        _keep(board, pool, candidate_value, candidate)


def key_of(board: Board, state: State) -> Key:
    """Rooms with their choices, and the canonical side of each pair."""
    choices = tuple(
        -1 if spot is None else board.instance.rooms[room].variants[spot.variant].choice
        for room, spot in enumerate(state)
    )
    return choices, tuple(_side(board, state, a, b) for a, b in combinations(range(len(state)), 2))


def _side(board: Board, state: State, a: int, b: int) -> int:
    one, other = state[a], state[b]
    if one is None or other is None:
        return -1
    v, w = board.instance.rooms[a].variants[one.variant], board.instance.rooms[b].variants[other.variant]
    if one.x + v.width <= other.x:
        return 0
    if other.x + w.width <= one.x:
        return 1
    return 2 if 2 * one.y + v.depth <= 2 * other.y + w.depth else 3


def _rebuilt(board: Board, state: State, tour: Tour, random: np.random.Generator) -> State:
    """Take two to four rooms out and put each back, now and then with noise."""
    count = len(state)
    taken = random.permutation(count)[: int(random.integers(2, 5))]
    thinned = tuple(None if room in taken else spot for room, spot in enumerate(state))
    noise_cents = int(_heat(board)) if random.random() < 0.3 else 0
    return _recreate(board, thinned, _missing(thinned, tour), random, noise_cents=noise_cents)


def _recreate(board: Board, state: State, rooms: list[int], random: np.random.Generator, *, noise_cents: int) -> State:
    spots = list(state)
    for room in random.permutation(rooms) if rooms else []:
        spots[room] = best_spot(
            board, tuple(spots), int(room), noise=random if noise_cents else None, noise_cents=noise_cents
        )
    return tuple(spots)


def _missing(state: State, tour: Tour) -> list[int]:
    return [room for room, spot in enumerate(state) if spot is None and room not in tour.without]


def _keep(board: Board, pool: Pool, value: int, state: State) -> None:
    """Keep a state that is the best of its arrangement and can be walked."""
    if value >= min(ABSENT_REQUIRED, FORBIDDEN):
        return
    key = key_of(board, state)
    pool.seen.add(key)
    known = pool.best.get(key)
    if (known is None or known[0] > value) and is_connected(board.instance, state):
        pool.best[key] = (value, state)


def _heat(board: Board) -> float:
    """A step worth taking uphill [cents]: a fiftieth of what the optional rooms are worth together."""
    return max(20_000.0, sum(room.absent_loss for room in board.instance.rooms) / 50)


def _places(state: State) -> tuple[tuple[int, int, int], ...]:
    return tuple((-1, 0, 0) if spot is None else (spot.variant, spot.x, spot.y) for spot in state)
