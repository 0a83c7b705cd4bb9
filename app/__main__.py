"""``python -m app``, the same as ``platelayer``."""

from app.subcommands.statuses import INTERRUPTED


def main() -> int:
    """Run the program; gives its exit status."""
    try:
        # Both here, so that Ctrl-C is quiet while they are imported, too.
        from app.interrupts import interruptible

        return interruptible(_run)
    except KeyboardInterrupt:
        return INTERRUPTED


def _run() -> int:
    from app.cli import run

    return run()


if __name__ == "__main__":
    raise SystemExit(main())
