"""Why a room is left out, not here, not larger, not in the sun: the answer on the screen, and as a file."""

import sys
from dataclasses import dataclass
from pathlib import Path
from threading import Event as Flag
from typing import TextIO

from optimizer.cli.console import say
from optimizer.cli.exits import ExitStatus
from optimizer.cli.progress import Listener
from optimizer.cli.watched import run_told
from optimizer.concepts.whys.answers import Answer
from optimizer.errors import InputError, Problem
from optimizer.results import ready_folder, to_text, write_whole
from optimizer.results.schema import to_record
from optimizer.scenario import Scenario, load_scenario
from optimizer.units import read_length_ft


@dataclass(frozen=True, slots=True)
class WhyCall:
    """What was asked for: of `at`, `choice`, `left_out` and `sun` at most one."""

    scenario: Path
    room: str
    start_from: Path | None
    option: str | None
    at: str | None
    choice: str | None
    left_out: bool
    sun: bool
    json: Path | None
    seconds: float
    seed: int | None
    prices: Path | None = None


def run_why(call: WhyCall, *, as_json: bool = False) -> ExitStatus:
    """Ask, write and print, and return the exit status; `as_json` leaves standard output to events."""
    _refuse_two_questions(call)
    answer = run_told(
        lambda listener, stop: _work(call, listener, stop),
        lambda answer: {"exit": int(_status(answer))},
        scenario=call.scenario,
        seconds=call.seconds,
        repeatable=False,
        as_json=as_json,
    )
    _print(call, answer, file=sys.stderr if as_json else sys.stdout)
    return _status(answer)


def _work(call: WhyCall, listener: Listener, stop: Flag) -> Answer:
    from optimizer.pipeline import WhySettings, why

    scenario = load_scenario(call.scenario, call.prices)
    if call.json is not None:
        ready_folder(call.json.parent, option="--json")
    settings = WhySettings(
        call.room,
        at_ft=None if call.at is None else _corner_ft(scenario, call.at),
        choice=call.choice,
        in_the_sun=call.sun,
        result=call.start_from,
        option=call.option,
        seconds=call.seconds,
        seed=call.seed,
        has_own_prices=call.prices is not None,
    )
    answer = why(scenario, settings, emit=listener.hear, stop=stop)
    if call.json is not None:
        write_whole(call.json, to_text(_record(answer)), option="--json")
    return answer


def _status(answer: Answer) -> ExitStatus:
    return ExitStatus.DONE if answer.is_answered else ExitStatus.UNDECIDED


def _record(answer: Answer) -> dict[str, object]:
    """The answer as the contract has it."""
    return {
        "question": answer.question,
        "answer": answer.answer,
        "answered": answer.is_answered,
        "rules": [{"id": rule, "sentence": sentence, "rooms": list(rooms)} for rule, sentence, rooms in answer.rules],
        "ways_out": [to_record(way) for way in answer.ways_out],
    }


def _print(call: WhyCall, answer: Answer, *, file: TextIO) -> None:
    say(answer.question, file=file)
    say(answer.answer, file=file)
    if answer.rules:
        together = "" if len(answer.rules) == 1 else ", all of it together"
        say(f"What stands in the way{together}:", file=file)
    for _, sentence, rooms in answer.rules:
        say(f"  {sentence}" + (f" ({', '.join(rooms)})" if rooms else ""), file=file)
    if answer.ways_out:
        fits = answer.is_answered and not answer.rules
        say("To have it:" if fits else "What would help; each was tried:", file=file)
    for way in answer.ways_out:
        say(f"  {way.text}", file=file)
    if not answer.is_answered:
        start = "" if call.start_from else "--from RESULT or "
        say(f"What is in the way was not proven in this time: try {start}more --seconds.", file=file)


def _refuse_two_questions(call: WhyCall) -> None:
    asked = [name for name, given in _questions(call).items() if given]
    if len(asked) > 1:
        advice = "ask one question at a time"
        raise InputError((Problem("one of --at, --choice, --left-out, --sun", " and ".join(asked), advice),))
    if call.option is not None and call.start_from is None:
        advice = "name the options.json that has it"
        raise InputError((Problem("--from RESULT beside --option", "--option alone", advice),))


def _questions(call: WhyCall) -> dict[str, bool]:
    return {
        "--at": call.at is not None,
        "--choice": call.choice is not None,
        "--left-out": call.left_out,
        "--sun": call.sun,
    }


def _corner_ft(scenario: Scenario, text: str) -> tuple[float, float]:
    """Corner of the plan [ft] in the file's unit, or with units of its own."""
    parts = [part.strip() for part in text.split(",")]
    try:
        x, y = (read_length_ft(part, unit_ft=scenario.unit_ft) for part in parts)
    except ValueError:
        raise InputError((Problem("x,y", repr(text), "write two lengths, such as 48,92", "--at"),)) from None
    return x, y
