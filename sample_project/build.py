"""Build the data of the invented reserve: dem.tif and reserve.gpkg, the same each time.

Needs numpy and GDAL's Python bindings, as QGIS brings them; takes about a minute: python3 sample_project/build.py
"""

import heapq
from pathlib import Path

import numpy as np
import terrain
from osgeo import gdal, ogr, osr

HERE = Path(__file__).parent
DEM, RESERVE = HERE / "dem.tif", HERE / "reserve.gpkg"
EPSG = 32625
CENTRE_E, CENTRE_N = 500000.0, 3985000.0  # 36.01 N 33.00 W: open ocean, far from any land
DATA_DATE = "2027-01-01T00:00:00.000Z"  # written into the GeoPackage in place of the moment of the run
NODATA = -9999.0

# name, sector, the subject that its mark faces, kilometres east and north of the centre (centres of DEM cells), lens height, note
CAMERAS = [
    ("Fold Pasture", "bench", "Vennet Ruin", -0.435, -2.725, 1.5, "Grass, level; the ruin fills a 24 mm lens"),
    ("West Bench Gate", "bench", "Vennet Ruin", -1.315, -2.805, 1.5, "Low arch over the ruin in June"),
    ("South Shoulder", "bench", "Drovane Light", -0.185, -1.745, 1.6, "From above: the light against the sea"),
    ("Drovane East Ledge", "bench", "Drovane Light", 0.755, -3.345, 1.2, "Cliff edge, stay two metres back"),
    ("Sillow Ledge", "cape", "Sillow Arch", 3.335, 0.575, 1.2, "Room for four tripods"),
    ("Sillow Terrace", "cape", "Sillow Arch", 2.835, 0.335, 1.5, "Long lens: Moon through the arch"),
    ("Hobbin Rest", "cove", "Hobbin Stack", 3.055, -1.075, 1.5, "Upright band over the stack in late summer"),
    ("Cove Spring", "cove", "Hobbin Stack", 2.495, -1.695, 1.5, "Wet ground"),
    ("North Boulders", "heights", "Ulmeric Cairn", -0.075, 3.425, 1.5, "Boulder beach behind; slippery"),
    ("Murl Islet", "heights", "Ulmeric Cairn", -1.115, 5.195, 1.4, "By boat and only in calm weather"),
    ("Ferrick West Spur", "heights", "Ferrick Tree", 0.105, 3.145, 1.5, "Tree on the skyline to the east"),
    ("Ferrick Hollow", "heights", "Ferrick Tree", 0.335, 3.285, 1.3, "Low viewpoint: tree against the sky"),
]

# name, kind, sector, kilometres east and north, height, foot or sill above ground, width, usable between these bearings
SUBJECTS = [
    ("Drovane Light", "lighthouse", "bench", 0.155, -3.725, 24.0, 0.0, 6.0, None, None),
    ("Vennet Ruin", "ruin", "bench", -0.455, -2.855, 9.0, 0.0, 14.0, None, None),
    ("Sillow Arch", "natural arch", "cape", 3.425, 0.595, 17.0, 3.0, 26.0, 40.0, 125.0),
    ("Hobbin Stack", "stack", "cove", 2.925, -1.665, 52.0, 0.0, 38.0, None, None),
    ("Ulmeric Cairn", "summit cairn", "heights", None, None, 3.5, 0.0, 3.0, None, None),
    ("Ferrick Tree", "lone tree", "heights", 0.305, 3.175, 11.0, 0.0, 9.0, None, None),
]

# name, note, places that it passes: names of points or kilometres east and north
PATHS = [
    ("Bench Path", "Level, marked", [(-2.30, -2.28), "West Bench Gate", "Fold Pasture", (0.05, -3.40), "Drovane East Ledge"]),
    (
        "Rim Path",
        "Steep, loose ash above the shoulder",
        ["Fold Pasture", "South Shoulder", "Ulmeric Cairn", "Ferrick Hollow", "North Boulders"],
    ),
    ("East Coast Path", "Cliffs on the seaward side", [(1.62, -2.02), "Cove Spring", "Hobbin Rest", "Sillow Terrace", "Sillow Ledge"]),
]

# name, outline in kilometres east and north
ALLOWED = [
    ("Bench and South Shoulder", "-2.45 -1.9, -0.6 -1.45, 0.3 -1.5, 0.6 -2.2, 1.3 -2.75, 0.95 -3.35, 0.2 -3.8, -0.85 -3.3, -2.4 -2.4"),
    ("East Coast", "1.5 -1.75, 2.4 -0.9, 2.55 0.75, 3.5 0.9, 3.55 0.4, 3.15 -0.1, 3.25 -1.0, 2.6 -1.95, 2.0 -2.3, 1.55 -2.2"),
    ("North Flank", "-0.6 0.45, -1.5 1.6, -1.75 2.6, -1.2 3.5, 0.1 3.55, 0.7 3.35, 0.75 2.4, 0.5 0.7, 0.35 0.55"),
    ("Murl Landing", "-1.38 5.05, -1.38 5.48, -0.92 5.48, -0.92 5.05"),
]

# name, reason, first and last day of the closure each year, outline
CLOSED = [
    ("Petrel Ledges", "nesting seabirds", "03-01", "10-15", "-2.35 -2.05, -1.75 -2.2, -1.62 -2.95, -2.15 -2.75, -2.65 -2.3"),
    (
        "Caldera Floor",
        "rockfall",
        "01-01",
        "12-31",
        "-0.5 0.1, -0.3 0.42, 0.15 0.5, 0.5 0.2, 0.45 -0.25, 0.1 -0.45, -0.35 -0.35",
    ),
    ("Seal Strand", "seal pups", "11-01", "02-28", "1.5 -1.98, 1.95 -1.92, 2.1 -2.2, 1.9 -2.35, 1.42 -2.3"),
]


def outline(text):
    """Corners of an outline, as pairs of kilometres."""
    return [tuple(float(value) for value in corner.split()) for corner in text.split(",")]


def cell_of(x_km, y_km, cell_m=terrain.CELL_M):
    """Row and column of the cell that holds a place."""
    return int((terrain.NORTH_KM - y_km) * 1000 // cell_m), int((x_km - terrain.WEST_KM) * 1000 // cell_m)


def summit_km(z):
    """Centre of the highest cell."""
    row, col = np.unravel_index(z.argmax(), z.shape)
    return terrain.WEST_KM + (col + 0.5) * terrain.CELL_M / 1000, terrain.NORTH_KM - (row + 0.5) * terrain.CELL_M / 1000


def metres(x_km, y_km):
    """Easting and northing."""
    return CENTRE_E + 1000 * x_km, CENTRE_N + 1000 * y_km


def leg(z, start_km, end_km, cell_m):
    """The way of least effort between two places on a coarse grid, as kilometres east and north; slopes and water cost."""
    start, end = cell_of(*start_km, cell_m), cell_of(*end_km, cell_m)
    cost, came, heap = {start: 0.0}, {}, [(0.0, start)]
    while heap:
        spent, here = heapq.heappop(heap)
        if here == end:
            break
        if spent > cost[here]:
            continue
        for dr, dc in terrain.NEIGHBOURS + [(1, 2), (1, -2), (-1, 2), (-1, -2), (2, 1), (2, -1), (-2, 1), (-2, -1)]:
            there = here[0] + dr, here[1] + dc
            run = cell_m * np.hypot(dr, dc)
            slope = abs(float(z[there]) - float(z[here])) / run
            total = spent + run * (1 + 8 * slope + (6 * slope) ** 2 + (500 if z[there] <= 1 else 0))
            if total < cost.get(there, np.inf):
                cost[there], came[there] = total, here
                heapq.heappush(heap, (total, there))
    cells = [end]
    while cells[-1] != start:
        cells.append(came[cells[-1]])
    cell_km = cell_m / 1000
    way = [(terrain.WEST_KM + (col + 0.5) * cell_km, terrain.NORTH_KM - (row + 0.5) * cell_km) for row, col in reversed(cells)]
    return [start_km] + way[1:-1] + [end_km]


def path_km(z, stops):
    """A path along its stops, its corners cut twice."""
    line = [stops[0]]
    for start, end in zip(stops[:-1], stops[1:]):
        way = np.array(leg(z[1::2, 1::2], start, end, 2 * terrain.CELL_M))
        for _ in range(2):
            a, b = way[:-1], way[1:]
            cut = np.stack([0.75 * a + 0.25 * b, 0.25 * a + 0.75 * b], axis=1).reshape(-1, 2)
            way = np.concatenate([way[:1], cut[1:-1], way[-1:]])
        line += [tuple(place) for place in way[1:]]
    return line


def wkt(kind, places_km, z=None):
    """Well-known text of a point with height, a line or an outline; whole decimetres."""
    pairs = ["{:.1f} {:.1f}".format(*metres(*place)) for place in places_km]
    if kind == "POINT Z":
        return f"POINT Z ({pairs[0]} {z:.3f})"
    if kind == "POLYGON":
        return f"POLYGON (({', '.join(pairs + pairs[:1])}))"
    return f"LINESTRING ({', '.join(pairs)})"


def write_dem(z):
    """One compressed float32 band; the sea is 0 and no cell is empty."""
    rows, cols = z.shape
    options = ["COMPRESS=DEFLATE", "PREDICTOR=3", "ZLEVEL=9", "TILED=YES"]
    raster = gdal.GetDriverByName("GTiff").Create(str(DEM), cols, rows, 1, gdal.GDT_Float32, options)
    west, north = metres(terrain.WEST_KM, terrain.NORTH_KM)
    raster.SetGeoTransform((west, terrain.CELL_M, 0, north, 0, -terrain.CELL_M))
    raster.SetProjection(reference().ExportToWkt())
    band = raster.GetRasterBand(1)
    band.SetNoDataValue(NODATA)
    band.SetUnitType("m")
    band.WriteArray(z)


def reference():
    """The UTM zone of the island."""
    crs = osr.SpatialReference()
    crs.ImportFromEPSG(EPSG)
    return crs


def write_layer(package, name, kind, fields, rows):
    """One layer; `rows` are well-known texts followed by the fields' values."""
    layer = package.CreateLayer(name, reference(), kind, ["SPATIAL_INDEX=YES"])
    for field, field_type in fields:
        layer.CreateField(ogr.FieldDefn(field, field_type))
    for text, *values in rows:
        feature = ogr.Feature(layer.GetLayerDefn())
        feature.SetGeometry(ogr.CreateGeometryFromWkt(text))
        for (field, _), value in zip(fields, values):
            feature.SetField(field, value) if value is not None else feature.SetFieldNull(field)
        layer.CreateFeature(feature)


def write_reserve(z):
    """The GeoPackage with its five layers."""
    summit = summit_km(z)
    subjects = [(n, k, s, *(summit if x is None else (x, y)), *rest) for n, k, s, x, y, *rest in SUBJECTS]
    place = {row[0]: (row[3], row[4]) for row in CAMERAS + subjects}
    ground = {name: float(z[cell_of(*at)]) for name, at in place.items()}

    def point(name):
        return wkt("POINT Z", [place[name]], ground[name])

    def toward(camera, subject):
        east, north = np.subtract(place[subject], place[camera])
        return round(float(np.degrees(np.arctan2(east, north)))) % 360  # turns the camera's mark on the map, no more

    def grid(name):
        return [round(value, 1) for value in metres(*place[name])]  # as in the subject's own point

    text, real = ogr.OFTString, ogr.OFTReal
    RESERVE.unlink(missing_ok=True)
    package = gdal.GetDriverByName("GPKG").Create(str(RESERVE), 0, 0, 0, gdal.GDT_Unknown)

    fields = [("name", text), ("sector", text), ("faces", text), ("faces_deg", real), ("lens_m", real), ("note", text)]
    fields += [("faces_e", real), ("faces_n", real)]
    rows = [(point(name), name, sector, faces, toward(name, faces), *rest, *grid(faces)) for name, sector, faces, _, _, *rest in CAMERAS]
    write_layer(package, "cameras", ogr.wkbPoint25D, fields, rows)

    fields = [("name", text), ("kind", text), ("sector", text)]
    fields += [(name, real) for name in ("height_m", "base_m", "width_m", "face_from", "face_to")]
    rows = [(point(name), name, kind, sector, *rest) for name, kind, sector, _, _, *rest in subjects]
    write_layer(package, "subjects", ogr.wkbPoint25D, fields, rows)

    ways = [path_km(z, [place.get(stop, stop) for stop in stops]) for _, _, stops in PATHS]
    rows = [(wkt("LINESTRING", way), name, note) for way, (name, note, _) in zip(ways, PATHS)]
    write_layer(package, "paths", ogr.wkbLineString, [("name", text), ("note", text)], rows)

    rows = [(wkt("POLYGON", outline(corners)), name) for name, corners in ALLOWED]
    write_layer(package, "allowed", ogr.wkbPolygon, [("name", text)], rows)
    fields = [("name", text), ("reason", text), ("closed_from", text), ("closed_to", text)]
    rows = [(wkt("POLYGON", outline(corners)), *rest) for *rest, corners in CLOSED]
    write_layer(package, "closed", ogr.wkbPolygon, fields, rows)


def main():
    """Write both files."""
    gdal.UseExceptions()
    ogr.UseExceptions()
    gdal.SetConfigOption("OGR_CURRENT_DATE", DATA_DATE)
    z = terrain.island()
    write_dem(z)
    write_reserve(z)
    for file in (DEM, RESERVE):
        print(f"{file.name}: {file.stat().st_size / 1e6:.2f} MB")


if __name__ == "__main__":
    main()
