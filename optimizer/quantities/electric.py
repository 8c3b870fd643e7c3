"""Circuits and low-voltage lights: wire by its voltage drop, transformers by their load.

Sizes are for concept stage: a licensed trade decides under local codes.
"""

from typing import Final

from optimizer.quantities.figures import value

CIRC_MIL: Final = {"14 AWG": 4110, "12 AWG": 6530, "10 AWG": 10380, "8 AWG": 16510}
"""Section of wire; source: NEC chapter 9, table 8."""
TRANSFORMERS_W: Final = (60, 150, 300, 600, 900, 1200)
"""Usual ratings; common practice, no source."""


def drop_v(current_a: float, one_way_ft: float, circ_mil: float, k: float | None = None) -> float:
    """Voltage drop of a load at the end of a run: 2 K I L / CM, copper under load unless K is given."""
    return 2 * (value("copper_k") if k is None else k) * current_a * one_way_ft / circ_mil


def spread_drop_v(load_w: float, one_way_ft: float, constant: float) -> float:
    """Voltage drop of lights spread along a cable at 12 V: watts x feet / the cable's constant."""
    return load_w * one_way_ft / constant


def circuit_wire(one_way_ft: float) -> tuple[str, float]:
    """Least wire of a 20 A circuit that keeps the drop that is advised, or the largest, and the drop as a share."""
    for name, mils in list(CIRC_MIL.items())[1:]:
        share = drop_v(value("circuit_a"), one_way_ft, mils) / value("circuit_v")
        if share <= value("circuit_drop"):
            return name, share
    return name, share


def light_cable(load_w: float, one_way_ft: float) -> tuple[str, float]:
    """Least cable of a string of lights that keeps the drop that they bear, or the largest, and the drop [V]."""
    drop = 0.0
    for name in ("12", "10"):
        drop = spread_drop_v(load_w, one_way_ft, value(f"cable_constant_{name}"))
        if drop <= value("lamp_drop_v"):
            break
    return f"{name} AWG", drop


def transformer_w(load_w: float) -> int | None:
    """Least usual transformer for a load [W]; None where it takes more than one."""
    return next((rated for rated in TRANSFORMERS_W if load_w <= rated * value("transformer_load")), None)
