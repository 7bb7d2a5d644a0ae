"""Joint torques against closed forms that SymPy derives by another road than ours: Lagrange's
equations from kinetic and potential energy, no force ever resolved.

Usage: body_closed_forms.py PROGRAM, where PROGRAM prints cases with our torques (body_samples.cpp).
"""
import subprocess
import sys

import sympy as sp

GRAVITY = 9.80665
# Both sides are sums of a few dozen products in double precision.
RELATIVE = 1e-10


def lagrange(kinetic, potential, q, w, a):
    """Torque about each coordinate: d/dt dL/dw - dL/dq, the time derivative by the chain rule."""
    lagrangian = kinetic - potential
    torques = []
    for qi, wi in zip(q, w):
        momentum = sp.diff(lagrangian, wi)
        change = sum(sp.diff(momentum, qj) * wj + sp.diff(momentum, wj) * aj
                     for qj, wj, aj in zip(q, w, a))
        torques.append(change - sp.diff(lagrangian, qi))
    return torques


def speed_squared(place, q, w):
    velocity = [sum(sp.diff(x, qj) * wj for qj, wj in zip(q, w)) for x in place]
    return sum(v * v for v in velocity)


def swinging_arm():
    """Two links in the sagittal plane and a point mass at the end. x forward, y up; angle 0 hangs
    straight down, positive forward."""
    q, w, a = (sp.symbols(f"{name}1:3") for name in "qwa")
    m1, c1, l1, i1, m2, c2, i2, m3, l2 = parameters = sp.symbols("m1 c1 l1 i1 m2 c2 i2 m3 l2")

    def along(length, angle):
        return sp.Matrix([length * sp.sin(angle), -length * sp.cos(angle)])

    elbow = along(l1, q[0])
    places = [(m1, along(c1, q[0])), (m2, elbow + along(c2, q[0] + q[1])),
              (m3, elbow + along(l2, q[0] + q[1]))]
    kinetic = (i1 * w[0] ** 2 + i2 * (w[0] + w[1]) ** 2) / 2
    kinetic += sum(m * speed_squared(p, q, w) for m, p in places) / 2
    potential = sum(m * GRAVITY * p[1] for m, p in places)
    return [*q, *w, *a, *parameters], lagrange(kinetic, potential, q, w, a)


def swinging_leg():
    """One rigid body on three axes through one point: flexion about +z (right-hand side of the
    body), then abduction of a right leg about -x, then internal rotation about +y."""
    q, w, a = (sp.symbols(f"{name}1:4") for name in "qwa")
    m, c, ix, iy, iz = parameters = sp.symbols("m c ix iy iz")
    cos, sin = sp.cos, sp.sin
    flexion = sp.Matrix([[cos(q[0]), -sin(q[0]), 0], [sin(q[0]), cos(q[0]), 0], [0, 0, 1]])
    abduction = sp.Matrix([[1, 0, 0], [0, cos(q[1]), sin(q[1])], [0, -sin(q[1]), cos(q[1])]])
    rotation = sp.Matrix([[cos(q[2]), 0, sin(q[2])], [0, 1, 0], [-sin(q[2]), 0, cos(q[2])]])
    turned = flexion * abduction * rotation
    place = turned * sp.Matrix([0, -c, 0])
    # Angular velocity in the body's frame, from the skew matrix R^T dR/dt.
    spin = turned.T * sum((sp.diff(turned, qj) * wj for qj, wj in zip(q, w)), sp.zeros(3, 3))
    rate = (spin[2, 1], spin[0, 2], spin[1, 0])
    kinetic = m * speed_squared(place, q, w) / 2
    kinetic += sum(i * r ** 2 for i, r in zip((ix, iy, iz), rate)) / 2
    potential = m * GRAVITY * place[1]
    return [*q, *w, *a, *parameters], lagrange(kinetic, potential, q, w, a)


def main():
    forms = {}
    for kind, (symbols, torques) in {"arm": swinging_arm(), "leg": swinging_leg()}.items():
        forms[kind] = (len(symbols), sp.lambdify(symbols, torques, "math", cse=True))
    lines = subprocess.run([sys.argv[1]], check=True, capture_output=True, text=True).stdout
    worst = {kind: 0.0 for kind in forms}
    count = {kind: 0 for kind in forms}
    for line in lines.splitlines():
        kind, *words = line.split()
        inputs, torque = forms[kind]
        numbers = [float(word) for word in words]
        expected = torque(*numbers[:inputs])
        ours = numbers[inputs:]
        if len(ours) != len(expected):
            sys.exit(f"{kind}: {len(ours)} torques printed, {len(expected)} derived")
        scale = max(1.0, *(abs(x) for x in expected))
        worst[kind] = max(worst[kind], *(abs(o - e) / scale for o, e in zip(ours, expected)))
        count[kind] += 1
    for kind in forms:
        print(f"{kind}: {count[kind]} cases, largest miss {worst[kind]:.2e} of the torque")
        if count[kind] < 100 or not worst[kind] < RELATIVE:
            sys.exit(f"{kind}: torques differ from the closed form by more than {RELATIVE}")


if __name__ == "__main__":
    main()
