"""The real window under a virtual display, driven as a user would: usage real_window.py PROGRAM JOB.

Ends with 77 (skipped) where Xvfb or xdotool is missing. No times are asserted: it waits for states.
"""
import json
import os
import shutil
import subprocess
import sys
import tempfile
import time

HANGS_S = 120.0     # far longer than anything takes; only a hang reaches it
BETWEEN_S = 0.25    # the window looks at the buttons once a frame: shorter presses would be lost


def wait_for(what, condition):
    end = time.monotonic() + HANGS_S
    while time.monotonic() < end:
        value = condition()
        if value:
            return value
        time.sleep(0.1)
    raise SystemExit(f"waited in vain for {what}")


class Desk:
    """A display with the program's window on it."""

    def __init__(self, program, job, folder):
        self.report = os.path.join(folder, "state.json")
        reader, writer = os.pipe()
        self.display = subprocess.Popen(
            ["Xvfb", "-displayfd", str(writer), "-screen", "0", "1280x800x24"], pass_fds=[writer],
            stderr=subprocess.DEVNULL)
        os.close(writer)
        number = os.read(reader, 16).decode().strip()
        if not number:
            raise SystemExit("Xvfb did not start")
        self.environment = dict(os.environ, DISPLAY=":" + number, XDG_STATE_HOME=folder)
        self.program = subprocess.Popen(
            [program, "view", job, "--width", "1280", "--height", "800", "--window-report", self.report],
            env=self.environment)

    def state(self):
        if self.program.poll() is not None:
            raise SystemExit(f"the program ended with {self.program.returncode}")
        try:
            with open(self.report, encoding="utf-8") as file:
                return json.load(file)
        except (OSError, ValueError):
            return None

    def until(self, what, condition):
        return wait_for(what, lambda: (lambda s: s if s and condition(s) else None)(self.state()))

    def hand(self, *words):
        subprocess.run(["xdotool", *map(str, words)], env=self.environment, check=True)
        time.sleep(BETWEEN_S)

    def middle(self, state, name):
        x, y, width, height = state["places"][name]
        return round(x + width / 2), round(y + height / 2)

    def end(self):
        for process in (self.program, self.display):
            if process.poll() is None:
                process.terminate()
            process.wait()


def drive(desk):
    state = desk.until("the prediction", lambda s: s["seats"][0]["has_outcome"] and "picture A" in s["places"])
    x, y = desk.middle(state, "picture A")
    before = state["camera"]["azimuth_rad"]
    desk.hand("mousemove", x, y)
    desk.hand("mousedown", 1)
    for step in range(1, 6):
        desk.hand("mousemove", x + 20 * step, y)
    desk.hand("mouseup", 1)
    desk.until("the part turned", lambda s: abs(s["camera"]["azimuth_rad"] - before) > 0.1)

    x, y = desk.middle(state, "finding A1")
    desk.hand("mousemove", x, y)
    desk.hand("mousedown", 1)
    desk.hand("mouseup", 1)
    state = desk.until("a finding chosen", lambda s: s["chosen_finding"] == 0)

    desk.hand("keydown", "F1")
    desk.hand("keyup", "F1")
    desk.until("the keys' sheet", lambda s: s["sheet"] == 1)
    desk.hand("keydown", "Escape")
    desk.hand("keyup", "Escape")
    desk.until("the sheet closed", lambda s: s["sheet"] == 0)

    desk.hand("keydown", "ctrl")
    desk.hand("keydown", "q")
    desk.hand("keyup", "q")
    desk.hand("keyup", "ctrl")
    wait_for("the end", lambda: desk.program.poll() is not None)
    if desk.program.returncode != 0:
        raise SystemExit(f"the program ended with {desk.program.returncode}")


def main():
    missing = [tool for tool in ("Xvfb", "xdotool") if not shutil.which(tool)]
    if missing:
        print("skipped: missing", ", ".join(missing))
        raise SystemExit(77)
    with tempfile.TemporaryDirectory() as folder:
        desk = Desk(sys.argv[1], sys.argv[2], folder)
        try:
            drive(desk)
        finally:
            desk.end()
        with open(os.path.join(folder, "asperity", "viewer.json"), encoding="utf-8") as file:
            if json.load(file)["width"] != 1280:
                raise SystemExit("the window's size was not kept")
    bare = {key: value for key, value in os.environ.items() if key not in ("DISPLAY", "WAYLAND_DISPLAY")}
    without = subprocess.run([sys.argv[1], "view", sys.argv[2]], env=bare, capture_output=True, text=True)
    if without.returncode != 2 or "predict" not in without.stderr:
        raise SystemExit("without a display: " + without.stderr)
    print("the real window: fine")


main()
