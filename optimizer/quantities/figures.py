"""Constants of the take-off, from the catalogue's data file, each with its source."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from optimizer.brief import Material
from optimizer.catalogue.data_files import data


@dataclass(frozen=True, slots=True)
class Figure:
    """A constant; its unit is in its name."""

    value: float
    meaning: str
    source: str


@dataclass(frozen=True, slots=True)
class BuildUp:
    """What lies under a square foot of a material [in]: its top, bedding sand, and compacted base."""

    top_in: float
    sand_in: float
    base_in: float
    is_concrete: bool
    has_joints: bool

    @property
    def dug_in(self) -> float:
        """Depth that is dug for it where it lies level with the ground [in]."""
        return self.top_in + self.sand_in + self.base_in


@cache
def figure(name: str) -> Figure:
    """Constant of `quantities.yaml`; KeyError for a name that is not there."""
    entry: dict[str, Any] = data("quantities.yaml")[name]
    return Figure(float(entry["value"]), entry["meaning"], entry["source"])


def value(name: str) -> float:
    """Value of a constant."""
    return figure(name).value


@cache
def build_up(material: Material) -> BuildUp:
    """What a material is laid on where people walk."""
    entry: dict[str, Any] = data("build_ups.yaml")[material]
    return BuildUp(
        top_in=float(entry["top_in"]),
        sand_in=value("sand_in") if entry["has_sand"] else 0.0,
        base_in=value("patio_base_in") if entry["has_base"] else 0.0,
        is_concrete=entry["is_concrete"],
        has_joints=entry["joints"],
    )
