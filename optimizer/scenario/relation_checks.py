"""What must hold of relations and trips: ends that exist, the figure of the kind, no two that contradict."""

from collections.abc import Iterable, Iterator, Mapping
from itertools import combinations
from typing import Final

from optimizer.brief import RelationKind
from optimizer.scenario.complaints import did_you_mean
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.names import named_things, point_names, room_names, walkable_names
from optimizer.scenario.schema import RelationPart, ScenarioPart

_FIGURE_OF: Final[Mapping[RelationKind, str]] = {"near": "within", "apart": "at_least", "touching": "shared_edge"}
_NEEDED: Final = ("within", "at_least")
_OF_SIGHT: Final = ("in_view", "out_of_view")


def relation_complaints(scenario: ScenarioPart) -> Iterator[Complaint]:
    """All complaints about relations and trips."""
    known = frozenset(name for name, _ in named_things(scenario))
    rooms, points = room_names(scenario), point_names(scenario.site)
    for index, relation in enumerate(scenario.brief.relations):
        path: Path = ("brief", "relations", index)
        yield from _unknown_ends(relation, path, known)
        yield from _unfit_ends(relation, path, rooms, points, walkable_names(scenario) - rooms)
        yield from _figures(relation, path)
    yield from _contradictions(scenario.brief.relations)
    yield from _trips(scenario, known)


def _unknown_ends(relation: RelationPart, path: Path, known: frozenset[str]) -> Iterator[Complaint]:
    """Names that stand for nothing."""
    for place, name in enumerate(relation.between):
        if name not in known:
            advice = did_you_mean(name, known, "name a room or a thing of the site")
            yield Complaint((*path, "between", place), "the name of a room or a thing", repr(name), advice)


def _unfit_ends(
    relation: RelationPart, path: Path, rooms: frozenset[str], points: frozenset[str], openings: frozenset[str]
) -> Iterator[Complaint]:
    """Find ends between which the relation means nothing."""
    first, second = relation.between
    place = (*path, "between")
    if first == second:
        yield Complaint(place, "two different names", f"{first!r} twice", "name the other end")
    elif rooms.isdisjoint(relation.between):
        yield Complaint(place, "one room at least", "two things that stay where they are", "name a room of the brief")
    elif relation.kind == "faces" and first not in rooms:
        yield Complaint((*place, 0), "a room that opens towards the second", repr(first), "name the room first")
    elif relation.kind == "accessible" and openings.isdisjoint(relation.between):
        yield Complaint(place, "a door or entrance and a room", "neither is one", "name where the way starts")
    elif relation.kind == "touching" and not points.isdisjoint(relation.between):
        found = "a door, window, entrance, tree or eye, which has none"
        yield Complaint(place, "two names with edges that can touch", found, "use kind: near with a small `within`")


def _figures(relation: RelationPart, path: Path) -> Iterator[Complaint]:
    """Ask for the figure of the relation's kind, and for no figure of another."""
    own = _FIGURE_OF.get(relation.kind)
    if own in _NEEDED and getattr(relation, own) is None:
        yield Complaint(path, f"`{own}` with kind: {relation.kind}", "nothing", f"add {own}: and a length")
    for kind, figure in _FIGURE_OF.items():
        if kind != relation.kind and getattr(relation, figure) is not None:
            advice = "take it away or correct the kind"
            yield Complaint((*path, figure), f"`{figure}` with kind: {kind} only", f"kind: {relation.kind}", advice)
    if relation.by and relation.kind not in ("near", "apart"):
        advice = "take it away or correct the kind"
        yield Complaint((*path, "by"), "`by` with kind: near or apart only", f"kind: {relation.kind}", advice)
    for key in ("share", "eye"):
        if getattr(relation, key) is not None and relation.kind not in _OF_SIGHT:
            advice = "take it away or correct the kind"
            expected = f"`{key}` with kind: in_view or out_of_view only"
            yield Complaint((*path, key), expected, f"kind: {relation.kind}", advice)


def _contradictions(relations: Iterable[RelationPart]) -> Iterator[Complaint]:
    """Two hard relations of one pair that cannot both hold."""
    hard = [(index, relation) for index, relation in enumerate(relations) if relation.wish is None]
    for (_, first), (index, second) in combinations(hard, 2):
        if set(first.between) == set(second.between) and _contradict(first, second):
            found = f"kind: {second.kind} after kind: {first.kind} for {' and '.join(second.between)}"
            advice = "drop one, change its figure, or make it a wish"
            yield Complaint(
                ("brief", "relations", index), "relations of one pair that can hold together", found, advice
            )


def _contradict(first: RelationPart, second: RelationPart) -> bool:
    """Whether two relations of one pair cannot both hold; a way on foot is never shorter than the straight line."""
    kinds = {first.kind: first, second.kind: second}
    if {"in_view", "out_of_view"} <= kinds.keys():
        return True
    apart = kinds.get("apart")
    if apart is None or apart.by == "walking" or apart.at_least is None:
        return False
    near = kinds.get("near")
    too_near = near is not None and near.within is not None and near.within < apart.at_least
    return too_near or ("touching" in kinds and apart.at_least > 0)


def _trips(scenario: ScenarioPart, known: frozenset[str]) -> Iterator[Complaint]:
    """Trips between two different rooms, doors or entrances."""
    walkable = walkable_names(scenario)
    for index, trip in enumerate(scenario.brief.trips):
        path: Path = ("brief", "trips", index)
        for key, name in (("from", trip.start), ("to", trip.end)):
            if name not in walkable:
                found = f"{name!r}, which is neither" if name in known else repr(name)
                advice = did_you_mean(name, walkable, "name one of these")
                yield Complaint((*path, key), "the name of a room, door or entrance", found, advice)
        if trip.start == trip.end:
            yield Complaint((*path, "to"), "another place than `from`", repr(trip.end), "name where the trip ends")
