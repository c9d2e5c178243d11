"""The ground of the invented island: a volcano with a breached caldera, worn by streams and cut back by the sea.

Pure numpy and seeded, so that the same seed gives the same island. Heights in metres, plan in kilometres east and north of the island's
centre, grids as (rows, columns) with row 0 in the north. Nothing here is a survey of any place, and no result of it proves anything.
"""

import heapq

import numpy as np

SEED = 20271
CELL_M = 10.0
WEST_KM, EAST_KM, SOUTH_KM, NORTH_KM = -4.4, 4.4, -4.4, 6.0
STEP_M = 0.125  # heights are multiples of this: exact in float32, and they pack well

STREAM_WEAR = 0.025  # how fast streams cut, for one step and the square root of the catchment in m²
SLOPE_CREEP = 0.03  # share of the curvature that a slope loses in one step

NEIGHBOURS = [(-1, -1), (-1, 0), (-1, 1), (0, -1), (0, 1), (1, -1), (1, 0), (1, 1)]


def plan_km(cell_m):
    """Easting and northing of the cell centres, kilometres from the island's centre."""
    cell = cell_m / 1000.0
    x = WEST_KM + cell * (np.arange(round((EAST_KM - WEST_KM) / cell)) + 0.5)
    y = NORTH_KM - cell * (np.arange(round((NORTH_KM - SOUTH_KM) / cell)) + 0.5)
    return np.meshgrid(x, y)


def fractal(rng, shape, roughness, longest):
    """Noise of unit spread whose power falls with the frequency; nothing longer than `longest` cells."""
    fy = np.fft.fftfreq(shape[0])[:, None]
    fx = np.fft.rfftfreq(shape[1])[None, :]
    frequency = np.hypot(fy, fx)
    gain = np.where(frequency > 1.0 / longest, 1.0, 0.0) / np.maximum(frequency, 1.0 / longest) ** roughness
    noise = np.fft.irfft2(np.fft.rfft2(rng.standard_normal(shape)) * gain, s=shape)
    return noise / noise.std()


def bump(bearing, at, width):
    """A smooth rise of height 1 about a bearing."""
    return np.exp(-((((bearing - at + 180) % 360 - 180) / width) ** 2))


def young_volcano(rng, x, y):
    """The volcano before rain and sea: concave flanks, a caldera open to the south-east."""
    cells_a_km = x.shape[1] / (EAST_KM - WEST_KM)
    bend = fractal(rng, x.shape, 2.2, 2.5 * cells_a_km)
    r = np.hypot(x, 1.08 * y) * (1 + 0.04 * bend)
    bearing = np.degrees(np.arctan2(x, y))
    rim = 50.0 * np.cos(np.radians(bearing + 12))  # the rim is highest a little west of north
    flank = 1300.0 * np.exp(-r / 1.5) - 62.0 + rim * np.exp(-((r - 0.8) ** 2) / 0.35)
    floor = 470.0 + 330.0 * (r / 0.66) ** 5
    z = np.where(r < 0.66, np.minimum(flank, floor), flank)
    gorge = 470.0 - 210.0 * np.maximum(r - 0.2, 0)
    z = z - bump(bearing + 9 * bend, 146, 15) * np.clip(2.4 - r, 0, 1) * np.maximum(z - gorge, 0)
    return z + 9.0 * fractal(rng, x.shape, 1.6, 0.6 * cells_a_km)


def with_cinder_cones(rng, z, x, y):
    """Two young cones on the worn flanks, each with its crater."""
    dent = 1 + 0.05 * fractal(rng, x.shape, 2.0, 40)
    for cx, cy, height, radius in [(1.80, 1.30, 105.0, 0.27), (-1.95, -0.55, 85.0, 0.24)]:
        away = np.hypot(x - cx, y - cy) / radius * dent
        foot_m = z[np.abs(away - 1) < 0.05].mean() - 18.0
        z = np.maximum(z, np.where(away < 1.3, foot_m + height * np.minimum(1.2 * (1.06 - away), 0.62 + 0.9 * away), 0))
    return z


def downhill_order(z):
    """Cells from the sea upward, and the surface with its hollows filled so that every cell drains."""
    rows, cols = z.shape
    level = np.full(z.shape, np.inf)
    sea = z <= 0
    level[sea] = z[sea]
    shore = sea & ~(np.roll(sea, 1, 0) & np.roll(sea, -1, 0) & np.roll(sea, 1, 1) & np.roll(sea, -1, 1))
    heap = [(0.0, int(i)) for i in np.flatnonzero(shore)]
    heapq.heapify(heap)
    flat, height, order = level.ravel().tolist(), z.ravel().tolist(), []
    while heap:
        here, i = heapq.heappop(heap)
        order.append(i)
        row, col = divmod(i, cols)
        for dr, dc in NEIGHBOURS:
            r, c = row + dr, col + dc
            j = r * cols + c
            if 0 <= r < rows and 0 <= c < cols and flat[j] == np.inf:
                flat[j] = max(height[j], here + 1e-4)
                heapq.heappush(heap, (flat[j], j))
    return order, np.array(flat).reshape(z.shape)


def receivers(z):
    """For each cell the flat index of its steepest lower neighbour and the distance to it in cells."""
    rows, cols = z.shape
    index = np.arange(rows * cols).reshape(z.shape)
    best = np.zeros(z.shape)
    to, run = index.copy(), np.ones(z.shape)
    padded = np.pad(z, 1, constant_values=np.inf)
    for dr, dc in NEIGHBOURS:
        length = np.hypot(dr, dc)
        fall = (z - padded[1 + dr : 1 + dr + rows, 1 + dc : 1 + dc + cols]) / length
        steeper = fall > best
        best[steeper], to[steeper], run[steeper] = fall[steeper], (index + dr * cols + dc)[steeper], length
    return to.ravel(), run.ravel()


def worn(rng, z, cell_m, steps):
    """The surface after some steps of stream cutting (implicit, Braun and Willett 2013) and slope creep."""
    for _ in range(steps):
        land = z > 0
        z = np.where(land, z + 0.15 * rng.standard_normal(z.shape), z)
        order, filled = downhill_order(z)
        to, run = receivers(filled)
        to_list = to.tolist()
        area = [cell_m**2] * z.size
        for i in reversed(order):
            if to_list[i] != i:
                area[to_list[i]] += area[i]
        cut = (STREAM_WEAR * np.sqrt(area) / (run * cell_m)).tolist()
        height = filled.ravel().tolist()
        for i in order:
            j = to_list[i]
            if j != i:
                height[i] = (height[i] + cut[i] * height[j]) / (1 + cut[i])
        new = np.array(height).reshape(z.shape)
        padded = np.pad(new, 1, mode="edge")
        around = (padded[:-2, 1:-1] + padded[2:, 1:-1] + padded[1:-1, :-2] + padded[1:-1, 2:]) / 4
        z = np.where(land, new + SLOPE_CREEP * (around - new) * 4, z)
    return z


def doubled(z):
    """The surface on a grid twice as fine (corner cutting: smooth, no new hollows)."""
    for axis in (0, 1):
        z = np.moveaxis(z, axis, 0)
        padded = np.concatenate([z[:1], z, z[-1:]])
        fine = np.empty((2 * z.shape[0],) + z.shape[1:])
        fine[0::2] = 0.75 * z + 0.25 * padded[:-2]
        fine[1::2] = 0.75 * z + 0.25 * padded[2:]
        z = np.moveaxis(fine, 0, axis)
    return z


def cut_by_the_sea(rng, z, x, y):
    """Sea cliffs all round, a low bench in the south, a beach in the south-east, a skerry and an islet; open sea is 0."""
    r, bearing = np.hypot(x, y), np.degrees(np.arctan2(x, y)) % 360
    ragged = fractal(rng, x.shape, 1.9, 140)
    shore = 3.28 + 0.10 * ragged + 0.50 * bump(bearing, 176, 11) + 0.24 * bump(bearing, 80, 7) + 0.14 * bump(bearing, 352, 12)
    shore = shore - 0.42 * bump(bearing, 141, 13) - 0.25 * bump(bearing, 285, 25)
    inland_m = 1000 * (shore - r)

    old_shore = 2.3 + 0.07 * ragged + 2.2 * (1 - np.minimum(1.6 * bump(bearing, 190, 40), 1))
    bench = 13 + 0.011 * inland_m + 1.1 * fractal(rng, x.shape, 1.5, 60)
    z = np.minimum(z, bench + 1.1 * 1000 * np.maximum(old_shore - r, 0))

    beach = bump(bearing, 141, 11)
    cliff = 2.0 + (2.6 - 2.53 * beach) * inland_m + 1.2 * np.maximum(inland_m - 220, 0)
    z = np.where(inland_m > 0, np.maximum(np.minimum(z, cliff), 1.0), 0.0)

    for cx, cy, radius, top in [(2.92, -1.66, 0.045, 3.0), (-1.15, 5.25, 0.19, 31.0)]:
        edge_m = 1000 * (radius * (1 + 0.12 * ragged) - np.hypot(x - cx, y - cy))
        z = np.maximum(z, np.where(edge_m > 0, np.minimum(top + 0.03 * edge_m, 1 + 1.6 * edge_m), 0))
    return z


def island():
    """Heights of the island, (rows, columns) of float32 metres, multiples of STEP_M; the sea is exactly 0."""
    rng = np.random.default_rng(SEED)
    sea_rng = np.random.default_rng(SEED + 1)  # its own, so that the coast stays where it is when the wearing is changed
    z = young_volcano(rng, *plan_km(4 * CELL_M))
    z = worn(rng, z, 4 * CELL_M, 45)
    z = worn(rng, doubled(z), 2 * CELL_M, 20)
    z = worn(rng, doubled(z), CELL_M, 4)
    x, y = plan_km(CELL_M)
    z = with_cinder_cones(rng, z, x, y) + 0.5 * fractal(rng, z.shape, 1.3, 25)
    z = cut_by_the_sea(sea_rng, z, x, y)
    return (np.round(z / STEP_M) * STEP_M).astype(np.float32)
