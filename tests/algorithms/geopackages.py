"""GeoPackages for the tests that write beside layers that are there, and what is in one afterwards."""

from osgeo import gdal, ogr, osr


def with_layers(path, *names):
    """Write a GeoPackage with layers of one point each, 33° W 36° N; its path."""
    file = ogr.GetDriverByName("GPKG").CreateDataSource(str(path))
    reference = osr.SpatialReference()
    reference.ImportFromEPSG(4326)
    for name in names:
        layer = file.CreateLayer(name, reference, ogr.wkbPoint)
        feature = ogr.Feature(layer.GetLayerDefn())
        feature.SetGeometry(ogr.CreateGeometryFromWkt("POINT(-33 36)"))
        layer.CreateFeature(feature)
    return path


def table(path, name):
    """A table of a GeoPackage as the destination of a run."""
    return f"ogr:dbname='{path}' table=\"{name}\" (geom)"


def layers_of(path):
    """Rows and description of each layer, as GDAL opens the file; None where it cannot."""
    file = gdal.OpenEx(str(path), gdal.OF_VECTOR | gdal.OF_UPDATE)
    if file is None:
        return None
    layers = [file.GetLayer(i) for i in range(file.GetLayerCount())]
    return {layer.GetName(): (sum(1 for _ in layer), layer.GetMetadataItem("DESCRIPTION") or "") for layer in layers}
