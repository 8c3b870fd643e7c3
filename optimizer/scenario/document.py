"""A YAML or JSON text as plain values that keep their places: strict, without anchors, tags or guesses of type."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any, Final

import yaml
from yaml.composer import Composer
from yaml.parser import Parser
from yaml.reader import Reader, ReaderError
from yaml.resolver import BaseResolver
from yaml.scanner import Scanner

from optimizer.errors import Problem, ScenarioError

DEEPEST_NESTING: Final = 40

Path = tuple[str | int, ...]
"""Keys and list positions that lead to a value: ("site", "trees", 0, "at")."""


@dataclass(frozen=True, slots=True)
class Complaint:
    """A problem that knows its path, not yet its line; with `at_key` the key itself is what is wrong."""

    path: Path
    expected: str
    found: str
    advice: str
    at_key: bool = False


@dataclass(frozen=True, slots=True)
class Document:
    """What a text holds (dicts, tuples, text, numbers, True, False, None), and the line and column of all of it."""

    name: str
    data: Any
    complaints: tuple[Complaint, ...] = ()
    values: dict[Path, tuple[int, int]] = field(default_factory=dict)
    keys: dict[Path, tuple[int, int]] = field(default_factory=dict)

    def problem(self, complaint: Complaint) -> Problem:
        """Turn a complaint into a problem with `file:line:column`."""
        line, column = self.place(complaint)
        where = f"{self.name}:{line}:{column}"
        return Problem(complaint.expected, complaint.found, complaint.advice, where)

    def place(self, complaint: Complaint) -> tuple[int, int]:
        """Line and column of a complaint's path, or of what surrounds it where the text lacks it."""
        if complaint.at_key and complaint.path in self.keys:
            return self.keys[complaint.path]
        known = (complaint.path[:end] for end in range(len(complaint.path), -1, -1))
        return next((self.values[path] for path in known if path in self.values), (1, 1))


def read_document(text: str, name: str) -> Document:
    """Read one YAML or JSON document.

    Raises
    ------
    ScenarioError
        If the text is no single YAML document, nests too deep, or has anchors, aliases or tags.
    """
    node = _compose(text, name)
    document = Document(name, None)
    repeated: list[Complaint] = []
    data = _value(node, (), document, repeated) if node else None
    return Document(name, data, tuple(repeated), document.values, document.keys)


class _Refused(yaml.MarkedYAMLError):
    """YAML that is well formed and not wanted; carries what to do instead."""


class _NodeReader(Reader, Scanner, Parser, Composer, BaseResolver):
    """YAML to nodes, scalars untouched; refuses anchors, aliases, tags and deep nesting while it reads."""

    def __init__(self, text: str) -> None:
        Reader.__init__(self, text)
        Scanner.__init__(self)
        Parser.__init__(self)
        Composer.__init__(self)
        BaseResolver.__init__(self)
        self._depth = 0

    def compose_node(self, parent: yaml.Node | None, index: Any) -> yaml.Node | None:
        """Compose one node, having looked at the event that starts it."""
        event = self.peek_event()  # type: ignore[no-untyped-call]
        if advice := _refusal(event, self._depth):
            found, instead = advice
            raise _Refused(problem=found, problem_mark=event.start_mark, note=instead)
        self._depth += 1
        node: yaml.Node | None = super().compose_node(parent, index)
        self._depth -= 1
        return node


def _refusal(event: yaml.Event, depth: int) -> tuple[str, str] | None:
    """Name what is not wanted of an event and what to do instead; None where all is well."""
    if isinstance(event, yaml.AliasEvent) or getattr(event, "anchor", None):
        return "an anchor or alias (& or *)", "write the value out where it is used, or put quotes round the text"
    if getattr(event, "tag", None):
        return f"the tag {event.tag!r}", "take the tag away; types follow from the key"  # type: ignore[attr-defined]
    if depth > DEEPEST_NESTING:
        return (
            f"more than {DEEPEST_NESTING} levels of nesting",
            "no key of a scenario lies that deep; check the brackets",
        )
    return None


def _compose(text: str, name: str) -> yaml.Node | None:
    """Root node of the text; a ScenarioError where the text is not a single readable document."""
    # In JSON a tab can only be space between values; YAML alone would refuse it.
    readable = text.replace("\t", " ") if text.lstrip()[:1] in ("{", "[") else text
    try:
        node: yaml.Node | None = _NodeReader(readable).get_single_node()
    except _Refused as refused:
        raise ScenarioError((_yaml_problem(refused, name, refused.note or ""),)) from None
    except yaml.MarkedYAMLError as error:
        advice = "put quotes round text that has : # [ ] { } , & * ! | > % @ or a mark in it, and indent with spaces"
        raise ScenarioError((_yaml_problem(error, name, advice),)) from None
    except ReaderError as error:
        raise ScenarioError((_character_problem(error, text, name),)) from None
    return node


def _yaml_problem(error: yaml.MarkedYAMLError, name: str, advice: str) -> Problem:
    """Say what the YAML reader met, where."""
    mark = error.problem_mark or error.context_mark
    where = f"{name}:{mark.line + 1}:{mark.column + 1}" if mark else name
    problem = (error.problem or "something else").removeprefix("but ").removeprefix("found ")
    found = " ".join(part for part in (problem, error.context) if part)
    return Problem("one plain YAML or JSON document", found, advice, where)


def _character_problem(error: ReaderError, text: str, name: str) -> Problem:
    """Say where a control character stands that no YAML text may hold."""
    before = text[: error.position]
    where = f"{name}:{before.count(chr(10)) + 1}:{len(before) - before.rfind(chr(10))}"
    found = f"the control character U+{ord(text[error.position]):04X}"
    return Problem("one plain YAML or JSON document", found, "take it away", where)


def _value(node: yaml.Node, path: Path, document: Document, repeated: list[Complaint]) -> Any:
    """Plain value of a node; notes its place, and those of its parts, in the document."""
    document.values[path] = _place(node)
    if isinstance(node, yaml.MappingNode):
        return dict(_entries(node, path, document, repeated))
    if isinstance(node, yaml.SequenceNode):
        return tuple(_value(item, (*path, index), document, repeated) for index, item in enumerate(node.value))
    return _scalar(node.value) if node.style is None else node.value  # type: ignore[attr-defined]


def _entries(
    node: yaml.MappingNode, path: Path, document: Document, repeated: list[Complaint]
) -> Iterator[tuple[str, Any]]:
    """Keys and values of a mapping; a key that is no text, or comes twice, is complained of and left out."""
    for key_node, value_node in node.value:
        key = key_node.value if isinstance(key_node, yaml.ScalarNode) else None
        if key is None:
            place = (*path, f"line {key_node.start_mark.line + 1}")
            document.keys[place] = _place(key_node)
            repeated.append(Complaint(place, "a plain key", "a list or a mapping as key", "write a name", at_key=True))
        elif (place := (*path, key)) in document.keys:
            document.keys[place] = _place(key_node)
            repeated.append(
                Complaint(place, "each key once", f"{key!r} a second time", "keep one of the two", at_key=True)
            )
        else:
            document.keys[place] = _place(key_node)
            yield key, _value(value_node, place, document, repeated)


def _place(node: yaml.Node) -> tuple[int, int]:
    """Line and column of a node, counted from 1."""
    return node.start_mark.line + 1, node.start_mark.column + 1


_WHOLE: Final = re.compile(r"[-+]?[0-9]{1,18}")
_NUMBER: Final = re.compile(r"[-+]?(\.[0-9]+|[0-9]+(\.[0-9]*)?)([eE][-+]?[0-9]+)?")
_WORDS: Final = {"": None, "~": None, "null": None, "true": True, "false": False}


def _scalar(text: str) -> Any:
    """Value of text without quotes: a number, true, false, nothing; `no`, `12:30`, dates and all else stay text."""
    if text in _WORDS:
        return _WORDS[text]
    if _WHOLE.fullmatch(text):
        return int(text)
    return float(text) if _NUMBER.fullmatch(text) else text
