"""A plan as a few lines of characters: one notation for tests, bug reports and the help pages.

Levels come one after the other, north up, one character a cell::

    level 64 on blocks, from 0 0
    ·│·
    ───
    r··
    r: repeater, facing east, delay 4
    arm Quay: in 1 64 0 south, out 0 64 1 west
    route Quay: idle Mill, called Fen, waybill Salt
    running side left

``from`` says the x and z of the north-west corner; it may be left out where both are 0. Rails are line work,
see ``glyphs``. Other parts have a letter each, and a legend line where a letter stands for more than the part
as it comes out of the tray. What containers hold, waivers, the title and the title block are left out.

``draw`` shows the rails by their shape as built. ``plan_from_drawing`` reads rails by the way they face.
"""

from model.text_drawing.draw import draw
from model.text_drawing.read import DrawingError, plan_from_drawing

__all__ = ["DrawingError", "draw", "plan_from_drawing"]
