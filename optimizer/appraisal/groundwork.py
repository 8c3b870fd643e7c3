"""What the levels of a layout cost: steps, walls, guards and earth by room."""

from collections.abc import Iterator

from optimizer.appraisal.site_measures import GroundMeasures
from optimizer.catalogue import SITE, Charge, charge
from optimizer.grading import Grading
from optimizer.layout import Placed


def groundwork(grading: Grading, placed: Placed) -> Iterator[Charge]:
    """Charges of a grading. Steps to held ground are there from the first, as the ground is (`derived/stages.py`)."""
    phases = {there.name: there.phase for there in placed}
    held = {there.name for there in placed.of_kind("reserve")}
    for flight in grading.built_flights:
        phase = max(phases.get(end, 1) if end not in held else 1 for end in flight.between)
        yield charge(phase=phase, room=SITE, item="steps", amount=flight.risers)
    for wall in grading.walls:
        yield charge(phase=phases[wall.room], room=wall.room, item="retaining wall", amount=wall.face_sqft)
    for guard in grading.guards:
        yield charge(phase=phases[guard.room], room=guard.room, item="guard rail", amount=guard.length_ft)
    for earth in grading.earth:
        yield charge(phase=phases[earth.room], room=earth.room, item="earth cut", amount=earth.cut_bcy)
        yield charge(phase=phases[earth.room], room=earth.room, item="earth fill", amount=earth.fill_ccy)


def ground_measures(grading: Grading) -> GroundMeasures | None:
    """Figures of a grading; None where the scenario gives no levels."""
    if not grading.is_known:
        return None
    walls = grading.walls
    return GroundMeasures(
        levels=grading.levels_ft,
        risers=sum(flight.risers for flight in grading.built_flights),
        cut_bcy=round(grading.cut_bcy, 2),
        fill_ccy=round(grading.fill_ccy, 2),
        away_lcy=round(grading.hauled_off_lcy, 2),
        wall_face_sqft=round(sum(wall.face_sqft for wall in walls), 2),
        tallest_wall_ft=round(max((wall.height_ft for wall in walls), default=0.0), 2),
        guard_ft=round(sum(guard.length_ft for guard in grading.guards), 2),
        undrained=tuple(fall.room for fall in grading.falls if fall.outfall is None),
        flags=tuple(dict.fromkeys(_flags(grading))),
    )


def _flags(grading: Grading) -> Iterator[str]:
    """What model codes ask for at these heights, in plain words."""
    for flight in grading.flights:
        ends = " to ".join(flight.between)
        if flight.needs_handrail:
            yield f"handrail: {flight.risers} risers from {ends}"
        if flight.needs_guard:
            yield f"guard beside the steps from {ends}"
    for guard in grading.guards:
        yield f"guard: {guard.room} stands more than 30 in above the ground beside it"
    for wall in grading.walls:
        if wall.needs_permit:
            yield f"wall at {wall.room}: above 4 ft from the footing's bottom, so a permit and an engineer"
