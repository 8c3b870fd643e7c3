"""What the catalogue must know: the prices' currency, and what a reserve may become."""

from collections.abc import Iterator

from optimizer.catalogue import book_for, sized_room
from optimizer.errors import ScenarioError
from optimizer.scenario.build import build_brief
from optimizer.scenario.document import Complaint, Path
from optimizer.scenario.schema import ScenarioPart


def catalogue_complaints(scenario: ScenarioPart) -> Iterator[Complaint]:
    """All complaints of the catalogue, each at the key that it is about."""
    try:
        book_for(scenario.currency)
    except ScenarioError as error:
        yield from _placed(error, ("currency",))
    for index, wish in enumerate(build_brief(scenario).rooms):
        try:
            sized_room(wish)
        except ScenarioError as error:
            yield from _placed(error, ("brief", "rooms", index, "futures"))


def _placed(error: ScenarioError, path: Path) -> Iterator[Complaint]:
    """Complaints of an error that does not know the file, at a path of it."""
    for problem in error.problems:
        yield Complaint(path, problem.expected, problem.found, problem.advice)
