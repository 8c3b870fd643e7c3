"""One concept for hand-off, by the ending of the file asked for."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Final

from optimizer.concepts import Option
from optimizer.drawing.audience import AUDIENCES, Audience
from optimizer.errors import InputError, Problem
from optimizer.results import Result, read_result, to_text, write_whole
from optimizer.results.estimate_table import estimate_table

Writer = Callable[[Result, Option, Audience], str]
"""Text of a file, from a result, one of its concepts and for whom it is."""


def write_sheet(
    result_path: Path,
    *,
    option_id: str,
    out: Path,
    audience: str = "designer",
    phase: str | None = None,
    future: str | None = None,
) -> None:
    """Write a concept of a result to a file; a plan is for a designer or, clean, for an owner. With a phase it is the
    plan of what stands after it, or of each phase side by side with "all"; with a future the plan of what may come
    later.

    Raises InputError for an ending, a reader, a concept, phase or future that does not exist, ResultError for a result
    that cannot be read, OutputError where the file cannot be written.
    """
    writer = _writer(out, phase, future)
    reader = next((known for known in AUDIENCES if known == audience), None)
    if reader is None:
        raise _wrong(" or ".join(AUDIENCES), audience, "--for", "say for whom the plan is")
    result = read_result(result_path)
    option = result.option(option_id)
    if option is None:
        known = ", ".join(option.id for option in result.option_set.options) or "none"
        raise _wrong(f"a concept of {result_path.name}", option_id, "--option", f"it has {known}")
    write_whole(out, writer(result, option, reader))


def _writer(out: Path, phase: str | None, future: str | None) -> Writer:
    """What makes the file: by its ending, or the plan of a phase or of a future."""
    if phase is not None and future is not None:
        raise _wrong("a phase or a future", f"{phase} and {future}", "--future", "ask for one of them at a time")
    ending = out.suffix.lower()
    if ending not in WRITERS:
        raise _wrong("a file that ends in " + " or ".join(WRITERS), out.name, "--out", "change the ending")
    if (phase, future) != (None, None) and ending != ".svg":
        raise _wrong("a file that ends in .svg", out.name, "--out", "phases and futures are plans: change the ending")
    if phase is not None:
        return partial(_of_phase, phase=phase)
    return WRITERS[ending] if future is None else partial(_of_future, future=future)


def _of_future(result: Result, option: Option, audience: Audience, future: str) -> str:
    from optimizer.export import plan_svg
    from optimizer.pipeline import future_drawings

    drawings = future_drawings(result.scenario, option, audience=audience)
    wanted = " ".join(future.lower().split())
    drawing = next((draw for name, draw in drawings.items() if name.lower() == wanted), None)
    if drawing is None:
        known = ", ".join(drawings)
        advice = f"it keeps room for {known}" if known else "it keeps no room for anything"
        raise _wrong(f"a future of concept {option.id}", future, "--future", advice)
    return plan_svg(drawing())


def _of_phase(result: Result, option: Option, audience: Audience, phase: str) -> str:
    from optimizer.export import plan_svg, strip_svg
    from optimizer.pipeline import phase_drawings

    plans = phase_drawings(result.scenario, option, audience=audience)
    if phase == "all":
        return strip_svg(tuple(plans.values()))
    chosen = next((plan for number, plan in plans.items() if str(number) == phase), None)
    if chosen is None:
        known = ", ".join(map(str, plans))
        raise _wrong(f"a phase of concept {option.id}, or all", phase, "--phase", f"it has {known}")
    return plan_svg(chosen)


def _svg(result: Result, option: Option, audience: Audience) -> str:
    from optimizer.export import plan_svg
    from optimizer.pipeline import plan_drawing

    return plan_svg(plan_drawing(result.scenario, option, audience=audience))


def _json(result: Result, option: Option, _audience: Audience) -> str:
    """Give the result with that one concept in it: it stands alone and can be checked again like any other."""
    record = next(record for record in result.document["options"] if record["id"] == option.id)
    return to_text({**result.document, "options": [record], "with_without": []})


def _csv(result: Result, option: Option, _audience: Audience) -> str:
    """Take-off and estimate."""
    return estimate_table(result.scenario, option)


WRITERS: Final[dict[str, Writer]] = {".svg": _svg, ".json": _json, ".csv": _csv}


def _wrong(expected: str, found: str, where: str, advice: str) -> InputError:
    return InputError((Problem(expected, repr(found), advice, where=where),))
