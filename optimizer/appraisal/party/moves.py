"""Who walks from where to where between two parts of the evening, and by which ways."""

import heapq
from collections.abc import Iterable, Mapping
from itertools import pairwise
from typing import NamedTuple

Pair = tuple[str, str]
Links = Mapping[str, Mapping[str, float]]
"""Length [ft] from each place to each that it is joined to by a way or an edge; the same both ways."""


class Move(NamedTuple):
    """So many people going from one place to another."""

    start: str
    end: str
    people: int


def moves(before: Mapping[str, int], after: Mapping[str, int], links: Links) -> tuple[Move, ...]:
    """Moves that turn one phase into the next: who can stay stays, the others go where it is nearest."""
    going = {name: count - after.get(name, 0) for name, count in before.items() if count > after.get(name, 0)}
    coming = {name: count - before.get(name, 0) for name, count in after.items() if count > before.get(name, 0)}
    lengths = {start: lengths_from(links, start) for start in going}
    pairs = sorted(
        ((start, end) for start in going for end in coming),
        key=lambda pair: lengths[pair[0]].get(pair[1], float("inf")),
    )
    found = []
    for start, end in pairs:
        people = min(going[start], coming[end])
        if people:
            found.append(Move(start, end, people))
            going[start], coming[end] = going[start] - people, coming[end] - people
    return tuple(found)


def loads(found: Iterable[Move], links: Links) -> dict[frozenset[str], int]:
    """People who pass each link in these moves; those whose places nothing joins pass none."""
    result: dict[frozenset[str], int] = {}
    for move in found:
        for pair in pairwise(chain(links, move.start, move.end)):
            result[frozenset(pair)] = result.get(frozenset(pair), 0) + move.people
    return result


def lengths_from(links: Links, start: str) -> dict[str, float]:
    """Least length from a place to every place that it is joined to [ft]."""
    return {name: length for name, (length, _) in _reached(links, start).items()}


def chain(links: Links, start: str, end: str) -> tuple[str, ...]:
    """Places on the shortest walk from one to another, both included; empty where nothing joins them."""
    reached = _reached(links, start)
    if end not in reached:
        return ()
    places = [end]
    while places[-1] != start:
        places.append(reached[places[-1]][1])
    return tuple(reversed(places))


def _reached(links: Links, start: str) -> dict[str, tuple[float, str]]:
    """Every place that can be reached: its length from the start [ft], and the place before it."""
    reached: dict[str, tuple[float, str]] = {}
    queue = [(0.0, start, start)]
    while queue:
        length, name, previous = heapq.heappop(queue)
        if name not in reached:
            reached[name] = (length, previous)
            for other, step in links.get(name, {}).items():
                heapq.heappush(queue, (length + step, other, name))
    return reached
