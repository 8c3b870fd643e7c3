"""Steps, ramps, walls and earth outdoors, as the trade builds them."""

from dataclasses import dataclass
from functools import cache
from math import ceil, floor
from typing import Final

from optimizer.catalogue.data_files import data

_EVEN: Final = 1e-9  # what rounding leaves of a whole number


@dataclass(frozen=True, slots=True)
class StepRules:
    """Figures of `steps.yaml`, where each has its meaning and source; the unit is in the name."""

    flush_sill_in: float
    least_riser_in: float
    highest_riser_in: float
    least_risers: float
    twice_riser_and_tread_in: float
    risers_to_landing: float
    handrail_risers: float
    guard_drop_in: float
    guard_reach_in: float
    flight_width_ft: float
    bank_in: float
    footing_ft: float
    permit_wall_ft: float
    path_slope: float
    ramp_run_to_rise: float
    ramp_rise_in: float
    ramp_landing_in: float
    turning_in: float
    paving_fall: float
    slab_fall: float
    overlay_least_in: float
    overlay_most_in: float
    ground_fall: float
    drain_depth_ft: float
    swell: float
    shrink: float
    foot_to_seat_ft: float
    foot_to_flame_ft: float
    kitchen_risers: float


@cache
def step_rules() -> StepRules:
    """Figures from the file of steps."""
    return StepRules(**{name: float(entry["value"]) for name, entry in data("steps.yaml").items()})


def risers_for(rise_in: float, highest_in: float | None = None) -> int:
    """Risers of at most `highest_in` (the usual highest) that take a rise [in]: none up to a flush sill, never one."""
    rules = step_rules()
    if rise_in <= rules.flush_sill_in + _EVEN:
        return 0
    highest = rules.highest_riser_in if highest_in is None else highest_in
    return max(int(rules.least_risers), ceil(rise_in / highest - _EVEN))


def tread_for(riser_in: float) -> float:
    """Depth of the tread that goes with a riser outdoors [in]; source: 2R + T = 26, Booth & Hiss."""
    return step_rules().twice_riser_and_tread_in - 2 * riser_in


def landings_for(risers: int) -> int:
    """Landings inside a flight: one after every seven risers that others follow."""
    return floor(max(0, risers - 1) / step_rules().risers_to_landing)


def needs_guard(drop_in: float) -> bool:
    """Whether a walking surface so far above the ground [in] needs a guard: more than 30 in, IRC R312.1."""
    return drop_in > step_rules().guard_drop_in + _EVEN


def wall_needs_permit(height_ft: float) -> bool:
    """Whether a wall so high above the lower ground [ft], measured from its footing's bottom, passes IRC R105.2(3)."""
    rules = step_rules()
    return height_ft + rules.footing_ft > rules.permit_wall_ft + _EVEN


def ramp_length_ft(rise_ft: float) -> float:
    """Least length [ft] of a 1:12 ramp with runs of at most 30 in of rise and a landing at each end of each run."""
    rules = step_rules()
    runs = ceil(rise_ft * 12 / rules.ramp_rise_in - _EVEN)
    return rise_ft * rules.ramp_run_to_rise + (runs + 1) * rules.ramp_landing_in / 12
