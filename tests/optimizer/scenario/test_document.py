"""YAML and JSON to plain values that keep their places."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from optimizer.errors import ScenarioError
from optimizer.scenario.document import read_document


def refusal(text):
    """Text of the error that reading a text raises."""
    with pytest.raises(ScenarioError) as caught:
        read_document(text, "yard.yaml")
    return str(caught.value)


def test_only_numbers_truth_and_nothing_change_their_type():
    """What older YAML turns into other things stays text: no, 12:30, dates, 1_000, hexadecimal."""
    text = "[no, yes, on, 12:30, 2024-01-02, 1_000, 0x1F, .nan, .inf, 1e3, 7, -2.5, .5, true, false, null, ~, '7']"
    assert read_document(text, "yard.yaml").data == (
        "no", "yes", "on", "12:30", "2024-01-02", "1_000", "0x1F", ".nan", ".inf",
        1000.0, 7, -2.5, 0.5, True, False, None, None, "7",
    )  # fmt: skip


def test_json_is_read_too():
    """JSON, also with tabs and escapes, gives the values that JSON means."""
    data = {"a": [1, 2.5, "x\ty", True, None], "b": {"c": "12'-6\""}}
    assert read_document(json.dumps(data, indent="\t"), "yard.json").data == {
        "a": (1, 2.5, "x\ty", True, None),
        "b": {"c": "12'-6\""},
    }


@pytest.mark.parametrize(
    ("text", "where", "said"),
    [
        ("a: &x 1\nb: 2", "yard.yaml:1:4", "anchor"),
        ("a: 1\nb: *x", "yard.yaml:2:4", "alias"),
        ("a: !!python/object:os.system x", "yard.yaml:1:4", "tag"),
        ("a: !mine x", "yard.yaml:1:4", "tag"),
        ("a: 1\n\tb: 2", "yard.yaml:2:1", "'\\t'"),
        ("a: 'open", "yard.yaml:1:9", "end of stream"),
        ("a: 1\n---\nb: 2", "yard.yaml:2:1", "another document"),
        ("a: 1\nb: \x07", "yard.yaml:2:4", "U+0007"),
        ("a: [1, 2", "yard.yaml:1:9", "expected ',' or ']'"),
    ],
)
def test_what_is_no_plain_document_is_refused_in_its_place(text, where, said):
    """Each refusal says where it met what."""
    message = refusal(text)
    assert message.startswith(f"{where}: expected one plain YAML or JSON document, found ")
    assert said in message


@pytest.mark.parametrize("text", ["[" * 3000, "[" * 3000 + "]" * 3000, "{a: " * 3000, "- " * 3000 + "a"])
def test_deep_nesting_is_one_clear_problem(text):
    """Thousands of levels give one message at the level past the limit, and no recursion error."""
    message = refusal(text)
    assert "\n" not in message
    assert "more than 40 levels of nesting" in message


def test_forty_levels_are_read():
    """The limit itself is allowed."""
    data = read_document("[" * 40 + "1" + "]" * 40, "yard.yaml").data
    for _ in range(40):
        (data,) = data
    assert data == 1


def test_a_key_given_twice_is_complained_of_at_the_second():
    """The second of two equal keys is named with its own place; the first one's value stays."""
    document = read_document("a:\n  b: 1\n  b: 2\n", "yard.yaml")
    (complaint,) = document.complaints
    assert str(document.problem(complaint)) == (
        "yard.yaml:3:3: expected each key once, found 'b' a second time; keep one of the two"
    )
    assert document.data == {"a": {"b": 1}}


def test_a_list_as_key_is_complained_of():
    """Keys are names."""
    document = read_document("a: 1\n? [b]\n: 2\n", "yard.yaml")
    (complaint,) = document.complaints
    assert document.problem(complaint).where == "yard.yaml:2:3"


@given(
    st.recursive(
        st.none()
        | st.booleans()
        | st.integers(-(10**15), 10**15)
        | st.text(st.characters(codec="ascii", exclude_categories=["Cc"]), max_size=8),
        lambda inner: (
            st.lists(inner, max_size=3) | st.dictionaries(st.text("abc", min_size=1, max_size=3), inner, max_size=3)
        ),
        max_leaves=12,
    )
)
def test_json_comes_back_as_it_went(data):
    """Whatever JSON holds is read as the same values, lists as tuples."""
    assert read_document(json.dumps(data), "yard.json").data == as_tuples(data)


def as_tuples(data):
    """The same values with tuples for lists."""
    if isinstance(data, list):
        return tuple(as_tuples(item) for item in data)
    return {key: as_tuples(item) for key, item in data.items()} if isinstance(data, dict) else data
