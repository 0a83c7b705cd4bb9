"""Tells screen readers what has happened; a sighted user sees it."""

from __future__ import annotations

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QWidget

PAUSE_MS = 120
"""What is told within that time is told in one: a key held down does not talk without end."""


def announce(widget: QWidget, text: str) -> None:
    """Lets assistive technology say a sentence once it has said what it is at."""
    event = QAccessibleAnnouncementEvent(widget, text)
    event.setPoliteness(QAccessible.AnnouncementPoliteness.Polite)
    QAccessible.updateAccessibility(event)


class Speaker(QObject):
    """Gathers what there is to tell of a drawing, and tells it after a moment of calm.

    News is told in its order. Of what changes while the user moves, only the newest is told: where the
    cursor is, and what a gesture would make.
    """

    spoken = Signal(str)
    """What was told just now."""

    def __init__(self, widget: QWidget) -> None:
        super().__init__(widget)
        self._widget = widget
        self._news: list[str] = []
        self._gesture = ""
        self._place = ""
        self._calm = QTimer(self, singleShot=True, interval=PAUSE_MS)
        self._calm.timeout.connect(self.speak)

    def tell(self, news: str) -> None:
        """Something happened. What is told twice in one breath is told once."""
        if news and news not in self._news:
            self._news.append(news)
            self._calm.start()

    def tell_gesture(self, words: str) -> None:
        """What the gesture under way would make, or that it was dropped; nothing takes it back."""
        self._gesture = words
        self._calm.start()

    def tell_place(self, words: str) -> None:
        """Where the cursor is, and what is there."""
        self._place = words
        self._calm.start()

    def speak(self) -> None:
        """Tells at once what has been gathered."""
        self._calm.stop()
        parts = [part.rstrip(".") for part in (*self._news, self._gesture, self._place) if part]
        self._news.clear()
        self._gesture = self._place = ""
        if parts:
            said = ". ".join(parts)
            announce(self._widget, said)
            self.spoken.emit(said)
