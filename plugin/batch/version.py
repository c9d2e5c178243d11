"""Which Sky Alidade this is: its version, and a mark of its code, since two checkouts may call themselves the same."""

import hashlib
import re
from functools import cache
from pathlib import Path

PACKAGE = Path(__file__).parent.parent
NOT_OURS = ("libs", "__pycache__")


@cache
def version():
    """Such as '0.1.0 (code 3f9a1c02)': equal where the code is."""
    digest = hashlib.sha256()
    for file in sorted(PACKAGE.rglob("*.py")):
        name = file.relative_to(PACKAGE)
        if not any(part in NOT_OURS for part in name.parts):
            digest.update(name.as_posix().encode() + b"\0" + file.read_bytes() + b"\0")
    told = re.search(r"^version=(.+)$", (PACKAGE / "metadata.txt").read_text(encoding="utf-8"), re.MULTILINE)
    return f"{told.group(1).strip()} (code {digest.hexdigest()[:8]})"
