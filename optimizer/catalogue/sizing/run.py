"""The pieces of a kitchen: equipment with its landings, shared out over the two legs of an L."""

from dataclasses import dataclass
from itertools import takewhile
from typing import Any, Final

from optimizer.brief import Equipment
from optimizer.catalogue.clearances import INCHES_PER_FT, clearance_ft
from optimizer.catalogue.data_files import data
from optimizer.catalogue.sizing.frame import LEVELS, Level

USUAL: Final = (Equipment("grill"), Equipment("preparation"), Equipment("sink"))
"""Equipment of a kitchen for which the brief names none."""
DRAWERS: Final = ("trash drawer", "storage")
"""What lies under counter that stays free."""
_ORDER: Final = ("preparation", "sink", *DRAWERS, "refrigerator", "ice maker")


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of counter or a piece of equipment in it."""

    role: str
    width_ft: float


@dataclass(frozen=True, slots=True)
class Legs:
    """Pieces along the bar, from the corner outwards, and along the side leg, from its free end to the corner."""

    bar: tuple[Piece, ...]
    side: tuple[Piece, ...]


def legs_of(equipment: tuple[Equipment, ...], level: Level) -> Legs:
    """Hot pieces on the side leg, away from the stools; all others along the bar, as far as one run may reach.

    The modest level takes the corner's counter as the grill's wider landing; the others give it a landing of its own
    where both runs bear it. Wishes that two runs cannot hold are `too_long`.
    """
    plans = (_planned(equipment, planned) for planned in (level, *reversed(LEVELS)))
    return next((legs for legs in plans if not _is_too_long(legs)), _planned(equipment, LEVELS[0]))


def too_long(equipment: tuple[Equipment, ...]) -> bool:
    """Whether even the tightest L of this equipment has a run of counter longer than one may be."""
    return _is_too_long(legs_of(equipment, LEVELS[0]))


def _planned(equipment: tuple[Equipment, ...], level: Level) -> Legs:
    pieces = [(known(item), _piece(item)) for item in equipment or USUAL]
    hot = tuple(piece for entry, piece in pieces if entry["hot"])
    cold = sorted((piece for entry, piece in pieces if not entry["hot"]), key=_from_the_corner)
    bar, over = _split(_with_sink_landing(tuple(cold), level), clearance_ft("counter_run_longest"))
    return Legs(bar, over + _with_landings(hot, level))


def _is_too_long(legs: Legs) -> bool:
    return max(_run_ft(legs.bar), _run_ft(legs.side)) > clearance_ft("counter_run_longest")


def _run_ft(pieces: tuple[Piece, ...]) -> float:
    """Length of a leg with the corner's counter [ft]."""
    return clearance_ft("counter_depth") + length_ft(pieces)


def _from_the_corner(piece: Piece) -> int:
    """Place along the bar: one prepares beside the grill, then come sink, drawers and what is cold."""
    return _ORDER.index(piece.role) if piece.role in _ORDER else len(_ORDER)


def known(item: Equipment) -> dict[str, Any]:
    """Entry of a piece of equipment; an unknown one counts as any other appliance."""
    entries: dict[str, dict[str, Any]] = data("equipment.yaml")
    return entries.get(item.name.strip().lower(), entries["other"])


def equipment_names() -> tuple[str, ...]:
    """Names of equipment that the catalogue knows."""
    return tuple(name for name in data("equipment.yaml") if name != "other")


def is_hot(item: Equipment) -> bool:
    """Whether one cooks over heat at a piece of equipment."""
    return bool(known(item)["hot"])


def length_ft(pieces: tuple[Piece, ...]) -> float:
    """Length of the pieces in a row [ft]."""
    return sum(piece.width_ft for piece in pieces)


def _piece(item: Equipment) -> Piece:
    width = float(known(item)["inches"]) / INCHES_PER_FT if item.width_ft is None else item.width_ft
    return Piece(item.name.strip().lower(), width)


def _with_landings(hot: tuple[Piece, ...], level: Level) -> tuple[Piece, ...]:
    if not hot:
        return ()
    wide, narrow = (
        Piece("counter", clearance_ft("grill_landing_one")),
        Piece("counter", clearance_ft("grill_landing_other")),
    )
    before = wide if level == "generous" else narrow
    after = () if level == "modest" else (wide,)
    return (before, *hot, *after)


def _with_sink_landing(cold: tuple[Piece, ...], level: Level) -> tuple[Piece, ...]:
    """Free counter on the sink's far side at the generous level, where no drawer lies under such counter already."""
    sinks = [number for number, piece in enumerate(cold) if piece.role == "sink"]
    if level != "generous" or not sinks:
        return cold
    after, landing = sinks[-1] + 1, Piece("counter", clearance_ft("sink_landing"))
    drawers = takewhile(lambda piece: piece.role in DRAWERS, cold[after:])
    return cold if length_ft(tuple(drawers)) >= landing.width_ft else (*cold[:after], landing, *cold[after:])


def _split(pieces: tuple[Piece, ...], longest_ft: float) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    """As many of the pieces as fit behind the corner in one run, and the others."""
    kept: list[Piece] = []
    over: list[Piece] = []
    for piece in pieces:
        fits = _run_ft((*kept, piece)) <= longest_ft
        (kept if fits else over).append(piece)
    return tuple(kept), tuple(over)
