"""The language of the editor: that of the system where there is a translation into it, else English."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QTranslator

from app import translation

NAME = "platelayer"


def folder() -> Path:
    """Where translations lie, each ``platelayer_LANGUAGE.qm``."""
    return Path(str(files("resources").joinpath("translations")))


def use_language(application: QCoreApplication, locale: QLocale, place: Path | None = None) -> bool:
    """Let the editor speak the language of the locale; whether there is a translation into it.

    Qt's own texts follow, such as those of its dialogs for files. Numbers are written in one way in every
    language, as in tables and files; Qt's fields would write and read them as the system does.
    """
    QLocale.setDefault(QLocale.c())
    own = QTranslator(application)
    if not own.load(locale, NAME, "_", str(folder() if place is None else place)):
        return False
    of_qt = QTranslator(application)
    if of_qt.load(locale, "qtbase", "_", QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)):
        application.installTranslator(of_qt)
    application.installTranslator(own)
    translation.install(_look_up)
    return True


def _look_up(text: str, comment: str, n: int) -> str:
    """The translation, or English with English plurals where it lacks the text."""
    found = QCoreApplication.translate("", text, comment or None, n)
    return found if found != _unfound(text, n) else translation.as_written(text, comment, n)


def _unfound(text: str, n: int) -> str:
    return text.replace("%n", str(n)) if n >= 0 else text
