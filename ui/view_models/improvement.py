"""The layout nearest to a sketch, in words: from what the command wrote."""

import json
from dataclasses import dataclass

from optimizer.concepts import WayOut
from optimizer.concepts.words import capital
from ui.view_models.why import way_out_of
from ui.view_models.words import Words, sentence


@dataclass(frozen=True, slots=True)
class Improved:
    """What came of a sketch: answer, how nearness is counted, what changed, the file of the new plan, what keeps it."""

    sketch: str
    answer: str
    measure: str
    changes: tuple[str, ...]
    plan: str | None
    ways_out: tuple[WayOut, ...]


def improved_told(document: bytes, words: Words) -> Improved:
    """Words of an improvement."""
    record = json.loads(document)
    return Improved(
        record["sketch"],
        words.signed(record["answer"]),
        record["measure"],
        tuple(sentence(capital(change)) for change in record["changes"]),
        record["plan"],
        tuple(way_out_of(way, words) for way in record["ways_out"]),
    )
