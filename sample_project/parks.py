"""Build parks.gpkg, 40 invented parks over the world, the same each time: python3 sample_project/parks.py [FILE].

Needs GDAL's Python bindings, as QGIS brings them. A place was chosen for its latitude, its meridian or its clock, and for nothing else.
"""

import math
import random
import sys
from pathlib import Path

from osgeo import gdal, ogr, osr

HERE = Path(__file__).parent
PARKS_FILE = HERE / "parks.gpkg"
DATA_DATE = "2027-01-01T00:00:00.000Z"  # written into the GeoPackage in place of the moment of the run
SEED = 40
KM_PER_DEG = 111.2
CORE_DEC_DEG = -29.0  # near enough to stand a landmark under the core; no result rests on it
UNDER_CORE_DEG = (14.0, 45.0)  # heights of the core over the landmark, where the latitude lets it so high
SECOND_VIEWPOINTS = 0.5  # share of the parks that have one

# park, the zone it was chosen for, longitude and latitude of its first viewpoint, bearing to the landmark where one is wanted
PARKS = [
    ("Skarrowell Fells", "Europe/Oslo", 24.5, 69.6, None),  # beyond the Arctic circle
    ("Tessarn Tundra", "Asia/Anadyr", -179.9, 68.6, None),  # an eastern clock in western longitude
    ("Ulvessa Lava Fields", "Atlantic/Reykjavik", -18.4, 64.9, None),
    ("Eskerune Fjord", "America/Nuuk", -50.0, 64.4, None),
    ("Haldimere Moor", "Europe/London", -4.6, 57.3, None),
    ("Dravenholt Heath", "Europe/Warsaw", 17.2, 53.4, None),
    ("Nimbrae Barrens", "America/St_Johns", -56.3, 48.6, None),
    ("Ketharn Steppe", "Asia/Ulaanbaatar", 103.6, 44.4, None),
    ("Pellisarn Plateau", "Europe/Madrid", -2.4, 40.4, None),
    ("Trommeth Desert", "Asia/Shanghai", 98.2, 39.9, None),
    ("Corvanth Canyon", "America/Denver", -110.3, 38.7, None),
    ("Lissorel Caldera", "Atlantic/Azores", -25.3, 37.8, None),
    ("Nalquist Highlands", "Asia/Tokyo", 138.4, 36.6, None),
    ("Zandrelle Salt Flats", "Asia/Tehran", 55.6, 33.1, None),
    ("Aurimell Gorges", "Africa/Casablanca", -6.4, 31.2, None),
    ("Ymbrel Heights", "Asia/Kathmandu", 82.4, 29.2, None),
    ("Rindolay Dunes", "Asia/Kolkata", 71.3, 26.9, None),
    ("Ishmarel Sands", "Africa/Cairo", 28.4, 26.6, None),
    ("Orrowane Slopes", "Pacific/Honolulu", -155.65, 19.95, None),
    ("Belquoy Savanna", "America/Bogota", -71.6, 4.6, None),
    ("Mollivar Atoll", "Pacific/Kiritimati", -157.4, 1.88, None),
    ("Thandoril Plain", "Africa/Nairobi", 38.6, 0.0, None),  # on the equator
    ("Ollumbra Valley", "Asia/Makassar", 120.1, -2.6, None),
    ("Yarroquin Scrub", "America/Fortaleza", -43.1, -8.2, None),
    ("Umberlay Spires", "Pacific/Marquesas", -140.12, -8.87, None),
    ("Wexilorn Bay", "Pacific/Pago_Pago", -170.74, -14.32, None),
    ("Sarrowen Shore", "Pacific/Fiji", -179.9, -16.75, None),  # east of the antimeridian
    ("Quessary Ridge", "Pacific/Fiji", 179.998, -16.87, 116.0),  # the landmark stands 0.2 km and more beyond the antimeridian
    ("Vorrundi Point", "Pacific/Fiji", 179.9, -16.955, None),  # west of it
    ("Gorrivane Escarpment", "Africa/Windhoek", 16.3, -20.6, None),
    ("Quilloth Altiplano", "America/La_Paz", -67.2, -20.7, None),
    ("Hesquin Tableland", "Indian/Antananarivo", 46.1, -21.3, None),
    ("Xellamar Pampa", "America/Santiago", -69.6, -25.1, 249.9),  # the core stands here when the clock skips an hour, in September
    ("Okkarra Ranges", "Australia/Adelaide", 137.8, -31.3, None),
    ("Brannuvel Karst", "Africa/Johannesburg", 22.4, -31.4, None),
    ("Mirrowick Nullah", "Australia/Eucla", 127.6, -31.9, None),
    ("Cavendral Woods", "Australia/Sydney", 149.3, -32.4, 97.4),  # and here when it repeats one, in April
    ("Fennagar Lagoon", "Pacific/Chatham", -176.5, -44.0, None),
    ("Tolverane Tarns", "Pacific/Auckland", 169.6, -44.7, None),
    ("Ebberlune Mesa", "America/Argentina/Rio_Gallegos", -70.2, -48.4, None),
]

# kind of a landmark: least and greatest height, foot or sill above ground, width for a metre of height
KINDS = {
    "Arch": (8.0, 30.0, 3.0, 1.6),
    "Needle": (15.0, 60.0, 0.0, 0.3),
    "Tree": (5.0, 14.0, 0.0, 0.8),
    "Ruin": (4.0, 12.0, 0.0, 2.0),
    "Cairn": (2.0, 4.0, 0.0, 0.8),
    "Boulder": (3.0, 10.0, 0.0, 1.2),
}
VIEWPOINTS = ("Ledge", "Gate", "Hollow", "Terrace", "Crossing", "Stones")


def under_core(rng, lat_deg):
    """A bearing on which the core stands at a good height; where it never does, one to the south."""
    low, high = (math.radians(alt) for alt in UNDER_CORE_DEG)
    if 90.0 - abs(lat_deg - CORE_DEC_DEG) < UNDER_CORE_DEG[0]:
        return rng.uniform(130.0, 230.0)
    lat, dec = math.radians(lat_deg), math.radians(CORE_DEC_DEG)
    while True:
        hour_angle = rng.uniform(-math.pi, math.pi)
        up = math.sin(lat) * math.sin(dec) + math.cos(lat) * math.cos(dec) * math.cos(hour_angle)
        east = -math.cos(dec) * math.sin(hour_angle)
        north = math.cos(lat) * math.sin(dec) - math.sin(lat) * math.cos(dec) * math.cos(hour_angle)
        if math.sin(low) < up < math.sin(high):
            return math.degrees(math.atan2(east, north)) % 360.0


def moved(lon_deg, lat_deg, bearing_deg, dist_km):
    """A place some way off, on a sphere that is flat here: a park needs no better."""
    bearing = math.radians(bearing_deg)
    lat = lat_deg + dist_km * math.cos(bearing) / KM_PER_DEG
    lon = lon_deg + dist_km * math.sin(bearing) / (KM_PER_DEG * math.cos(math.radians(lat_deg)))
    return round((lon + 180.0) % 360.0 - 180.0, 6), round(lat, 6)


def laid_out(park, zone, lon_deg, lat_deg, bearing_deg):
    """Rows of one park: its viewpoints and its landmark, each with its place."""
    rng = random.Random(f"{SEED} {park}")  # of its own: a park more changes no other
    stem = park.split()[0]
    kind = rng.choice(sorted(KINDS))
    least, greatest, base_m, width = KINDS[kind]
    height_m = round(rng.uniform(least, greatest), 1)
    names = rng.sample(VIEWPOINTS, 2)
    ground_m = rng.uniform(20.0, 1500.0)

    dist_km = 0.4 * 6.0 ** rng.random()
    bearing_deg = under_core(rng, lat_deg) if bearing_deg is None else bearing_deg
    places = [(lon_deg, lat_deg)]
    subject = moved(lon_deg, lat_deg, bearing_deg, dist_km)
    ground = [ground_m, ground_m + 1000.0 * dist_km * rng.uniform(-0.03, 0.06)]  # of a viewpoint and the landmark
    if rng.random() < SECOND_VIEWPOINTS:  # it looks any way: not every viewpoint has the core before it
        dist_km = 0.4 * 4.0 ** rng.random()
        places.append(moved(*subject, rng.uniform(0.0, 360.0), dist_km))
        ground.append(ground[1] - 1000.0 * dist_km * rng.uniform(-0.03, 0.06))
    heights = [ground[0], *ground[2:]]
    viewpoints = [
        (place, round(z, 1), f"{stem} {name}", park, zone, round(rng.uniform(1.0, 1.8), 1))
        for place, z, name in zip(places, heights, names)
    ]
    landmark = (subject, round(ground[1], 1), f"{stem} {kind}", park, kind.lower(), height_m, base_m, round(width * height_m, 1))
    return viewpoints, landmark


def write_layer(package, name, fields, rows):
    """One layer of points; `rows` are places and heights followed by the fields' values."""
    crs = osr.SpatialReference()
    crs.ImportFromEPSG(4326)
    crs.SetAxisMappingStrategy(osr.OAMS_TRADITIONAL_GIS_ORDER)
    layer = package.CreateLayer(name, crs, ogr.wkbPoint25D, ["SPATIAL_INDEX=YES"])
    for field, field_type in fields:
        layer.CreateField(ogr.FieldDefn(field, field_type))
    for place, z, *values in rows:
        feature = ogr.Feature(layer.GetLayerDefn())
        point = ogr.Geometry(ogr.wkbPoint25D)
        point.AddPoint(*place, z)
        feature.SetGeometry(point)
        for (field, _), value in zip(fields, values):
            feature.SetField(field, value)
        layer.CreateFeature(feature)


def write(file):
    """The GeoPackage with both layers."""
    parks = [laid_out(*park) for park in PARKS]
    text, real = ogr.OFTString, ogr.OFTReal
    file.unlink(missing_ok=True)
    package = gdal.GetDriverByName("GPKG").Create(str(file), 0, 0, 0, gdal.GDT_Unknown)
    fields = [("name", text), ("park", text), ("zone", text), ("lens_m", real)]
    write_layer(package, "viewpoints", fields, [row for viewpoints, _ in parks for row in viewpoints])
    fields = [("name", text), ("park", text), ("kind", text), ("height_m", real), ("base_m", real), ("width_m", real)]
    write_layer(package, "landmarks", fields, [landmark for _, landmark in parks])


def main(file):
    """Write the file."""
    gdal.UseExceptions()
    ogr.UseExceptions()
    gdal.SetConfigOption("OGR_CURRENT_DATE", DATA_DATE)
    write(file)
    print(f"{file.name}: {file.stat().st_size / 1e6:.2f} MB")


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else PARKS_FILE)
