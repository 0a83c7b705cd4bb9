"""What is said of files: whole sentences for each kind of document, as languages do not build them alike."""

from __future__ import annotations

from typing import Final, NamedTuple

from app.translation import QT_TR_NOOP


class FileWords(NamedTuple):
    """Sentences on a kind of document; each is looked up where it is said."""

    files: str
    """For the question under which name to save."""
    open: str
    """Titles of the questions for a file."""
    save: str
    no_file: str
    """There is nothing to read again."""
    other_ending: str
    not_written: str
    not_found: str
    """The system does not give the file."""
    not_read: str
    """It is not such a document."""


PLAN_WORDS: Final = FileWords(
    files=QT_TR_NOOP("Plans (*{ending});;All files (*)"),
    open=QT_TR_NOOP("Open a plan"),
    save=QT_TR_NOOP("Save the plan"),
    no_file=QT_TR_NOOP("The plan has no file yet."),
    other_ending=QT_TR_NOOP(
        "The plan was not saved: {path} ends as a file of another kind does, and could not be opened again. "
        "Names of plans end in {ending}."
    ),
    not_written=QT_TR_NOOP(
        "The plan was not saved: {file} could not be written: {reason}. Nothing is lost: it is still open, "
        "and the file is as it was."
    ),
    not_found=QT_TR_NOOP("{path} was not opened: {reason}. The plan that was open is unchanged."),
    not_read=QT_TR_NOOP(
        "{file} was not opened: {place}: expected {expected}. The plan that was open is unchanged."
    ),
)
NETWORK_WORDS: Final = FileWords(
    files=QT_TR_NOOP("Networks (*{ending});;All files (*)"),
    open=QT_TR_NOOP("Open a network"),
    save=QT_TR_NOOP("Save the network"),
    no_file=QT_TR_NOOP("The network has no file yet."),
    other_ending=QT_TR_NOOP(
        "The network was not saved: {path} ends as a file of another kind does, and could not be opened "
        "again. Names of networks end in {ending}."
    ),
    not_written=QT_TR_NOOP(
        "The network was not saved: {file} could not be written: {reason}. Nothing is lost: it is still "
        "open, and the file is as it was."
    ),
    not_found=QT_TR_NOOP("{path} was not opened: {reason}. The network that was open is unchanged."),
    not_read=QT_TR_NOOP(
        "{file} was not opened: {place}: expected {expected}. The network that was open is unchanged."
    ),
)
