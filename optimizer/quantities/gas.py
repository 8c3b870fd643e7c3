"""Gas: what appliances burn, pipe by the longest-length method and a published table, bottled gas.

Sizes are for concept stage: a licensed trade sizes, runs and tests the line under local codes.
"""

from collections.abc import Iterable
from math import inf
from typing import Any, Final

from optimizer.catalogue.data_files import data

SOURCE: Final = "IFGC 2018 table 402.4(2), longest-length method; a licensed trade decides"
DEMAND_SOURCE: Final = "custom, from memory; the rating plate decides"
_FILE: Final = "gas.yaml"


def demand_mbh(items: Iterable[tuple[str, float]]) -> float:
    """Heat that items of the price book burn, each with its number [thousand Btu/h]."""
    burns: dict[str, float] = data(_FILE)["mbh"]
    return sum(burns.get(item, 0.0) * float(count) for item, count in items)


def cfh(mbh: float) -> float:
    """Natural gas for so much heat [cu ft/h]."""
    return mbh * 1000 / float(data(_FILE)["btu_per_cuft"])


def pipe_size(flow_cfh: float, longest_ft: float) -> str | None:
    """Nominal size [in] of schedule 40 pipe that carries a flow of natural gas at 0.5 in w.c. drop, by the longest
    length of the whole system [ft]; None where the table ends.
    """
    row = next((row for length, row in data(_FILE)["capacity_0.5"].items() if longest_ft <= length), ())
    return next((size for size, most in zip(data(_FILE)["sizes"], row, strict=False) if flow_cfh <= most), None)


def cylinder_h(mbh: float) -> float:
    """Hours that a 20 lb cylinder of propane feeds a burner; infinite where nothing burns."""
    return cylinder_gal() * hours_per_gallon(mbh) if mbh else inf


def cylinder_gal() -> float:
    """Gallons in a 20 lb cylinder of propane."""
    return float(data(_FILE)["cylinder_gal"])


def propane_btu_per_gal() -> float:
    """Heat in a gallon of propane [Btu]."""
    return float(data(_FILE)["propane_btu_per_gal"])


def hours_per_gallon(mbh: float) -> float:
    """Hours that a gallon of propane feeds a burner."""
    return propane_btu_per_gal() / (mbh * 1000)


def tank_clear_ft(gallons: float, *, is_single: bool = False) -> float:
    """Distance of a propane tank above ground to buildings and to lines that can be built on [ft]; NFPA 58.

    Raises
    ------
    ValueError
        For a tank larger than the table has.
    """
    single = data(_FILE)["single_tank"]
    if is_single and gallons <= single["up_to_gal"]:
        gallons = min(gallons, 500)
    for tank in data(_FILE)["tanks"]:
        if gallons <= tank["up_to_gal"]:
            return float(tank["feet"])
    raise ValueError(f"the table ends before {gallons:g} gal")


def cylinder_clear_ft() -> tuple[float, float, float]:
    """Distances of an exchanged cylinder [ft]: valve to flames and intakes, to openings below it, and of a filling
    point to flames; NFPA 58.
    """
    file: dict[str, Any] = data(_FILE)
    return (
        float(file["cylinder_to_flame_ft"]),
        float(file["cylinder_to_opening_ft"]),
        float(file["fill_to_flame_ft"]),
    )
