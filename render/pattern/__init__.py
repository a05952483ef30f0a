"""The file: TOML -> a checked Pattern; the notation -> instructions, with the place of every word.

``read_pattern(path, data)`` reads a whole file and finds every problem; ``report_problems`` and ``problem_json`` tell them.
"""

from motifold.render.pattern.load import Reading, read_pattern
from motifold.render.pattern.model import Pattern
from motifold.render.pattern.report import problem_json, report_problems

__all__ = ["Pattern", "Reading", "problem_json", "read_pattern", "report_problems"]
