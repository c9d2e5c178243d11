"""How benchmarks measure and what they tell: works in turn, the quickest run of each, its spread, and ratios beside what is promised."""

import time
from typing import NamedTuple, Optional


class Taken(NamedTuple):
    """Seconds of the quickest of several runs, and by what part of it the middle one took longer: what else the machine did."""

    best_s: float
    spread: Optional[float] = None

    def __str__(self):
        return shown_s(self.best_s) + ("" if self.spread is None else f" (+{100 * self.spread:.0f} %)")

    def times(self, factor):
        """The same for so many times the work."""
        return Taken(self.best_s * factor, self.spread)


class Ratio(NamedTuple):
    """A time of the plugin beside another one, which is promised to be at least so many times as long, or the plugin's at most."""

    what: str
    plugin: Taken
    against: str
    reference: Taken
    at_least: Optional[float] = None
    at_most: Optional[float] = None

    @property
    def value(self):
        as_long = self.plugin.best_s / self.reference.best_s
        return as_long if self.at_most is not None else 1.0 / as_long

    @property
    def kept(self):
        return self.value <= self.at_most if self.at_most is not None else self.at_least is None or self.value >= self.at_least

    def row(self, title):
        figure, slower = self.value, self.at_most is not None
        if self.at_least is None and not slower and figure < 1:
            figure, slower = 1.0 / figure, True
        words = "times as long" if slower else "times as fast"
        bound = None if self.at_least == self.at_most else f"at most {self.at_most:g}" if self.at_most is not None else f"{self.at_least:g}"
        promise = "" if bound is None else bound if self.kept else f"{bound}, **not kept**"
        figure = f"{figure:.1f}" if figure < 10 else f"{figure:.0f}"
        return f"| {title}: {self.what} | {self.plugin} | {self.against} | {self.reference} | **{figure}** {words} | {promise} |"


class Section(NamedTuple):
    """What a benchmark gives to docs/performance.md: rows of the table, and what is to be known about them."""

    title: str
    heading: str
    ratios: list
    body: str


def taken(seconds):
    """The quickest of runs, and how far the middle one lies over it."""
    seconds = sorted(seconds)
    return Taken(seconds[0], seconds[len(seconds) // 2] / seconds[0] - 1.0 if len(seconds) > 1 else None)


def timed(work):
    """Seconds of one run; those of the processor, which hang less on what else the machine does."""
    start = time.process_time()
    work()
    return time.process_time() - start


def in_turn(works, rounds):
    """Run works that tell their seconds in turn, so that what else the machine does falls on all alike: {name: Taken}."""
    seconds = {name: [] for name in works}
    for _ in range(rounds):
        for name, work in works.items():
            told = work()
            seconds[name] += told if isinstance(told, list) else [told]
    return {name: taken(told) for name, told in seconds.items()}


def shown_s(seconds):
    """Seconds as a person reads them."""
    if seconds < 0.01:
        return f"{1e3 * seconds:.2f} ms"
    return f"{seconds:.3f} s" if seconds < 1 else f"{seconds:.1f} s" if seconds < 100 else f"{number(seconds)} s"


def number(value):
    """A whole number in groups of three."""
    return f"{value:,.0f}".replace(",", " ")


def table(heads, rows):
    """Lines of a table of Markdown; the first column to the left, the others to the right."""
    yield f"| {' | '.join(heads)} |"
    yield "|---|" + "---:|" * (len(heads) - 1)
    for row in rows:
        yield f"| {' | '.join(str(cell) for cell in row)} |"


def memory_table(what, peaks):
    """How much memory processes held at most: {what they did: MB}."""
    return "\n".join(table((what, "most memory held"), ((name, f"{peak:.0f} MB") for name, peak in peaks.items())))
