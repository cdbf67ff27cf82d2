"""Compares our Gaussian filter and moments with SciPy's on profiles made here.

Usage: outside_reference.py <surface_numbers program>
"""
import json
import math
import subprocess
import sys
import tempfile

import numpy
from scipy import ndimage, stats

ALPHA = math.sqrt(math.log(2) / math.pi)
AGREEMENT = 1e-3  # 0.1 %, the share of the roughness height allowed between the two
# SciPy's kernel is cut at 5.34 standard deviations and ours at one cutoff = 5.336: the same samples or nearly.
REACH_SIGMAS = 5.34


def profiles():
    random = numpy.random.default_rng(5)
    x = numpy.arange(6000)
    yield "random walk", numpy.cumsum(random.normal(size=6000)) * 1e-4
    yield "noise", random.normal(size=6000) * 1e-3
    yield "cusps on a wave", 0.006 * ((x / 250.0) % 1 - 0.5) ** 2 + 0.01 * numpy.sin(2 * numpy.pi * x / 3000)
    yield "steps", 0.004 * ((x // 400) % 3 == 0) + 1e-5 * random.normal(size=6000)


def ours(program, heights, spacing, cutoff, closed):
    with tempfile.NamedTemporaryFile("w", suffix=".txt") as file:
        file.write(f"{spacing!r} {cutoff!r} {int(closed)}\n")
        file.write("\n".join(repr(float(z)) for z in heights))
        file.flush()
        return json.loads(subprocess.run([program, file.name], capture_output=True, check=True, text=True).stdout)


def moments(rough):
    return {"ra": numpy.mean(numpy.abs(rough)), "rq": numpy.sqrt(numpy.mean(rough**2)),
            "rsk": stats.skew(rough), "rku": stats.kurtosis(rough, fisher=False),
            "rt": rough.max() - rough.min()}


def compare(program, name, heights, spacing, cutoff, closed):
    sigma = ALPHA * cutoff / math.sqrt(2 * math.pi) / spacing
    mode = "wrap" if closed else "reflect"
    theirs = ndimage.gaussian_filter1d(heights, sigma, mode=mode, truncate=REACH_SIGMAS)
    result = ours(program, heights, spacing, cutoff, closed)
    mean_line = numpy.array(result["mean_line"])
    # At open ends SciPy mirrors the profile where we rescale the kernel: compare beyond one cutoff.
    edge = 0 if closed else math.ceil(cutoff / spacing) + 1
    inside = slice(edge, len(heights) - edge)
    rough_height = numpy.ptp(heights - theirs)
    worst = numpy.abs(mean_line - theirs)[inside].max() / rough_height
    found = [f"mean line off by {worst:.2e} of the roughness height"] if not worst <= AGREEMENT else []
    # Our moments are about the mean line; over a whole closed profile that is the mean, as in SciPy.
    if closed:
        for key, value in moments(heights - theirs).items():
            scale = abs(value) if key != "rsk" else 1 + abs(value)
            if not abs(result[key] - value) <= AGREEMENT * scale:
                found.append(f"{key}: ours {result[key]:.9g}, SciPy {value:.9g}")
    return [f"{name}, cutoff {cutoff}, {mode}: {text}" for text in found]


def main():
    program = sys.argv[1]
    problems, checked = [], 0
    for name, heights in profiles():
        for cutoff in (0.08, 0.25, 0.8):
            for closed in (True, False):
                problems += compare(program, name, heights, 0.001, cutoff, closed)
                checked += 1
    print("\n".join(problems) or f"{checked} profiles agree with SciPy within {AGREEMENT:.1%}")
    return 1 if problems or checked == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
