"""Why one does not step from the main garden door onto a terrace, in plain words."""

from collections.abc import Iterator
from functools import lru_cache
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray

from optimizer.appraisal import bare_doors
from optimizer.catalogue import SizedRoom
from optimizer.check import CHECKS, CheckCase
from optimizer.concepts.whereabouts import whereabouts
from optimizer.concepts.words import listed
from optimizer.derived import Derived
from optimizer.fields import BUILT_UP_FT, open_yard, site_shapes
from optimizer.fields.terraces import TERRACE_KINDS, garden_doors, meets_landing
from optimizer.layout import Front, Layout, Placed, Placement, placed_of
from optimizer.scenario import Scenario
from optimizer.site import Door, Site

_STEP_FT: Final = 0.5  # places along a landing are tried so far from each other
_ROUNDING_SQFT: Final = 0.2
_OF_PLACES: Final = ("inside_setbacks", "off_buildings", "no_slivers", "door_zone")
"""Rules by which a place at a landing is one: what else bars it a layout might mend."""


def terrace_cautions(scenario: Scenario, placed: Placed) -> Iterator[str]:
    """A sentence where no terrace lies at the garden door that most trips lead through."""
    main = garden_doors(scenario.site, scenario.brief)[:1]
    for door in main:
        if door.name in bare_doors(scenario.site, scenario.brief, placed):
            yield f"No terrace lies at the {door.name}: {_why(scenario, door, placed)}."


def _why(scenario: Scenario, door: Door, placed: Placed) -> str:
    wished = [room for room in placed.wished if room.rules.kind in TERRACE_KINDS]
    there = [place for room in wished if (place := placed.layout.of(room.name)) is not None]
    if not wished:
        return "no room of the wish list is a terrace"
    if not there:
        return f"this concept does without the {listed([room.name for room in wished])}"
    if not any(has_place(scenario, door, room) for room in wished):
        names = listed([room.name for room in wished])
        return f"between house, landings and boundary there is no place for the {names} along its landing"
    where = listed([f"the {own.room} lies {whereabouts(own, scenario.site)}" for own in there])
    return f"{where}, and no better plan with it at the door was found"


@lru_cache(maxsize=16)
def has_place(scenario: Scenario, door: Door, room: SizedRoom) -> bool:
    """Whether a room of some size, standing alone, may lie along a door's landing; places are tried on both axes."""
    return any(_may_stand(scenario, room, place) for place in _places(scenario, door, room))


def _places(scenario: Scenario, door: Door, room: SizedRoom) -> Iterator[Placement]:
    """Places on free ground along the landing, the smallest size first."""
    zone = next(shape for other, shape in site_shapes(scenario.site).door_zones if other == door)
    left, low, right, top = zone.bounds
    for choice in sorted(room.choices, key=lambda choice: choice.width_ft * choice.depth_ft):
        sizes: tuple[tuple[float, float, Front], ...] = (
            (choice.width_ft, choice.depth_ft, "+y"),
            (choice.depth_ft, choice.width_ft, "+x"),
        )
        for width_ft, depth_ft, front in sizes:
            x, y = np.meshgrid(_along(left, right, width_ft), _along(low, top, depth_ft))
            meets = meets_landing(scenario.site, door, x, y, width_ft=width_ft, depth_ft=depth_ft)
            free = _lie_free(scenario.site, shapely.box(x[meets], y[meets], x[meets] + width_ft, y[meets] + depth_ft))
            for at in zip(x[meets][free].tolist(), y[meets][free].tolist(), strict=True):
                yield Placement(room.name, choice.label, *at, width_ft, depth_ft, front, shape=choice.shape)


def _lie_free(site: Site, grounds: NDArray[np.object_]) -> NDArray[np.bool_]:
    """Which grounds lie in the yard, off buildings and landings: what does not is not asked of the check."""
    free = open_yard(site).difference(shapely.union_all([zone for _, zone in site_shapes(site).door_zones]))
    return np.asarray(shapely.area(grounds) - shapely.area(shapely.intersection(grounds, free)) <= _ROUNDING_SQFT)


def _along(start_ft: float, end_ft: float, length_ft: float) -> np.ndarray:
    """Lower ends at which a stretch lies before, along or behind another: flush with it, and in steps."""
    first, last = start_ft - length_ft - BUILT_UP_FT, end_ft + BUILT_UP_FT
    flush = (start_ft - length_ft, start_ft, end_ft - length_ft, end_ft)
    return np.unique([*np.arange(first, last, _STEP_FT), last, *flush])


def _may_stand(scenario: Scenario, room: SizedRoom, place: Placement) -> bool:
    case = CheckCase(Derived(scenario, placed_of((room,), Layout((place,)))))
    return not any(True for rule in _OF_PLACES for _ in CHECKS[rule](case))
