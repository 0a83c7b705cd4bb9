"""What desktops read of the program: entry, kinds of files, description, icon.

Required keys after the freedesktop.org specifications Desktop Entry 1.5, shared-mime-info 0.21 and AppStream
1.0, all from memory; where their validators are installed, they judge too.
"""

from __future__ import annotations

import shutil
import subprocess
import tomllib
from configparser import ConfigParser
from pathlib import Path
from xml.etree import ElementTree

import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QImage, QPainter
from PySide6.QtSvg import QSvgRenderer

from app.canvas.clipboard import MIME
from app.commands.files import PLANS
from app.network.files import NETWORKS
from app.program_icon import SIDES, program_icon, program_svg

ROOT = Path(__file__).parent.parent
DESKTOP = ROOT / "resources" / "desktop"
ENTRY = DESKTOP / "platelayer.desktop"
KINDS = DESKTOP / "platelayer.xml"
DESCRIPTION = DESKTOP / "example.platelayer.platelayer.metainfo.xml"
ICON = ROOT / "resources" / "icons" / "platelayer.svg"
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))
MIME_INFO = "{http://www.freedesktop.org/standards/shared-mime-info}"
VALIDATORS = {
    "desktop-file-validate": ["desktop-file-validate", str(ENTRY)],
    "appstreamcli": ["appstreamcli", "validate", "--no-net", str(DESCRIPTION)],
    "xmllint": ["xmllint", "--noout", str(KINDS), str(DESCRIPTION), str(ICON)],
}


def entry() -> dict[str, str]:
    parser = ConfigParser(interpolation=None)
    parser.optionxform = str  # type: ignore[assignment,method-assign]
    parser.read(ENTRY, "utf-8")
    return dict(parser["Desktop Entry"])


def kinds() -> dict[str, ElementTree.Element]:
    """By the name of the kind of file."""
    return {each.attrib["type"]: each for each in ElementTree.parse(KINDS).getroot()}


def fits_magic(kind: ElementTree.Element, data: bytes) -> bool:
    """Whether all of a chain of matches are found, each in the range that it names."""
    found = kind.find(f"{MIME_INFO}magic/{MIME_INFO}match")
    while found is not None:
        first, _, last = found.attrib["offset"].partition(":")
        value = found.attrib["value"].encode()
        if data.find(value, int(first), int(last or first) + len(value)) < 0:
            return False
        found = found.find(f"{MIME_INFO}match")
    return True


@pytest.mark.parametrize("name", VALIDATORS)
def test_the_validators_find_no_fault(name: str) -> None:
    if shutil.which(name) is None:
        pytest.skip(f"{name} is not installed; the required keys are looked at all the same")
    done = subprocess.run(VALIDATORS[name], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_entry_starts_the_program_that_is_installed() -> None:
    said = entry()
    assert said["Type"] == "Application"
    assert said["Name"] == "Platelayer"
    command, argument = said["Exec"].split()
    assert command in PROJECT["project"]["scripts"]
    assert argument == "%f", "one file at a time"
    assert said["Icon"] == ICON.stem
    assert said["Categories"].startswith("Graphics;")
    assert {*said["MimeType"].strip(";").split(";")} == {*kinds()}
    program = (ROOT / "app" / "window.py").read_text("utf-8")
    assert f'setDesktopFileName("{ENTRY.stem}")' in program, "by this Wayland knows whose window it is"
    assert f'setApplicationName("{said["StartupWMClass"]}")' in program, "by this X11 does"


def test_each_kind_of_file_is_known_by_its_ending_and_by_its_beginning() -> None:
    endings = {
        glob.attrib["pattern"]: name
        for name, kind in kinds().items()
        for glob in kind.iter(f"{MIME_INFO}glob")
    }
    assert endings.keys() == {f"*{PLANS.ending}", f"*{NETWORKS.ending}"}
    assert endings[f"*{PLANS.ending}"] == MIME, "as on the clipboard"
    files = [*(ROOT / "resources" / "examples").iterdir(), *(ROOT / "resources" / "modules").iterdir()]
    assert len(files) > 10
    for file in files:
        ending = PLANS.ending if PLANS.is_for(file) else NETWORKS.ending
        fitting = [name for name, kind in kinds().items() if fits_magic(kind, file.read_bytes())]
        assert fitting == [endings[f"*{ending}"]], file.name
    other = (ROOT / "resources" / "plan.schema.json").read_bytes()
    assert not any(fits_magic(kind, other) for kind in kinds().values())


def test_the_description_has_what_software_centres_ask_for() -> None:
    root = ElementTree.parse(DESCRIPTION).getroot()
    assert root.attrib["type"] == "desktop-application"
    for tag in (
        "id",
        "name",
        "summary",
        "metadata_license",
        "project_license",
        "description",
        "content_rating",
    ):
        assert root.find(tag) is not None, tag
    identity, summary = root.findtext("id"), root.findtext("summary")
    assert identity is not None
    assert summary is not None
    assert DESCRIPTION.name == f"{identity}.metainfo.xml"
    assert identity.count(".") >= 2, "a domain turned round"
    assert summary == entry()["Comment"]
    assert not summary.endswith(".")
    assert root.findtext("launchable") == ENTRY.name
    assert root.findtext("project_license") == PROJECT["project"]["license"]
    assert {each.text for each in root.iter("mediatype")} == {*kinds()}


def test_the_wheel_lays_each_file_where_desktops_look() -> None:
    """XDG base directory and icon theme specifications, from memory."""
    laid = PROJECT["tool"]["setuptools"]["data-files"]
    assert laid == {
        "share/applications": [str(ENTRY.relative_to(ROOT))],
        "share/icons/hicolor/scalable/apps": [str(ICON.relative_to(ROOT))],
        "share/metainfo": [str(DESCRIPTION.relative_to(ROOT))],
        "share/mime/packages": [str(KINDS.relative_to(ROOT))],
    }
    assert all((ROOT / file).is_file() for files in laid.values() for file in files)


def rendered(svg: bytes, side: int) -> QImage:
    image = QImage(side, side, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    painter = QPainter(image)
    QSvgRenderer(svg).render(painter, QRectF(0, 0, side, side))
    painter.end()
    return image


def dark_share(image: QImage) -> float:
    grey = image.convertToFormat(QImage.Format.Format_Grayscale8)
    dark = sum(grey.pixelColor(x, y).value() < 100 for x in range(grey.width()) for y in range(grey.height()))
    return dark / (grey.width() * grey.height())


@pytest.mark.usefixtures("qapp")
def test_the_drawing_for_desktops_is_the_one_of_the_program() -> None:
    assert rendered(ICON.read_bytes(), 96) == rendered(program_svg(), 96)


@pytest.mark.usefixtures("qapp")
@pytest.mark.parametrize("side", SIDES)
def test_the_icon_is_legible_at_every_size(side: int) -> None:
    """Its own ground keeps it legible on any desktop; the line work takes a share of it that is seen."""
    image = program_icon().pixmap(side, side).toImage()
    assert (image.width(), image.height()) == (side, side)
    assert all(image.pixelColor(x, 0).alpha() == 255 for x in range(side)), "the plate reaches the edge"
    flat = QImage(image.size(), QImage.Format.Format_RGB32)
    flat.fill(Qt.GlobalColor.white)
    painter = QPainter(flat)
    painter.drawImage(0, 0, image)
    painter.end()
    assert 0.08 < dark_share(flat) < 0.3
