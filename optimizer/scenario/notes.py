"""What a reader of a scenario should know though nothing is wrong."""

from collections.abc import Iterator
from typing import Final

from optimizer.scenario.rings import outside_ft
from optimizer.scenario.scenario import Scenario
from optimizer.site import Site
from optimizer.units import feet_inches

_TOUCHES_FT: Final = 0.02


def scenario_notes(scenario: Scenario) -> tuple[str, ...]:
    """Plain sentences: buildings over the boundary, and what the file says that no figure rests on yet."""
    return (*_overhangs(scenario.site), *_not_used_yet(scenario))


def _overhangs(site: Site) -> Iterator[str]:
    """Tell of buildings over the boundary by what rounding makes."""
    for building in site.buildings:
        over_ft = outside_ft(building.outline, site.boundary)
        if over_ft > _TOUCHES_FT:
            yield (
                f"{building.name} reaches {feet_inches(over_ft)} over the boundary; read as rounding, "
                "have it surveyed if it is not"
            )


def _not_used_yet(scenario: Scenario) -> Iterator[str]:
    """Keys that are read and kept, and do not count yet."""
    site = scenario.site
    if site.levels:
        yield "levels: used for the steps at doors only; slopes, drainage and retaining walls are not worked out"
    if any(thing.eye_z_ft is not None for thing in site.surroundings):
        yield "eye_z: read; sight is judged on the plan only, whatever the height of the eye"
    if site.wind_from_deg is not None:
        yield "wind_from: read; smoke is not worked out"
    if any(len(room.futures) > 1 for room in scenario.brief.rooms):
        yield "futures: the ground held takes any one of them; phase 2 is priced with the dearest of them"
