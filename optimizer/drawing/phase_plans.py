"""Plans of what stands after each phase of a concept."""

from dataclasses import replace

from optimizer.catalogue import sized_rooms
from optimizer.concepts import Option
from optimizer.concepts.future_words import DIG_CAUTION
from optimizer.concepts.phases import phase_words, phases_of, standing_after
from optimizer.drawing.audience import Audience
from optimizer.drawing.concept_plan import draw_concept
from optimizer.drawing.marks import Drawing
from optimizer.layout import placed_of
from optimizer.scenario import Scenario


def phase_plans(scenario: Scenario, option: Option, *, audience: Audience) -> dict[int, Drawing]:
    """The plan of what stands after each phase of a concept, by its number."""
    placed, cost = placed_of(sized_rooms(scenario.brief), option.layout), option.appraisal.cost
    found = {}
    for phase in phases_of(placed):
        standing = standing_after(option, placed, phase)
        # What phase 1 costs stands on every plan.
        own = (phase_words(cost, phase, scenario.currency),) if phase > 1 else ()
        digging = () if DIG_CAUTION in option.cautions else (DIG_CAUTION,)
        told = replace(standing, cautions=(*own, *option.cautions, *digging))
        due = {room.name for room in placed.of_kind("reserve") if room.phase <= phase}
        found[phase] = draw_concept(scenario, told, audience=audience, after=f", after phase {phase}", due=due)
    return found
