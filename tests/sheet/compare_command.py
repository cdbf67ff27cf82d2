"""The compare command as a user runs it: files, numbers known by hand, exit codes, and nothing left half written."""
import csv
import json
import pathlib
import signal
import struct
import subprocess
import sys
import time

sys.dont_write_bytecode = True
sys.path.insert(0, str(pathlib.Path(__file__).parent))
from bench import bench  # noqa: E402


def check(is_true, what):
    if not is_true:
        raise SystemExit("FAILED: " + what)


def size_of_png(path):
    head = path.read_bytes()[:24]
    check(head[:8] == b"\x89PNG\r\n\x1a\n", f"{path} is no PNG")
    return struct.unpack(">II", head[16:24])


def numbers_known_by_hand(work):
    """Plane geometry: a cutter set 0.1 mm higher leaves top and lip 0.1 mm higher; both are then missed."""
    done = work.run("compare", "a.toml", "b.toml", "--out", "out", "--draws", "0", wanted=(1,))
    table = json.loads((work.folder / "out/comparison.json").read_text())
    rows = {row["id"]: row for row in table["numbers"]}
    for number in ("rim/lip_mm", "top/height_mm"):
        difference = rows[number]["differences"][1]
        check(abs(difference["value"] - 0.1) < 0.0025, f"{number} differs by {difference['value']}")
        check(difference["standing"] == "worse", f"{number}: {difference['standing']}")
        check(difference["low"] is None, "an uncertainty nobody asked for")
    check(table["answer"]["plan"] == "A", str(table["answer"]))
    check("Take plan A" in done.stdout and "not asked for" in done.stdout, done.stdout)
    check("eye protection" in done.stdout, "no cautions")
    for name in ("rim-B-minus-A.png", "top-B-minus-A.png"):
        check(size_of_png(work.folder / "out" / name)[0] == 1400, name)
    lines = [line for line in (work.folder / "out/comparison.csv").read_text().splitlines() if not line.startswith("#")]
    rows = list(csv.DictReader(lines))
    check(any(row["id"] == "rim/lip_mm" and row["B standing"] == "worse" for row in rows), "the table lacks the lip")
    check(len({row["id"] for row in rows}) == len(rows), "an id twice")


def uncertainty(work):
    """0.1 mm of Z zero against itself under the same draws: the difference is certain although each plan is not."""
    work.run("compare", "a.toml", "b.toml", "--json", "with.json", "--draws", "12", "--quiet", wanted=(1,))
    rows = {row["id"]: row for row in json.loads((work.folder / "with.json").read_text())["numbers"]}
    height = rows["top/height_mm"]["differences"][1]
    check(height["low"] > 0.09 and height["high"] < 0.11, str(height))
    check(height["larger_than_uncertainty"] is True and height["standing"] == "worse", str(height))
    work.run("compare", "a.toml", "a.toml", "--json", "same.json", "--draws", "4", "--quiet", wanted=(0, 1))
    same = json.loads((work.folder / "same.json").read_text())
    check(all(row["differences"][1] is None or row["differences"][1]["value"] == 0 for row in same["numbers"]), "not the same")
    check("No plan is best" in same["answer"]["best_at"], same["answer"]["best_at"])


def wrong_input(work):
    (work.folder / "bad.toml").write_text("title = 3\n")
    before = sorted(p.name for p in work.folder.rglob("*"))
    for arguments in (["compare", "a.toml"], ["compare", "a.toml", "bad.toml"], ["sheet", "bad.toml", "-o", "x.html"],
                      ["sheet", "a.toml", "-o", "no/such/x.html"], ["export", "a.toml"], ["compare", "a.toml", "gone.toml"]):
        done = work.run(*arguments, wanted=(2,))
        check(done.stderr.strip() or done.stdout.strip(), f"{arguments} says nothing")
    check(sorted(p.name for p in work.folder.rglob("*")) == before, "a wrong input left a file")


def interrupted(work):
    """Whenever it is stopped, there is no part of a file."""
    for after in (0.05, 0.4):
        run = subprocess.Popen([work.program, "sheet", "a.toml", "b.toml", "-o", "stopped.html", "--draws", "400"],
                               cwd=work.folder, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        time.sleep(after)
        run.send_signal(signal.SIGINT)
        check(run.wait(timeout=60) in (130, -2), f"stopped with {run.returncode}")
        left = [p.name for p in work.folder.iterdir() if p.name.startswith((".asperity", "stopped"))]
        check(left == [], f"left behind: {left}")


def main():
    with bench(sys.argv[1]) as work:
        work.job("a.toml")
        work.job("b.toml", z_error=0.1)
        numbers_known_by_hand(work)
        uncertainty(work)
        wrong_input(work)
        interrupted(work)
    print("compare command: fine")
    return 0


sys.exit(main())
