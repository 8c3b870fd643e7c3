"""The pieces of a kitchen: equipment with its landings, shared out over the two legs of an L."""

from dataclasses import dataclass
from typing import Any, Final

from optimizer.brief import Equipment
from optimizer.catalogue.clearances import INCHES_PER_FT, clearance_ft
from optimizer.catalogue.data_files import data
from optimizer.catalogue.sizing.frame import Level

USUAL: Final = (Equipment("grill"), Equipment("preparation"), Equipment("sink"))
"""Equipment of a kitchen for which the brief names none."""


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

    The modest level takes the corner's counter as the grill's wider landing; the others give it a landing of its own.
    """
    pieces = [(known(item), _piece(item)) for item in equipment or USUAL]
    hot = tuple(piece for entry, piece in pieces if entry["hot"])
    cold = tuple(piece for entry, piece in pieces if not entry["hot"])
    bar, over = _split(cold + _landings_of_cold(cold, level), clearance_ft("counter_run_longest"))
    return Legs(bar, over + _with_landings(hot, level))


def known(item: Equipment) -> dict[str, Any]:
    """Entry of a piece of equipment; an unknown one counts as any other appliance."""
    entries: dict[str, dict[str, Any]] = data("equipment.yaml")
    return entries.get(item.name.strip().lower(), entries["other"])


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


def _landings_of_cold(cold: tuple[Piece, ...], level: Level) -> tuple[Piece, ...]:
    """Free counter at the end of the bar's run beyond what the equipment needs."""
    has_sink = any(piece.role == "sink" for piece in cold)
    return (Piece("counter", clearance_ft("sink_landing")),) if has_sink and level == "generous" else ()


def _split(pieces: tuple[Piece, ...], longest_ft: float) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    """As many of the pieces as fit behind the corner in one run, and the others."""
    kept: list[Piece] = []
    over: list[Piece] = []
    for piece in pieces:
        fits = clearance_ft("counter_depth") + length_ft((*kept, piece)) <= longest_ft
        (kept if fits else over).append(piece)
    return tuple(kept), tuple(over)
