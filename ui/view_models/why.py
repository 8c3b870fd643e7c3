"""The answer to a question about a room, in words: from what the command wrote."""

import json
from dataclasses import dataclass

from optimizer.concepts import WayOut
from optimizer.concepts.words import listed
from ui.view_models.words import Words, sentence


@dataclass(frozen=True, slots=True)
class Told:
    """A question, its answer, what stands in the way, and what would help.

    `is_answered` is False where the time ended before it was known.
    """

    question: str
    answer: str
    is_answered: bool
    rules: tuple[str, ...]
    ways_out: tuple[WayOut, ...]


def told(document: bytes, words: Words) -> Told:
    """Words of an answer; each rule with the rooms that it is about, unless its sentence names them."""
    record = json.loads(document)
    return Told(
        record["question"],
        words.signed(record["answer"]),
        record["answered"],
        tuple(_rule(rule["sentence"], rule["rooms"], words) for rule in record["rules"]),
        tuple(way_out_of(way, words) for way in record["ways_out"]),
    )


def _rule(rule: str, rooms: list[str], words: Words) -> str:
    unsaid = [room for room in rooms if room not in rule]
    return sentence(words.signed(rule)) + (f" For {listed(unsaid)}." if unsaid else "")


def way_out_of(way: dict[str, object], words: Words) -> WayOut:
    """A way out as a result has it, in words."""
    operations = way["patch"]
    assert isinstance(operations, list)
    patch = tuple((each["op"], each["path"], each.get("value")) for each in operations)
    return WayOut(sentence(words.signed(str(way["text"]))), patch)
