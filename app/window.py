"""The main window: the panels around the plan view, and what binds them to it."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QLocale, QSize
from PySide6.QtGui import QCloseEvent, QGuiApplication
from PySide6.QtWidgets import QApplication

from app import desk, user_keys
from app import theme as themes
from app.actions import ACTIONS
from app.canvas.view import PlanView
from app.commands.binding import bind_document, bind_view
from app.commands.bound import bind, fill_menus, keep_to
from app.commands.comparing import CompareCommands
from app.commands.context_menu import ContextMenu
from app.commands.depth import DepthCommands
from app.commands.exporting import ExportCommands
from app.commands.files import PLANS, FileCommands
from app.commands.look import show_tool_icons, use_theme
from app.commands.panels import bind_panels
from app.commands.plan import PlanCommands
from app.commands.running import add_preview_menus, add_recent_menu
from app.commands.table import commands_of
from app.commands.timing import TimingCommands
from app.dialogs.about import AboutDialog, CautionsDialog
from app.dialogs.asking import asking
from app.dialogs.keys import ActionFinder, KeysDialog
from app.dialogs.working import beside
from app.document import Document
from app.file_window import FileWindow
from app.first_sketch.binding import begin_first_sketch, bind_first_sketch
from app.first_sketch.sketch import has_ended
from app.help.binding import bind_help
from app.language import use_language
from app.mishap import MishapHook
from app.panels.frame import Frame, Panels
from app.panels.menu_row import MenuRow
from app.program_icon import program_icon
from app.recovery import LeftOver, Recovery, recovery_folder
from app.settings import Settings
from app.speech.plan import PlanSpeech
from app.theme import Scheme
from app.translation import isolate
from model.grid import Y_HIGHEST, Y_LOWEST, Turn

if TYPE_CHECKING:
    from app.network.window import NetworkWindow
    from app.start import StartScreen

SMALLEST: Final = QSize(1024, 640)
FIRST_SIZE: Final = QSize(1440, 900)
SWITCH_SECONDS: Final = 0.0001


class MainWindow(FileWindow):
    """One window, one plan."""

    document: Document
    frame: Frame

    def __init__(self, settings: Settings | None = None, recovery_folder: Path | None = None) -> None:
        super().__init__()
        self.settings = Settings() if settings is None else settings
        user_keys.take(self.settings.keys)
        self.document = Document(self)
        self.document.beside = beside(self)
        self.recovery = Recovery(self.document, recovery_folder)
        self.view = PlanView(self.document)
        self.panels = Panels(self.document, self.view)
        self.side = self.panels.side
        tell = self.panels.message.say
        self.files = FileCommands(
            self,
            self.document,
            self.recovery,
            self.settings,
            tell,
            self._take_over_typed,
            lambda path: desk.open_file(path, self),
            self.panels.message.offer,
            self.panels.message.withdraw,
        )
        self.exports = ExportCommands(self, self.document, self.settings, tell, self.panels.status.say)
        self.plan_commands = PlanCommands(
            self, self.document, lambda: self.view.cursor, self.view.go_to, self.view.carry_choice
        )
        self.timing = TimingCommands(self)
        self.comparison = CompareCommands(self)
        self.in_depth = DepthCommands(self)
        self.table = ACTIONS
        self.bound = bind(self, commands_of(self))
        self.menu_row = MenuRow()
        self.menus = fill_menus(self.menu_row.bar, self.bound)
        add_recent_menu(self.menus["File"], self.bound["start"], self.settings, self.files.open_path)
        # Who looks for help finds the examples there, too.
        self.menus["Help"].insertAction(self.bound["cautions"], self.bound["start"])
        add_preview_menus(self.menus["Preview"], self.document, self.view.preview_reader, self.view.run_cart)
        self.frame = Frame(self.panels, self.view, self.bound)
        self.setMenuWidget(self.menu_row)
        self.setCentralWidget(self.frame)
        self.setMinimumSize(SMALLEST)
        self.resize(FIRST_SIZE)
        self.setAcceptDrops(True)
        keep_to(self.view, self.bound)
        self.context_menu = ContextMenu(self.view, self.bound)
        bind_view(self)
        bind_document(self)
        bind_panels(self)
        self.first_sketch = bind_first_sketch(self)
        bind_help(self)
        self.speech = PlanSpeech(self)
        self._watch_system()
        self.use_scheme(self.settings.theme)
        self.use_motion()
        self.document.new()
        self.view.setFocus()

    def show_start(self) -> StartScreen:
        """Offer new and recent plans, examples, and what was left over."""
        from app.start import StartScreen  # who opens a file need not wait for it

        screen = StartScreen(
            self,
            self.settings.recent,
            self.recovery.left_over(),
            sketch_first=not has_ended(self.settings),
        )
        screen.sketch_asked.connect(lambda: begin_first_sketch(self))
        screen.new_asked.connect(self.files.new)
        screen.network_asked.connect(self.new_network)
        screen.open_asked.connect(self.files.open)
        screen.file_chosen.connect(self.files.open_path)
        screen.example_chosen.connect(self.open_example)
        screen.take_up_asked.connect(self.take_up)
        screen.thrown_away.connect(self.recovery.discard)
        screen.finished.connect(screen.deleteLater)
        screen.open()
        return screen

    def new_network(self) -> None:
        """An empty network in a window of its own."""
        desk.network_window(self)

    def open_example(self, path: Path) -> None:
        """An example, in a window of its kind."""
        (self if self.files.is_for(path) else desk.network_window(self)).files.open_example(path)

    def take_up(self, entry: LeftOver) -> None:
        """What was left over, in a window of its kind."""
        (self if self.files.is_for(entry.copy) else desk.network_window(self)).files.take_up(entry)

    def use_scheme(self, name: str) -> None:
        """Follow the system, or keep to light or dark; remembered for the next start."""
        self.settings.theme = name
        themes.choose(Scheme(name))
        self.bound[f"theme_{name}"].setChecked(True)
        self._take_over_theme()

    def turn_chosen(self, turn: Turn) -> None:
        """Turn what is chosen, or the whole plan when nothing is."""
        if self.view.selection:
            self.view.turn_selection(turn)
        else:
            self.turn_plan(turn)

    def turn_plan(self, turn: Turn) -> None:
        """Turn the whole plan; about x = z = 0 it may go far, so all of it is shown."""
        self.plan_commands.turn(turn)
        self.view.fit_all()

    def go_to_level(self, level: int) -> None:
        """Draw on another level, within the limits of plans."""
        self.view.level = min(max(level, Y_LOWEST), Y_HIGHEST)

    def toggle_solo(self) -> None:
        """Show or hide the levels above and below."""
        self.view.solo = not self.view.solo
        self.bound["solo"].setChecked(self.view.solo)

    def find_action(self) -> None:
        """Let the user type a word, and do what is chosen."""
        with asking(ActionFinder(self, self.bound)) as finder:
            is_chosen = finder.exec()
        if is_chosen and finder.chosen is not None:
            finder.chosen.trigger()

    def show_keys(self) -> None:
        """All keys on one page."""
        with asking(KeysDialog(self, self.change_keys)) as dialog:
            dialog.exec()

    def show_cautions(self) -> None:
        """What a builder must know of the rules that the plan is worked out by."""
        with asking(CautionsDialog(self)) as dialog:
            dialog.exec()

    def show_about(self) -> None:
        """The version, and what the program is for."""
        with asking(AboutDialog(self)) as dialog:
            dialog.exec()

    def _take_over_typed(self) -> None:
        """What is being typed counts, where the plan is saved or left."""
        self.panels.routes.table.finish_edit()
        self.view.name_entry.finish()

    def _watch_system(self) -> None:
        # Not through a lambda: the application would hold the window by it for good.
        QGuiApplication.styleHints().colorSchemeChanged.connect(self._take_over_theme)

    def _take_over_theme(self) -> None:
        use_theme()
        self.view.set_theme(themes.current())
        show_tool_icons(self.bound)

    def closeEvent(self, event: QCloseEvent) -> None:
        if not self.files.may_leave():
            event.ignore()
            return
        self.settings.geometry = self.saveGeometry()
        self.view.dry_run.runner.stop()
        self.end()
        event.accept()


def run(path: str | None) -> int:
    """Start the editor, with a plan where one is given; the exit status when it ends."""
    application = QApplication.instance() or QApplication(sys.argv[:1])
    application.setApplicationName("Platelayer")
    application.setOrganizationName("Platelayer")
    QGuiApplication.setDesktopFileName("platelayer")
    QGuiApplication.setWindowIcon(program_icon())
    use_language(application, QLocale())
    isolate(isolates=True)
    # The background must hand the interpreter back quickly, or every repaint would wait for it.
    sys.setswitchinterval(SWITCH_SECONDS)
    window = MainWindow() if path is None or PLANS.is_for(Path(path)) else first_network_window(Path(path))
    MishapHook(desk.rescue_all, window.panels.message.say, recovery_folder().parent).install()
    if isinstance(window, MainWindow):
        window.fit_screen()
        if window.settings.geometry is not None:
            window.restoreGeometry(window.settings.geometry)
        window.show()
        begin(window, path)
    return application.exec()


def first_network_window(path: Path) -> NetworkWindow:
    """A window with the network in a file, where the program is started with one."""
    from app.network.window import NetworkWindow  # who draws plans need not wait for it

    window = NetworkWindow()
    window.fit_screen()
    window.show()
    window.files.open_path(path)
    return window


def begin(window: MainWindow, path: str | None) -> None:
    """What comes first: the file asked for, else the start screen; that also where something is left over."""
    if path is not None:
        window.files.open_path(Path(path))
    if path is None or window.recovery.left_over():
        window.show_start()
