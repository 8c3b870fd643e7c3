"""Where a scenario's own price book lies, and reading it."""

from pathlib import Path
from typing import Final

from optimizer.catalogue import PriceBook
from optimizer.errors import Problem, ScenarioError
from optimizer.scenario.document import read_document
from optimizer.scenario.files import LARGEST_BYTES, encoded, text_of, too_large
from optimizer.scenario.price_checks import book_of
from optimizer.scenario.price_file import rows_of

ENDINGS: Final = (".yaml", ".yml", ".json", ".csv")
_THING: Final = "a price book"


def load_price_book(path: Path, currency: str) -> PriceBook:
    """Read and check a firm's price book for a scenario in a currency.

    Raises
    ------
    ScenarioError
        With every problem found, each with file:line:column.
    """
    _refuse_other_endings(path)
    return read_price_book(text_of(path, str(path), _THING), str(path), currency)


def read_price_book(text: str, name: str, currency: str) -> PriceBook:
    """Read and check the text of a price book; `name` stands for the file, and its ending says how it is read.

    Raises
    ------
    ScenarioError
        With every problem found, each with file:line:column.
    """
    if len(encoded(text, name)) > LARGEST_BYTES:
        raise ScenarioError((too_large(name),))
    return book_of(rows_of(text, name), currency=currency)


def beside(scenario: Path, named: str) -> Path:
    """File that a scenario names: in its own folder or below, nowhere else, whatever links lie there.

    Raises
    ------
    ScenarioError
        If it lies elsewhere.
    """
    folder, expected = scenario.parent, f"{_THING} in the scenario's folder"
    advice = "put the file beside the scenario and give its name alone"
    if "\\" in named or "\0" in named or Path(named).is_absolute() or ".." in Path(named).parts:
        raise ScenarioError((Problem(expected, repr(named), advice),))
    try:
        is_inside = (folder / named).resolve().is_relative_to(folder.resolve())
    except (OSError, RuntimeError):
        is_inside = False
    if not is_inside:
        raise ScenarioError((Problem(expected, f"{named!r}, which leads elsewhere", advice),))
    return folder / named


def files_beside(scenario: Path) -> dict[str, bytes]:
    """Content of the price book that a scenario names, under its name there: for whoever takes both elsewhere. None
    where there is none that could be read; what is wrong with it is said by whoever reads it.
    """
    try:
        data = read_document(text_of(scenario, str(scenario)), str(scenario)).data
        named = data.get("prices") if isinstance(data, dict) else None
        return {named: beside(scenario, named).read_bytes()} if isinstance(named, str) else {}
    except (ScenarioError, OSError):
        return {}


def _refuse_other_endings(path: Path) -> None:
    if path.suffix.lower() not in ENDINGS:
        expected = f"{_THING} that ends in {', '.join(ENDINGS)}"
        raise ScenarioError((Problem(expected, repr(path.name), "save it as CSV or YAML", str(path)),))
