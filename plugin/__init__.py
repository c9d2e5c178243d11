"""Sky Alidade: when sky and subject line up, for whole layers of cameras and subjects."""


def classFactory(iface):
    """Give QGIS the plugin; `iface` is None in qgis_process."""
    from .plugin import SkyAlidade  # here, so that the pure folders can be imported without QGIS

    return SkyAlidade(iface)
