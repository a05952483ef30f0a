"""What every verb shares: reading the pattern, telling its problems, and writing results whole or not at all."""

from __future__ import annotations

import functools
import json
import os
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, TypeVar

import click

from motifold.render.pattern import read_pattern
from motifold.render.pattern.load import in_order
from motifold.render.pattern.model import Pattern
from motifold.render.pattern.problem import Problem
from motifold.render.pattern.report import problem_json, report_problems
from motifold.render.worked import Worked, work_pattern
from motifold.symbols.record import dataclass

GOOD, HAS_PROBLEMS, WRONG_COMMAND = 0, 1, 2

Decorated = TypeVar("Decorated", bound=Callable[..., Any])


def pattern_argument(verb: Decorated) -> Decorated:
    """The argument PATTERN of a verb: one file, which the verb works here and now, or several and folders, worked side by side."""

    @functools.wraps(verb)
    def on_each(pattern: tuple[Path, ...], **options: Any) -> None:  # whatever click has read for this verb
        paths: Sequence[Path] = pattern
        if len(pattern) > 1 or pattern[0].is_dir():
            from motifold.cli.several import patterns_in, work_several

            paths = patterns_in(pattern)
            if len(paths) > 1:
                raise SystemExit(work_several(verb.__module__, paths, options))
        verb(pattern=paths[0], **options)

    named = click.argument("pattern", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="PATTERN...")
    return named(on_each)  # type: ignore[return-value]


def names_for_tab(ctx: click.Context, wanted: Callable[[Pattern], Sequence[str]], begun: str) -> list[str]:
    """Names of the pattern that is on the line already, for the Tab key: those that begin so; none where it cannot be read."""
    for path in (*(ctx.params.get("pattern") or ()), *ctx.args):  # what stands before an option without its value is left in args
        try:
            reading = read_pattern(str(path), Path(path).read_bytes())
        except OSError:
            continue
        if reading.pattern is not None:
            return [name for name in wanted(reading.pattern) if name.casefold().startswith(begun.casefold())]
    return []


def _sizes(ctx: click.Context, param: click.Parameter, begun: str) -> list[str]:
    return names_for_tab(ctx, lambda pattern: [name for name, _ in pattern.size.bodies] if pattern.size else [], begun)


output_option = click.option(
    "-o", "--output", metavar="PATH", help="A file or a folder; - is standard output. Without it: beside the pattern file."
)
json_option = click.option("--json", "as_json", is_flag=True, help="JSON and nothing else, on standard output or in -o FILE.json.")
format_option = click.option(
    "--format", "asked", type=click.Choice(["svg", "pdf", "png"]), help="The form of the drawings where -o names a folder or nothing."
)
rounds_option = click.option("--rounds", type=click.IntRange(1, 1000), metavar="N", help="Work N rounds, whatever the size says.")
size_option = click.option("--size", "size_name", metavar="NAME", help="One size only.", shell_complete=_sizes)
terms_option = click.option(
    "--terms", type=click.Choice(["US", "UK"], case_sensitive=False), help="The terms to print in; the file's own by default."
)
mono_option = click.option("--mono", is_flag=True, help="For a black-and-white printer.")
left_handed_option = click.option(
    "--left-handed", is_flag=True, help="Mirror the work for a left-handed worker; numbers and words stay upright."
)


@dataclass(frozen=True, slots=True)
class Job:
    """A pattern file, read and worked. ``worked`` is None where the file itself could not be read as a pattern."""

    path: Path
    file: str
    source: str
    worked: Worked | None
    problems: tuple[Problem, ...]

    @property
    def failed(self) -> bool:
        return any(problem.severity == "error" for problem in self.problems)


def load(path: Path, rounds: int | None = None, size_name: str | None = None) -> Job:
    """Read and work a pattern file; a file that is not there is a wrong command line (exit status 2)."""
    try:
        data = sys.stdin.buffer.read() if str(path) == "-" else path.read_bytes()
    except OSError as error:
        raise click.UsageError(f"cannot read '{path}': {_reason(error)}.") from None
    reading = read_pattern(str(path), data)
    source = data.decode("utf-8", errors="replace")
    if reading.pattern is None:
        return Job(path, str(path), source, None, reading.problems)
    names = [name for name, _ in reading.pattern.size.bodies] if reading.pattern.size else []
    if size_name is not None:
        size_name = _known_size(size_name, names)
    found = reading.problems
    if reading.pattern.pictures:
        from motifold.render.pattern.pictures import picture_problems

        found = in_order([*found, *picture_problems(reading.pattern)])
    worked = work_pattern(reading.pattern, rounds=rounds, size_name=size_name, reading_problems=found)
    return Job(path, str(path), source, worked, worked.problems)


def _known_size(asked: str, names: Sequence[str]) -> str:
    for name in names:
        if name.casefold() == asked.casefold():
            return name
    if not names:
        raise click.UsageError(f"the pattern has no sizes, so there is no size '{asked}'.")
    raise click.UsageError(f"there is no size '{asked}'; the sizes are: {', '.join(names)}.")


def _reason(error: OSError) -> str:
    return (error.strerror or str(error)).lower() if not isinstance(error, IsADirectoryError) else "it is a folder"


def tell(job: Job) -> None:
    """All problems on standard error, in the order of the file."""
    if job.problems:
        click.echo(report_problems(job.problems, job.file, job.source), err=True, nl=True)


def require_worked(job: Job) -> Worked:
    """The worked pattern; tells its problems, and stops with exit status 1 where nothing could be worked."""
    tell(job)
    if job.worked is None:
        raise SystemExit(HAS_PROBLEMS)
    return job.worked


def finish(job: Job, written: bool = False) -> None:
    """Leave with the exit status that the problems ask for. ``written``: files were, whose readers should know of the mistakes."""
    if written and job.failed:
        words = "It was written all the same, with the mistakes told above in it: do not print or share it before they are mended."
        click.echo(words, err=True)
    raise SystemExit(HAS_PROBLEMS if job.failed else GOOD)


def print_json(job: Job, content: dict[str, Any], output: str | None = None) -> None:
    """``content`` and the problems, as JSON and nothing else, then leave: on standard output, or in the file with the ending .json."""
    target = json_target(output)
    content["problems"] = [problem_json(problem, job.file) for problem in job.problems]
    put(target, (json_text(content) + "\n").encode())
    finish(job)


def json_target(output: str | None) -> Path | None:
    """Where ``--json`` goes: None is standard output."""
    if output in (None, "-"):
        return None
    path = Path(str(output))
    if path.suffix.lower() != ".json":
        raise click.UsageError(f"'{output}': --json goes to standard output, or to a file with the ending .json.")
    return path


def json_text(value: Any, depth: int = 4, indent: str = "") -> str:
    """JSON that is laid out in lines down to ``depth`` and in one line below: a line for each symbol of a chart, or round of a proof."""
    if depth == 0 or not isinstance(value, (dict, list)) or not value:
        return json.dumps(value, ensure_ascii=False)
    deeper = f"{indent} "
    if isinstance(value, dict):
        lines = [f"{deeper}{json.dumps(key, ensure_ascii=False)}: {json_text(part, depth - 1, deeper)}" for key, part in value.items()]
        return "{\n" + ",\n".join(lines) + f"\n{indent}}}"
    return "[\n" + ",\n".join(f"{deeper}{json_text(part, depth - 1, deeper)}" for part in value) + f"\n{indent}]"


def write_whole(path: Path, data: bytes) -> None:
    """Write beside, then rename: a file is replaced only by a complete one.

    A folder that is not there or cannot be written is a wrong command line.
    """
    import tempfile  # most proofs write no file

    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, beside = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.", suffix=".part")
    except OSError as error:
        raise click.UsageError(f"cannot write '{path}': {_reason(error)}.") from None
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
        os.chmod(beside, 0o666 & ~_umask())
        os.replace(beside, path)
    except OSError as error:
        Path(beside).unlink(missing_ok=True)
        raise click.UsageError(f"cannot write '{path}': {_reason(error)}.") from None
    except BaseException:
        Path(beside).unlink(missing_ok=True)
        raise


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


@dataclass(frozen=True, slots=True)
class Target:
    """Where output goes: standard output, one file, or a folder; ``kind`` is its form, without the dot."""

    path: Path | None
    folder: bool
    kind: str


def choose_target(output: str | None, pattern: Path, suffix: str, kinds: Sequence[str], asked: str | None = None) -> Target:
    """Work out ``-o``: a known ending names a file; anything else that exists as a folder, ends in / or has no ending is a folder.

    ``suffix`` is added to the pattern's name where the file is not named ("-chart"); ``kinds[0]`` is the default form;
    ``asked`` is a form from ``--format``.
    """
    if asked is not None and asked not in kinds:
        raise click.UsageError(f"'{asked}' cannot be made here; possible are: {', '.join(kinds)}.")
    if output == "-":
        return Target(None, False, asked or kinds[0])
    if output is None:
        kind = asked or kinds[0]
        home = Path.cwd() if str(pattern) == "-" else pattern.parent
        stem = "pattern" if str(pattern) == "-" else pattern.stem
        return Target(home / f"{stem}{suffix}.{kind}", False, kind)
    path = Path(output)
    if output.endswith(("/", os.sep)) or path.is_dir():
        return Target(path, True, asked or kinds[0])
    ending = path.suffix.lstrip(".").lower()
    if not ending:
        return Target(path, True, asked or kinds[0])
    if ending not in kinds:
        raise click.UsageError(f"'{path.name}': the ending must be one of {', '.join('.' + kind for kind in kinds)}, or name a folder.")
    if asked is not None and asked != ending:
        raise click.UsageError(f"'{path.name}' and --format {asked} contradict each other.")
    return Target(path, False, ending)


def put(target_path: Path | None, data: bytes) -> None:
    """To the file, told on standard error when someone is looking; or to standard output."""
    if target_path is None:
        sys.stdout.buffer.write(data)
        sys.stdout.buffer.flush()
        return
    write_whole(target_path, data)
    if sys.stderr.isatty():
        click.echo(f"wrote {target_path}", err=True)
