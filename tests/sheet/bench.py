"""Small jobs in a folder of their own, the program run on them, and prediction JSON under the table's number ids."""
import contextlib
import json
import pathlib
import subprocess
import tempfile

JOB = """title = {title}
program = "bush.ngc"

[material]
name = "PETG (printed)"

[[cutter]]
number = 1
kind = "flat"
diameter_mm = 6.0
flutes = 2
flute_length_mm = 22
shank_diameter_mm = 6.0
stick_out_mm = 25

[blank]
shape = "cylinder"
diameter_mm = 21.0
bottom_mm = 0.0
top_mm = 4.2

[[wall]]
name = {wall}
outline = "circle"
centre_mm = [0, 0]
diameter_mm = 20.0
side = "outside"
bottom_mm = 0.0
top_mm = 4.0
diameter_wanted_mm = {{ plus = 0.2, minus = 0.2 }}
finish = {{ lip_mm = 0.05 }}

[[floor]]
name = "top"
outline = "circle"
centre_mm = [0, 0]
diameter_mm = 20.0
z_mm = 4.0
measured_from_mm = 0.0
height_wanted_mm = {{ plus = 0.05, minus = 0.05 }}

[setup]
program_zero_mm = [0, 0, 0]
z_zero_error_mm = {z_error}

[chart]
wall_spacing_mm = 0.1
floor_spacing_mm = 0.2
"""

PROGRAM = """G21 G90 G17 G94 G54
T1 M6
S18000 M3
G0 X20 Y0 Z10
G0 Z4
G1 X-20 F900
G0 Z10
G0 X16 Y0
G0 Z5
G1 Z2 F300
G1 X13 Y0 F900
G2 X13 Y0 I-13 J0
G1 X16 Y0
G1 Z0 F300
G1 X13 Y0 F900
G2 X13 Y0 I-13 J0
G0 Z10
M30
"""


class Bench:
    def __init__(self, program, folder):
        self.program, self.folder = program, pathlib.Path(folder)
        (self.folder / "bush.ngc").write_text(PROGRAM)

    def job(self, name, z_error=0.0, title="Bell-crank bush", wall="rim"):
        text = JOB.format(title=json.dumps(title, ensure_ascii=False), wall=json.dumps(wall, ensure_ascii=False), z_error=z_error)
        (self.folder / name).write_text(text)
        return name

    def run(self, *arguments, wanted=(0, 1)):
        done = subprocess.run([self.program, *map(str, arguments)], cwd=self.folder, capture_output=True, text=True)
        if done.returncode not in wanted:
            raise SystemExit(f"{arguments} ended with {done.returncode}: {done.stdout}{done.stderr}")
        return done

    def prediction(self, job):
        self.run("predict", job, "--json", "prediction.json", "--quiet")
        return json.loads((self.folder / "prediction.json").read_text())


@contextlib.contextmanager
def bench(program):
    with tempfile.TemporaryDirectory(prefix="asperity_sheet_") as folder:
        yield Bench(program, folder)


def numbers_of(prediction):
    """The numbers that plans are judged by, read from the prediction's own JSON."""
    found = {
        "time_s": prediction["time"]["total_s"],
        "checks_missed": prediction["verdict"]["checks_missed"],
        "dangers": prediction["verdict"]["dangers"],
        "flaws": prediction["verdict"]["flaws"],
    }
    for key in ("peak_side_force_N", "peak_power_W", "peak_chip_temperature_C"):
        if prediction["cut"][key]:
            found[key] = prediction["cut"][key]["value"]
    for feature in prediction["features"]:
        name = feature["name"]
        for size in feature["sizes"]:
            found[f"{name}/{size['what'].replace(' ', '_')}_mm"] = size["mean_mm"]
            if size["what"] == "diameter":
                found[f"{name}/roundness_um"] = 1000 * size["roundness_mm"]
        rough = feature["roughness"]
        if rough:
            found[f"{name}/ra_um"] = rough["geometric_ra_um"]
            found[f"{name}/rz_um"] = rough["geometric_rz_um"]
            found[f"{name}/ra_high_um"] = rough["ra_band_um"]["high"]
            for lay in ("along", "across"):
                found[f"{name}/ra_{lay}_um"] = rough[f"{lay}_lay"]["ra_um"]
                found[f"{name}/rz_{lay}_um"] = rough[f"{lay}_lay"]["rz_um"]
        if feature["kind"] == "wall":
            for key, kind in (("lip_mm", "base lip"), ("witness_depth_um", "witness line"), ("level_step_um", "level step")):
                sizes = [f["size"][0]["value"] for f in prediction["findings"] if f["kind"] == kind and f["feature"] == name]
                found[f"{name}/{key}"] = max(map(abs, sizes), default=0.0)
    return found


def shown(value, unit):
    """The rounding rule of every output: mm three decimals, um and degC one, times in words, else three digits."""
    if unit == "mm":
        return f"{value:.3f} mm"
    if unit == "um":
        return f"{value:.1f} \u00b5m"
    if unit == "degC":
        return f"{value:.1f} \u00b0C"
    if unit == "s":
        if value < 10:
            return f"{value:.1f} s"
        whole = int(value + 0.5)
        return f"{whole} s" if whole < 60 else f"{whole // 60} min {whole % 60:02d} s"
    number = f"{value:.0f}" if abs(value) >= 1000 else f"{value:.3g}"
    return f"{number} {unit}" if unit else number
