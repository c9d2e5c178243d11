"""Measure all speeds and write docs/performance.md: `python tests/benchmarks/report.py`, in the environment of tests/run.sh.

`python tests/benchmarks/report.py rows views` measures these alone and leaves the rest of the page as it is. A benchmark takes part by
its `section()`.
"""

import importlib
import os
import platform
import re
import sys
from datetime import datetime, timezone
from importlib.metadata import version
from pathlib import Path

import numpy as np

PAGE = Path(__file__).resolve().parents[2] / "docs" / "performance.md"
SECTIONS = ("places", "alignments", "night_windows", "rows", "skyline", "exposure", "standpoints", "views", "batch")
LIBRARIES = ("numpy", "skyfield", "astropy")
HEAD = ("| | plugin | against | takes | ratio | promised |", "|---|---:|---|---:|---:|---:|")

TEMPLATE = """# Speed and memory

Written by `build/venv/bin/python tests/benchmarks/report.py`, which measures all of it again; with names (`report.py rows views`) it
renews these parts alone. A speed by itself says little about another machine: read the ratios. Plugin and reference run in turn, in one
run, and the quickest of each counts; in brackets stands by how much the middle one of its runs took longer, which is what else the
machine did. Seconds are those of the processor; only rows, which wait for the disk, and the plugin's night windows in two threads go by
the clock, which on a busy machine speaks against the plugin. A promise is a test that runs when its file in `tests/benchmarks/` is
named to pytest: a busy machine must not make the common run fail.

{table}

{sections}"""


def machine():
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count()
    libraries = ", ".join(f"{name} {np.__version__ if name == 'numpy' else version(name)}" for name in LIBRARIES)
    return f"{cores} cores ({platform.machine()}); Python {platform.python_version()}, {libraries}"


def told(section):
    """Rows of the table, and text, of a section."""
    measured = f"Measured {datetime.now(timezone.utc):%Y-%m-%d} on {machine()}."
    rows = [ratio.row(section.title) for ratio in section.ratios]
    return rows, f"## {section.title}: {section.heading}\n\n{section.body.strip()}\n\n{measured}\n"


def tell(section):
    """Print what one benchmark measured."""
    rows, text = told(section)
    print("\n".join((*HEAD, *rows, "", text)))


def kept(page):
    """Rows and texts that a page holds, by the titles of sections."""
    rows, texts = {}, {}
    for row in re.findall(r"^\| [^|]+: .*\|$", page.split("\n## ")[0], flags=re.M):
        rows.setdefault(row[2:].split(":")[0], []).append(row)
    for text in page.split("\n## ")[1:]:
        texts[text.split(":")[0]] = f"## {text.rstrip()}\n"
    return rows, texts


def main(names):
    """Measure, print, and write the page after each section, so that what was measured is not lost."""
    rows, texts = kept(PAGE.read_text(encoding="utf-8")) if PAGE.exists() else ({}, {})
    if not names:
        rows, texts = {}, {}
    for name in names or SECTIONS:
        section = importlib.import_module(name).section()
        tell(section)
        rows[section.title], texts[section.title] = told(section)
        lines = "\n".join((*HEAD, *(row for title in texts for row in rows.get(title, []))))
        PAGE.write_text(TEMPLATE.format(table=lines, sections="\n".join(texts.values())), encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
