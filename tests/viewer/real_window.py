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
        self.command = [program, "view", job, "--width", "1280", "--height", "800", "--window-report", self.report]
        self.program = None

    def start(self):
        if os.path.exists(self.report):
            os.remove(self.report)
        self.program = subprocess.Popen(self.command, env=self.environment)

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
            if process and process.poll() is None:
                process.terminate()
            if process:
                process.wait()

    def key(self, *names):
        for name in names:
            self.hand("keydown", name)
        for name in reversed(names):
            self.hand("keyup", name)

    def leave(self):
        self.key("ctrl", "q")
        wait_for("the end", lambda: self.program.poll() is not None)
        if self.program.returncode != 0:
            raise SystemExit(f"the program ended with {self.program.returncode}")



def drive(desk):
    state = desk.until("the prediction", lambda s: s["seats"][0]["is_whole"] and "picture A" in s["places"])
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

    desk.key("F1")
    desk.until("the keys' sheet", lambda s: s["sheet"] == 1)
    desk.key("Escape")
    desk.until("the sheet closed", lambda s: s["sheet"] == 0)

    desk.key("x")
    desk.until("the section", lambda s: s["lower"] == 2 and "section picture" in s["places"])
    desk.key("u")
    state = desk.until("the flat sheet", lambda s: s["lower"] == 1 and "strip picture" in s["places"])

    # Closer and closer with the wheel, until single tooth marks are laid.
    x, y = desk.middle(state, "strip picture")
    desk.hand("mousemove", x, y)
    for _ in range(24):
        desk.hand("click", 4)
    desk.until("single tooth marks", lambda s: s["has_closeup"])
    desk.leave()


def leave_in_the_middle(desk):
    desk.until("the prediction at work", lambda s: s["seats"][0]["is_running"])
    desk.leave()


def old_opengl(desk):
    """A display whose OpenGL is too old: a clear message, and what to do instead."""
    old = dict(desk.environment, MESA_GL_VERSION_OVERRIDE="2.1")
    tried = subprocess.run(desk.command, env=old, capture_output=True, text=True, timeout=HANGS_S)
    if tried.returncode != 2 or "OpenGL 3.3" not in tried.stderr or "predict" not in tried.stderr:
        raise SystemExit(f"with an old OpenGL: {tried.returncode} {tried.stderr}")


def main():
    missing = [tool for tool in ("Xvfb", "xdotool") if not shutil.which(tool)]
    if missing:
        print("skipped: missing", ", ".join(missing))
        raise SystemExit(77)
    with tempfile.TemporaryDirectory() as folder:
        desk = Desk(sys.argv[1], sys.argv[2], folder)
        try:
            desk.start()
            drive(desk)
            desk.start()
            leave_in_the_middle(desk)
            old_opengl(desk)
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
