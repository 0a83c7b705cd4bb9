"""``python -m app``, the same as ``platelayer``."""

from app.subcommands.statuses import INTERRUPTED


def main() -> int:
    """Run the program; gives its exit status."""
    try:
        from app.cli import run  # here, so that Ctrl-C is quiet while it is imported, too

        return run()
    except KeyboardInterrupt:
        return INTERRUPTED


if __name__ == "__main__":
    raise SystemExit(main())
