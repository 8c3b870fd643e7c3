"""Keys of the finish: materials, colors and patterns of the paved ground."""

from collections.abc import Mapping
from typing import Annotated, Any, Final

from pydantic import BeforeValidator, Field

from optimizer.brief import Material, Pattern
from optimizer.scenario.part import Part
from optimizer.scenario.values import Name, unexpected

MOST_LEVELS: Final = 6
MOST_WORTH_FACTOR: Final = 3.0


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


class FinishLevelPart(Part):
    """A level that the yard may be finished in: what is not said is as for all levels, else as usual for its name."""

    name: Name
    """What it is called: plain, good and fine have usual materials; any other name says its field and worth_factor."""
    field: MaterialKey | None = None
    """Ground of terraces and ways in this level; its price goes by the material."""
    border: MaterialKey | None = None
    """Course round each terrace."""
    accent: MaterialKey | None = None
    """Turned ground of arrival rooms and where ways meet."""
    cap: MaterialKey | None = None
    """Top of seat walls."""
    pattern: Pattern | None = None
    """What fields are laid in."""
    worth_factor: Annotated[float, Field(gt=0, le=MOST_WORTH_FACTOR)] | None = None
    """How many times its worth everything is worth in this level."""


def _level(value: Any) -> Any:
    """Take a bare name as a level of which all is as usual."""
    if isinstance(value, str):
        return {"name": value}
    if not isinstance(value, Mapping):
        raise unexpected("a finish level", "write its name, such as plain, or {name: fine, field: natural flag}")
    return value


LevelKey = Annotated[FinishLevelPart, BeforeValidator(_level)]


class FinishPart(Part):
    """What the paved ground is finished with; the usual palette where nothing is said."""

    field: MaterialKey | None = None
    """Ground of terraces and ways; its price goes by the material. Not beside `levels`, of which each has its own."""
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
    levels: Annotated[tuple[LevelKey, ...], Field(max_length=MOST_LEVELS)] = ()
    """Levels that may be tried: what each budget buys chooses between them, and concepts say what they cost in each."""
    level: Name | None = None
    """Which of them concepts are made in; the usual palette where none is named."""
