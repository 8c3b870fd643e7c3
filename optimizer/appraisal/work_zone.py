"""What lies where along a kitchen's counter: how far from one thing to the next, and the free counter beside each."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations, takewhile
from math import dist
from typing import Final, NamedTuple

from optimizer.catalogue import Item, SizedChoice, front_run, side_run

SIDE_FT: Final = (4.0, 9.0)
"""From one of cooking, sink and refrigerator to another, middle to middle; NKBA Kitchen Planning Guideline 3."""
ROUND_FT: Final = 26.0
"""Longest way round the three; the same."""
_CENTRES: Final = ("grill", "preparation", "sink", "refrigerator")
_FREE: Final = ("counter", "preparation", "trash drawer", "storage")
_TRASH: Final = "trash drawer"
_LANDINGS_IN: Final = {"grill": (12, 15), "sink": (18, 24), "refrigerator": (0, 15)}
"""Free counter on the lesser and the wider side; NKBA Kitchen Planning Guidelines 17, 11 and 16."""
_PREPARATION_IN: Final = 36
"""Free counter in one piece beside the sink; NKBA Kitchen Planning Guideline 12."""
_TOLERANCE_FT: Final = 0.01
_IN_PER_FT: Final = 12.0
Point = tuple[float, float]


class Landing(NamedTuple):
    """Free counter beside a piece of equipment: asked and found [in], on its lesser and on its wider side."""

    at: str
    asked_in: tuple[float, float]
    found_in: tuple[float, float]

    @property
    def is_kept(self) -> bool:
        """Whether both sides have what is asked."""
        return all(f >= a - _TOLERANCE_FT * _IN_PER_FT for a, f in zip(self.asked_in, self.found_in, strict=True))


@dataclass(frozen=True, slots=True)
class WorkZone:
    """Of one kitchen, in feet along the aisle from the middle of one front to that of another.

    `trash_ft` is from sink or preparation to the drawer for trash, None without one.
    """

    sides_ft: tuple[tuple[str, str, float], ...] = ()
    landings: tuple[Landing, ...] = ()
    trash_ft: float | None = None

    @property
    def round_ft(self) -> float:
        """Way round grill, sink and refrigerator, or there and back where one is missing."""
        sides = [ft for start, end, ft in self.sides_ft if "preparation" not in (start, end)]
        return round(sum(sides) * (1 if len(sides) > 1 else 2), 2)

    @property
    def off_sides(self) -> tuple[tuple[str, str, float], ...]:
        """Sides between grill, sink and refrigerator that are shorter or longer than is handy."""
        least, most = SIDE_FT
        between = (side for side in self.sides_ft if "preparation" not in side)
        return tuple(side for side in between if not least - _TOLERANCE_FT <= side[2] <= most + _TOLERANCE_FT)

    @property
    def missing(self) -> tuple[str, ...]:
        """Equipment without the free counter that is asked beside it."""
        return tuple(landing.at for landing in self.landings if not landing.is_kept)


@lru_cache(maxsize=256)
def work_zone(choice: SizedChoice) -> WorkZone:
    """Work zone of a kitchen as it is drawn; empty where no equipment is."""
    fronts = dict(_fronts(choice))
    there = [name for name in _CENTRES if name in fronts]
    trash, from_where = fronts.get(_TRASH), fronts.get("sink", fronts.get("preparation"))
    return WorkZone(
        sides_ft=tuple((a, b, round(dist(fronts[a], fronts[b]), 2)) for a, b in combinations(there, 2)),
        landings=tuple(_landings(choice)),
        trash_ft=round(dist(trash, from_where), 2) if trash and from_where else None,
    )


def _fronts(choice: SizedChoice) -> Iterator[tuple[str, Point]]:
    """Middles of the edges that the cook stands at, the first of each role."""
    found: dict[str, Point] = {}
    for item in side_run(choice):
        found.setdefault(item.role, (item.x_ft + item.width_ft, item.y_ft + item.depth_ft / 2))
    for item in front_run(choice):
        found.setdefault(item.role, (item.x_ft + item.width_ft / 2, item.y_ft))
    yield from found.items()


def _landings(choice: SizedChoice) -> Iterator[Landing]:
    along, aside = front_run(choice), side_run(choice)
    for run, widths in ((aside, [i.depth_ft for i in aside]), (along, [i.width_ft for i in along])):
        for number, item in enumerate(run):
            if item.role not in _LANDINGS_IN:
                continue
            before = _free_in(run[:number][::-1], widths[:number][::-1])
            after = _free_in(run[number + 1 :], widths[number + 1 :])
            found = (min(before, after), max(before, after))
            yield Landing(item.role, _LANDINGS_IN[item.role], found)
            if item.role == "sink":
                yield Landing("preparation", (0, _PREPARATION_IN), found)


def _free_in(run: Sequence[Item], widths: Sequence[float]) -> float:
    """Free counter from the beginning of a run on [in]."""
    free = takewhile(lambda piece: piece[0].role in _FREE, zip(run, widths, strict=True))
    return round(_IN_PER_FT * sum(width for _, width in free), 2)
