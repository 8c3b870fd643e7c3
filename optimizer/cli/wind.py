"""The wind rose of a weather file, as a line for the scenario."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Final

from optimizer.cli.console import say, say_pairs
from optimizer.errors import InputError, Problem
from optimizer.fields.weather import CALM_BELOW_MS, read_weather, rose_of
from optimizer.fields.wind import SECTORS, calm_share
from optimizer.site import WindRose

NORTHERN_MONTHS: Final = (5, 6, 7, 8, 9)
SOUTHERN_MONTHS: Final = (11, 12, 1, 2, 3)
"""Using season by hemisphere; common practice, no source."""
_STEPS: Final = 10_000  # shares are written to four decimals


def show_wind(path: Path, *, months: str | None, start: str, end: str) -> None:
    """Print the rose of a weather file.

    Raises InputError for months or hours that are none, and for a file that cannot be used.
    """
    asked, from_h, to_h = None if months is None else months_of(months), clock_h(start), clock_h(end)
    if from_h == to_h:
        raise _wrong("two different hours", f"{start} twice", "--from")
    weather = read_weather(path)
    season = asked or (NORTHERN_MONTHS if weather.latitude >= 0 else SOUTHERN_MONTHS)
    rose = rose_of(weather, season, from_h, to_h)
    say(f"# from {path.name}, months {', '.join(map(str, season))}, {start} to {end} standard time; under site:")
    say(rose_line(rose))
    say("")
    say_pairs(_table(rose))


def rose_line(rose: WindRose) -> str:
    """Line of a scenario; shares are rounded down, so that they never add up to more than 1."""
    # What binary fractions lose in a product is put back before rounding down.
    shares = (int(share * _STEPS + 1e-6) / _STEPS for share in rose.shares)
    return f"wind_rose: [{', '.join(f'{share:g}' for share in shares)}]"


def months_of(text: str) -> tuple[int, ...]:
    """Months of text such as 5-9, 11-3 (over the new year) or 4,5,10."""
    found: list[int] = []
    for part in text.split(","):
        match = re.fullmatch(r"\s*([0-9]{1,2})(?:\s*-\s*([0-9]{1,2}))?\s*", part, re.ASCII)
        first, last = (int(match[1]), int(match[2] or match[1])) if match else (0, 0)
        if not (1 <= first <= 12 and 1 <= last <= 12):
            raise _wrong("months from 1 to 12 such as 5-9 or 4,5,10", repr(text), "--months")
        found += [(first - 1 + step) % 12 + 1 for step in range((last - first) % 12 + 1)]
    return tuple(dict.fromkeys(found))


def clock_h(text: str) -> float:
    """Hours since midnight of text such as 16:30."""
    match = re.fullmatch(r"([0-9]{1,2}):([0-5][0-9])", text, re.ASCII)
    hours = int(match[1]) + int(match[2]) / 60 if match else 25.0
    if hours > 24:
        raise _wrong("times of day from 00:00 to 24:00", repr(text), "--from, --to")
    return hours


def _table(rose: WindRose) -> Iterator[tuple[str, str]]:
    yield "from", "share of those hours"
    yield from ((name, f"{share:6.1%}") for name, share in zip(SECTORS, rose.shares, strict=True))
    yield "calm", f"{calm_share(rose):6.1%}  (below {CALM_BELOW_MS:.2f} m/s)"


def _wrong(expected: str, found: str, where: str) -> InputError:
    return InputError((Problem(expected, found, "correct it and repeat the command", where),))
