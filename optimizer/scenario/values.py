"""Types of single values in a scenario file: lengths, money, clock hours, names. Each says what it expected."""

import re
from collections.abc import Callable
from decimal import Decimal
from typing import Annotated, Any, Final

from pydantic import BeforeValidator, Field, PlainValidator, ValidationInfo, WithJsonSchema
from pydantic_core import PydanticCustomError

from optimizer.units import LENGTH_EXAMPLES, read_length_ft

LONGEST_NAME: Final = 200
_FARTHEST_FT: Final = 1e6
_MOST_MONEY: Final = Decimal(10) ** 12


def unexpected(expected: str, advice: str, found: str | None = None) -> PydanticCustomError:
    """Build the error of a validator that says what was expected, what to do, and what was found (else the value)."""
    # The texts go in as context, so that braces in them stay braces.
    context = {"expected": expected, "advice": advice} | ({} if found is None else {"found": found})
    return PydanticCustomError("unexpected", "expected {expected}", context)


def clock_text(hours: float) -> str:
    """Time of day as the file writes it: 16.5 -> 16:30."""
    minutes = round(60 * hours)
    return f"{minutes // 60:02d}:{minutes % 60:02d}"


def unit_ft(info: ValidationInfo) -> float:
    """One unit of the file's bare numbers [ft], handed in by the reader."""
    return float(info.context["unit_ft"]) if info.context else 1.0


def length_validator(expected: str, accepts: Callable[[float], bool]) -> Callable[[Any, ValidationInfo], float]:
    """Build a validator that reads a length to feet and refuses what `accepts` refuses."""

    def validate(value: Any, info: ValidationInfo) -> float:
        try:
            length_ft = read_length_ft(value, unit_ft=unit_ft(info))
        except ValueError:
            raise unexpected(expected, f"write {LENGTH_EXAMPLES}") from None
        if not accepts(length_ft):
            raise unexpected(expected, "change the sign or the size")
        if abs(length_ft) > _FARTHEST_FT:
            raise unexpected(f"{expected} under 1,000,000 ft", "measure from a corner of the yard")
        return length_ft

    return validate


def _money(value: Any) -> Decimal:
    """Money from a number or from digits in text; cents at most."""
    text = str(value).removesuffix(".0")
    if isinstance(value, bool) or not re.fullmatch(r"[0-9]{1,40}(\.[0-9]{1,2})?", text):
        raise unexpected("an amount of money of at least 0", "write digits only, such as 130000 or 130000.50")
    if Decimal(text) > _MOST_MONEY:
        raise unexpected("an amount of money of at most a million million", "check the digits")
    return Decimal(text)


def _share(value: Any) -> Decimal:
    """Read a share from 0 to 1 without the rounding of binary fractions."""
    if isinstance(value, bool) or not isinstance(value, int | float) or not 0 <= value <= 1:
        raise unexpected("a share from 0 to 1", "write 0.15 for 15 %")
    return Decimal(str(value))


def _clock(value: Any) -> float:
    """Hours since midnight of text such as 16:30."""
    match = re.fullmatch(r"([0-9]{1,2}):([0-5][0-9])", value) if isinstance(value, str) else None
    hours = int(match[1]) + int(match[2]) / 60 if match else 25.0
    if hours > 24:
        raise unexpected('a time of day from "00:00" to "24:00"', 'write it as "16:30"')
    return hours


def _name(value: Any) -> str:
    """Text of 1 to 200 characters that can be printed, without space at its ends."""
    if not isinstance(value, str) or not value.strip():
        raise unexpected("a name", "write text")
    if len(value) > LONGEST_NAME:
        raise unexpected(f"at most {LONGEST_NAME} characters", "shorten it")
    if not value.isprintable():
        raise unexpected("characters that can be printed", "take control characters and line breaks out")
    return value.strip()


_LENGTH_SCHEMA: Final = WithJsonSchema({"anyOf": [{"type": "number"}, {"type": "string"}], "description": "length"})
_MONEY_SCHEMA: Final = WithJsonSchema({"anyOf": [{"type": "number", "minimum": 0}, {"type": "string"}]})
_TIME_SCHEMA: Final = WithJsonSchema({"type": "string", "pattern": "^[0-9]{1,2}:[0-5][0-9]$"})

Coordinate = Annotated[float, PlainValidator(length_validator("a length", lambda _: True)), _LENGTH_SCHEMA]
Distance = Annotated[
    float, PlainValidator(length_validator("a length of at least 0", lambda ft: ft >= 0)), _LENGTH_SCHEMA
]
Size = Annotated[float, PlainValidator(length_validator("a length above 0", lambda ft: ft > 0)), _LENGTH_SCHEMA]
Point = tuple[Coordinate, Coordinate]
Corners = Annotated[tuple[Point, ...], Field(min_length=3, max_length=500)]

Money = Annotated[Decimal, PlainValidator(_money), _MONEY_SCHEMA]
Share = Annotated[Decimal, PlainValidator(_share), WithJsonSchema({"type": "number", "minimum": 0, "maximum": 1})]
ClockHour = Annotated[float, PlainValidator(_clock), _TIME_SCHEMA]
Name = Annotated[str, BeforeValidator(_name), Field(min_length=1, max_length=LONGEST_NAME)]
Count = Annotated[int, Field(ge=0, le=10_000)]
Seats = Annotated[int, Field(ge=0, le=500)]
Number = Annotated[float, Field(ge=0, le=1e9, allow_inf_nan=False)]
Weight = Annotated[float, Field(ge=0, le=100, allow_inf_nan=False)]
Bearing = Annotated[float, Field(ge=-360, le=360, allow_inf_nan=False)]
