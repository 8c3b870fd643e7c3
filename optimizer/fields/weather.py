"""Wind in a file of a typical year's weather (EnergyPlus Weather, EPW), and the rose of some months and hours of it."""

import warnings
from calendar import monthrange
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import IO, Any, Final

import numpy as np
from numpy.typing import NDArray

from optimizer.errors import InputError, Problem
from optimizer.fields.wind import SECTOR_DEG, SECTORS, Floats
from optimizer.site import WindRose

CALM_BELOW_MS: Final = 0.447
"""1 mph: less counts as calm; common practice, no source."""
LEAST_KNOWN: Final = 0.9
"""Share of the asked hours that must have a wind; common practice, no source."""
_PLAIN_YEAR: Final = 2026  # has no leap day
_LARGEST_BYTES: Final = 20_000_000  # ten times a year by the hour
# Directions are often rounded to ten degrees, of which some sectors hold three and some two: each is spread over its
# ten (the fault: J. Air & Waste Manage. Assoc. 58 (2008) 913, doi:10.3155/1047-3289.58.7.913; seen).
_SPREAD_DEG: Final = np.arange(-4.5, 5.0)
_WHOLE_FILE: Final = "get the file again, whole and as a typical year by the hour"


@dataclass(frozen=True, slots=True, eq=False)
class Weather:
    """A year's wind by the hour, arrays of one length.

    `hour` is the middle of each in the file's standard time [h], `from_deg` the bearing that the wind blows from, NaN
    with `speed_ms` [m/s] where the file has none.
    """

    path: str
    latitude: float
    month: NDArray[np.int64]
    hour: Floats
    from_deg: Floats
    speed_ms: Floats


def rose_from_epw(path: Path, months: Sequence[int], from_h: float, to_h: float) -> WindRose:
    """Rose of some months (1 to 12) between two hours of the day in standard time; the hours may run over midnight.

    Raises InputError as `read_weather` and `rose_of` do.
    """
    return rose_of(read_weather(path), months, from_h, to_h)


def read_weather(path: Path) -> Weather:
    """Wind of an EPW file. Raises InputError for a file that cannot be opened or is not one."""
    try:
        with path.open(encoding="utf-8-sig", errors="replace") as file:
            return _read(file, path)
    except OSError as error:
        raise _wrong(
            path, "a weather file", f"one that cannot be opened ({error.strerror})", "check its name"
        ) from None


def rose_of(weather: Weather, months: Sequence[int], from_h: float, to_h: float) -> WindRose:
    """Rose of some months between two hours of the day, as `rose_from_epw`.

    Raises InputError where a month is not there day by day, or too few of the hours have a wind.
    """
    _ask_whole(weather, months)
    inside = np.isin(weather.month, months) & _between(weather.hour, from_h, to_h)
    from_deg, speed_ms = weather.from_deg[inside], weather.speed_ms[inside]
    is_calm, blows = speed_ms < CALM_BELOW_MS, (speed_ms >= CALM_BELOW_MS) & ~np.isnan(from_deg)
    known = is_calm | blows
    _ask_known(weather, known)
    spread_deg = from_deg[blows][:, None] + _SPREAD_DEG
    sectors = np.floor(spread_deg / SECTOR_DEG + 0.5).astype(np.int64) % len(SECTORS)
    counts = np.bincount(sectors.ravel(), minlength=len(SECTORS)) / len(_SPREAD_DEG)
    return WindRose(tuple(float(count) for count in counts / known.sum()))


def _read(file: IO[str], path: Path) -> Weather:
    if path.stat().st_size > _LARGEST_BYTES:
        raise _wrong(path, "a year of weather by the hour", "a much larger file", _WHOLE_FILE)
    head = file.readline(1000)
    if not head.startswith("LOCATION,"):
        found = repr(head[:20]) if head else "an empty file"
        raise _wrong(path, "an EPW file, which begins with LOCATION", found, "give the .epw of a place nearby")
    file.seek(0)
    rows, place = _parsed(file, path)
    from_deg, speed_ms = _numbers(rows["wind_direction"]), _numbers(rows["wind_speed"])
    return Weather(
        str(path),
        place["latitude"],
        rows["month"].to_numpy(),
        rows["hour"].to_numpy() - 0.5,
        np.where((from_deg >= 0) & (from_deg <= 360), from_deg, np.nan),  # 999 stands for missing
        np.where((speed_ms >= 0) & (speed_ms < 99), speed_ms, np.nan),
    )


def _parsed(file: IO[str], path: Path) -> tuple[Any, dict[str, Any]]:
    """Rows and head of an EPW file."""
    from pvlib.iotools import read_epw  # noqa: PLC0415 - it takes a second to import

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # columns of mixed types are told below
            rows, place = read_epw(file)
    except (ValueError, LookupError, TypeError, AttributeError, ArithmeticError):
        found = "rows that do not read as such"
        raise _wrong(path, "an EPW file: 8 lines of head, then a row an hour", found, _WHOLE_FILE) from None
    if rows.empty:
        raise _wrong(path, "a row of weather an hour", "no row", _WHOLE_FILE)
    return rows, place


def _numbers(column: Any) -> Floats:
    import pandas as pd  # noqa: PLC0415 - heavy

    return np.asarray(pd.to_numeric(column, errors="coerce"), dtype=np.float64)


def _between(hour: Floats, from_h: float, to_h: float) -> NDArray[np.bool_]:
    after, before = hour >= from_h, hour < to_h
    return np.asarray(after & before if from_h < to_h else after | before)


def _ask_whole(weather: Weather, months: Sequence[int]) -> None:
    """Raise where the file has not every hour of each month; a leap day may lack or be there."""
    for month in months:
        hours, need = int((weather.month == month).sum()), 24 * monthrange(_PLAIN_YEAR, month)[1]
        if hours < need:
            found = f"{hours} of them" if hours else "none of them"
            raise _wrong(weather.path, f"all {need} hours of month {month}", found, _WHOLE_FILE)


def _ask_known(weather: Weather, known: NDArray[np.bool_]) -> None:
    if len(known) == 0:
        raise _wrong(weather.path, "a window of at least an hour", "no hour in it", "set from and to farther apart")
    if known.mean() < LEAST_KNOWN:
        expected = f"a wind in at least {LEAST_KNOWN:.0%} of the {len(known)} hours asked for"
        raise _wrong(weather.path, expected, f"one in {int(known.sum())}", "take the file of another place nearby")


def _wrong(path: Path | str, expected: str, found: str, advice: str) -> InputError:
    return InputError((Problem(expected, found, advice, str(path)),))
