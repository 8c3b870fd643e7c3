"""Work that is kept: yards with their versions, searches with what they wrote, finalists with names and notes,
decisions with their reasons, and answers about pairs of rooms.

What is kept is only ever added to. Two tabs, or two people, that go on from the same version make two versions, so that
neither loses anything.
"""

from ui.store.answers import Answers
from ui.store.database import StoreError, data_folder, database_url, open_engine
from ui.store.decisions import LONGEST_REASON, Decision, Decisions
from ui.store.finalists import Finalist, Finalists
from ui.store.revisions import Revision, Revisions, Saved, Yard, ends, line
from ui.store.searches import Searches, SearchRecord
from ui.store.store import Store, open_store

__all__ = [
    "LONGEST_REASON",
    "Answers",
    "Decision",
    "Decisions",
    "Finalist",
    "Finalists",
    "Revision",
    "Revisions",
    "Saved",
    "SearchRecord",
    "Searches",
    "Store",
    "StoreError",
    "Yard",
    "data_folder",
    "database_url",
    "ends",
    "line",
    "open_engine",
    "open_store",
]
