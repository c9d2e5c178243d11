"""Reading of the raw published values beside this file."""

import csv
import json
from pathlib import Path

FOLDER = Path(__file__).parent


def values(stem):
    """The JSON file of that stem, as written."""
    return json.loads((FOLDER / (stem + ".json")).read_text(encoding="utf-8"))


def rows(stem):
    """The lines of the CSV file of that stem as dictionaries of text; lines that begin with # say where it is from."""
    lines = (FOLDER / (stem + ".csv")).read_text(encoding="utf-8").splitlines()
    return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def hms_deg(hms):
    """Hours, minutes, seconds as degrees."""
    return 15.0 * (hms[0] + hms[1] / 60.0 + hms[2] / 3600.0)


def dms_deg(dms):
    """Degrees, minutes, seconds as degrees; the sign is that of the degrees, which are never 0 here."""
    size = abs(dms[0]) + dms[1] / 60.0 + dms[2] / 3600.0
    return size if dms[0] >= 0 else -size
