"""Why nothing was found, told in a few sentences where there are as many reasons as pairs."""

import re
from collections import Counter

from .translation import tr

NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
TOLD = 3


class Reasons:
    """Sentences of one kind, alike but for their numbers, are counted together; the first of each kind is kept as its example."""

    def __init__(self):
        self._count, self._example = Counter(), {}

    def add(self, without):
        """Count the pairs of a table of `UNMET_FIELDS`."""
        for camera, subject, reason in zip(without["camera"], without["subject"], without["reason"]):
            kind = NUMBER.sub("", reason)
            self._count[kind] += 1
            if kind not in self._example:
                self._example[kind] = (camera, subject, reason)

    def log(self, feedback):
        """Tell the most frequent kinds, each by its example."""
        total = sum(self._count.values())
        for kind, count in self._count.most_common(TOLD):
            camera, subject, reason = self._example[kind]
            feedback.pushInfo(
                tr("{n:,} of {total:,} pairs and bodies without an alignment, such as {camera} to {subject}: {reason}").format(
                    n=count, total=total, camera=camera, subject=subject, reason=reason
                )
            )
