"""All that is kept, in one database."""

from dataclasses import dataclass

from ui.store.answers import Answers
from ui.store.database import database_url, open_engine
from ui.store.decisions import Decisions
from ui.store.finalists import Finalists
from ui.store.revisions import Revisions
from ui.store.searches import Searches


@dataclass(frozen=True, slots=True)
class Store:
    """Versions of yards, searches, finalists, decisions and answers about pairs of one database."""

    revisions: Revisions
    searches: Searches
    finalists: Finalists
    decisions: Decisions
    answers: Answers


def open_store(work: str | None) -> Store:
    """Open what is kept in a folder, or behind a database's URL; None is the user's own folder.

    Raises
    ------
    StoreError
        If it cannot be opened.
    """
    engine = open_engine(database_url(work))
    return Store(Revisions(engine), Searches(engine), Finalists(engine), Decisions(engine), Answers(engine))
