"""How fast the model's decision kernels are beside the same arithmetic in numpy, in one run.

    cargo bench -p leavewell-model --bench weigh -- kernel > bench.txt
    python3 tests/published/speed.py < bench.txt

Needs numpy. The inputs are those of src/model/benches/weigh.rs, so the results agree as well; compare
ratios within one run only. The fastest of many repeats is taken on both sides, since machines are noisy.
"""

import re
import sys
import time

import numpy as np

N = 4096
BINS = 32
i = np.arange(1, N + 1, dtype=float)


def columns(count):
    x = i[None, :] * np.arange(1, count + 1)[:, None] * 0.618033988749895
    return 100 * (x - np.floor(x))


ACTS = columns(20)
HELD = columns(5)
VALUES = HELD[:, :5].copy()
WEIGHTS = (HELD / HELD.sum(0)).T.copy()


def worth_of_everything():
    return ACTS.max(0).mean() - ACTS.mean(1).max()


def worth_of_input():
    order = np.argsort(ACTS[0], kind="stable")
    sums = ACTS[:, order].reshape(20, BINS, N // BINS).sum(2)
    return sums.max(0).sum() / N - ACTS.mean(1).max()


def certainty_equivalents():
    least = ACTS.min(1)
    return (least - 50 * np.log(np.exp((least[:, None] - ACTS) / 50).mean(1))).sum()


def ranks_over_weights():
    scores = WEIGHTS @ VALUES.T
    better = (scores[:, None, :] > scores[:, :, None]).sum(2)
    ranks = np.array([[(better[:, o] == r).mean() for r in range(5)] for o in range(5)])
    beats = (scores[:, :, None] > scores[:, None, :]).mean(0)
    first = better == 0
    central = [WEIGHTS[first[:, o]].mean(0) if first[:, o].any() else None for o in range(5)]
    return ranks, beats, central


def fastest_us(f, repeats=200):
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        f()
        times.append(time.perf_counter() - start)
    return 1e6 * min(times)


UNITS = {"ns": 1e-3, "µs": 1.0, "us": 1.0, "ms": 1e3, "s": 1e6}


def main():
    # A line of the bench: name, fastest, slowest, median, mean.
    found = {}
    for line in sys.stdin:
        name = re.search(r"kernel_(\w+)", line)
        times = re.findall(r"([\d.]+) (ns|µs|us|ms|s)\b", line)
        if name and times:
            found[name.group(1)] = float(times[0][0]) * UNITS[times[0][1]]
    if not found:
        sys.exit("No kernel lines on standard input; see the top of this file for what to run.")
    for f in (worth_of_everything, worth_of_input, certainty_equivalents, ranks_over_weights):
        numpy_us = fastest_us(f)
        own = found.get(f.__name__)
        if own:
            print(f"{f.__name__}: model {own:.0f} us, numpy {numpy_us:.0f} us, numpy/model {numpy_us / own:.1f}")


if __name__ == "__main__":
    main()
