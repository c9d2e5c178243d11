"""Rasters by rasterio, which is to take the data of the PROJ that comes with it.

PROJ_DATA may name those of another PROJ, which pyproj runs on; rasterio would follow it, and then know few CRSs.
"""

import contextlib
import importlib.util
import os
from pathlib import Path

_found = importlib.util.find_spec("rasterio")
_own = Path(_found.submodule_search_locations[0], "proj_data") if _found else None


@contextlib.contextmanager
def own_projections():
    """While rasters are opened or made."""
    before = os.environ.get("PROJ_DATA")
    if _own and _own.is_dir():
        os.environ["PROJ_DATA"] = str(_own)
    try:
        yield
    finally:
        os.environ.pop("PROJ_DATA", None)
        if before is not None:
            os.environ["PROJ_DATA"] = before


with own_projections():
    import rasterio
    from rasterio.enums import ColorInterp, MaskFlags
    from rasterio.io import MemoryFile
    from rasterio.transform import Affine
    from rasterio.windows import Window

__all__ = ["Affine", "ColorInterp", "MaskFlags", "MemoryFile", "Window", "own_projections", "rasterio"]
