"""Arguments and options that several commands share, with the limits of their values."""

from pathlib import Path
from typing import Annotated, Final

import typer

MOST_CONCEPTS: Final = 100
SHORTEST_S: Final = 0.1
LONGEST_S: Final = 86_400.0
MOST_MONEY: Final = 1e12


def search_time(value: float) -> float:
    """Seconds of a search. Raises BadParameter for too few, too many, or what is no number."""
    # Not by the parser's own limits, which let through what is no number.
    if not SHORTEST_S <= value <= LONGEST_S:
        raise typer.BadParameter(f"expected {SHORTEST_S:g} to {LONGEST_S:g} seconds, found {value:g}.")
    return value


def money(value: float | None) -> float | None:
    """An amount above 0, or None. Raises BadParameter for any other."""
    if value is not None and not 0 < value <= MOST_MONEY:
        raise typer.BadParameter(f"expected an amount of money above 0, found {value:g}.")
    return value


def progress_form(value: str) -> str:
    """How progress is told. Raises BadParameter for an unknown form."""
    if value not in {"bar", "json"}:
        raise typer.BadParameter(f"expected bar or json, found {value!r}.")
    return value


ScenarioArgument = Annotated[Path, typer.Argument(metavar="SCENARIO", help="Scenario file (YAML or JSON).")]
ResultArgument = Annotated[Path, typer.Argument(metavar="RESULT", help="The options.json of a run.")]
OutOption = Annotated[Path, typer.Option("--out", metavar="DIR", help="Folder to write to; made where it is missing.")]
CountOption = Annotated[
    int | None, typer.Option(min=1, max=MOST_CONCEPTS, help="How many concepts; else as the scenario says.")
]
SecondsOption = Annotated[float, typer.Option(callback=search_time, help="How long to search, for each yard.")]
SeedOption = Annotated[int | None, typer.Option(min=0, max=2**31 - 1, help="Else as the scenario says.")]
FromOption = Annotated[
    Path | None, typer.Option("--from", metavar="RESULT", help="An earlier options.json to start from.")
]
PricesOption = Annotated[
    Path | None,
    typer.Option("--prices", metavar="FILE", help="Price book of your own (.csv, .yaml); else as the scenario says."),
]
ProgressOption = Annotated[
    str, typer.Option(metavar="bar|json", callback=progress_form, help="A bar, or one JSON object a line.")
]
