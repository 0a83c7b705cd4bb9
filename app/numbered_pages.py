"""The files of a sheet of several pages, and which of them lie in a folder: a shorter one leaves the last."""

from __future__ import annotations

import os
import re
from collections.abc import Iterable, Iterator
from pathlib import Path


def numbered(path: Path, pages: int) -> Iterator[Path]:
    """``OUT-01.svg``, ``OUT-02.svg``, …"""
    digits = max(2, len(str(pages)))
    for number in range(1, pages + 1):
        yield path.with_name(f"{path.stem}-{number:0{digits}}{path.suffix}")


def pages_there(path: Path) -> list[str]:
    """The names of the pages ``OUT-01.svg``, … of ``OUT.svg``, in order; none of a folder that is shut."""
    page = re.compile(re.escape(path.stem) + r"-\d{2,}" + re.escape(path.suffix))
    try:
        return sorted(name for name in os.listdir(path.parent) if page.fullmatch(name))
    except OSError:
        return []


def older_pages(path: Path, written: Iterable[str]) -> list[str]:
    """Those that were not written just now; none where all pages are in one file."""
    new = {os.path.basename(name) for name in written}
    return [] if path.name in new else [name for name in pages_there(path) if name not in new]
