"""Answers about pairs of rooms: kept with their version, and nothing is overwritten."""

from optimizer.worths import Answer
from ui.store import open_store

FIRST, SECOND = Answer("kitchen", "fire", "one"), Answer("fire", "nook", "much_other")


def test_answers_are_there_after_a_restart_and_in_what_follows(tmp_path):
    """A version has what was said of those that it comes from, and not what was said of one beside it."""
    store = open_store(str(tmp_path))
    root = store.revisions.open("Larch End", "a")
    store.answers.give(root, FIRST)
    left, right = (store.revisions.save(root, text, text).revision for text in ("b", "c"))
    store.answers.give(left, SECOND)
    again = open_store(str(tmp_path))
    assert again.answers.of_revision(root) == (FIRST,)
    assert again.answers.of_revision(left) == (FIRST, SECOND)
    assert again.answers.of_revision(right) == (FIRST,)
    assert again.answers.of_revision(again.revisions.open("Other", "d")) == ()


def test_the_last_word_on_a_pair_counts(tmp_path):
    """Whichever of the two is named first; what is taken back is as if nobody had asked, in this version alone."""
    store = open_store(str(tmp_path))
    root = store.revisions.open("Larch End", "a")
    store.answers.give(root, FIRST)
    later = store.revisions.save(root, "b", "b").revision
    store.answers.give(later, turned := Answer("fire", "kitchen", "much_one"))
    assert store.answers.of_revision(later) == (turned,)
    store.answers.give(later, SECOND)
    store.answers.give(later, turned)
    assert store.answers.of_revision(later) == (SECOND, turned)
    store.answers.take_back(later, SECOND)
    store.answers.take_back(later, turned)
    assert store.answers.of_revision(later) == ()
    assert store.answers.of_revision(root) == (FIRST,)
