"""The plan of one concept: its rooms, its ways, its cautions, and what is notable in it."""

from collections.abc import Collection

from optimizer.catalogue import sized_rooms
from optimizer.circulation import way_polygon
from optimizer.concepts import Option, about_words, aim_words, level_words
from optimizer.concepts.owner_notes import owner_notes
from optimizer.drawing.audience import Audience
from optimizer.drawing.marks import Drawing
from optimizer.drawing.notable_marks import Notable
from optimizer.drawing.plan import Paths, draw_plan
from optimizer.layout import placed_of
from optimizer.scenario import Scenario


def draw_concept(
    scenario: Scenario, option: Option, *, audience: Audience = "designer", after: str = "", due: Collection[str] = ()
) -> Drawing:
    """Draw a concept: a designer's plan, or an owner's without marks and dimensions. `after` is added to its title.
    What may come later is for a designer, and for an owner what may come on held grounds that are `due`.
    """
    scenario = scenario.at_level(option.level)
    appraisal, placed = option.appraisal, placed_of(sized_rooms(scenario.brief), option.layout)
    focal = appraisal.site.focal_point
    notable = Notable(focal[0] if focal else None, appraisal.party.worst)
    later = tuple(one for one in option.futures if audience == "designer" or one.room in due)
    return draw_plan(
        scenario,
        placed,
        appraisal.ways,
        title=f"{option.title}: {option.idea.name if option.idea else 'plan'}{after}",
        paths=Paths(way_polygon(scenario.site, placed, appraisal.legs), appraisal.legs, notable, later),
        cautions=_notes(scenario, option, audience),
        audience=audience,
    )


def _notes(scenario: Scenario, option: Option, audience: Audience) -> tuple[str, ...]:
    """What stands below the plan: every caution for a designer, and in short for an owner."""
    if audience == "designer":
        return (*_money(scenario, option), *option.cautions)
    notes = owner_notes(scenario, option)
    return (*notes.money, *notes.care)


def _money(scenario: Scenario, option: Option) -> tuple[str, ...]:
    """What it costs, how that lies to the ceiling, and in the other finish levels that are offered."""
    cost, ceiling, currency = option.appraisal.cost, scenario.brief.budget.ceiling, scenario.currency
    said = (about_words(cost, currency), aim_words(cost, ceiling, currency), level_words(option, currency))
    return tuple(words for words in said if words)
