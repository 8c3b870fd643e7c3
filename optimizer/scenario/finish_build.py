"""From the keys of the finish to what the brief wants, and what is wrong with them."""

from collections.abc import Iterator, Sequence
from typing import Any

from optimizer.brief import Finish, FinishLevel, FinishWish, Material
from optimizer.catalogue import PALETTE_PARTS, material_facts, palette_of, usual_level, usual_levels
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.finish_schema import FinishLevelPart, FinishPart, MaterialPart
from optimizer.scenario.names import room_names
from optimizer.scenario.schema import ScenarioPart

_PATH: Path = ("brief", "finish")
_LEVELS: Path = (*_PATH, "levels")
_LOOSE = ("loose",)


def build_finish(part: ScenarioPart) -> FinishWish:
    """Finish of a checked file: that of the level that it names, else of its own parts."""
    levels = {level.name: level.finish for level in build_levels(part)}
    return levels.get(part.brief.finish.level or "", _own(part))


def build_levels(part: ScenarioPart) -> tuple[FinishLevel, ...]:
    """Levels of a checked file, each with all of its palette."""
    own = _own(part)
    return tuple(_level(level, own) for level in part.brief.finish.levels)


def _level(part: FinishLevelPart, own: FinishWish) -> FinishLevel:
    """A level: what it says itself, else what the file says for all, else what is usual for its name."""
    usual = usual_level(part.name) or FinishLevel(part.name, FinishWish(), 1.0)
    said: dict[str, Any] = {
        name: _finish(getattr(part, name)) or getattr(own, name) or getattr(usual.finish, name)
        for name in PALETTE_PARTS
    }
    wish = FinishWish(
        **said,
        pattern=part.pattern or own.pattern,
        by_room=own.by_room,
        like=None if part.border else own.like,
    )
    return FinishLevel(part.name, wish, usual.worth_factor if part.worth_factor is None else part.worth_factor)


def _own(part: ScenarioPart) -> FinishWish:
    """Finish that is said for all levels; a border that says nothing takes the material of what it is to be like."""
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
    """Colors and patterns that a material does not have, levels that say too little, names that nothing has."""
    given = scenario.brief.finish
    palettes: list[tuple[Path, FinishPart | FinishLevelPart]] = [(_PATH, given)]
    palettes += [((*_LEVELS, index), level) for index, level in enumerate(given.levels)]
    for path, part in palettes:
        yield from _colors(path, part)
        yield from _cap(path, part)
    yield from _patterns(scenario)
    yield from _like(scenario)
    yield from _level_names(given)
    yield from _levels_of_their_own(given)


def _colors(path: Path, palette: FinishPart | FinishLevelPart) -> Iterator[Complaint]:
    for name in PALETTE_PARTS:
        part: MaterialPart | None = getattr(palette, name)
        if part is None or part.color is None:
            continue
        known = [color for color, _ in material_facts(part.material).colors]
        if part.color not in known:
            expected = f"a color of {part.material}: {', '.join(known)}"
            yield Complaint((*path, name, "color"), expected, repr(part.color), "write one of these, or none")


def _patterns(scenario: ScenarioPart) -> Iterator[Complaint]:
    """Patterns that a field is not laid in: of the file's own finish, or of each of its levels; each said once."""
    given, seen = scenario.brief.finish, set[Path]()
    for at, level, wish in _wishes(scenario):
        material = palette_of(wish).field.material
        known, of_level = material_facts(material).patterns, f", the field of {level}," if level else ""
        laid = [((*at, "pattern"), wish.pattern)] if wish.pattern else []
        for path, pattern in (*laid, *(((*_PATH, "by_room", room), p) for room, p in wish.by_room)):
            if pattern not in known and path not in seen:
                seen.add(path)
                expected = f"a pattern that {material}{of_level} is laid in: {', '.join(known)}"
                yield Complaint(path, expected, repr(pattern), "write one of these, or change the field")
    for room in given.by_room:
        if room not in room_names(scenario):
            advice = "name a room of the brief"
            yield Complaint((*_PATH, "by_room", room), "the name of a room", repr(room), advice, at_key=True)


def _wishes(scenario: ScenarioPart) -> Iterator[tuple[Path, str, FinishWish]]:
    """Finishes that the ground may have, each with where its pattern is said and the name of its level."""
    given = scenario.brief.finish
    if given.level is None:
        yield _PATH, "", _own(scenario)
    for index, (said, level) in enumerate(zip(given.levels, build_levels(scenario), strict=True)):
        yield (*_LEVELS, index) if said.pattern else _PATH, level.name, level.finish


def _cap(path: Path, palette: FinishPart | FinishLevelPart) -> Iterator[Complaint]:
    """Refuse a cap of what only lies loose: people sit on it."""
    cap = palette.cap
    if cap is not None and material_facts(cap.material).patterns == _LOOSE:
        found, advice = f"{cap.material}, which lies loose", "write a material that keeps its place on a wall"
        yield Complaint((*path, "cap", "material"), "a material for the top of seat walls", found, advice)


def _like(scenario: ScenarioPart) -> Iterator[Complaint]:
    like = scenario.brief.finish.like
    materials = _materials(scenario)
    if like is not None and materials.get(like) is None:
        found = f"{like!r} without a material" if like in materials else repr(like)
        advice = "give that building or structure a `material`, or take `like` away"
        yield Complaint((*_PATH, "like"), "the name of a building or structure with a material", found, advice)


def _level_names(given: FinishPart) -> Iterator[Complaint]:
    """Levels of one name, and a chosen level that is not offered."""
    names = [level.name for level in given.levels]
    for index, name in enumerate(names):
        if name in names[:index]:
            advice = "take one of the two away, or give it another name"
            yield Complaint((*_LEVELS, index), "each finish level once", f"{name!r} twice", advice)
    if given.level is not None and given.level not in names:
        yield Complaint((*_PATH, "level"), *_not_offered(names, given.level))


def _not_offered(names: Sequence[str], level: str) -> tuple[str, str, str]:
    if names:
        return f"one of the levels {', '.join(names)}", repr(level), "write one of these, or add it to `levels`"
    advice = f"write levels: [{', '.join(usual_levels())}] beside it, or take `level` away"
    return "a level that `levels` offers", f"{level!r} and no levels", advice


def _levels_of_their_own(given: FinishPart) -> Iterator[Complaint]:
    """Levels that have no usual name and say too little, and a field for all of them, which would make them alike."""
    for index, level in enumerate(given.levels):
        missing = [key for key in ("field", "worth_factor") if getattr(level, key) is None]
        if usual_level(level.name) is None and missing:
            expected = f"a usual level ({', '.join(usual_levels())}), or one with a field and a worth_factor of its own"
            found = f"{level.name!r} without {' and '.join(missing)}"
            advice = f"write {{name: {level.name}, field: clay brick, worth_factor: 1.05}} with your own values"
            yield Complaint((*_LEVELS, index), expected, found, advice)
    if given.levels and given.field is not None:
        advice = "write it into the level that it belongs to: levels differ by their field"
        yield Complaint((*_PATH, "field"), "no field beside levels", given.field.material, advice)
