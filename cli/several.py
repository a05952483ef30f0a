"""Several patterns, or folders of them, in one call: each is worked by a process of its own, side by side on the machine's cores.

One file goes the plain way, in this process. Of several, each file's output stays together and comes in the order asked for, one that fails
leaves the others done, and one line at the end says what came of them.
"""

from __future__ import annotations

import importlib
import io
import json
import multiprocessing
import os
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import Future, ProcessPoolExecutor, as_completed
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import click

from motifold.cli.common import GOOD, HAS_PROBLEMS, json_target, json_text, put
from motifold.symbols.record import dataclass


@dataclass(frozen=True, slots=True)
class Done:
    """What came of one file: its exit status, and what it would have printed."""

    path: Path
    status: int
    printed: bytes
    told: str


def patterns_in(named: Sequence[Path]) -> list[Path]:
    """The pattern files meant: a folder stands for the .toml files in it, by name; a file that is named twice is worked once.

    Raises click.UsageError for a folder without any, and for standard input among several.
    """
    found: dict[Path, None] = {}
    for path in named:
        if not path.is_dir():
            found[path] = None
            continue
        inside = sorted(path.glob("*.toml"))
        if not inside:
            raise click.UsageError(f"there is no pattern file (.toml) in the folder '{path}'.")
        found.update(dict.fromkeys(inside))
    if len(found) > 1 and Path("-") in found:
        raise click.UsageError("standard input (-) is one pattern: it cannot stand among several.")
    return list(found)


def work_several(verb: str, paths: Sequence[Path], asked: Mapping[str, Any]) -> int:
    """Run a verb on each file with the same options; the exit status is the worst of theirs.

    ``verb`` is the module of the verb, ``asked`` its options as they were read.
    """
    if asked.get("watching"):
        raise click.UsageError(f"--watch looks at one pattern, not at {len(paths)}.")
    output, as_json = asked.get("output"), bool(asked.get("as_json"))
    options = dict(asked)
    if as_json:
        options["output"] = None
    elif output not in (None, "-"):
        _need_folder(str(output), paths)
    done: dict[Path, Done] = {}
    with _bar(len(paths)) as step:
        for one in _side_by_side(verb, paths, options):
            done[one.path] = one
            step()
    results = [done[path] for path in paths]
    for one in results:
        _tell(one, heading=not as_json)
    if as_json:
        _put_json(results, output)
    click.echo(_summary(results), err=True)
    return max(one.status for one in results)


@contextmanager
def _bar(length: int) -> Iterator[Callable[[], None]]:
    """A bar on standard error while someone watches; gives what moves it on by one."""
    if not sys.stderr.isatty():
        yield lambda: None
        return
    with click.progressbar(length=length, label=f"{length} patterns", file=sys.stderr) as bar:
        yield lambda: bar.update(1)


def _need_folder(output: str, paths: Sequence[Path]) -> None:
    """Several files go into a folder, and no two of one name into the same."""
    folder = Path(output)
    if folder.suffix and not folder.is_dir() and not output.endswith(("/", os.sep)):
        raise click.UsageError(f"'{output}' is one file, and there are {len(paths)} patterns: name a folder.")
    stems: dict[str, Path] = {}
    for path in paths:
        if path.stem in stems:
            raise click.UsageError(f"'{stems[path.stem]}' and '{path}' would be written over each other in '{output}'.")
        stems[path.stem] = path


def _side_by_side(verb: str, paths: Sequence[Path], options: Mapping[str, Any]) -> Iterator[Done]:
    """Each file as it is done. Where a process is ended from outside (no memory left), those that it took along are tried again alone."""
    left = dict.fromkeys(paths)
    try:
        with _pool(min(_cores(), len(paths))) as pool:
            jobs: list[Future[Done]] = [pool.submit(run_one, verb, path, options) for path in paths]
            for job in as_completed(jobs):
                one = job.result()
                del left[one.path]
                yield one
    except BrokenProcessPool:
        pass  # whose fault it was shows when each is alone
    for path in left:
        try:
            with _pool(1) as pool:
                yield pool.submit(run_one, verb, path, options).result()
        except BrokenProcessPool:
            yield Done(path, HAS_PROBLEMS, b"", f"{path}: it was stopped from outside; is the memory of this machine too small for it?\n")


def _pool(worker_count: int) -> ProcessPoolExecutor:
    way = "fork" if "fork" in multiprocessing.get_all_start_methods() else None  # a fork need not load everything again
    return ProcessPoolExecutor(worker_count, mp_context=multiprocessing.get_context(way))


def _cores() -> int:
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def run_one(verb: str, path: Path, options: Mapping[str, Any]) -> Done:
    """One file, with what it prints caught. Nothing escapes: a fault is told as the fault of this file."""
    command = importlib.import_module(verb).command
    out, err = io.TextIOWrapper(io.BytesIO(), encoding="utf-8"), io.StringIO()
    before = sys.stdout, sys.stderr
    sys.stdout, sys.stderr = out, err
    try:
        command.callback.__wrapped__(pattern=path, **options)
        status = GOOD
    except SystemExit as end:
        status = end.code if isinstance(end.code, int) else HAS_PROBLEMS
    except click.ClickException as wrong:
        status = wrong.exit_code
        err.write(f"{path}: {wrong.format_message()}\n")
    except (Exception, RecursionError) as fault:
        status = HAS_PROBLEMS
        err.write(f"{path}: a fault of motifold, not of the pattern: {type(fault).__name__}: {fault}\n")
    finally:
        out.flush()
        sys.stdout, sys.stderr = before
    return Done(path, status, out.buffer.getvalue(), err.getvalue())


def _tell(one: Done, heading: bool) -> None:
    """What one file printed, where it would have printed it."""
    if one.told:
        click.echo(one.told, err=True, nl=not one.told.endswith("\n"))
    if heading and one.printed:
        click.echo(f"== {one.path} ==\n")
        sys.stdout.flush()
        sys.stdout.buffer.write(one.printed + (b"" if one.printed.endswith(b"\n\n") else b"\n"))
        sys.stdout.buffer.flush()


def _put_json(results: Sequence[Done], output: str | None) -> None:
    """One array: for each file its name and what its verb tells (null where it told nothing)."""
    target = json_target(output)
    content = [{"file": str(one.path), "told": json.loads(one.printed) if one.printed else None} for one in results]
    put(target, (json_text(content, 6) + "\n").encode())


def _summary(results: Sequence[Done]) -> str:
    bad = [one.path.name for one in results if one.status != GOOD]
    if not bad:
        return f"{len(results)} patterns, all good."
    return f"{len(results)} patterns: {len(results) - len(bad)} good, {len(bad)} not ({', '.join(bad)})."
