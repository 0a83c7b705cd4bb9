"""The network window: the panels around the map, and what binds them to it."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from PySide6.QtCore import QSize
from PySide6.QtGui import QCloseEvent, QGuiApplication

from app import desk, user_keys
from app import theme as themes
from app.commands.bound import bind, fill_menus, keep_to
from app.commands.files import FileCommands
from app.commands.look import use_theme
from app.commands.panels import bind_panels
from app.commands.running import add_recent_menu
from app.dialogs.about import AboutDialog
from app.dialogs.asking import asking
from app.dialogs.keys import ActionFinder, KeysDialog
from app.dialogs.working import beside
from app.file_window import FileWindow
from app.help.binding import bind_network_help
from app.icons import icon
from app.network.actions import NETWORK_ACTIONS, NETWORK_MENUS, NETWORK_TOOLS, ON_THE_MAP
from app.network.binding import bind_network
from app.network.commands import NetworkCommands
from app.network.context_menu import MapMenu
from app.network.document import NetworkDocument
from app.network.exporting import NetworkExports
from app.network.files import NETWORKS
from app.network.frame import NetworkFrame, NetworkPanels
from app.network.host import ViewHost
from app.network.lighting import Lighting
from app.network.map_view import MapView
from app.network.table import commands_of
from app.panels.menu_row import MenuRow
from app.recovery import Recovery
from app.settings import Settings
from app.speech.network import NetworkSpeech
from app.theme import Scheme
from app.translation import QT_TR_NOOP, tr

SMALLEST: Final = QSize(1024, 640)
FIRST_SIZE: Final = QSize(1440, 900)


class NetworkWindow(FileWindow):
    """One window, one network."""

    document: NetworkDocument
    frame: NetworkFrame

    def __init__(self, settings: Settings | None = None, recovery_folder: Path | None = None) -> None:
        super().__init__()
        self.settings = Settings() if settings is None else settings
        user_keys.take(self.settings.keys)
        self.document = NetworkDocument(self)
        self.document.beside = beside(self)
        self.recovery = Recovery(self.document, recovery_folder)
        self.commands = NetworkCommands(self, self.document)
        self.view = MapView(self.document, ViewHost(self.commands))
        self.panels = NetworkPanels(self.document)
        self.side = self.panels.side
        self.lighting = Lighting(self.document, self.view, self.panels)
        tell = self.panels.message.say
        self.files = FileCommands(
            self,
            self.document,
            self.recovery,
            self.settings,
            tell,
            self.panels.readers.finish_edit,
            lambda path: desk.open_file(path, self),
            self.panels.message.offer,
            self.panels.message.withdraw,
            NETWORKS,
        )
        self.exports = NetworkExports(self, self.document, self.settings, tell, self.panels.status.say)
        self.table = NETWORK_ACTIONS
        self.bound = bind(self, commands_of(self), NETWORK_ACTIONS)
        self.menu_row = MenuRow()
        self.menus = fill_menus(self.menu_row.bar, self.bound, NETWORK_ACTIONS, NETWORK_MENUS)
        add_recent_menu(self.menus["File"], self.bound["save"], self.settings, self.files.open_path)
        self.frame = NetworkFrame(self.panels, self.view, self.bound)
        self.setMenuWidget(self.menu_row)
        self.setCentralWidget(self.frame)
        self.setMinimumSize(SMALLEST)
        self.resize(FIRST_SIZE)
        self.setAcceptDrops(True)
        keep_to(self.view, self.bound)
        self.context_menu = MapMenu(self.view, self.bound)
        bind_network(self)
        bind_panels(self)
        self.speech = NetworkSpeech(self)
        bind_network_help(self)
        QGuiApplication.styleHints().colorSchemeChanged.connect(self._take_over_theme)
        self.use_scheme(self.settings.theme)
        self.use_motion()
        self.document.new()
        self.view.setFocus()

    def new_plan(self) -> None:
        """An empty plan in a window of its own."""
        desk.plan_window(self)

    def use_scheme(self, name: str) -> None:
        """Follow the system, or keep to light or dark; remembered for the next start."""
        self.settings.theme = name
        themes.choose(Scheme(name))
        self.bound[f"theme_{name}"].setChecked(True)
        self._take_over_theme()

    def find_action(self) -> None:
        """Let the user type a word, and do what is chosen."""
        with asking(ActionFinder(self, self.bound, NETWORK_ACTIONS)) as finder:
            is_chosen = finder.exec()
        if is_chosen and finder.chosen is not None:
            finder.chosen.trigger()

    def show_keys(self) -> None:
        """All keys on one page."""
        first = {QT_TR_NOOP("On the map"): ON_THE_MAP}
        with asking(KeysDialog(self, self.change_keys, NETWORK_ACTIONS, NETWORK_MENUS, first)) as dialog:
            dialog.exec()

    def show_about(self) -> None:
        """The version, and what the program is for."""
        with asking(AboutDialog(self)) as dialog:
            dialog.exec()

    def open_plan_of(self, junction: int) -> None:
        """The plan of a junction in a window of its own."""
        found = self.document.network.junctions[junction]
        if found.plan is None:
            self.panels.status.say(
                tr("{name} has no plan; it is known by its readers only.", name=found.name)
            )
        else:
            desk.open_file(Path(found.plan), self)

    def _take_over_theme(self) -> None:
        use_theme()
        self.view.set_theme(themes.current())
        for tool, name in NETWORK_TOOLS.items():
            self.bound[name].setIcon(icon(tool))

    def closeEvent(self, event: QCloseEvent) -> None:
        """Refuses to lose changes; ends what runs beside the window."""
        if not self.files.may_leave():
            event.ignore()
            return
        self.end()
        event.accept()
