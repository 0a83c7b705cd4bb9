"""A slow, plain second implementation of the rules of the world and of what follows from them.

It was written from the text of the rules alone and shares no code with ``model``: cells are tuples
``(x, y, z)``, directions, parts and shapes are the words of the plan file. Only ``adapter`` knows both sides.

Where the text leaves a question open, this is the reading taken here:

* *Settling, no open direction*: the shape stays as it is, and no slope rule. A booster or detector rail with
  open directions on both axes keeps its shape, and the slope rule is applied to it.
* *Joining*: the links are the directions of the live links together with the direction of the column of the
  rail that is joined, so a live link that already leads into that column counts once.
* *Joining after a notice* visits the ends of the new shape in the order that placing does.
* *Powered and released*: a wired switch is released before the next one is powered.
* *Readers together*: a switch has the other signal than at idle when at least one holding reader throws it.
* *A cart that would run into a block* stops, even in the cell by which it would leave by an arm: it has
  "left by an arm as soon as it leaves" that cell, and a stopped cart does not leave it.
* *What a cart runs into* is looked for in the cell that its end points at, which is one up for a raised end.
* *Two arms with the same way out*: the first in file order is the one that the cart leaves by.
* *A route whose arm has no way in, no rail there, or is not known* is never reached.
* *The tie by reading the switches*: switch after switch, for each one first whether it is powered at idle,
  then reader after reader, sorted by name, whether it is thrown.
"""
