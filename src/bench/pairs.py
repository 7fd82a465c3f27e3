#!/usr/bin/python3
"""Runs commands in turn, A B C A B C ..., as whole processes, and prints a table of medians.

    pairs.py RUNS NAME=COMMAND ...

Processor time and peak memory are the system's own account of each finished process; ratios are to the first command, run by
run, so that they hold where the machine's speed drifts.
"""
import os
import shlex
import statistics
import subprocess
import sys
import time

runs = int(sys.argv[1])
commands = [argument.split("=", 1) for argument in sys.argv[2:]]
figures = [[] for _ in commands]
for _ in range(runs + 1):  # the first round fills the file cache and is not counted
    for i, (name, command) in enumerate(commands):
        start = time.time()
        process = subprocess.Popen(shlex.split(command), stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
        errors = process.stderr.read().decode()
        _, status, used = os.wait4(process.pid, 0)
        if status:
            sys.exit(f"{name} failed: {errors[:500]}")
        figures[i].append((time.time() - start, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024))
figures = [counted[1:] for counted in figures]
print("| run | wall s | processor s | memory MB | wall to the first | processor to the first |")
print("| --- | ---: | ---: | ---: | ---: | ---: |")
for (name, _), own in zip(commands, figures):
    wall, cpu, memory = (statistics.median(run[k] for run in own) for k in range(3))
    ratio = [statistics.median(a[k] / b[k] for a, b in zip(own, figures[0])) for k in range(2)]
    print(f"| {name} | {wall:.2f} | {cpu:.2f} | {memory:.0f} | {ratio[0]:.2f} | {ratio[1]:.2f} |")
