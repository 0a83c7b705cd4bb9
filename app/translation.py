"""Texts of the editor in the language of its user: what ``model.wording`` says, for all of ``app``."""

from model.wording import QT_TR_NOOP, Lookup, as_written, from_to, install, isolate, tr

__all__ = ["QT_TR_NOOP", "Lookup", "as_written", "from_to", "install", "isolate", "tr"]
