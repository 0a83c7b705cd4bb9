"""Fuzz one reader; see the package."""

from __future__ import annotations

import argparse
import sys
import tempfile
from pathlib import Path

import atheris

# What is imported before this is not watched.
with atheris.instrument_imports(include=["model.files", "model.plan", "model.pieces", "model.dry_run"]):
    from tests.fuzzing.corpus import DICTIONARY, seeds
    from tests.harness.readers import READERS, ROOT, Reader, reads


def main() -> None:
    """Run until the time is over or an input breaks a promise; atheris ends the process then."""
    parser = argparse.ArgumentParser(prog="python -m tests.fuzzing")
    parser.add_argument("reader", choices=READERS)
    parser.add_argument("--seconds", type=int, default=300)
    asked = parser.parse_args()
    reader = READERS[asked.reader]
    found = ROOT / "tests" / "data" / "found" / asked.reader
    found.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as folder:
        corpus, words = Path(folder, "corpus"), Path(folder, "words")
        corpus.mkdir()
        for number, seed in enumerate(seeds(asked.reader)):
            Path(corpus, str(number)).write_bytes(seed)
        words.write_text(DICTIONARY)
        options = [
            f"-max_total_time={asked.seconds}", f"-dict={words}", f"-artifact_prefix={found}/",
            "-timeout=10", "-rss_limit_mb=1024", "-max_len=8192", "-print_final_stats=1",
        ]  # fmt: skip
        atheris.Setup([sys.argv[0], *options, str(corpus)], lambda data: one(reader, data))
        atheris.Fuzz()


def one(reader: Reader, data: bytes) -> None:
    """One input."""
    reads(reader, data)


if __name__ == "__main__":
    main()
