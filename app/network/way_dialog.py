"""Asks which way of several a trip is to take."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QListWidget, QWidget

from app.network.arms import reader_words
from app.network.dialogs import Question
from app.network.times import length_words
from app.network.ways import WayOffer
from app.panels.look import named
from app.panels.words import listed, plain_tip
from app.translation import QT_TR_NOOP, tr

SENTENCE = QT_TR_NOOP("The trip takes the chosen way, whatever it costs. The shortest one stands first.")


class WayDialog(Question):
    """A list of ways with their lengths."""

    def __init__(self, parent: QWidget | None, title: str, offers: list[WayOffer]) -> None:
        super().__init__(parent, tr("Pin the way {title}", title=title), tr(SENTENCE), tr("Pin way"))
        self._offers = offers
        self.list = named(QListWidget(), tr("Ways"))
        self.setMinimumWidth(600)
        self.list.setWordWrap(True)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        for offer in offers:
            self.list.addItem(way_words(offer))
            self.list.item(self.list.count() - 1).setToolTip(plain_tip(way_words(offer)))
        self.list.setCurrentRow(0)
        self.list.itemActivated.connect(self.accept)
        self.body.addWidget(self.list)
        self.list.setFocus()

    @property
    def via(self) -> tuple[str, ...]:
        """The arms of the chosen way."""
        return self._offers[self.list.currentRow()].via


def way_words(offer: WayOffer) -> str:
    """``210 cells, 26 s: by Mill, from East``."""
    passed = [reader_words(key) for key in offer.via]
    through = tr("by {arms}", arms=listed(passed)) if passed else tr("past no junction")
    return tr("{length}: {through}", length=length_words(offer.length), through=through)
