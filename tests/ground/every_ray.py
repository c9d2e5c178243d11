"""Shadows of a tile without a short cut: lines take in one row after the other, and every cell's own ray is followed to its end.

    with every_ray.followed(monkeypatch): ground.lit(light)

What `ground.sweep` and `ground.own_rays` save in time must change no cell.
"""

from contextlib import contextmanager

import numpy as np

from skyalidade.ground import own_rays, shadows, sweep


@contextmanager
def followed(monkeypatch):
    """Let `shadows.Ground` work as it is told here."""
    with monkeypatch.context() as patch:
        patch.setattr(shadows, "Shadow", Shadow)
        patch.setattr(shadows, "lit_cells", lit_cells)
        yield


class Shadow(sweep.Shadow):
    """The height of the shadow on lines, row by row."""

    def _run(self, u, now):
        heights, rises, toward = self.side.heights_m, self.side.rises_m, self.line.toward
        place = self._place(u)
        left, part = sweep.split(place)
        drop, more = self.line.drop_m(u), self.line.more_m(u)
        beside = self._beside(np.arange(self._count)).astype(np.float32)

        def pass_over(start, first, rise, part, drop, more):
            low, high = max(-start, 0), min(first.size - start, self._count)
            if high > low:
                columns = slice(start + low, start + high)
                ground = rise[columns] * part + first[columns] - (beside[low:high] * more + drop)
                now[low:high] = np.maximum(now[low:high], ground)

        for i, row in enumerate(self._rows):
            pass_over(left[i], heights[row], rises[row], part[i], drop[i], more[i])
            self.height_m[i] = now
            if i + 1 < len(u) and left[i] != left[i + 1]:
                column = max(left[i], left[i + 1])
                way = np.float32((column - place[i]) / (place[i + 1] - place[i]))
                here = (values[i] + way * (values[i + 1] - values[i]) for values in (drop, more))
                pass_over(column, heights[row], heights[row - toward] - heights[row], way, *here)


def lit_cells(shadow, field, lens_m, skip_m):
    """Which cells are lit."""
    lit = np.empty((shadow.span.rows, shadow.span.cols), dtype=bool)
    alike = own_rays.alike_rows(shadow)
    for first in range(0, len(lit), alike):
        lit[first : first + alike] = _strip(shadow, field, first, min(alike, len(lit) - first), lens_m, skip_m)
    return lit


def _strip(shadow, field, first, rows, lens_m, skip_m):
    side, line, cols = shadow.side, shadow.line, shadow.span.cols
    u = shadow.span.u + first + np.arange(rows)
    steps = own_rays.Steps(line, 0.5 * (u[0] + u[-1]), shadow.near, skip_m)

    def cells(values, k, j):
        return values[field.row + first + k : field.row + first + k + rows, field.col + j : field.col + j + cols]

    def level(k, j):
        drop, more, middle = line.drop_m(u + k), line.more_m(u + k), line.v(u + k).astype(np.float32)
        v = (shadow.span.v + j + np.arange(cols)).astype(np.float32)
        return cells(side.heights_m, k, j) - ((drop - more * middle)[:, None] + more[:, None] * v)

    def part_of_row(k, j, part):
        return cells(side.rises_m, k, j) * part + level(k, j)

    row = np.maximum(shadow.order(u).astype(int) - shadow.near, 0)
    left, part = shadow.under(u, shadow.span.v)
    beyond = shadow.height_m[row[:, None], left[:, None] + np.arange(cols + 1)]
    highest = (beyond[:, 1:] - beyond[:, :-1]) * part[:, None] + beyond[:, :-1]
    for k, j, part in steps.close_rows + steps.rows:
        highest = np.maximum(highest, part_of_row(k, j, part))
    for k, j, part in steps.close_cols + steps.cols:
        highest = np.maximum(highest, (level(k + 1, j) - level(k, j)) * part + level(k, j))
    for (k, down), (j, right) in steps.between:
        here = part_of_row(k, j, right)
        highest = np.maximum(highest, (part_of_row(k + 1, j, right) - here) * down + here)
    return level(0, 0) + np.float32(lens_m) >= highest
