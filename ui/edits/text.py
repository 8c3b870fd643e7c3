"""Putting a value into the text of a scenario where its key stands, or adding the key; all else stays as written."""

import json
from collections.abc import Iterable, Sequence
from typing import Any, Final

import yaml

Path = tuple[str | int, ...]
LAST: Final = "-"
"""In a path: after the last item of a list (RFC 6901)."""


def patched(text: str, patch: Iterable[tuple[str, str, object]]) -> str:
    """Text after `add`, `replace` and `remove` operations (RFC 6902), each of (op, path, value).

    Raises
    ------
    ValueError
        For an operation that is none of these, and for a path that leads nowhere.
    """
    for operation, pointer, value in patch:
        path, node = _found(text, pointer)
        if operation == "remove":
            text = without_value(text, path)
        elif operation == "add" and isinstance(node, yaml.SequenceNode):
            text = _inserted(text, path, node, value)
        elif operation == "add" or (operation == "replace" and _inner(node, path[-1]) is not None):
            text = with_value(text, path, value)
        elif operation == "replace":
            raise _nothing_at(path[-1])
        else:
            raise ValueError(f"expected add, replace or remove, found {operation!r}")
    return text


def _found(text: str, pointer: str) -> tuple[Path, yaml.CollectionNode]:
    """Path of a JSON pointer (RFC 6901) in a text, and the mapping or list that its last step is of.

    All but the last must be there. A step is a number in a list alone: a mapping may have a key of digits.
    """
    *way, last = (step.replace("~1", "/").replace("~0", "~") for step in pointer.split("/")[1:])
    node, path = _composed(text), []
    for step in way:
        path.append(_step_in(node, step))
        inner = _inner(node, path[-1])
        if inner is None:
            raise _nothing_at(step)
        node = inner
    if isinstance(node, yaml.CollectionNode):
        return (*path, _step_in(node, last)), node
    raise ValueError(f"expected a mapping or a list before {last!r}, found a single value")


def _step_in(node: yaml.Node, step: str) -> str | int:
    return int(step) if isinstance(node, yaml.SequenceNode) and step.isdigit() else step


def _nothing_at(part: str | int) -> ValueError:
    return ValueError(f"expected {part!r}, found nothing there")


def _inserted(text: str, path: Path, node: yaml.SequenceNode, value: object) -> str:
    """Text with a further item in a list: before the one that the path names, or at its end."""
    at, count = path[-1], len(node.value)
    if at in {LAST, count}:
        return with_value(text, (*path[:-1], LAST), value)
    if not isinstance(at, int) or at > count:
        raise _nothing_at(at)
    start = node.value[at].start_mark.index
    if node.flow_style:
        return f"{text[:start]}{_written(value)}, {text[start:]}"
    dash, margin = _dash(text, node, at), " " * node.start_mark.column
    return f"{text[:dash]}- {_written(value)}\n{margin}{text[dash:]}"


def _dash(text: str, node: yaml.SequenceNode, at: int) -> int:
    """Where the dash of a block's item stands: a block begins with its first; each further one begins its line."""
    if at == 0:
        return int(node.start_mark.index)
    column, end = node.start_mark.column, node.value[at].start_mark.index
    while True:
        line = text.rfind("\n", 0, end) + 1
        if text[line : line + column + 1].strip(" ") == "-" and text[line + column] == "-":
            return line + column
        end = line - 1


def with_value(text: str, path: Path, value: object) -> str:
    """Text of a YAML or JSON document with a value at a path; keys that are missing on the way are added.

    Raises
    ------
    ValueError
        If the path goes through something that is neither mapping nor list.
    """
    node: Any = _composed(text)
    margin = 0
    for depth, part in enumerate(path):
        inner = _inner(node, part)
        if inner is None:
            return _added(text, node, part, _nested(path[depth + 1 :], value))
        margin, node = node.start_mark.column + 1, inner
    return _replaced(text, node, value, margin)


def without_value(text: str, path: Path) -> str:
    """Text of a YAML or JSON document without what stands at a path: an entry goes with its key, an item with its dash.

    Raises
    ------
    ValueError
        If nothing stands there.
    """
    node: Any = _composed(text)
    margin = 0
    for part in path[:-1]:
        inner = _inner(node, part)
        if inner is None:
            raise _nothing_at(part)
        margin, node = node.start_mark.column + 1, inner
    if _inner(node, path[-1]) is None:
        raise _nothing_at(path[-1])
    if len(node.value) == 1:
        return _replaced(text, node, [] if isinstance(node, yaml.SequenceNode) else {}, margin)
    start, end = _stretch(text, node, path[-1])
    return text[:start] + text[end:]


def _stretch(text: str, node: yaml.CollectionNode, part: str | int) -> tuple[int, int]:
    """From where to where an entry that is not the only one of its mapping or list is written.

    In a block the lines that are its own; else as far as the next entry, or from the end of the one before.
    """
    starts = [(entry[0] if isinstance(entry, tuple) else entry).start_mark.index for entry in node.value]
    ends = [_end(entry[1] if isinstance(entry, tuple) else entry, text) for entry in node.value]
    index = part if isinstance(part, int) else [key.value for key, _ in node.value].index(part)
    line = text.rfind("\n", 0, starts[index]) + 1
    if not node.flow_style and not text[line : starts[index]].strip(" -"):
        is_dash = isinstance(node, yaml.SequenceNode)
        if text[line : starts[index]].count("-") == is_dash:
            after = text.find("\n", ends[index])
            return line, len(text) if after < 0 else after + 1
    if index + 1 < len(starts):
        return starts[index], starts[index + 1]
    return ends[index - 1], ends[index]


def _composed(text: str) -> yaml.Node:
    # In JSON a tab is only space; the strict reader takes it so, too.
    readable = text.replace("\t", " ") if text.lstrip()[:1] in {"{", "["} else text
    node = yaml.compose(readable, Loader=yaml.SafeLoader)
    assert node is not None  # a text that was read has something in it
    return node


def _replaced(text: str, node: yaml.Node, value: object, margin: int) -> str:
    """Text with another value in the place of one; on a line of its own it keeps a margin to what it belongs to."""
    start, end = node.start_mark.index, _end(node, text)
    before = text[:start]
    line = before.rpartition("\n")[2]
    has_own_line = not line.strip() and len(line) < margin
    space = " " * (margin - len(line)) if has_own_line else " " * (start == end)
    return before + space + _written(value) + text[end:]


def _inner(node: yaml.Node, part: str | int) -> yaml.Node | None:
    """Value under a key or at a position; None where there is none yet."""
    if isinstance(node, yaml.MappingNode):
        return next((value for key, value in node.value if key.value == part), None)
    if isinstance(node, yaml.SequenceNode):
        return node.value[part] if isinstance(part, int) and part < len(node.value) else None
    raise ValueError(f"expected a mapping or a list before {part!r}, found a single value")


def _nested(path: Sequence[str | int], value: object) -> object:
    """Value inside the mappings and lists that a path names."""
    for part in reversed(path):
        value = [value] if part in {LAST, 0} else {part: value}
    return value


def _end(node: yaml.Node, text: str) -> int:
    """Where a value ends; a block's own mark stands only where the next thing begins."""
    if isinstance(node, yaml.CollectionNode) and not node.flow_style and node.value:
        last = node.value[-1]
        return _end(last[1] if isinstance(last, tuple) else last, text)
    end = int(node.end_mark.index)
    is_block = isinstance(node, yaml.ScalarNode) and node.style in {"|", ">"}
    return len(text[:end].rstrip()) if is_block else end


def _added(text: str, node: yaml.CollectionNode, part: str | int, value: object) -> str:
    """Text with a further entry at the end of a mapping or list."""
    is_list = isinstance(node, yaml.SequenceNode)
    if node.flow_style or not node.value:
        entry = _written(value) if is_list else f"{json.dumps(part)}: {_written(value)}"
        at = node.end_mark.index - 1
        before = text[:at].rstrip()
        return before + (", " if node.value else "") + entry + text[len(before) :]
    at = text.find("\n", _end(node, text))
    at = len(text) if at < 0 else at
    indent = " " * node.start_mark.column
    return text[:at] + f"\n{indent}{'- ' if is_list else f'{part}: '}{_written(value)}" + text[at:]


def _written(value: object) -> str:
    """Write a value so that YAML and JSON read it alike; a list of mappings has one a line."""
    if isinstance(value, list) and value and all(isinstance(item, dict) for item in value):
        lines = ",\n".join(f"      {json.dumps(item, ensure_ascii=False)}" for item in value)
        return f"[\n{lines}\n    ]"
    return json.dumps(value, ensure_ascii=False)
