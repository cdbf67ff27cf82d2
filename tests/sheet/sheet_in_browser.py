"""Opens a decision sheet in headless Chromium: no error on the console, nothing fetched, every number equal to the
prediction's JSON after the rounding rule, the 3D view drawn, hostile names shown as text, a message without WebGL."""
import html.parser
import json
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

sys.dont_write_bytecode = True
sys.path.insert(0, str(pathlib.Path(__file__).parent))
from bench import bench, numbers_of, shown  # noqa: E402

HOSTILE = "</script><script>document.title='broken in'</script><img src=x onerror=document.title='broken&in'> \"'& \u202etxt"
FLAGS = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
         "--disable-component-update", "--disable-sync", "--enable-logging=stderr", "--virtual-time-budget=20000",
         "--window-size=1400,900"]
WEBGL = ["--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader"]


class Reader(html.parser.HTMLParser):
    """Elements with data-number, their text, and every address the page names."""

    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.numbers, self.addresses, self.open, self.tags, self.alts = [], [], None, [], []

    def handle_starttag(self, tag, attributes):
        named = dict(attributes)
        self.tags.append((tag, named))
        self.addresses += [named[key] for key in ("src", "href", "action", "data") if key in named]
        if tag == "img":
            self.alts.append(named.get("alt"))
        if "data-number" in named:
            self.open = [named, ""]

    def handle_data(self, text):
        if self.open:
            self.open[1] += text

    def handle_endtag(self, tag):
        if self.open and tag == "span":
            self.numbers.append((self.open[0], self.open[1]))
            self.open = None


def opened(browser, sheet, flags):
    with tempfile.TemporaryDirectory() as profile:
        done = subprocess.run([browser, *FLAGS, *flags, f"--user-data-dir={profile}", "--dump-dom", sheet.as_uri()],
                              capture_output=True, text=True, timeout=200)
    # What the graphics driver says about its speed is no error.
    errors = [line for line in done.stderr.splitlines() if "CONSOLE" in line and "GL Driver Message" not in line]
    return done.stdout, errors


def check(is_true, what):
    if not is_true:
        raise SystemExit("FAILED: " + what)


def check_numbers(reader, predictions, names):
    table = {(named["data-number"], named["data-plan"]): (float(named["data-value"]), text) for named, text in reader.numbers}
    compared = 0
    for letter, prediction in predictions.items():
        for number, value in numbers_of(prediction).items():
            if value is None:
                continue
            check((number, letter) in table, f"{number} of plan {letter} is missing")
            full, text = table[(number, letter)]
            check(abs(full - value) <= 1e-9 * max(1.0, abs(value)), f"{number} of {letter}: {full}, not {value}")
            unit = re.search(r"_(mm|um|s|N|W|C)$", number)
            unit = {"C": "degC"}.get(unit.group(1), unit.group(1)) if unit else ""
            check(text.replace("\u00a0", " ") == shown(value, unit), f"{number} of {letter} reads '{text}', not '{shown(value, unit)}'")
            compared += 1
    check(compared >= 40, f"only {compared} numbers compared")
    for named, text in reader.numbers:
        check(text.strip() != "", f"{named} is empty")


def main():
    browser = shutil.which("chromium")
    if not browser:
        print("chromium is not installed")
        return 77
    with bench(sys.argv[1]) as work:
        work.job("a.toml", title=HOSTILE + " first")
        work.job("b.toml", z_error=0.1, title=HOSTILE + " second")
        predictions = {"A": work.prediction("a.toml"), "B": work.prediction("b.toml")}
        work.run("sheet", "a.toml", "b.toml", "-o", "sheet.html", "--title", HOSTILE, "--quiet", "--draws", "0")
        sheet = work.folder / "sheet.html"
        source = sheet.read_text(encoding="utf-8")

        dom, errors = opened(browser, sheet, WEBGL)
        check(not errors, "console: " + "; ".join(errors))
        check("broken in" not in re.findall(r"<title>(.*?)</title>", dom, re.S)[0].split("which plan")[1], "a title ran as a script")
        check("<title>&lt;/script&gt;" in dom, "the title is not the text it was")
        check('data-drawn="yes"' in dom, "the 3D view was not drawn")
        reader = Reader()
        reader.feed(dom)
        check_numbers(reader, predictions, None)
        check(all(alt for alt in reader.alts), "a picture without words for it")
        check(all(a.startswith(("data:image/png;base64,", "#")) for a in reader.addresses), "something outside the file is named")
        scripts = [named for tag, named in reader.tags if tag == "script"]
        check(len(scripts) == 2, f"{len(scripts)} scripts")
        check(not any("onerror" in named or "onload" in named for _, named in reader.tags), "an event handler in markup")
        ids = [named["id"] for _, named in reader.tags if "id" in named]
        check(len(ids) == len(set(ids)), "an id twice")
        check(all(a[1:] in ids for a in reader.addresses if a.startswith("#")), "a link to nowhere")
        policy = re.search(r'Content-Security-Policy" content="([^"]*)"', source).group(1)
        check(policy.startswith("default-src &#39;none&#39;") or policy.startswith("default-src 'none'"), policy)
        check("unsafe" not in policy and "http" not in policy, policy)

        dom, errors = opened(browser, sheet, ["--disable-3d-apis", "--disable-webgl"])
        check("shows no 3D" in dom, "no message without WebGL")
        check([e for e in errors if "WebGL" not in e] == [], "console without WebGL: " + "; ".join(errors))

        work.run("sheet", "a.toml", "-o", "one.html", "--quiet")
        dom, errors = opened(browser, work.folder / "one.html", WEBGL)
        check(not errors and "Will this plan do?" in dom, "a sheet of one plan: " + "; ".join(errors))
    print("sheet in browser: fine")
    return 0


sys.exit(main())
