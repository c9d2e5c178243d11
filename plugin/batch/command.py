"""The command: read what is asked, refuse what cannot be, run, and end with what was done, in numbers."""

import importlib
import os
import sys

NEEDED = {"distributed": "distributed", "pyarrow": "pyarrow", "pyogrio": "pyogrio", "shapely": "shapely", "rasterio": ".rasters"}
HOW_TO_ADD = 'Add it to this Python: {python} -m pip install "dask[distributed]" pyarrow pyogrio rasterio shapely'
INTERRUPTED = 130


def main(arguments):
    """Run the command.

    Returns
    -------
    int
        0 when all is done, 1 when it was refused or partitions failed, 130 when it was interrupted.
    """
    os.environ.setdefault("DASK_LOGGING__DISTRIBUTED", "critical")  # of Dask and its workers here: what matters is told by the run
    for library, module in NEEDED.items():
        try:
            importlib.import_module(module, __package__)
        except ImportError as missing:
            return _refused(f"This needs the library {library} ({missing}). {HOW_TO_ADD.format(python=sys.executable)}")
    from .asked import run_asked  # only now: it needs all of them

    try:
        return run_asked(arguments)
    except (ValueError, FileNotFoundError) as wrong:
        return _refused(str(wrong))
    except KeyboardInterrupt:
        print("Interrupted. Give the same command again to go on: the partitions that are done are kept.", file=sys.stderr)
        return INTERRUPTED


def _refused(sentence):
    print(f"skyalidade.batch: {sentence}", file=sys.stderr)
    return 1
