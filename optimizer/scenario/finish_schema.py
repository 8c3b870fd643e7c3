"""Keys of the finish: materials, colors and patterns of the paved ground."""

from collections.abc import Mapping
from typing import Annotated, Any

from pydantic import BeforeValidator, Field

from optimizer.brief import Material, Pattern
from optimizer.scenario.part import Part
from optimizer.scenario.values import Name, unexpected


class MaterialPart(Part):
    """One part of the palette: a material, or a material with its color."""

    material: Material
    """What it is made of."""
    color: Name | None = None
    """Color, by a name that the material has; its usual one where nothing is said."""


def _material(value: Any) -> Any:
    """Take a bare material as one without a color."""
    if isinstance(value, str):
        return {"material": value}
    if not isinstance(value, Mapping):
        raise unexpected("a material", "write it as gravel, or with its color as {material: gravel, color: sand}")
    return value


MaterialKey = Annotated[MaterialPart, BeforeValidator(_material)]


class FinishPart(Part):
    """What the paved ground is finished with; the usual palette where nothing is said."""

    field: MaterialKey | None = None
    """Ground of terraces and ways; its price goes by the material."""
    border: MaterialKey | None = None
    """Course round each terrace."""
    accent: MaterialKey | None = None
    """Turned ground of arrival rooms and where ways meet."""
    cap: MaterialKey | None = None
    """Top of seat walls."""
    pattern: Pattern | None = None
    """What fields are laid in; the usual of the material where nothing is said."""
    by_room: Annotated[dict[Name, Pattern], Field(max_length=40)] = Field(default_factory=dict)
    """Pattern by room; the whole terrace that the room belongs to takes it."""
    like: Name | None = None
    """Building or structure, with a `material`, that the border is to match."""
