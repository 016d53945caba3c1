"""What the test scripts of this folder share: where things are, and how a script ends.

A test script is a file tests/*.py. ./check runs each by itself with Debian's python3, and counts
what its last line says: `N passed, N failed`."""
import pathlib
import subprocess
import sys
import unittest

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
PROGRAM = ROOT / "build/release/steamworthy"

# Folders that hold what was built or brought in, not what was written.
NOT_OURS = {".git", ".cache", "build", "dist", "generated", "out", "node_modules", "__pycache__"}


def files(*suffixes, folder=ROOT):
    """Our own files below a folder whose names end with one of the suffixes, in order."""
    for path in sorted(folder.iterdir()):
        if path.is_dir():
            if path.name not in NOT_OURS:
                yield from files(*suffixes, folder=path)
        elif path.name.endswith(suffixes) and not path.is_symlink():
            yield path


def name_of(path):
    """The path as it is written in messages: from the source folder on."""
    return path.relative_to(ROOT).as_posix()


def run(*arguments, **options):
    """Runs the release program and returns its exit code, output and errors."""
    return subprocess.run([str(PROGRAM), *map(str, arguments)], stdin=subprocess.DEVNULL,
                          capture_output=True, text=True, timeout=120, **options)


def main():
    """Runs all tests of the calling script; details of failures first, the counts last."""
    suite = unittest.defaultTestLoader.loadTestsFromModule(sys.modules["__main__"])
    result = unittest.TextTestRunner(stream=sys.stdout, verbosity=0).run(suite)
    bad = {test.id().split(" ")[0] for test, _ in result.failures + result.errors}
    bad |= {test.id() for test in result.unexpectedSuccesses}
    passed = max(result.testsRun - len(bad) - len(result.skipped), 0)
    print(f"{passed} passed, {len(bad)} failed")
    sys.exit(1 if bad or not passed else 0)
