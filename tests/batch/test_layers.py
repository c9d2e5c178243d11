"""Layers of points as they come: formats, CRS, geometries that are no place, names and numbers of features."""

import json

import numpy as np
import pyarrow as pa
import pyarrow.parquet as pq
import pyogrio
import pyproj
import pytest
import shapely

from skyalidade.batch.points import lon_lat, read_points

NOWHERE = [None, shapely.Point(), shapely.LineString([(0, 0), (1, 1)]), shapely.Point(10, 95)]
PLACES = [shapely.Point(-7.5, 37.0), shapely.Point(20, 60, 130.0), shapely.MultiPoint([(1, 2), (3, 4)]), shapely.Point(190, 10)]
GEOMETRIES = [*PLACES, *NOWHERE]
NAMES = ["Põhja", None, "  ", "North Cape", *"abcd"]
HEIGHTS = [1.5, None, 2.0, -1.0, *([1.0] * 4)]


def write_parquet(file, geometries=GEOMETRIES, names=NAMES, heights=HEIGHTS, crs="EPSG:4326", encoding="WKB"):
    column = {"encoding": encoding, "geometry_types": []}
    if crs != "untold":
        column["crs"] = crs and pyproj.CRS(crs).to_json_dict()
    geo = {"version": "1.0.0", "primary_column": "place", "columns": {"place": column}}
    binary = pa.array([None if one is None else shapely.to_wkb(one) for one in geometries], pa.binary())
    table = pa.table({"place": binary, "name": pa.array(names, pa.string()), "lens_m": pa.array(heights, pa.float64())})
    pq.write_table(table.replace_schema_metadata({"geo": json.dumps(geo)}), file)
    return str(file)


def write_geopackage(file, crs="EPSG:4326", layer="points", append=False):
    binary = np.array([None if one is None else shapely.to_wkb(one) for one in GEOMETRIES], dtype=object)
    columns = [np.array(NAMES, dtype=object), np.array(HEIGHTS, dtype=float)]
    how = {"geometry_type": "Unknown", "driver": "GPKG", "layer": layer, "append": append}
    pyogrio.raw.write(file, binary, columns, ["name", "lens_m"], crs=crs, **how)
    return str(file)


def read(text, **how):
    return read_points("SITES", text, "site", name="name", measures={"CAMERA_HEIGHT": ("field:lens_m", 1.7, 0.0)}, **how)


@pytest.mark.parametrize(("write", "first_id"), [(write_parquet, 0), (write_geopackage, 1)])
def test_what_can_be_used_of_a_layer(tmp_path, write, first_id):
    """One multipoint is two points; -1 m is no height of a lens; what lies past the antimeridian lies on the Earth."""
    layer = read(write(tmp_path / ("points.parquet" if first_id == 0 else "points.gpkg")), keep=["name"])
    points = layer.points
    assert points.lon_deg.tolist() == [-7.5, 20.0, 1.0, 3.0]
    assert points.lat_deg.tolist() == [37.0, 60.0, 2.0, 4.0]
    assert points.fid.tolist() == [first_id + i for i in (0, 1, 2, 2)]
    assert points.name.tolist() == ["Põhja", f"site {first_id + 1}", *[f"site {first_id + 2}"] * 2]
    assert points.measures["CAMERA_HEIGHT"].tolist() == [1.5, 1.7, 2.0, 2.0]
    assert np.array_equal(points.z_m, [np.nan, 130.0, np.nan, np.nan], equal_nan=True)
    assert points.kept["name"].to_pylist() == ["Põhja", None, "  ", "  "]
    assert dict(layer.skipped) == {
        "with no geometry": 1,
        "with an empty geometry": 1,
        "that hold no point": 1,
        "with no place on the Earth": 1,
        "whose CAMERA_HEIGHT is less than 0": 1,
    }
    assert dict(layer.defaulted) == {"CAMERA_HEIGHT": 1}
    said = list(layer.sentences("SITES"))
    assert said[0] == "SITES: 4 points from 8 features."
    assert "1 with no geometry" in said[1]


def test_a_folder_of_files_is_one_layer(tmp_path):
    (tmp_path / "layer" / "_temporary").mkdir(parents=True)
    for i in range(3):
        write_parquet(tmp_path / "layer" / f"part-{i}.parquet", PLACES[:2], NAMES[:2], [1.0 + i, 2.0])
    (tmp_path / "layer" / ".part-3.parquet").write_bytes(b"torn")
    (tmp_path / "layer" / "_temporary" / "part.parquet").write_bytes(b"torn")
    points = read(str(tmp_path / "layer")).points
    assert points.fid.tolist() == [0, 1, 2, 3, 4, 5]
    assert points.measures["CAMERA_HEIGHT"].tolist() == [1.0, 2.0, 2.0, 2.0, 3.0, 2.0]


def test_fields_that_the_names_of_folders_tell(tmp_path):
    for folder in ("country=NO/kind=open%20ground", "country=__HIVE_DEFAULT_PARTITION__/kind=path"):
        (tmp_path / folder).mkdir(parents=True)
        write_parquet(tmp_path / folder / "part.parquet", PLACES[:2], NAMES[:2], [1.0, 2.0])
    points = read(str(tmp_path), keep=["country", "kind", "name"]).points
    assert points.kept["country"].to_pylist() == ["NO", "NO", None, None]
    assert points.kept["kind"].to_pylist() == ["open ground", "open ground", "path", "path"]
    assert points.kept["name"].to_pylist() == [*NAMES[:2], *NAMES[:2]]


def test_files_of_a_folder_that_do_not_go_together(tmp_path):
    """Places of another CRS would be taken for those of the first."""
    write_parquet(tmp_path / "a.parquet", PLACES[:1], ["a"], [1.0])
    write_parquet(tmp_path / "b.parquet", [shapely.Point(500_000, 4_000_000)], ["b"], [1.0], crs="EPSG:32629")
    with pytest.raises(ValueError, match=r"SITES: .*b\.parquet has another CRS than .*a\.parquet\. Write all files of the folder in one\."):
        read(str(tmp_path))
    write_parquet(tmp_path / "b.parquet", PLACES[1:2], ["b"], [1.0])
    table = pq.read_table(tmp_path / "b.parquet")
    for values, told in (([2], [1.0, 2.0]), (["2"], None)):
        pq.write_table(table.set_column(2, "lens_m", pa.array(values)), tmp_path / "b.parquet")
        if told:
            assert read(str(tmp_path)).points.measures["CAMERA_HEIGHT"].tolist() == told
        else:
            with pytest.raises(ValueError, match="SITES: a field is of one kind in some files of .*, and of another in others"):
                read(str(tmp_path))


@pytest.mark.parametrize(
    "geo", ["no json", "[]", "{}", '{"primary_column": "place"}', '{"primary_column": "place", "columns": {"place": 1}}']
)
def test_metadata_that_cannot_be_read(tmp_path, geo):
    pq.write_table(pa.table({"place": [b""]}).replace_schema_metadata({"geo": geo}), tmp_path / "a.parquet")
    with pytest.raises(ValueError, match=r"the 'geo' metadata of .*a.parquet cannot be read. Write it anew as GeoParquet."):
        read_points("SITES", str(tmp_path / "a.parquet"), "site")


def test_a_layer_of_the_moon(tmp_path):
    with pytest.raises(ValueError, match=r"SITES: the CRS of .*m.parquet \(Moon.*\) is one of another body than the Earth"):
        read(write_parquet(tmp_path / "m.parquet", PLACES[:1], ["a"], [1.0], crs="IAU_2015:30100"))


def test_heights_that_no_ground_has_count_as_none(tmp_path):
    places = [shapely.Point(20, 60, z_m) for z_m in (-9999.0, 1e9, -1e9, 8848.0, -430.0)]
    layer = read(write_parquet(tmp_path / "z.parquet", places, ["a"] * 5, [1.0] * 5))
    assert np.array_equal(layer.points.z_m, [np.nan, np.nan, np.nan, 8848.0, -430.0], equal_nan=True)
    assert "SITES: 3 points have a Z that no ground has, such as -9999 or more than 9,000 m: it counts as none." in layer.sentences("SITES")


def test_a_layer_of_lines(tmp_path):
    with pytest.raises(ValueError, match="holds no points, but lines, polygons or others. Give a layer of points."):
        read(write_parquet(tmp_path / "lines.parquet", [NOWHERE[2]], ["a"], [1.0]))


def test_crs_of_files(tmp_path):
    """Without a word GeoParquet means longitude and latitude; null means that nobody knows."""
    x, y = pyproj.Transformer.from_crs("EPSG:4326", "EPSG:32629", always_xy=True).transform(-7.5, 37.0)
    there = shapely.Point(x, y)
    projected = read(write_parquet(tmp_path / "utm.parquet", [there], ["a"], [1.0], crs="EPSG:32629")).points
    assert np.allclose([projected.lon_deg, projected.lat_deg], [[-7.5], [37.0]], rtol=0, atol=1e-11)
    assert (projected.x[0], projected.y[0]) == (x, y)
    untold = read(write_parquet(tmp_path / "untold.parquet", PLACES[:1], ["a"], [1.0], crs="untold"))
    assert (untold.points.lon_deg[0], untold.points.lat_deg[0]) == (-7.5, 37.0)
    with pytest.raises(ValueError, match="has no CRS, so nobody knows where it lies"):
        read(write_parquet(tmp_path / "null.parquet", PLACES[:1], ["a"], [1.0], crs=None))


def test_places_that_a_crs_does_not_have():
    lon, lat = lon_lat([500_000.0, 1e30], [4_000_000.0, 1e30], pyproj.CRS("EPSG:32629"))
    assert np.isfinite([lon[0], lat[0]]).all()
    assert np.isnan([lon[1], lat[1]]).all()


def test_layers_that_cannot_be_read(tmp_path):
    file = tmp_path / "points.gpkg"
    write_geopackage(file)
    write_geopackage(file, layer="more", append=False)
    with pytest.raises(ValueError, match=r"holds the layers points, more\. Say which, as in '.*points.gpkg\|layername=points'"):
        read(str(file))
    assert len(read(f"{file}|layername=more").points) == 4
    with pytest.raises(ValueError, match="has no layer 'other'. Choose from: points, more"):
        read(f"{file}|layername=other")
    with pytest.raises(ValueError, match="there is no field 'nome'. Choose from: name, lens_m"):
        read_points("SITES", f"{file}|layername=more", "site", name="nome")
    (tmp_path / "text.gpkg").write_text("no layer")
    with pytest.raises(ValueError, match=r"SITES: .*text.gpkg cannot be read"):
        read(str(tmp_path / "text.gpkg"))
    (tmp_path / "text.parquet").write_text("no layer")
    with pytest.raises(ValueError, match=r"SITES: .*text.parquet cannot be read"):
        read(str(tmp_path / "text.parquet"))
    pq.write_table(pa.table({"name": ["a"]}), tmp_path / "plain.parquet")
    with pytest.raises(ValueError, match="Parquet without geometries, as it has no 'geo' metadata"):
        read(str(tmp_path / "plain.parquet"))
    with pytest.raises(ValueError, match="geometries as point, not as WKB"):
        read(write_parquet(tmp_path / "native.parquet", encoding="point"))
    with pytest.raises(ValueError, match="nothing.gpkg is not there"):
        read(str(tmp_path / "nothing.gpkg"))
