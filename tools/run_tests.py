#!/usr/bin/env python3
"""Runs the GoogleTest programs named in a file, one a line, two at a time.

Prints the output of those that fail, what each took, and `N passed, N failed`. A program that ran
no test, that crashed, or that took longer than its limit counts as one failure."""
import concurrent.futures
import json
import os
import pathlib
import subprocess
import sys
import tempfile
import time

LIMIT_S = 900


def run(program):
    """Returns (program, passed, failed, seconds, output)."""
    start = time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        report = pathlib.Path(folder) / "report.json"
        try:
            done = subprocess.run(
                [program, f"--gtest_output=json:{report}", "--gtest_brief=1"],
                stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
                text=True, errors="replace", timeout=LIMIT_S)
            output, code = done.stdout, done.returncode
        except subprocess.TimeoutExpired as late:
            output, code = f"{late.stdout or ''}\nended after {LIMIT_S} s", 1
        except OSError as fault:
            output, code = str(fault), 1
        seconds = time.monotonic() - start
        if not report.exists():
            return program, 0, 1, seconds, f"{output}\nended with code {code} and without a report"
        counts = json.loads(report.read_text())
    failed = counts["failures"] + counts.get("errors", 0)
    ran = sum(1 for suite in counts["testsuites"] for test in suite["testsuite"]
              if test["result"] == "COMPLETED")
    if ran == 0:
        return program, 0, 1, seconds, f"{output}\nran no test"
    if code != 0 and failed == 0:
        return program, ran, 1, seconds, f"{output}\nended with code {code} after its tests"
    return program, ran - failed, failed, seconds, output


def main():
    programs = pathlib.Path(sys.argv[1]).read_text().splitlines()
    passed = failed = 0
    with concurrent.futures.ThreadPoolExecutor(max_workers=min(2, os.cpu_count() or 1)) as pool:
        for program, good, bad, seconds, output in pool.map(run, programs):
            name = pathlib.Path(program).name
            print(f"{name}: {good} passed, {bad} failed, {seconds:.1f} s")
            if bad:
                print(output[-6000:])
            passed += good
            failed += bad
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())
