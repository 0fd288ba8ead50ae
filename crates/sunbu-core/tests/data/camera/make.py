"""Vectors for the camera's pose: OpenCV's solvePnP on the same points.

Run with `python3 make.py > poses.json` where the PyPI packages numpy and opencv-python-headless are
installed. Places are in centimetres with x to the wearer's left, as the program has them; OpenCV's
frame is right-handed, so x changes its sign on the way in and out.
"""

import json

import cv2
import numpy as np

rng = np.random.default_rng(20)
cases = []
while len(cases) < 12:
    n = int(rng.integers(8, 20))
    places = np.column_stack(
        [rng.uniform(-30, 30, n), rng.uniform(-12, 15, n), rng.uniform(0, 165, n)]
    )
    focal = float(rng.uniform(1200, 3600))
    centre = np.array([1500.0, 2000.0])
    behind = len(cases) % 3 == 2
    eye = np.array([rng.uniform(-60, 60), rng.uniform(230, 480) * (-1 if behind else 1), rng.uniform(50, 170)])
    aim = np.array([rng.uniform(-15, 15), 0.0, rng.uniform(70, 100)])
    forward = (aim - eye) / np.linalg.norm(aim - eye)
    up = np.array([0.0, 0.0, 1.0])
    # x to the left makes the frame left-handed: the picture's right is up x forward there.
    right = np.cross(up, forward)
    right /= np.linalg.norm(right)
    down = np.cross(forward, right)
    down = -down if down[2] > 0 else down
    roll = rng.uniform(-0.08, 0.08)
    r = np.cos(roll) * right + np.sin(roll) * down
    d = -np.sin(roll) * right + np.cos(roll) * down
    p = places - eye
    z = p @ forward
    pixels = centre + focal * np.column_stack([p @ r / z, p @ d / z])
    pixels += rng.normal(0, 1.5, pixels.shape)
    places, pixels = places.round(4), pixels.round(4)
    other = places * np.array([-1.0, 1.0, 1.0])
    k = np.array([[focal, 0, centre[0]], [0, focal, centre[1]], [0, 0, 1]])
    ok, rvec, tvec = cv2.solvePnP(other, pixels, k, None, flags=cv2.SOLVEPNP_SQPNP)
    assert ok
    criteria = (cv2.TERM_CRITERIA_EPS | cv2.TERM_CRITERIA_COUNT, 500, 1e-12)
    rvec, tvec = cv2.solvePnPRefineLM(other, pixels, k, None, rvec, tvec, criteria)
    rotation, _ = cv2.Rodrigues(rvec)
    seen = (-rotation.T @ tvec).ravel() * np.array([-1.0, 1.0, 1.0])
    axis = rotation[2] * np.array([-1.0, 1.0, 1.0])
    again, _ = cv2.projectPoints(other, rvec, tvec, k, None)
    rms = float(np.sqrt(np.mean(np.sum((again.reshape(-1, 2) - pixels) ** 2, axis=1))))
    cases.append(
        {
            "view": "back" if behind else "front",
            "focal_px": round(focal, 6),
            "centre": centre.tolist(),
            "places": places.tolist(),
            "pixels": pixels.tolist(),
            "eye": [round(float(v), 6) for v in seen],
            "forward": [round(float(v), 9) for v in axis],
            "rms_px": round(rms, 6),
        }
    )
print(json.dumps({"opencv": cv2.__version__, "cases": cases}, indent=1))
