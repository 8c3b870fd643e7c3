"""Reading a scenario: text to values, values to schema, cross checks, and all that is wrong told at once."""

import hashlib
from collections.abc import Iterator
from pathlib import Path as FilePath
from typing import Any, Final

from pydantic import ValidationError

from optimizer.errors import Problem, ScenarioError
from optimizer.scenario.build import build_brief, build_site, build_sketch
from optimizer.scenario.catalogue_checks import catalogue_complaints
from optimizer.scenario.circle_checks import circle_complaints
from optimizer.scenario.complaints import complaints_of, is_unknown_key
from optimizer.scenario.document import Complaint, Document, Path, read_document
from optimizer.scenario.finish_build import finish_complaints
from optimizer.scenario.hold_checks import hold_complaints
from optimizer.scenario.relation_checks import relation_complaints
from optimizer.scenario.room_checks import room_complaints
from optimizer.scenario.scenario import Scenario
from optimizer.scenario.schema import ScenarioPart, is_newer
from optimizer.scenario.site_checks import site_complaints
from optimizer.scenario.sketch_checks import sketch_complaints
from optimizer.units import feet_from_metres

LARGEST_BYTES: Final = 1_000_000
MOST_CELLS: Final = 2_000_000
_WIDEST_STEP_FT: Final = 10.0
"""Beyond the depth of small rooms hardly any place is left on the grid; common practice, no source."""


def load_scenario(path: FilePath | str) -> Scenario:
    """Read and check a scenario file.

    Raises
    ------
    ScenarioError
        With every problem found, each with file:line:column.
    """
    name = str(path)
    return read_scenario(_text(_bytes(FilePath(path), name), name), name)


def read_scenario(text: str, name: str) -> Scenario:
    """Read and check the text of a scenario; `name` stands for the file in messages.

    Raises
    ------
    ScenarioError
        With every problem found, each with file:line:column.
    """
    if len(_encoded(text, name)) > LARGEST_BYTES:
        raise ScenarioError((_too_large(name),))
    document = read_document(text, name)
    part = _checked(document)
    return Scenario(
        name=part.name,
        units=part.units,
        currency=part.currency,
        site=build_site(part.site),
        brief=build_brief(part),
        sketches=tuple(build_sketch(sketch) for sketch in part.sketches),
        text=text,
        digest=hashlib.sha256(_encoded(text, name)).hexdigest(),
    )


def _checked(document: Document) -> ScenarioPart:
    """Give what a document holds, once nothing is wrong with it."""
    part, schema_complaints = _validated(document.data)
    complaints = (*document.complaints, *schema_complaints, *(_cross_checks(part) if part else ()))
    if complaints or part is None:
        in_order = sorted(complaints, key=document.place)
        raise ScenarioError(tuple(document.problem(complaint) for complaint in in_order))
    return part


def _validated(data: Any) -> tuple[ScenarioPart | None, tuple[Complaint, ...]]:
    """Scenario as the schema sees it, and what is wrong; both where nothing but unknown keys is in the way."""
    context = {"unit_ft": feet_from_metres(1.0) if isinstance(data, dict) and data.get("units") == "m" else 1.0}
    try:
        return ScenarioPart.model_validate(data, context=context), ()
    except ValidationError as error:
        details = error.errors(include_url=False)
        complaints = complaints_of(error)
    if isinstance(data, dict) and is_newer(data.get("schema_version")):
        # In another version other keys are right: complaining of them would mislead.
        return None, tuple(complaint for complaint in complaints if complaint.path == ("schema_version",))
    unknown = {detail["loc"] for detail in details if is_unknown_key(detail)}
    if len(unknown) < len(details):
        return None, complaints
    return ScenarioPart.model_validate(_without(data, unknown, ()), context=context), complaints


def _without(value: Any, unknown: set[Path], path: Path) -> Any:
    """Give the same values less the keys at some paths."""
    if isinstance(value, dict):
        kept = {key: inner for key, inner in value.items() if (*path, key) not in unknown}
        return {key: _without(inner, unknown, (*path, key)) for key, inner in kept.items()}
    if isinstance(value, tuple):
        return tuple(_without(inner, unknown, (*path, index)) for index, inner in enumerate(value))
    return value


def _cross_checks(part: ScenarioPart) -> Iterator[Complaint]:
    """All complaints about how the parts of a scenario fit together."""
    yield from site_complaints(part)
    yield from room_complaints(part)
    yield from relation_complaints(part)
    yield from hold_complaints(part)
    yield from sketch_complaints(part)
    yield from circle_complaints(part)
    yield from catalogue_complaints(part)
    yield from finish_complaints(part)
    yield from _cells(part)


def _cells(part: ScenarioPart) -> Iterator[Complaint]:
    """Refuse a grid of more cells than the fields can hold."""
    step = build_brief(part).options.grid_step
    step_ft = step if part.units == "ft" else feet_from_metres(step)
    xs, ys = zip(*part.site.boundary.corners, strict=True)
    cells = (max(xs) - min(xs)) / step_ft * ((max(ys) - min(ys)) / step_ft)
    path: Path = ("options", "grid_step")
    if step_ft > _WIDEST_STEP_FT:
        found = f"{step_ft:,.6g} ft"
        yield Complaint(
            path, f"a grid_step of at most {_WIDEST_STEP_FT:g} ft", found, "rooms lie on the grid: take 1 ft"
        )
    if cells > MOST_CELLS:
        yield Complaint(path, f"at most {MOST_CELLS:,} grid cells", f"{cells:,.0f}", "take a larger grid_step")


def _bytes(path: FilePath, name: str) -> bytes:
    """Content of a file, no more of it than is allowed."""
    try:
        with path.open("rb") as file:
            content = file.read(LARGEST_BYTES + 1)
    except IsADirectoryError:
        raise ScenarioError((Problem("a scenario file", "a folder", "name a file in it", name),)) from None
    except FileNotFoundError:
        raise ScenarioError((Problem("a scenario file", "nothing of that name", "check the path", name),)) from None
    except (OSError, ValueError) as error:
        found = f"one that cannot be opened ({getattr(error, 'strerror', None) or error})"
        raise ScenarioError((Problem("a scenario file", found, "check its permissions and its name", name),)) from None
    if len(content) > LARGEST_BYTES:
        raise ScenarioError((_too_large(name),))
    return content


def _text(content: bytes, name: str) -> str:
    """Content as text."""
    try:
        return content.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        column = error.start - content.rfind(b"\n", 0, error.start)
        found = f"the byte 0x{content[error.start]:02X}"
        problem = Problem("text in UTF-8", found, "save the file as UTF-8", f"{name}:{line}:{column}")
        raise ScenarioError((problem,)) from None


def _encoded(text: str, name: str) -> bytes:
    """Text in UTF-8; half a character, which JSON can bring in by way of a result, has no place in it."""
    try:
        return text.encode()
    except UnicodeEncodeError as error:
        found = f"half of a character, U+{ord(text[error.start]):04X}"
        raise ScenarioError((Problem("text in UTF-8", found, "save the text as UTF-8", name),)) from None


def _too_large(name: str) -> Problem:
    """Say that a file is too large."""
    return Problem("a file of at most 1 MB", "a larger one", "take out what does not belong to the yard", name)
