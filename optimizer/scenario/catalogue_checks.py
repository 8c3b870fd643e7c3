"""What the catalogue must know: what a reserve may become, choices, kitchens."""

from collections.abc import Iterator

from optimizer.brief import Brief, Choice, RoomWish
from optimizer.catalogue import most_stools, sized_room, sized_rooms, too_long
from optimizer.errors import ScenarioError
from optimizer.scenario.build import build_brief
from optimizer.scenario.complaints import did_you_mean
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.schema import ScenarioPart


def catalogue_complaints(scenario: ScenarioPart) -> Iterator[Complaint]:
    """All complaints of the catalogue, each at the key that it is about."""
    for index, wish in enumerate(build_brief(scenario).rooms):
        try:
            sized_room(wish)
        except ScenarioError as error:
            yield from _placed(error, ("brief", "rooms", index, "futures"))
        yield from _kitchen(wish, ("brief", "rooms", index))
    yield from _choices(scenario)


def _choices(scenario: ScenarioPart) -> Iterator[Complaint]:
    """Choices in holds and sketches that their room does not have."""
    brief = build_brief(scenario)
    for path, room, choice in _named_choices(scenario):
        labels = _labels_of(brief, room)
        if choice is not None and labels and choice not in labels:
            advice = did_you_mean(choice, labels, f"write one of {', '.join(labels)}")
            yield Complaint((*path, "choice"), f"a choice of {room}", repr(choice), advice)


def _named_choices(scenario: ScenarioPart) -> Iterator[tuple[Path, str, str | None]]:
    """Every room of a hold or a sketch with the choice that it names, and the path of both."""
    for index, hold in enumerate(scenario.brief.holds):
        yield ("brief", "holds", index), hold.room, hold.choice
    for index, sketch in enumerate(scenario.sketches):
        for place, room in enumerate(sketch.rooms):
            yield ("sketches", index, "rooms", place), room.room, room.choice


def _labels_of(brief: Brief, name: str) -> tuple[str, ...]:
    """Labels of a room's choices; none where the catalogue does not know the room."""
    try:
        rooms = sized_rooms(brief)
    except ScenarioError:
        return ()
    return tuple(choice.label for room in rooms if room.name == name for choice in room.choices)


def _kitchen(wish: RoomWish, path: Path) -> Iterator[Complaint]:
    """More stools than one run of counter holds, or more equipment than two do, in the wish or a choice of it."""
    own: tuple[tuple[RoomWish | Choice, Path], ...] = ((wish, path),)
    choices = ((choice, (*path, "choices", number)) for number, choice in enumerate(wish.choices))
    for part, place in (*own, *choices):
        if part.bar_seats > most_stools():
            advice = "seat the others at a table; a run of counter is at most 16 ft long"
            found = str(part.bar_seats)
            yield Complaint((*place, "bar_seats"), f"at most {most_stools()} seats at a bar", found, advice)
        if too_long(part.equipment):
            found = f"more in {wish.name}"
            yield Complaint((*place, "equipment"), "what two runs of counter of 16 ft hold", found, "leave a piece out")


def _placed(error: ScenarioError, path: Path) -> Iterator[Complaint]:
    """Complaints of an error that does not know the file, at a path of it."""
    for problem in error.problems:
        yield Complaint(path, problem.expected, problem.found, problem.advice)
