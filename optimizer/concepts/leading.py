"""Which concepts lead: every wished room first, then other ideas, then one wish fewer."""

from collections.abc import Iterator, Sequence
from typing import Final, NamedTuple

NEAR_BEST: Final = 1.1
"""A concept leads while its score is at most so many times the best one."""
LEADING: Final = 3
"""So many concepts lead at most; layout rule 30: the first three follow three ideas."""


class Standing(NamedTuple):
    """What decides where a concept stands: its score, the wished rooms that it lacks, the name of its idea."""

    score: float
    lacking: int
    idea: str | None


def leading(concepts: Sequence[Standing]) -> tuple[int, ...]:
    """Places in the sequence of the concepts that come first, whatever their score; the others follow by score.

    All lie near the best score. The first has every wished room, where one has. The next two, or as many as there are,
    follow other ideas, each the best of its own, and leave no more out than the first. Where they are fewer, one that
    lacks one wished room follows, for which the others can be done properly.
    """
    if not concepts:
        return ()
    by_score = sorted(range(len(concepts)), key=lambda n: concepts[n].score)
    near = [n for n in by_score if concepts[n].score <= NEAR_BEST * concepts[by_score[0]].score]
    whole = next((n for n in near if not concepts[n].lacking), None)
    first = near[0] if whole is None else whole
    lead = [first, *_other_ideas(concepts, near, first)][:LEADING]
    fewer = next((n for n in near if concepts[n].lacking == 1), None)
    if whole is not None and fewer is not None and fewer not in lead and len(lead) < LEADING:
        lead.append(fewer)
    return tuple(lead)


def _other_ideas(concepts: Sequence[Standing], near: Sequence[int], first: int) -> Iterator[int]:
    """Best of each idea that the first does not follow, of those that leave no more out."""
    known = {concepts[first].idea, None}
    for n in near:
        if concepts[n].idea not in known and concepts[n].lacking <= concepts[first].lacking:
            known.add(concepts[n].idea)
            yield n
