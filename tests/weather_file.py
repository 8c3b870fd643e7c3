"""An EPW file for tests: its layout is the public one, its place and its weather are invented."""

from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path

HEAD = (
    "LOCATION,Inventia,XX,XXX,invented,000000,{latitude},-83.0,-5.0,250.0\n"
    "DESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\n"
    "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\nCOMMENTS 1,invented\nCOMMENTS 2,\n"
    "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n"
)
HOURS = 8760


def epw_text(
    wind: Callable[[datetime], tuple[float, float]], *, latitude: float = 40.0, hours: int = HOURS, head: str = HEAD
) -> str:
    """Text of a file; `wind` gives the direction [deg] and speed [m/s] of the hour that begins at a time."""
    starts = (datetime(2023, 1, 1, tzinfo=UTC) + timedelta(hours=hour) for hour in range(hours))
    return head.format(latitude=latitude) + "".join(_row(start, *wind(start)) for start in starts)


def write_epw(path: Path, wind: Callable[[datetime], tuple[float, float]], **facts: float) -> Path:
    """Write a file, and give its path."""
    path.write_text(epw_text(wind, **facts), encoding="utf-8")
    return path


def _row(start: datetime, direction: float, speed: float) -> str:
    weather = "20,10,50,99000,0,0,300,0,0,0,0,0,0,0"
    rest = "0,0,20,77777,9,999999999,10,0,0,88,0.2,0,1"
    return f"{start.year},{start.month},{start.day},{start.hour + 1},60,A7,{weather},{direction:g},{speed:g},{rest}\n"
