"""Standard output and error that are closed, full or no longer read: the command goes on and ends with its own code."""

from __future__ import annotations

import io
from typing import TextIO, cast


class KeptOpen(io.TextIOWrapper):
    """A stream that never raises; it keeps its encoding, and shows a sign that this lacks as `?`."""

    def __init__(self, stream: TextIO | None) -> None:
        buffer = getattr(stream, "buffer", None)
        self._bytes = _Steadfast(getattr(buffer, "raw", buffer))
        encoding = (stream and stream.encoding) or "utf-8"
        gathered = io.BufferedWriter(cast(io.RawIOBase, self._bytes))
        super().__init__(gathered, encoding, "replace", line_buffering=self._bytes.isatty())

    @property
    def unwritten(self) -> OSError | None:
        """What kept the stream from taking all that was said; None while it took it.

        Whoever stops reading (`| head -1`) has all that they want, so that this is no error.
        """
        return self._bytes.error


class _Steadfast(io.RawIOBase):
    def __init__(self, raw: io.RawIOBase | None) -> None:
        self._raw = raw
        self.error: OSError | None = None

    def writable(self) -> bool:
        return True

    def isatty(self) -> bool:
        return self._raw is not None and self._raw.isatty()

    def fileno(self) -> int:
        if self._raw is None:
            raise io.UnsupportedOperation("a stream that nobody gave the program has no number")
        return self._raw.fileno()

    def write(self, data: bytes) -> int:  # type: ignore[override]
        if self._raw is not None:
            try:
                return self._raw.write(data) or 0
            except BrokenPipeError:
                self._raw = None
            except OSError as error:
                self._raw, self.error = None, error
        return len(data)
