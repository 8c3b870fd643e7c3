"""What ground, sight, smoke and arrival make of a concept, in words."""

from collections.abc import Iterator

from optimizer.appraisal import GroundMeasures, SiteMeasures
from optimizer.concepts.words import listed
from ui.view_models.figure import Figure
from ui.view_models.words import Words, share_words


def site_figures(site: SiteMeasures, words: Words) -> Iterator[Figure]:
    """Figures of the site's facts; none for what the scenario says too little about."""
    if site.ground is not None:
        yield from _ground(site.ground, words)
    for looker, seen, kind, share in site.sight:
        wish = "meant to be" if kind == "in_view" else "meant not to be"
        yield Figure("Sight", share_words(share), f"of {seen} is seen from {looker}; {wish}")
    for source, place, share in sorted(site.smoke, key=lambda entry: -entry.share)[:3]:
        yield Figure("Smoke", share_words(share), f"of the season the smoke of {source} drifts to {place}")
    if site.arrival_ft is not None:
        yield Figure("Arrival", words.length(site.arrival_ft), "on foot from the guests' entrance to the gathering")
    if site.risers_seen_share is not None:
        yield Figure("Steps seen", share_words(site.risers_seen_share), "of all risers, from the guests' entrance")
    for opening, meets in site.axes:
        yield Figure(f"Straight out of {opening}", meets or "nothing", "what the eye meets")


def _ground(ground: GroundMeasures, words: Words) -> Iterator[Figure]:
    yield Figure("Steps", f"{ground.risers} risers", "between rooms and on ways")
    dug, filled = (words.earth(volume) for volume in (ground.cut_bcy, ground.fill_ccy))
    yield Figure("Earth", f"{dug} dug, {filled} filled", "as dug, and as compacted; without the base of the paving")
    if ground.wall_face_sqft:
        yield Figure("Retaining walls", words.length(ground.tallest_wall_ft), "the tallest, above the lower ground")
    if ground.undrained:
        yield Figure("Water", listed(ground.undrained), "has nowhere to run off")
    for flag in ground.flags:
        yield Figure("By model code", flag.partition(":")[0], flag.partition(":")[2].strip() or flag)
