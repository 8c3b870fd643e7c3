"""Where the file differs from the frozen types: other places and names, other forms of values, and limits.

All that is not listed here stands in the file as in its type: a field under its own name, a tuple as a list, pairs of a
name and a figure as an object by name. So a field that is added to a type needs no line here.
"""

import math
import re
from collections.abc import Mapping
from decimal import Decimal
from typing import Annotated, Any, Final, Union

from pydantic import AfterValidator, BeforeValidator, Field, PlainSerializer
from pydantic_core import PydanticCustomError

from optimizer.appraisal import (
    Appraisal,
    CostLine,
    EnclosureMeasures,
    FinishTakeOff,
    GroundMeasures,
    Landing,
    PartyRoom,
    SiteMeasures,
    SmokeShare,
    WayRun,
    WorkZone,
)
from optimizer.catalogue import UnitPrice, price_text
from optimizer.check import Finding
from optimizer.circulation import Leg, Way
from optimizer.concepts import Conflict, LeftOut, Option, OptionSet, SearchRecord, WayOut
from optimizer.concepts.budgets import BudgetPoint, BudgetSet
from optimizer.layout import Layout, Placement
from optimizer.planting import PlantingMeasures

MOST: Final = 10_000
"""Entries of a list or an object."""
LONGEST: Final = 20_000
"""Characters of a text."""
_LARGEST: Final = 1e12
_FARTHEST_FT: Final = 100_000.0
"""No yard reaches farther; geometry on greater numbers loses its exactness."""
_MOST_UNITS: Final = 1e9
"""Of an item on a cost line; products with prices stay exact decimals."""
_MONEY: Final = re.compile(r"-?[0-9]{1,12}\.[0-9]{2}")
_PRICE: Final = re.compile(r"-?[0-9]{1,12}\.[0-9]{2,4}")
_ID: Final = re.compile(r"[A-Za-z0-9_-]*[A-Za-z0-9][A-Za-z0-9_-]*")


def money(amount: Decimal) -> str:
    """Money as text with two decimals."""
    return f"{amount:.2f}"


def _from_money(value: object) -> Decimal:
    if isinstance(value, str) and _MONEY.fullmatch(value):
        return Decimal(value)
    raise _other('money as text with two decimals, such as "1250.00"')


def _from_price(value: object) -> Decimal:
    if isinstance(value, str) and _PRICE.fullmatch(value):
        return Decimal(value)
    raise _other('money as text with two decimals, a share with up to four, such as "0.1250"')


def _checked_id(value: str) -> str:
    # An id becomes part of a file's name and of an address.
    if _ID.fullmatch(value) and len(value) <= 40:
        return value
    raise _other("letters, digits, - and _")


def _finite(value: float) -> float:
    if not math.isfinite(value):
        raise ValueError(f"JSON has no word for {value}")
    return value


def _other(expected: str) -> PydanticCustomError:
    return PydanticCustomError("unexpected", "another value", {"expected": expected})


def _number(largest: float, *, above: float | None = None) -> Any:
    return Annotated[float, Field(strict=True, gt=above, ge=-largest, le=largest), PlainSerializer(_finite)]


# Types are made at run time here and in the schema, which a check of types before that cannot follow.
ANNOTATED: Final[Any] = Annotated
DICT: Final[Any] = dict
TUPLE: Final[Any] = tuple
UNION: Final[Any] = Union

_LENGTH: Final = _number(_FARTHEST_FT)
_SIZE: Final = _number(_FARTHEST_FT, above=0)
_PRICED: Final = ANNOTATED[Decimal, BeforeValidator(_from_price), PlainSerializer(price_text)]

LEAVES: Final[Mapping[Any, Any]] = {
    bool: Annotated[bool, Field(strict=True)],
    int: Annotated[int, Field(strict=True, ge=-_LARGEST, le=_LARGEST)],
    float: _number(_LARGEST),
    str: Annotated[str, Field(strict=True, max_length=LONGEST)],
    Decimal: Annotated[Decimal, BeforeValidator(_from_money), PlainSerializer(money)],
    tuple[float, float]: TUPLE[_LENGTH, _LENGTH],
    object: Any,
}
"""Form of the values that everything else is made of."""

FORMS: Final[Mapping[tuple[type, str], Any]] = {
    (Option, "id"): Annotated[str, Field(strict=True), AfterValidator(_checked_id)],
    (Placement, "x_ft"): _LENGTH,
    (Placement, "y_ft"): _LENGTH,
    (Placement, "width_ft"): _SIZE,
    (Placement, "depth_ft"): _SIZE,
    (Placement, "base_x_ft"): _LENGTH,
    (Placement, "base_y_ft"): _LENGTH,
    (Placement, "base_width_ft"): _SIZE,
    (Placement, "base_depth_ft"): _SIZE,
    (Way, "width_ft"): _LENGTH,
    (Leg, "width_ft"): _LENGTH,
    **dict.fromkeys(((UnitPrice, "price"), (UnitPrice, "low"), (UnitPrice, "high"), (CostLine, "unit_price")), _PRICED),
    # By its shortest text, so that a quantity written as 12.35 comes back as 12.35.
    (CostLine, "quantity"): Annotated[
        _number(_MOST_UNITS), AfterValidator(lambda quantity: Decimal(repr(quantity))), PlainSerializer(float)
    ],
}
"""Fields of another form than their type has elsewhere."""

LIMITS: Final[Mapping[tuple[type, str], int]] = {
    (OptionSet, "options"): 1000,
    (BudgetSet, "options"): 1000,
    (Layout, "placements"): 80,
    (Option, "left_out"): 80,
}
"""Entries of lists that are shorter than others."""

PLACES: Final[Mapping[type, Mapping[str, str]]] = {
    Option: {
        "layout.placements": "rooms",
        "appraisal": "measures",
        "appraisal.cost": "cost",
        "appraisal.ways": "paths",
        "appraisal.legs": "legs",
        "appraisal.trips_ft": "measures.trips",
        "appraisal.sun_h": "measures.sun",
        "appraisal.sight_missed": "measures.sight.missed",
        "appraisal.site": "measures",
        "appraisal.site.sight": "measures.views",
        "level": "finish_level",
    },
    BudgetSet: {
        name: f"search.{name}"
        for name in ("lowest", "highest", "seconds", "seed", "repeatable", "stopped", "layouts_found")
    },
    Placement: {"room": "name"},
    LeftOut: {"room": "name"},
    WorkZone: {"sides_ft": "sides"},
    WayRun: {"start": "between.0", "end": "between.1"},
    SmokeShare: {"source": "from", "place": "at", "share": "season_share"},
    FinishTakeOff: {
        "ways_sqft": "ways.area_sqft",
        "ways_cuts": "ways.cuts",
        "accent_sqft": "accent.area_sqft",
        "accent_cuts": "accent.cuts",
    },
}
"""Fields, also of what a record holds, that stand elsewhere in it; what is inside them goes along."""


def _in_order(*keys: str) -> dict[str, str]:
    return {str(i): key for i, key in enumerate(keys)}


_BETWEEN: Final = _in_order("between.0", "between.1", "length_ft")
_THING: Final = _in_order("name", "choice")
_TWO_SIDES: Final = _in_order("lesser", "wider")
PARTS: Final[Mapping[tuple[type, str], Mapping[str, str]]] = {
    (Appraisal, "trips_ft"): _BETWEEN,
    (BudgetSet, "possible"): _in_order("ceiling", "worth"),
    (BudgetPoint, "rooms"): _THING,
    (BudgetPoint, "enters"): _THING,
    (BudgetPoint, "leaves"): _THING,
    (Appraisal, "sun_h"): _in_order("room", "hours", "missed_h"),
    (SiteMeasures, "sight"): _in_order("from", "of", "kind", "seen_share"),
    (SiteMeasures, "axes"): _in_order("opening", "meets"),
    (SiteMeasures, "focal_point"): {"0.0": "x_ft", "0.1": "y_ft", "1": "ways"},
    (GroundMeasures, "levels"): _in_order("room", "level_ft"),
    (WorkZone, "sides_ft"): _BETWEEN,
    (Landing, "asked_in"): _TWO_SIDES,
    (Landing, "found_in"): _TWO_SIDES,
    (PlantingMeasures, "lawn_rectangle_ft"): _in_order("long", "short"),
    (Conflict, "rules"): _in_order("id", "sentence", "rooms"),
    (WayOut, "patch"): _in_order("op", "path", "value"),
}
"""Tuples whose parts have names in the file."""

NULL_IF_EMPTY: Final = frozenset({(Appraisal, "sun_h"), (Option, "at_levels")})
"""No entry at all means that it was not computed, or not asked for, not that nothing was found."""

EXTRAS: Final[Mapping[type, Mapping[str, str]]] = {
    Option: {"measures.steps": "appraisal.site.ground.risers"},
    Finding: {"sentence": "sentence"},
    SearchRecord: {"gap": "gap"},
    EnclosureMeasures: {"missing": "missing"},
    FinishTakeOff: {"field_order_sqft": "field_order_sqft"},
    PartyRoom: {"standing_each_sqft": "standing_each_sqft"},
}
"""What follows from the fields and is written for other readers; it is not read back."""
