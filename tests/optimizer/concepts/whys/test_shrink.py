"""The part that is left cannot be kept, and can without any one of its members."""

from hypothesis import given
from hypothesis import strategies as st

from optimizer.concepts.whys.shrink import smallest

CLASHES = st.lists(st.frozensets(st.integers(0, 11), min_size=1, max_size=4), min_size=1, max_size=6)


@given(CLASHES, st.permutations(range(12)))
def test_none_can_be_dropped(clashes, members):
    """With any sets of members that clash."""

    def cannot(kept):
        return any(clash <= set(kept) for clash in clashes)

    left = smallest(members, cannot)
    assert cannot(left)
    assert not any(cannot([one for one in left if one != dropped]) for dropped in left)
    assert list(left) == [one for one in members if one in left]


def test_the_first_are_kept():
    """Of two that clash with a third, the one that stands first stays."""
    assert smallest("abc", lambda kept: "a" in kept and ("b" in kept or "c" in kept)) == ("a", "b")


def test_nothing_is_in_the_way():
    """Where even nothing cannot be kept, nothing is left."""
    assert smallest("abc", lambda kept: True) == ()
