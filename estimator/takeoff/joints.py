"""Wire connectors and pigtails in a box, from its device and the cables that meet there.

Receptacle with two or more cables: hot, neutral and ground each join with a pigtail, so
that taking the device out breaks nothing downstream. A switch and a light by their own groups.
"""

from __future__ import annotations

from dataclasses import dataclass

from estimator.survey.electrical import Device


@dataclass(frozen=True, slots=True)
class Meeting:
    """The cables that meet in one box.

    Attributes:
        feeds: cables always live: from the source, and on to other outlets.
        switched: cables live only while the switch here is on.
        metal: the box itself needs a ground.
        devices: side by side in the box; counted for receptacles.
    """

    device: Device
    feeds: int
    switched: int
    metal: bool
    devices: int = 1

    @property
    def cables(self) -> int:
        """All cables in the box."""
        return self.feeds + self.switched


@dataclass(frozen=True, slots=True)
class Joints:
    """Conductors held by each connector, pigtails and fixture leads included."""

    held: tuple[int, ...]
    pigtails: int
    box_pigtails: int = 0


# One cable and one device: every wire goes straight to its screw.
_STRAIGHT_ON = 2
# Hot, neutral and ground.
_WIRES = 3


def joints(meeting: Meeting) -> Joints:
    """Connectors and pigtails for one box."""
    if meeting.device == "luminaire":
        return _light(meeting)
    if meeting.device == "none":
        return _splice(meeting)
    if meeting.device in ("switch", "three-way switch"):
        return _switch(meeting)
    return _receptacle(meeting)


def _receptacle(meeting: Meeting) -> Joints:
    cables, box, devices = meeting.cables, int(meeting.metal), meeting.devices
    if cables and cables + devices > _STRAIGHT_ON:
        held = cables + devices
        return Joints((held, held, held + box), _WIRES * devices, box)
    if box and cables:
        return Joints((cables + 1 + box,), 1, box)
    return Joints((), 0)


def _light(meeting: Meeting) -> Joints:
    """The fixture's own leads join every group, so no pigtail is bought."""
    cables, box = meeting.cables, int(meeting.metal)
    if not cables:
        return Joints((), 0)
    return Joints((cables + 1, cables + 1, cables + 1 + box), 0, box)


def _splice(meeting: Meeting) -> Joints:
    cables, box = meeting.cables, int(meeting.metal)
    if cables < 2:
        return Joints((), 0)
    return Joints((cables, cables, cables + box), 0, box)


def _switch(meeting: Meeting) -> Joints:
    """Hots land on the switch when alone; neutrals only join; grounds join with a pigtail."""
    held: list[int] = []
    pigtails, box = 0, int(meeting.metal)
    for hots in (meeting.feeds, meeting.switched):
        if hots > 1:
            held.append(hots + 1)
            pigtails += 1
    if meeting.cables > 1:
        held.append(meeting.cables)
    if meeting.cables > 1 or (box and meeting.cables):
        held.append(meeting.cables + 1 + box)
        pigtails += 1
    return Joints(tuple(held), pigtails, box)
