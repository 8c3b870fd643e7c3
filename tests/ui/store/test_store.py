"""What is kept: it is there after a restart, nothing is overwritten, and two who go on from the same point are told."""

import sqlite3
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace

import pytest

from ui.store import Decision, Finalist, SearchRecord, StoreError, data_folder, database_url, ends, open_store
from ui.store.tables import shortened


@pytest.fixture
def store(tmp_path):
    """A store in a folder of its own."""
    return open_store(str(tmp_path / "kept"))


def record(revision, search_id="s1", **changes):
    """A search that has just begun."""
    begun = SearchRecord(
        search_id, revision.id, "options", 20.0, None, 1, "folder", (), was_cut_off=False, began_at=1.0, ended_at=None
    )
    return replace(begun, **changes)


def test_versions_are_there_after_a_restart(store, tmp_path):
    """Another program on the same folder finds yard, versions and their order."""
    first = store.revisions.open("Larch End", "name: Larch End")
    second = store.revisions.save(first, "name: Larch End\n", "All-in limit 120,000").revision
    again = open_store(str(tmp_path / "kept"))
    assert again.revisions.of_yard(first.yard_id) == (first, second)
    (yard,) = again.revisions.yards()
    assert (yard.name, yard.newest_id, yard.versions) == ("Larch End", second.id, 2)
    assert second.parent_id == first.id


def test_prices_are_kept_with_every_version(store):
    """The same text with other prices is another yard; what follows has the prices of what it was made from."""
    plain = store.revisions.open("Larch End", "a")
    priced = store.revisions.open("Larch End", "a", "{}")
    assert priced.yard_id != plain.yard_id
    assert store.revisions.open("Larch End", "a", "{}") == priced
    assert store.revisions.open("Larch End", "a") == plain
    saved = store.revisions.save(priced, "b", "limit").revision
    assert store.revisions.get(saved.id).prices == "{}"


def test_work_of_an_older_program_is_taken_on(tmp_path):
    """Its table of versions knows no prices: they are added, and what is there stays."""
    with sqlite3.connect(tmp_path / "work.db") as old:
        old.execute("CREATE TABLE yards (id INTEGER PRIMARY KEY, name VARCHAR(200) NOT NULL)")
        old.execute(
            "CREATE TABLE revisions (id INTEGER PRIMARY KEY, yard_id INTEGER NOT NULL, parent_id INTEGER, "
            "what VARCHAR(200) NOT NULL, text TEXT NOT NULL, made_at FLOAT NOT NULL)"
        )
        old.execute("INSERT INTO yards VALUES (1, 'Larch End')")
        old.execute("INSERT INTO revisions VALUES (1, 1, NULL, 'Opened', 'a', 1.0)")
    for _ in range(2):
        kept = open_store(str(tmp_path)).revisions.get(1)
        assert (kept.text, kept.prices) == ("a", None)


def test_the_same_text_is_taken_up_where_it_was(store):
    """Opening a file a second time makes no second yard; another text does."""
    first = store.revisions.open("Larch End", "a")
    assert store.revisions.open("Larch End", "a") == first
    assert store.revisions.open("Larch End", "b").yard_id != first.yard_id


def test_a_save_on_a_stale_version_stands_beside_and_says_so(store):
    """Two tabs go on from one version: the second is told of the first, and both versions are kept."""
    first = store.revisions.open("Larch End", "a")
    one = store.revisions.save(first, "b", "tab one")
    other = store.revisions.save(first, "c", "tab two")
    assert one.beside == ()
    assert other.beside == (one.revision,)
    assert ends(store.revisions.of_yard(first.yard_id)) == (one.revision, other.revision)
    assert store.revisions.get(one.revision.id).text == "b"


def test_of_many_who_save_at_once_none_is_lost_and_one_alone_is_not_told(store):
    """Eight saves from eight threads on one version: eight versions, and all but one know that they stand beside."""
    first = store.revisions.open("Larch End", "a")
    with ThreadPoolExecutor(8) as pool:
        saved = list(pool.map(lambda number: store.revisions.save(first, f"b{number}", "at once"), range(8)))
    assert len(ends(store.revisions.of_yard(first.yard_id))) == 8
    assert sorted(len(each.beside) for each in saved) == list(range(8))


def test_files_of_a_search_come_back_byte_for_byte(store, tmp_path):
    """What a search wrote is there after a restart; a newer file of the same name takes the place of the older."""
    revision = store.revisions.open("Larch End", "a")
    store.searches.begin(record(revision))
    store.searches.keep("s1", {"options.json": b"{}", "c1.svg": "Größe".encode()})
    store.searches.keep("s1", {"options.json": b'{"a": 1}'})
    again = open_store(str(tmp_path / "kept")).searches
    assert again.file("s1", "options.json") == b'{"a": 1}'
    assert again.file("s1", "c1.svg").decode() == "Größe"
    assert again.file("s1", "c2.svg") is None
    assert again.file_names("s1") == ("c1.svg", "options.json")


def test_how_a_search_ended_is_kept_once(store):
    """The first end counts: a second server that finds it running must not write over what it said."""
    revision = store.revisions.open("Larch End", "a")
    store.searches.begin(record(revision))
    store.searches.end("s1", said=("one",), was_cut_off=False)
    store.searches.end("s1", said=("two",), was_cut_off=True)
    kept = store.searches.get("s1")
    assert kept.ended_at is not None
    assert (kept.said, kept.was_cut_off) == (("one",), False)
    assert store.searches.of_revision(revision.id, "options") == (kept,)
    assert store.searches.of_revision(revision.id, "budgets") == ()


def test_finalists_keep_name_and_note_through_changes(store, tmp_path):
    """A changed note takes the place of the old one, a dropped finalist is gone, and order stays."""
    revision = store.revisions.open("Larch End", "a")
    store.searches.begin(record(revision))
    one, _ = store.finalists.save(Finalist(revision.yard_id, "s1", "c1", "The court"))
    two, _ = store.finalists.save(Finalist(revision.yard_id, "s1", "c2", "The long one"))
    one, is_beside = store.finalists.save(replace(one, note="Ask about the oak"))
    assert not is_beside
    kept = open_store(str(tmp_path / "kept")).finalists.of_yard(revision.yard_id)
    assert [(each.name, each.note) for each in kept] == [("The court", "Ask about the oak"), ("The long one", "")]
    store.finalists.save(replace(two, is_kept=False))
    assert [each.name for each in store.finalists.of_yard(revision.yard_id)] == ["The court"]
    assert one.parent_id is not None


def test_two_notes_on_one_finalist_are_both_kept(store):
    """Two people write on the same finalist: neither note is lost, and the later is told."""
    revision = store.revisions.open("Larch End", "a")
    store.searches.begin(record(revision))
    seen, _ = store.finalists.save(Finalist(revision.yard_id, "s1", "c1", "The court"))
    _, told_first = store.finalists.save(replace(seen, note="mine"))
    _, told_second = store.finalists.save(replace(seen, note="yours"))
    assert (told_first, told_second) == (False, True)
    assert [each.note for each in store.finalists.of_yard(revision.yard_id)] == ["mine", "yours"]


def test_the_file_is_written_ahead(store, tmp_path):
    """SQLite's write-ahead log is on: who reads does not wait for who writes."""
    with sqlite3.connect(tmp_path / "kept" / "work.db") as connection:
        assert connection.execute("PRAGMA journal_mode").fetchone() == ("wal",)


def test_a_folder_that_is_a_file_is_told(tmp_path):
    """What cannot be opened is one sentence with what to do."""
    (tmp_path / "file").write_text("")
    with pytest.raises(StoreError, match="with --work"):
        open_store(str(tmp_path / "file"))


def test_another_database_is_taken_by_its_url():
    """A URL goes through as it is; one whose driver is not installed is told."""
    assert database_url("postgresql+psycopg://host/yards") == "postgresql+psycopg://host/yards"
    with pytest.raises(StoreError, match="cannot be opened"):
        open_store("nosuchdatabase://host/yards")


def test_the_users_own_folder_follows_the_environment(monkeypatch, tmp_path):
    """XDG Base Directory Specification 0.8: data of a user lies under XDG_DATA_HOME, else ~/.local/share."""
    monkeypatch.setattr("sys.platform", "linux")
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    assert data_folder() == tmp_path / "outdoor-rooms"
    monkeypatch.delenv("XDG_DATA_HOME")
    monkeypatch.setenv("HOME", str(tmp_path))
    assert data_folder() == tmp_path / ".local" / "share" / "outdoor-rooms"


def test_decisions_are_added_and_none_is_lost(store, tmp_path):
    """Each with its version, what, reason and moment, in order, also after a restart; another yard has its own."""
    first, other = store.revisions.open("Larch End", "a"), store.revisions.open("Fir End", "b")
    one = store.decisions.add(Decision(first.yard_id, first.id, "Held: nook", "  The oak's shade  "))
    two = store.decisions.add(Decision(first.yard_id, first.id, "Held: nook"))
    store.decisions.add(Decision(other.yard_id, other.id, "Limit"))
    assert (one.reason, two.reason) == ("The oak's shade", "")
    assert 0 < one.made_at <= two.made_at
    assert open_store(str(tmp_path / "kept")).decisions.of_yard(first.yard_id) == (one, two)


def test_a_reason_is_cut_where_it_is_too_long(store):
    first = store.revisions.open("Larch End", "a")
    kept = store.decisions.add(Decision(first.yard_id, first.id, "w" * 999, "r" * 999))
    assert (len(kept.what), len(kept.reason)) == (200, 500)


@pytest.mark.parametrize(
    ("text", "kept"), [("a limit", "a limit"), ("a longer limit", "a longer …"), ("x" * 12, "xxxxxxxx …")]
)
def test_what_is_said_is_cut_between_words(text, kept):
    """Ten characters at the most, and a mark that something is missing."""
    assert shortened(text, 10) == kept
    assert len(kept) <= 10
