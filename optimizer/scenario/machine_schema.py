"""The machine of `site.machine_access`, key by key. Lengths come out in feet."""

from typing import Annotated, Any

from pydantic import PlainValidator, WithJsonSchema

from optimizer.scenario.part import Part
from optimizer.scenario.values import Distance, Size, unexpected


def _grade(value: Any) -> float:
    """Read a rise per run; 20 for 20 % is the usual slip."""
    if isinstance(value, bool) or not isinstance(value, int | float) or not 0 < value <= 1:
        raise unexpected("a slope above 0 and at most 1, as rise per run", "write 0.2 for 20 %")
    return float(value)


Grade = Annotated[
    float,
    PlainValidator(_grade),
    WithJsonSchema({"type": "number", "exclusiveMinimum": 0, "maximum": 1}),
]


class MachinePart(Part):
    """The smallest machine that the builder would bring; a fact of the firm."""

    width: Size
    """Width over all."""
    height: Size
    """Height over all, as it drives."""
    turning_radius: Distance
    """Radius of the middle of its way in its tightest turn; 0 for one that turns on the spot."""
    steepest: Grade
    """Steepest ground that it drives on, as rise per run."""
