"""What is said of an improved sketch, and the change of the scenario that adds it as a sketch of its own."""

from dataclasses import dataclass
from typing import Any, Final

from optimizer.brief import RULES, Sketch
from optimizer.concepts.case import Case
from optimizer.concepts.improve.improved import Improved
from optimizer.concepts.option import Option, WayOut
from optimizer.concepts.words import listed
from optimizer.layout import Layout, Placement
from optimizer.scenario import Scenario

_DIGITS: Final = 6
_TELLS_FT: Final = 0.1
"""A bound that is no more says nothing."""


@dataclass(frozen=True, slots=True)
class Improvement:
    """A sketch before and after; `after` and the change that adds it are None where nothing was found to improve."""

    scenario: Scenario
    """With the improved sketch, if there is one."""
    sketches: tuple[Option, ...]
    """All sketches of that scenario, measured."""
    found: Improved
    before: Option
    after: Option | None
    change: WayOut | None

    @property
    def words(self) -> str:
        """What came of it, in plain sentences."""
        return said(self.found, self.scenario)


def said(found: Improved, scenario: Scenario) -> str:
    """What came of looking for the nearest layout, in plain sentences."""
    unit_ft, unit = scenario.unit_ft, scenario.units
    is_known = found.least_ft is not None and found.least_ft > _TELLS_FT
    least = f"{(found.least_ft or 0.0) / unit_ft:.1f} {unit}" if is_known else ""
    match found.status:
        case "kept":
            return "The sketch keeps every rule as it is."
        case "nearest":
            proven = "it is proven that no other on the grid is nearer"
            return f"This is the nearest layout that keeps the rules; {proven}."
        case "near":
            away = f"{(found.distance_ft or 0.0) / unit_ft:.1f} {unit}"
            refused = [RULES[rule].sentence.rstrip(".") for rule in found.refused]
            why = f" Nearer ones that were tried broke: {'; '.join(refused)}." if refused else ""
            bound = f" None on the grid can be nearer than {least}." if least else ""
            return f"This layout keeps the rules and is {away} away.{why}{bound}"
        case "nothing_fits":
            return "No layout of the required rooms keeps the rules, wherever they stand on the grid of this yard."
        case _:
            return "No layout that keeps the rules was found in this time; try more --seconds."


def sketch_added(case: Case, name: str, layout: Layout) -> WayOut:
    """The change that adds a layout to the scenario as a sketch named after another."""
    known = [sketch.name for sketch in case.scenario.sketches]
    names = (f"{name}, improved", *(f"{name}, improved {number}" for number in range(2, len(known) + 3)))
    new = next(one for one in names if one not in known)
    record = {"name": new, "rooms": [_record(case.scenario, place) for place in layout.placements]}
    return WayOut(f"keep it as a sketch: {new}", (("add", "/sketches/-", record),))


def _record(scenario: Scenario, place: Placement) -> dict[str, Any]:
    lengths = (
        round(value / scenario.unit_ft, _DIGITS) + 0.0
        for value in (place.x_ft, place.y_ft, place.width_ft, place.depth_ft)
    )
    x, y, width, depth = lengths
    named = {"room": place.room, "choice": place.choice, "at": [x, y]}
    return {**named, "width": width, "depth": depth, "front": place.front}


def sketch_named(scenario: Scenario, name: str) -> Sketch | None:
    """The sketch of that name, or None."""
    return next((sketch for sketch in scenario.sketches if sketch.name == name), None)


def known_words(scenario: Scenario) -> str:
    """Names of the sketches that there are."""
    return listed([sketch.name for sketch in scenario.sketches]) or "none; draw one under sketches:"
