"""The commands and their words. What a command needs is imported when it runs, so that help and `check` stay quick."""

from pathlib import Path
from typing import Annotated

import typer

from optimizer import __version__
from optimizer.cli.console import say, say_pairs
from optimizer.cli.parameters import (
    MOST_CONCEPTS,
    CountOption,
    FromOption,
    OutOption,
    PricesOption,
    ProgressOption,
    ResultArgument,
    ScenarioArgument,
    SecondsOption,
    SeedOption,
    money,
    search_time,
)

app = typer.Typer(
    add_completion=False,
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    help="Concept options for outdoor rooms in a yard: placed, checked, measured and priced.",
    epilog="Decision support at concept stage: gas, electricity, structure, drainage and water barriers "
    "are for local codes and licensed practice.",
)


def _show_version(wanted: bool) -> None:
    if wanted:
        say(f"outdoor-rooms {__version__}")
        raise typer.Exit


@app.callback()
def _all_commands(
    *,
    version: Annotated[
        bool, typer.Option("--version", callback=_show_version, is_eager=True, help="Show the version and end.")
    ] = False,
) -> None:
    pass


@app.command()
def check(scenario: ScenarioArgument, prices: PricesOption = None) -> None:
    """Print a site's facts, or every problem."""
    from optimizer.scenario import load_scenario, scenario_notes

    loaded = load_scenario(scenario, prices)
    from optimizer.pipeline import site_facts

    say_pairs(site_facts(loaded))
    for note in scenario_notes(loaded):
        say(f"note: {note}")


@app.command()
def options(  # noqa: PLR0913, PLR0917 - typer takes each option as an argument
    scenario: ScenarioArgument,
    out: OutOption,
    count: CountOption = None,
    seconds: SecondsOption = 20.0,
    seed: SeedOption = None,
    repeatable: Annotated[
        bool, typer.Option("--repeatable", help="The same concepts every time, however long it takes.")
    ] = False,
    start_from: FromOption = None,
    prices: PricesOption = None,
    progress: ProgressOption = "bar",
    processes: Annotated[
        int | None, typer.Option(min=0, max=64, help="Processes beside this one; else one for each further core.")
    ] = None,
    solver_log: Annotated[
        bool,
        typer.Option("--solver-log", help="Keep the solver's log of the proof for the whole yard, as DIR/solver.log."),
    ] = False,
) -> None:
    """Find concepts that differ, and rank them.

    Writes DIR/options.json, DIR/options.csv and a plan of each concept, and prints the ranked table.
    """
    from optimizer.cli.options_command import Call, run_options

    call = Call(scenario, out, count, seconds, seed, repeatable, start_from, solver_log, processes, prices)
    raise typer.Exit(run_options(call, as_json=progress == "json"))


@app.command()
def budgets(  # noqa: PLR0913, PLR0917 - typer takes each option as an argument
    scenario: ScenarioArgument,
    out: OutOption,
    lowest: Annotated[
        float | None, typer.Option(callback=money, help="Lowest ceiling; else the least that can be built.")
    ] = None,
    highest: Annotated[
        float | None, typer.Option(callback=money, help="Highest ceiling; else all wishes at their largest.")
    ] = None,
    steps: Annotated[int, typer.Option(min=1, max=MOST_CONCEPTS, help="How many budgets at most.")] = 10,
    seconds: SecondsOption = 50.0,
    seed: SeedOption = None,
    repeatable: Annotated[
        bool, typer.Option("--repeatable", help="The same budgets every time, however long it takes.")
    ] = False,
    start_from: FromOption = None,
    prices: PricesOption = None,
    progress: ProgressOption = "bar",
) -> None:
    """Find what each budget buys.

    Writes DIR/budgets.json, DIR/budgets.csv, a picture and a plan of each concept, and prints the steps.
    """
    from decimal import Decimal

    from optimizer.cli.budgets_command import BudgetsCall, run_budgets

    low, high = (None if money is None else Decimal(str(money)) for money in (lowest, highest))
    if low is not None and high is not None and low > high:
        raise typer.BadParameter(f"expected --lowest up to --highest, found {low:,} and {high:,}.")
    call = BudgetsCall(scenario, out, low, high, steps, seconds, seed, repeatable, start_from, prices)
    raise typer.Exit(run_budgets(call, as_json=progress == "json"))


@app.command()
def why(  # noqa: PLR0913, PLR0917 - typer takes each option as an argument
    scenario: ScenarioArgument,
    room: Annotated[str, typer.Option(metavar="NAME", help="The room that it is about.")],
    start_from: Annotated[
        Path | None, typer.Option("--from", metavar="RESULT", help="An options.json with the concept in question.")
    ] = None,
    option: Annotated[str | None, typer.Option("--option", metavar="ID", help="Which concept of it.")] = None,
    at: Annotated[
        str | None, typer.Option("--at", metavar="X,Y", help="Why not here: its lower left corner on the plan.")
    ] = None,
    choice: Annotated[str | None, typer.Option(metavar="LABEL", help="Why not larger: one of its choices.")] = None,
    left_out: Annotated[bool, typer.Option("--left-out", help="Why is it left out: what is asked by itself.")] = False,
    sun: Annotated[bool, typer.Option("--sun", help="Why not in the sun, or shade, that is wished for.")] = False,
    json: Annotated[Path | None, typer.Option("--json", metavar="FILE", help="Write the answer as JSON too.")] = None,
    seconds: SecondsOption = 20.0,
    seed: SeedOption = None,
    prices: PricesOption = None,
    progress: ProgressOption = "bar",
) -> None:
    """Say why a room is left out, not here, not larger or not in the sun.

    What stands against it is found out by trying, and so is what would help.
    """
    from optimizer.cli.why_command import WhyCall, run_why

    call = WhyCall(scenario, room, start_from, option, at, choice, left_out, sun, json, seconds, seed, prices)
    raise typer.Exit(run_why(call, as_json=progress == "json"))


@app.command()
def improve(
    scenario: ScenarioArgument,
    sketch: Annotated[str, typer.Option(metavar="NAME", help="Which sketch of the scenario.")],
    out: OutOption,
    seconds: SecondsOption = 20.0,
    prices: PricesOption = None,
    progress: ProgressOption = "bar",
) -> None:
    """Find the layout nearest to a sketch that keeps the rules.

    Writes DIR/improve.json, DIR/options.json and a plan of each sketch, and says what moved.
    """
    from optimizer.cli.improve_command import ImproveCall, run_improve

    raise typer.Exit(run_improve(ImproveCall(scenario, sketch, out, seconds, prices), as_json=progress == "json"))


@app.command()
def batch(  # noqa: PLR0913, PLR0917 - typer takes each option as an argument
    folder: Annotated[Path, typer.Argument(metavar="FOLDER", help="Folder with scenarios.")],
    out: OutOption,
    scheduler: Annotated[
        str | None, typer.Option(metavar="ADDRESS", help="A Dask cluster; else processes on this machine.")
    ] = None,
    at_once: Annotated[
        int | None, typer.Option("--at-once", min=1, help="Yards at a time on this machine; else one a core.")
    ] = None,
    count: CountOption = None,
    seconds: SecondsOption = 20.0,
    seed: SeedOption = None,
    prices: PricesOption = None,
) -> None:
    """Find concepts for many yards.

    Writes DIR/batch.csv and a folder for each; what was run before in the same way is not run again.
    """
    from optimizer.cli.batch_command import BatchCall, run_batch

    given = {"--count": count, "--seconds": f"{seconds:g}", "--seed": seed, "--processes": 0}
    arguments = tuple(word for name, value in given.items() if value is not None for word in (name, str(value)))
    raise typer.Exit(run_batch(BatchCall(folder, out, scheduler, at_once, arguments, prices)))


@app.command()
def recheck(
    result: ResultArgument,
    solve: Annotated[bool, typer.Option("--solve", help="Also prove again, and try the ways out again.")] = False,
    seconds: Annotated[float, typer.Option(callback=search_time, help="How long, with --solve.")] = 120.0,
) -> None:
    """Check and measure a result again: options.json, or budgets.json.

    Says what differs from what the result says, where anything does.
    """
    from optimizer.cli.recheck_command import run_recheck

    raise typer.Exit(run_recheck(result, seconds=seconds if solve else None))


@app.command()
def sheet(
    result: ResultArgument,
    option: Annotated[str, typer.Option("--option", metavar="ID", help="Which concept.")],
    out: Annotated[
        Path, typer.Option("--out", metavar="FILE", help="The ending says what is written: .svg, .json or .csv.")
    ],
    audience: Annotated[
        str,
        typer.Option("--for", metavar="owner|designer", help="An owner's plan has no dimensions and no working marks."),
    ] = "designer",
    phase: Annotated[
        str | None,
        typer.Option("--phase", metavar="N|all", help="Plan of what stands after a phase, or of all side by side."),
    ] = None,
    future: Annotated[
        str | None,
        typer.Option("--future", metavar="NAME", help="Plan of what may come later on held ground, with its way in."),
    ] = None,
) -> None:
    """Write one concept for hand-off: its plan, its record, or quantities and estimate line by line."""
    from optimizer.cli.sheet import write_sheet

    write_sheet(result, option_id=option, out=out, audience=audience, phase=phase, future=future)
    say(f"Wrote {out}")


@app.command()
def compare(
    result: ResultArgument,
    option: Annotated[list[str], typer.Option("--option", metavar="ID", help="Give it twice: first and second.")],
    other: Annotated[
        Path | None, typer.Option("--with", metavar="RESULT", help="Where the second is; else in the same result.")
    ] = None,
    out: Annotated[
        Path | None,
        typer.Option("--out", metavar="FILE", help="The lines that differ, as .csv, or the revision note, as .txt."),
    ] = None,
    decisions: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Decisions with their reasons, as the page hands them over (.csv)."),
    ] = None,
) -> None:
    """Compare two concepts of one yard.

    Says what moved, grew, shrank, came and went, what it does to cost, walking and sun, and which lines are dearer.
    """
    from optimizer.cli.compare_command import compare as compare_concepts

    compare_concepts(result, other, option, out, decisions)


@app.command()
def picture(
    result: ResultArgument,
    option: Annotated[str, typer.Option("--option", metavar="ID", help="Which concept.")],
    of: Annotated[str, typer.Option("--of", metavar="sun|ground|sight|section|yard", help="What to show.")],
    out: Annotated[Path, typer.Option("--out", metavar="FILE", help="An .svg drawing, or .html for the yard.")],
    room: Annotated[
        str | None,
        typer.Option(
            metavar="NAME", help="Room whose sun or section is shown; for sight also a door, window or neighbour's eye."
        ),
    ] = None,
    on: Annotated[str | None, typer.Option("--on", metavar="YYYY-MM-DDTHH:MM", help="Day and time to show.")] = None,
    line: Annotated[
        str | None,
        typer.Option(
            "--line",
            metavar="x1,y1,x2,y2",
            help="Ends of a section, in the file's unit or such as 3.8 m; else through the room.",
        ),
    ] = None,
) -> None:
    """Show one side of a concept: sun, ground, sight, a section, or the yard in 3-D."""
    from optimizer.cli.picture import Wanted, write_picture

    write_picture(result, option_id=option, wanted=Wanted(of, room, on, line), out=out)
    say(f"Wrote {out}")


@app.command()
def prices(
    out: Annotated[Path, typer.Option("--out", metavar="FILE", help="A .csv file for a spreadsheet.")],
    currency: Annotated[str, typer.Option(metavar="USD|AUD", help="Whose demonstration prices.")] = "USD",
) -> None:
    """Write the demonstration prices as a file to put your own into.

    Every item that the program counts is in it, with its unit. All prices in it are invented.
    """
    from optimizer.catalogue import book_for
    from optimizer.results import write_whole
    from optimizer.results.price_table import price_table

    write_whole(out, price_table(book_for(currency)))
    say(f"Wrote {out}. Its prices are invented: it is taken once it has your firm's name and your prices.")


@app.command()
def schema(
    out: Annotated[Path | None, typer.Option("--out", metavar="FILE", help="Else it is printed.")] = None,
) -> None:
    """Write the JSON Schema of scenarios.

    Editors complete and check a scenario with it while you type.
    """
    from optimizer.results.write import to_text, write_whole
    from optimizer.scenario import scenario_schema

    text = to_text(scenario_schema())
    if out is None:
        say(text.rstrip("\n"))
    else:
        write_whole(out, text)
        say(f"Wrote {out}")


@app.command()
def wind(
    weather: Annotated[Path, typer.Argument(metavar="WEATHER", help="Weather of a typical year (.epw).")],
    months: Annotated[
        str | None, typer.Option(metavar="MONTHS", help="Such as 5-9; else the five warm months of the place.")
    ] = None,
    start: Annotated[str, typer.Option("--from", metavar="HH:MM", help="Standard time, as in the file.")] = "16:00",
    end: Annotated[str, typer.Option("--to", metavar="HH:MM", help="Before --from: over midnight.")] = "22:00",
) -> None:
    """Print the wind rose of a weather file.

    Its first lines are ready to stand under `site:` of a scenario.
    """
    from optimizer.cli.wind import show_wind

    show_wind(weather, months=months, start=start, end=end)


@app.command()
def page(
    scenario: Annotated[Path | None, typer.Argument(metavar="SCENARIO", help="Scenario to open the page with.")] = None,
    port: Annotated[int | None, typer.Option(min=1, max=65_535, help="Else a free one is taken.")] = None,
    no_browser: Annotated[bool, typer.Option("--no-browser", help="Print the address only.")] = False,
    work: Annotated[
        str | None, typer.Option(metavar="PATH", help="Folder, or database by its URL, to keep work in; else your own.")
    ] = None,
) -> None:
    """Open the page, for this computer only. What is made on it is kept."""
    from optimizer.cli.page import serve_page

    raise typer.Exit(serve_page(scenario, port=port, opens_browser=not no_browser, work=work))
