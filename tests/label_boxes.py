"""The labels of a scene, and which of them lie over each other."""

from structlib.pictures.labels import Label
from structlib.pictures.scene import flat


def boxes_meet(one, other, gap=0.0):
    """Tell whether two boxes overlap or come nearer than a gap."""
    return one[0] < other[2] + gap and other[0] < one[2] + gap and one[1] < other[3] + gap and other[1] < one[3] + gap


def labels_of(scene):
    """List all labels of a scene."""
    return [item for item in flat(scene.items) if type(item) is Label]


def label_overlaps(scene):
    """List the pairs of labels whose boxes overlap."""
    labels = labels_of(scene)
    boxes = [label.box() for label in labels]
    return [
        (labels[i].text, labels[k].text)
        for i in range(len(labels))
        for k in range(i + 1, len(labels))
        if boxes_meet(boxes[i], boxes[k])
    ]
