"""What a reserve may become, and what brings it in: figures of `futures.yaml` and `access.yaml`."""

from dataclasses import dataclass
from functools import cache
from typing import Any, Literal, get_args

from optimizer.brief import RoomWish
from optimizer.catalogue.data_files import data
from optimizer.site import Machine

Surface = Literal["lawn", "gravel", "hard paving", "bed", "pavers"]
"""Ground that a machine may drive over. Hard paving bears it; all else is taken up and put back."""
SURFACES: tuple[Surface, ...] = get_args(Surface)


@dataclass(frozen=True, slots=True)
class Vehicle:
    """What drives in, as a rigid rectangle that turns about a point beside its middle [ft]; `steepest` is rise per run.

    A machine on tracks turns so, and a cart on an axle in its middle. One that steers with its front wheels sweeps less
    on its outer side and more on its inner one; common practice, no source.
    """

    name: str
    width_ft: float
    length_ft: float
    height_ft: float
    turning_radius_ft: float
    steepest: float


@dataclass(frozen=True, slots=True)
class FutureKind:
    """What may be built later: `needs` with deck and service space and `body` the water, long sides first [ft]."""

    name: str
    needs_ft: tuple[float, float]
    body_ft: tuple[float, float]
    item: str
    is_dug: bool
    runs: tuple[str, ...]
    """Supplies that are led to it."""
    comes: tuple[str, ...]
    """Names of vehicles, the one that a builder would rather bring first."""


@cache
def future_kind(name: str) -> FutureKind:
    """The future of that name; KeyError for a name that is not in the data file."""
    entry: dict[str, Any] = data("futures.yaml")[name]
    needs, body = (tuple(sorted(map(float, entry[key]), reverse=True)) for key in ("needs", "body"))
    return FutureKind(
        name=name,
        needs_ft=(needs[0], needs[1]),
        body_ft=(body[0], body[1]),
        item=entry["item"],
        is_dug=entry["dug"],
        runs=tuple(entry["runs"]),
        comes=tuple(entry["comes"]),
    )


def futures_of_wish(wish: RoomWish) -> tuple[FutureKind, ...]:
    """What the brief says that a reserve may become, each once; names that nobody knows are left out."""
    names = dict.fromkeys(name.strip().lower() for name in wish.futures)
    return tuple(future_kind(name) for name in names if name in data("futures.yaml"))


def vehicle(name: str, machine: Machine | None = None) -> Vehicle:
    """The vehicle of that name; the builder's smallest machine, where the scenario tells it, in place of a small one.

    No length is told of that machine: it keeps the usual one, or is as long as it is wide.
    """
    entry = dict(data("access.yaml")["vehicles"][name])
    if not entry.pop("small", False) or machine is None:
        return Vehicle(name, *(float(entry[key]) for key in _KEYS))
    length_ft = max(float(entry["length"]), machine.width_ft)
    return Vehicle(name, machine.width_ft, length_ft, machine.height_ft, machine.turning_radius_ft, machine.steepest)


def smallest_machine(machine: Machine | None = None) -> Vehicle:
    """The builder's smallest machine, where the scenario tells it, else the usual one."""
    vehicles = data("access.yaml")["vehicles"]
    return vehicle(next(name for name, entry in vehicles.items() if entry.get("small")), machine)


_KEYS = ("width", "length", "height", "turning_radius", "steepest")


def roughness(surface: Surface) -> float:
    """How many feet on lawn a machine drives rather than one foot on this."""
    return float(data("access.yaml")["rough"][surface])


@dataclass(frozen=True, slots=True)
class LaterRates:
    """What money does until a later phase: rates are of a year, `dearer` is what work in a finished yard costs more."""

    years: float
    escalation: float
    discount: float
    dearer: float

    @property
    def present_share(self) -> float:
        """Present money that a unit of today's prices is worth if it is spent in the later phase:
        ((1 + escalation) / (1 + discount)) ^ years.
        """
        return float(((1 + self.escalation) / (1 + self.discount)) ** self.years)


@cache
def later() -> LaterRates:
    """The rates of `later.yaml`."""
    return LaterRates(**{key: float(value) for key, value in data("later.yaml").items()})
