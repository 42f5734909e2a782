"""Files to a zip that is the same byte for byte wherever and whenever it is made."""

from __future__ import annotations

import io
import stat
import zipfile
from collections.abc import Mapping

# A zip cannot tell a time before this one, so it says nothing (ZIP file format specification 6.3.10, 4.4.6).
NO_TIME = (1980, 1, 1, 0, 0, 0)
_UNIX = 3
_PLAIN_FILE = (stat.S_IFREG | 0o644) << 16


def zip_bytes(files: Mapping[str, bytes]) -> bytes:
    """A zip of the files in the order given, stored as they are: packing tools differ in how they squeeze."""
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w", zipfile.ZIP_STORED, allowZip64=False) as archive:
        for name, data in files.items():
            entry = zipfile.ZipInfo(name, NO_TIME)
            entry.create_system = _UNIX
            entry.external_attr = _PLAIN_FILE
            archive.writestr(entry, data)
    return held.getvalue()
