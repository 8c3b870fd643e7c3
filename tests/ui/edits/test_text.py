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


def test_nothing_can_be_removed_or_replaced_where_nothing_is():
    for pointer in ("/brief/holds/3", "/brief/weights", "/weights/sun"):
        for operation in ("remove", "replace"):
            with pytest.raises(ValueError, match="found nothing there"):
                patched(BLOCK, ((operation, pointer, None),))


# RFC 6902, appendix A, those of add, remove and replace, from memory: document, operation, result; None for an error.
APPENDIX = {
    "A.1": ('{"foo": "bar"}', ("add", "/baz", "qux"), {"baz": "qux", "foo": "bar"}),
    "A.2": ('{"foo": ["bar", "baz"]}', ("add", "/foo/1", "qux"), {"foo": ["bar", "qux", "baz"]}),
    "A.3": ('{"baz": "qux", "foo": "bar"}', ("remove", "/baz", None), {"foo": "bar"}),
    "A.4": ('{"foo": ["bar", "qux", "baz"]}', ("remove", "/foo/1", None), {"foo": ["bar", "baz"]}),
    "A.5": ('{"baz": "qux", "foo": "bar"}', ("replace", "/baz", "boo"), {"baz": "boo", "foo": "bar"}),
    "A.10": (
        '{"foo": "bar"}',
        ("add", "/child", {"grandchild": {}}),
        {"foo": "bar", "child": {"grandchild": {}}},
    ),
    "A.12": ('{"foo": "bar"}', ("add", "/baz/bat", "qux"), None),
    "A.14": ('{"/": 9, "~1": 10}', ("replace", "/~01", 11), {"/": 9, "~1": 11}),
    "A.16": ('{"foo": ["bar"]}', ("add", "/foo/-", ["abc", "def"]), {"foo": ["bar", ["abc", "def"]]}),
}


@pytest.mark.parametrize("example", APPENDIX)
def test_the_standards_own_examples(example):
    """In JSON as the standard has them, and in YAML blocks."""
    document, operation, wanted = APPENDIX[example]
    for text in (document, yaml.safe_dump(json.loads(document), default_flow_style=False)):
        if wanted is None:
            with pytest.raises(ValueError, match="nothing there"):
                patched(text, (operation,))
        else:
            assert yaml.safe_load(patched(text, (operation,))) == wanted


def test_an_item_is_put_before_another_and_comments_stay():
    text = patched(BLOCK, (("add", "/brief/rooms/0", {"name": "lawn", "kind": "lawn"}),))
    assert text == BLOCK.replace("    - name: nook\n", '    - {"name": "lawn", "kind": "lawn"}\n    - name: nook\n')
    text = patched(BLOCK, (("add", "/brief/rooms/1", "x"), ("add", "/brief/rooms/3", "y")))
    rooms = yaml.safe_load(text)["brief"]["rooms"]
    assert rooms == [{"name": "nook", "kind": "nook"}, "x", {"name": "fire", "kind": "fire"}, "y"]
    assert "# quiet" in text
    for pointer in ("/brief/rooms/3", "/brief/rooms/first"):
        with pytest.raises(ValueError, match="nothing there"):
            patched(BLOCK, (("add", pointer, "x"),))


def test_a_key_of_digits_is_no_place_in_a_list():
    assert yaml.safe_load(patched('{"7": {"0": 1}}', (("replace", "/7/0", 2),))) == {"7": {"0": 2}}


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


@given(st.data(), st.lists(TREES, max_size=4), SCALARS, st.sampled_from([None, True, False]))
def test_whatever_the_text_is_an_item_is_put_where_it_is_asked_for(source, items, value, flow):
    """Any list, nested ones too: the items after it move on by one."""
    document = {"a": [items], "z": 1}
    text = json.dumps(document) if flow is None else yaml.safe_dump(document, default_flow_style=flow)
    items = yaml.safe_load(text)["a"][0]
    at = source.draw(st.integers(0, len(items)))
    changed = yaml.safe_load(patched(text, (("add", f"/a/0/{at}", value),)))
    assert changed == {"a": [[*items[:at], value, *items[at:]]], "z": 1}


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
