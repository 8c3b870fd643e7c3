"""One concept for hand-off, by the ending of the file asked for."""

from collections.abc import Callable
from pathlib import Path
from typing import Final

from optimizer.concepts import Option
from optimizer.errors import InputError, Problem
from optimizer.results import Result, read_result, to_text, write_whole


def write_sheet(result_path: Path, *, option_id: str, out: Path) -> None:
    """Write a concept of a result to a file.

    Raises InputError for an ending or a concept that does not exist, ResultError for a result that cannot be read,
    OutputError where the file cannot be written.
    """
    writer = WRITERS.get(out.suffix.lower())
    if writer is None:
        raise _wrong("a file that ends in " + " or ".join(WRITERS), out.name, "--out", "change the ending")
    result = read_result(result_path)
    option = result.option(option_id)
    if option is None:
        known = ", ".join(option.id for option in result.option_set.options) or "none"
        raise _wrong(f"a concept of {result_path.name}", option_id, "--option", f"it has {known}")
    write_whole(out, writer(result, option))


def _svg(result: Result, option: Option) -> str:
    from optimizer.export import plan_svg
    from optimizer.pipeline import plan_drawing

    return plan_svg(plan_drawing(result.scenario, option))


def _json(result: Result, option: Option) -> str:
    """Give the result with that one concept in it: it stands alone and can be checked again like any other."""
    record = next(record for record in result.document["options"] if record["id"] == option.id)
    return to_text({**result.document, "options": [record]})


WRITERS: Final[dict[str, Callable[[Result, Option], str]]] = {".svg": _svg, ".json": _json}


def _wrong(expected: str, found: str, where: str, advice: str) -> InputError:
    return InputError((Problem(expected, repr(found), advice, where=where),))
