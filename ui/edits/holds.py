"""Holds of a scenario as records of its file: added and taken away on the page."""

from typing import Any, Final

from optimizer.brief import Hold
from optimizer.drawing.outlines import box_of
from optimizer.layout import Placement
from optimizer.scenario import Scenario
from ui.edits.text import with_value

Held = dict[str, Any]
"""A hold as the file writes it, lengths in the file's unit."""
SIDES: Final = {"+x": "right", "-x": "left", "+y": "top", "-y": "bottom"}
Rectangle = tuple[float, float, float, float]
"""Left, bottom, right and top [ft]."""


def hold_as_it_stands(place: Placement, scenario: Scenario, *, front: bool, choice: bool, at: bool = True) -> Held:
    """Hold a room where it stands, and if asked for with its front and its choice; before it grew to a line."""
    base, held = place.base, {"room": place.room}
    parts: Held = {"at": [_length(base.x_ft, scenario), _length(base.y_ft, scenario)]} if at else {}
    parts |= {"front": base.front} if front else {}
    parts |= {"choice": base.choice} if choice else {}
    return held | parts


def of_area(room: str, area: Rectangle, scenario: Scenario, *, inside: bool) -> Held:
    """Hold a room within an area, or out of it."""
    left, bottom, right, top = (_length(value, scenario) for value in area)
    corners = [[left, bottom], [right, bottom], [right, top], [left, top]]
    return {"room": room, "within" if inside else "not_in": corners}


def keep_out(place: Placement, scenario: Scenario) -> Held:
    """Keep a room off the spot where it stands."""
    return of_area(place.room, box_of(place), scenario, inside=False)


def with_hold(scenario: Scenario, held: Held) -> tuple[str, str]:
    """Text with a further hold, and what was done in words; what it decides anew takes the place of what was held.

    A place says all of where a room stands; an area, or a spot that is forbidden, undoes a place.
    """
    decided = set(held) - {"room", "not_in"}
    if decided & {"at", "within"}:
        decided |= {"at", "within"}
    if "at" in held or "not_in" in held:
        decided |= {"not_in"} if "at" in held else {"at"}
    kept = [_without(record, decided) if record["room"] == held["room"] else record for record in _records(scenario)]
    records = [record for record in kept if len(record) > 1]
    return with_value(scenario.text, ("brief", "holds"), [*records, held]), f"Held: {_words(held)}"


def without_hold(scenario: Scenario, index: int) -> tuple[str, str]:
    """Text without one of its holds, and what was done in words."""
    records = _records(scenario)
    gone = records.pop(index)
    return with_value(scenario.text, ("brief", "holds"), records), f"No longer held: {_words(gone)}"


def hold_words(scenario: Scenario) -> tuple[str, ...]:
    """What is held, in words, in the order of the file."""
    return tuple(_words(record) for record in _records(scenario))


def _words(held: Held) -> str:
    said = []
    if "at" in held:
        said.append(f"with its lower left corner at {held['at'][0]:g}, {held['at'][1]:g}")
    if "within" in held:
        said.append(f"within {_bounds(held['within'])}")
    if "not_in" in held:
        said.append(f"not within {_bounds(held['not_in'])}")
    if "front" in held:
        said.append(f"open to the {SIDES[held['front']]} of the plan")
    if "choice" in held:
        said.append(f"as {held['choice']}")
    return f"{held['room']} {', '.join(said)}"


def _bounds(corners: list[list[float]]) -> str:
    xs, ys = zip(*corners, strict=True)
    return f"{min(xs):g} to {max(xs):g} across, {min(ys):g} to {max(ys):g} up"


def _records(scenario: Scenario) -> list[Held]:
    return [_record(hold, scenario) for hold in scenario.brief.holds]


def _record(hold: Hold, scenario: Scenario) -> Held:
    record: Held = {"room": hold.room}
    if hold.at_ft is not None:
        record["at"] = [_length(value, scenario) for value in hold.at_ft]
    for key in ("within", "not_in"):
        ring = getattr(hold, key)
        if ring is not None:
            record[key] = [[_length(value, scenario) for value in corner] for corner in ring]
    for key in ("front", "choice"):
        if getattr(hold, key) is not None:
            record[key] = getattr(hold, key)
    return record


def _without(record: Held, keys: set[str]) -> Held:
    return {key: value for key, value in record.items() if key not in keys}


def _length(length_ft: float, scenario: Scenario) -> float:
    """Length in the file's unit; whole ones without a decimal point, and none of more than a micrometre."""
    value = round(length_ft / scenario.unit_ft, 6)
    return int(value) if value == int(value) else value
