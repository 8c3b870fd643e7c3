"""What is said of each phase of a concept below its small plan."""

from dataclasses import dataclass

from optimizer.catalogue import sized_rooms
from optimizer.concepts import Option
from optimizer.concepts.phases import machine_words, phase_words, phases_of
from optimizer.concepts.words import listed
from optimizer.layout import placed_of
from optimizer.scenario import Scenario
from ui.view_models.words import sentence, words_of


@dataclass(frozen=True, slots=True)
class PhaseWords:
    """A phase in words: its money with its range, the rooms that it adds, and what machines come in by."""

    title: str
    money: str
    adds: str
    machines: str


def phase_words_of(option: Option, scenario: Scenario, *, for_designer: bool = False) -> tuple[PhaseWords, ...]:
    """Words of each phase, in order."""
    words, cost = words_of(scenario, for_designer=for_designer), option.appraisal.cost
    placed = placed_of(sized_rooms(scenario.brief), option.layout)
    return tuple(
        PhaseWords(
            title=f"Phase {phase}",
            money=words.signed(phase_words(cost, phase, scenario.currency)),
            adds=sentence(listed([room.name for room in placed if room.phase == phase])),
            machines=words.signed(machine_words(scenario, option, placed, phase)),
        )
        for phase in phases_of(placed)
    )
