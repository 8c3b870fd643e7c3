"""A value put into the text of a scenario: it is read back, and nothing else of the text changes."""

import json

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from ui.edits import patched, with_value
from ui.edits.text import without_value

BLOCK = """# a yard
budget:
  ceiling: 130000               # all in
brief:
  guests: {everyday: 4, party: 24}
  rooms:
    - name: nook
      kind: nook                # quiet
    - {name: fire, kind: fire}
  holds:
    - {room: nook, at: [1, 2]}

options: {count: 3}
"""


def test_a_value_is_replaced_and_comments_stay():
    text = with_value(BLOCK, ("budget", "ceiling"), 90000)
    assert text == BLOCK.replace("130000", "90000")


def test_a_missing_key_is_added_to_a_block():
    text = with_value(BLOCK, ("brief", "rooms", 0, "required"), value=True)
    assert text == BLOCK.replace("# quiet\n", "# quiet\n      required: true\n")


def test_a_missing_key_is_added_in_braces():
    text = with_value(BLOCK, ("brief", "rooms", 1, "phase"), 2)
    assert text == BLOCK.replace("kind: fire}", 'kind: fire, "phase": 2}')


def test_keys_that_are_missing_on_the_way_are_added():
    text = with_value(BLOCK, ("brief", "weights", "sun"), 0.5)
    assert yaml.safe_load(text)["brief"]["weights"] == {"sun": 0.5}
    assert yaml.safe_load(text)["options"] == {"count": 3}


def test_a_block_list_gives_way_whole():
    text = with_value(BLOCK, ("brief", "holds"), [{"room": "fire", "front": "-y"}, {"room": "nook", "at": [3, 4]}])
    data = yaml.safe_load(text)
    assert data["brief"]["holds"] == [{"room": "fire", "front": "-y"}, {"room": "nook", "at": [3, 4]}]
    assert {**data["brief"], "holds": None} == {**yaml.safe_load(BLOCK)["brief"], "holds": None}


def test_operations_of_a_patch_are_applied_in_order():
    patch = (("replace", "/brief/guests/party", 12), ("add", "/brief/holds/-", {"room": "fire", "front": "+x"}))
    data = yaml.safe_load(patched(BLOCK, patch))
    assert data["brief"]["guests"] == {"everyday": 4, "party": 12}
    assert data["brief"]["holds"][1] == {"room": "fire", "front": "+x"}
    with pytest.raises(ValueError, match="move"):
        patched(BLOCK, (("move", "/budget", 1),))


def test_what_is_removed_goes_with_its_key_or_its_dash():
    assert patched(BLOCK, (("remove", "/brief/rooms/1", None),)) == BLOCK.replace(
        "    - {name: fire, kind: fire}\n", ""
    )
    assert patched(BLOCK, (("remove", "/brief/guests/party", None),)) == BLOCK.replace(", party: 24", "")
    assert patched(BLOCK, (("remove", "/brief/rooms/0/kind", None),)) == BLOCK.replace(
        "      kind: nook                # quiet\n", ""
    )


def test_the_last_that_is_removed_leaves_an_empty_list():
    data = yaml.safe_load(patched(BLOCK, (("remove", "/brief/holds/0", None),)))
    assert data == {**yaml.safe_load(BLOCK), "brief": {**yaml.safe_load(BLOCK)["brief"], "holds": []}}


def test_nothing_can_be_removed_where_nothing_is():
    for pointer in ("/brief/holds/3", "/brief/weights", "/weights/sun"):
        with pytest.raises(ValueError, match="found nothing there"):
            patched(BLOCK, (("remove", pointer, None),))


def test_a_path_through_a_single_value_is_refused():
    with pytest.raises(ValueError, match="single value"):
        with_value(BLOCK, ("budget", "ceiling", "low"), 1)


SCALARS = st.one_of(st.integers(-5, 10**6), st.booleans(), st.text("ab: #[]{},'\"é\n-", max_size=8))
KEYS = st.text("abc", min_size=1, max_size=3)
TREES = st.recursive(
    SCALARS,
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(KEYS, inner, max_size=3)),
    max_leaves=8,
)


@given(st.dictionaries(KEYS, TREES, min_size=1, max_size=3), KEYS, KEYS, SCALARS, st.sampled_from([None, True, False]))
def test_whatever_the_text_is_the_value_is_there_and_the_rest_is_as_it_was(data, key, inner, value, flow):
    """Any document, in block style, in braces, or as JSON: what is read back is the document with that one value."""
    text = json.dumps(data) if flow is None else yaml.safe_dump(data, default_flow_style=flow, allow_unicode=True)
    data = yaml.safe_load(text)
    wanted = {**data, key: {**data[key], inner: value}} if isinstance(data.get(key), dict) else {**data, key: value}
    path = (key, inner) if isinstance(data.get(key), dict) else (key,)
    assert yaml.safe_load(with_value(text, path, value)) == wanted


@given(
    st.data(), TREES.filter(lambda tree: isinstance(tree, list | dict) and tree), st.sampled_from([None, True, False])
)
def test_whatever_the_text_is_what_is_removed_is_gone_and_the_rest_is_as_it_was(source, tree, flow):
    """Any entry or item of any document, by the meaning of RFC 6902."""
    document = {"a": tree, "z": 1}
    text = json.dumps(document) if flow is None else yaml.safe_dump(document, default_flow_style=flow)
    wanted = yaml.safe_load(text)
    node, path = wanted["a"], ("a",)
    while True:
        key = source.draw(st.sampled_from(sorted(node) if isinstance(node, dict) else range(len(node))))
        path = (*path, key)
        if not (isinstance(node[key], list | dict) and node[key] and source.draw(st.booleans())):
            break
        node = node[key]
    del node[key]
    assert yaml.safe_load(without_value(text, path)) == wanted
