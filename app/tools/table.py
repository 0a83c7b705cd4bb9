"""The tools by name, in the order of the tool bar."""

from __future__ import annotations

from typing import Final

from app.tools.arm import ArmTool
from app.tools.cart import CartTool
from app.tools.erase import EraseTool
from app.tools.lay import LayTool
from app.tools.line import LineTool
from app.tools.module import ModuleTool
from app.tools.place import PlaceTool
from app.tools.select import SelectTool
from app.tools.survey import SurveyTool
from app.tools.throw import ThrowTool
from app.tools.tool import Tool

TOOLS: Final[dict[str, type[Tool]]] = {
    tool.name: tool
    for tool in (
        SelectTool,
        LayTool,
        PlaceTool,
        LineTool,
        ModuleTool,
        ArmTool,
        EraseTool,
        ThrowTool,
        CartTool,
        SurveyTool,
    )
}
