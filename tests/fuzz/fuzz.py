#!/usr/bin/env python3
"""Gives each reader new bytes for so many seconds of computing: tests/fuzz/README.md.

    tests/fuzz/fuzz.py [--seconds N] [--rounds N] [--at-once N] [READER ...]

Seconds are those of a processor, so that a busy machine gives a reader as much as an idle one. In
each round every reader gets its part of them and goes on from what it grew before. Ends with 1 when
something was found; it lies in build/fuzz/found/. Logs stand in build/fuzz/logs/.
"""

import argparse
import os
import re
import signal
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

HERE = Path(__file__).resolve().parent
SOURCES = HERE.parent.parent
BUILD = SOURCES / "build" / "fuzz"
SHIPPED = {"setup": "assets/setups", "body": "assets/body", "muscles": "assets/muscles",
           "lesson": "assets/lessons", "family": "question_bank/families",
           "items": "question_bank/items", "blueprint": "assets/blueprints"}
LOOKS_EVERY_S = 1.0


def cpu_s(process):
    """User and system time. Source: proc(5), /proc/pid/stat, fields 14 and 15."""
    try:
        stat = Path(f"/proc/{process.pid}/stat").read_text(encoding="utf-8")
    except OSError:
        return 0.0
    fields = stat.rsplit(")", 1)[1].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def fuzz(reader, seconds):
    """@return whether it came to its end, and what to say of it"""
    grown, found, logs = (BUILD / name for name in ("grown", "found", "logs"))
    for folder in (grown / reader, found, logs):
        folder.mkdir(parents=True, exist_ok=True)
    corpora = [grown / reader, HERE / "corpus" / reader]
    if reader in SHIPPED:
        corpora.append(SOURCES / SHIPPED[reader])
    with open(logs / f"{reader}.log", "w", encoding="utf-8") as log:
        process = subprocess.Popen(
            [BUILD / "bin" / "fuzz_readers", "-timeout=1200", "-rss_limit_mb=2048", "-max_len=20000",
             "-print_final_stats=1", f"-artifact_prefix={found}/{reader}-", *map(str, corpora)],
            env={**os.environ, "FUZZ_TARGET": reader}, stdout=log, stderr=subprocess.STDOUT)
        used_s = 0.0
        while process.poll() is None:
            used_s = max(used_s, cpu_s(process))
            if used_s >= seconds and process.poll() is None:
                process.send_signal(signal.SIGINT)  # libFuzzer then ends with its numbers
                process.wait()
            time.sleep(LOOKS_EVERY_S)
    said = (logs / f"{reader}.log").read_text(encoding="utf-8", errors="replace")
    runs = re.findall(r"stat::number_of_executed_units:\s*(\d+)", said)
    covered = re.findall(r"cov: (\d+)", said)
    ended_well = used_s >= seconds
    return ended_well, (f"{reader}: {used_s:.0f} s of a processor, {runs[-1] if runs else '?'} inputs, "
                        f"{covered[-1] if covered else '?'} edges, "
                        + ("nothing found" if ended_well else f"ENDED: build/fuzz/logs/{reader}.log"))


def main():
    reader = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    reader.add_argument("readers", nargs="*", metavar="READER")
    reader.add_argument("--seconds", type=float, default=600.0)
    reader.add_argument("--rounds", type=int, default=1)
    reader.add_argument("--at-once", type=int, default=1)
    asked = reader.parse_args()
    readers = asked.readers or sorted(path.name for path in (HERE / "corpus").iterdir())
    all_well = True
    with ThreadPoolExecutor(asked.at_once) as workers:
        for ended_well, told in workers.map(lambda one: fuzz(one, asked.seconds / asked.rounds),
                                            readers * asked.rounds):
            all_well = all_well and ended_well
            print(told, flush=True)
    return 0 if all_well else 1


if __name__ == "__main__":
    sys.exit(main())
