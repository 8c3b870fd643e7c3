"""From the keys of the finish to what the brief wants, and what is wrong with them."""

from collections.abc import Iterator

from optimizer.brief import Finish, FinishWish, Material
from optimizer.catalogue import material_facts, palette_of
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.finish_schema import MaterialPart
from optimizer.scenario.names import room_names
from optimizer.scenario.schema import ScenarioPart

_PATH: Path = ("brief", "finish")
_PARTS = ("field", "border", "accent", "cap")
_LOOSE = ("loose",)


def build_finish(part: ScenarioPart) -> FinishWish:
    """Finish of a checked file; a border that says nothing takes the material of what it is to be like."""
    given = part.brief.finish
    alike = _materials(part).get(given.like) if given.like else None
    return FinishWish(
        field=_finish(given.field),
        border=_finish(given.border) or (Finish(alike) if alike else None),
        accent=_finish(given.accent),
        cap=_finish(given.cap),
        pattern=given.pattern,
        by_room=tuple(given.by_room.items()),
        like=given.like,
    )


def _finish(part: MaterialPart | None) -> Finish | None:
    return Finish(part.material, part.color) if part else None


def _materials(part: ScenarioPart) -> dict[str, Material | None]:
    """Material of each building and structure by name; None where the file gives none."""
    buildings = {building.name: building.material for building in part.site.buildings}
    return {**buildings, **{structure.name: structure.material for structure in part.site.structures}}


def finish_complaints(scenario: ScenarioPart) -> Iterator[Complaint]:
    """Colors and patterns that a material does not have, and names that nothing has."""
    yield from _colors(scenario)
    yield from _patterns(scenario)
    yield from _cap(scenario)
    yield from _like(scenario)


def _colors(scenario: ScenarioPart) -> Iterator[Complaint]:
    for name in _PARTS:
        part: MaterialPart | None = getattr(scenario.brief.finish, name)
        if part is None or part.color is None:
            continue
        known = [color for color, _ in material_facts(part.material).colors]
        if part.color not in known:
            expected = f"a color of {part.material}: {', '.join(known)}"
            yield Complaint((*_PATH, name, "color"), expected, repr(part.color), "write one of these, or none")


def _patterns(scenario: ScenarioPart) -> Iterator[Complaint]:
    given = scenario.brief.finish
    material = palette_of(FinishWish(field=_finish(given.field))).field.material
    known = material_facts(material).patterns
    laid = [((*_PATH, "pattern"), given.pattern)] if given.pattern else []
    for path, pattern in (*laid, *(((*_PATH, "by_room", room), p) for room, p in given.by_room.items())):
        if pattern not in known:
            expected = f"a pattern that {material} is laid in: {', '.join(known)}"
            yield Complaint(path, expected, repr(pattern), "write one of these, or change the field")
    for room in given.by_room:
        if room not in room_names(scenario):
            advice = "name a room of the brief"
            yield Complaint((*_PATH, "by_room", room), "the name of a room", repr(room), advice, at_key=True)


def _cap(scenario: ScenarioPart) -> Iterator[Complaint]:
    """Refuse a cap of what only lies loose: people sit on it."""
    cap = scenario.brief.finish.cap
    if cap is not None and material_facts(cap.material).patterns == _LOOSE:
        found, advice = f"{cap.material}, which lies loose", "write a material that keeps its place on a wall"
        yield Complaint((*_PATH, "cap", "material"), "a material for the top of seat walls", found, advice)


def _like(scenario: ScenarioPart) -> Iterator[Complaint]:
    like = scenario.brief.finish.like
    materials = _materials(scenario)
    if like is not None and materials.get(like) is None:
        found = f"{like!r} without a material" if like in materials else repr(like)
        advice = "give that building or structure a `material`, or take `like` away"
        yield Complaint((*_PATH, "like"), "the name of a building or structure with a material", found, advice)
