"""Patches are counted alike in few bits and in many."""

from __future__ import annotations

import cv2
import numpy as np
import pytest

from ocr_tags.pictures.geometry import components


@pytest.mark.parametrize(("size", "every", "kind"), [(300, 3, np.uint16), (600, 2, np.int32)])
def test_patches_are_those_of_the_library_in_32_bits(size: int, every: int, kind: type) -> None:
    """OpenCV's own count in 32 bits is the measure; 90,000 patches are more than 16 bits can hold."""
    mask = np.zeros((size, size), np.uint8)
    mask[::every, ::every] = 255
    labels, figures, middles = components(mask)
    count, truth, figures_truth, middles_truth = cv2.connectedComponentsWithStats(mask, ltype=cv2.CV_32S)
    assert labels.dtype == kind
    assert len(figures) == count == (size // every) ** 2 + 1
    assert np.array_equal(labels, truth)
    assert np.array_equal(figures, figures_truth) and np.allclose(middles, middles_truth)
