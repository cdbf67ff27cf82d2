// The options of `asperity picture`, each described once: the text here is also the help.
#include "picture_options.h"

namespace asperity {

namespace {

constexpr double kMostTimes = 1000.0;

void add_looks(CLI::App &command, PictureRequest &request) {
  command
      .add_option(
          "--view", request.view,
          "part: everything at its place; wall: one wall unrolled; floor: one floor or dome from above; "
          "section: one feature cut through")
      ->check(CLI::IsMember({"part", "wall", "floor", "section"}))
      ->capture_default_str();
  command
      .add_option("--feature", request.feature,
                  "Name of the feature; left out: the first that suits the view")
      ->type_name("NAME");
  command
      .add_option(
          "--colour", request.colour,
          "lamp: as stock looks under a raking lamp; residual: how far off the wanted surface; line, piece, "
          "level: which program line, piece of path or level made it; roughness: local Ra; bending, "
          "chip-load, "
          "speed: of the cutter while it made it")
      ->check(CLI::IsMember(
          {"lamp", "residual", "line", "piece", "level", "roughness", "bending", "chip-load", "speed"}))
      ->capture_default_str();
  command
      .add_option("--exaggeration", request.exaggeration,
                  "Draw the cut surface so many times rougher than it is, 1 to 1000; left out: chosen")
      ->type_name("N")
      ->check(CLI::Range(1.0, kMostTimes));
  command.add_flag("--dark", request.is_dark, "On dark ground");
  command.add_flag("--bare", request.is_bare, "The drawing alone, without words");
}

void add_places(CLI::App &command, PictureRequest &request) {
  command
      .add_option(
          "--from", request.from_deg,
          "Where the eye stands, in degrees: plan direction (0 = +x, counter-clockwise) and height above "
          "the level; left out: towards the first finding")
      ->type_name("ANGLE,ELEVATION")
      ->delimiter(',')
      ->expected(2);
  command
      .add_option(
          "--lamp", request.lamp_deg,
          "Where the lamp stands, likewise; on a flat view the angle counts in the sheet (0 = right, 90 = "
          "top). Left out: low and from the left")
      ->type_name("ANGLE,ELEVATION")
      ->delimiter(',')
      ->expected(2);
  command
      .add_option(
          "--at", request.at_mm,
          "section: arc length along a wall, or y of a floor, where it is cut; left out: at the first "
          "finding")
      ->type_name("MM");
  command.add_option("--with", request.with, "Draw these too: path, blank, cutter")
      ->type_name("THING,...")
      ->delimiter(',')
      ->check(CLI::IsMember({"path", "blank", "cutter"}));
  command
      .add_option("--moment", request.moment_s,
                  "Time since the program's start [s]: the path after it is faint, the cutter stands there")
      ->type_name("S");
}

} // namespace

void add_picture(CLI::App &app, PictureRequest &request) {
  CLI::App *command = app.add_subcommand("picture", "Draw the predicted part into a PNG file");
  command
      ->add_option("job", request.job_file,
                   "Job file (TOML): part, blank, cutters, machine, hold-down, what is wanted")
      ->required()
      ->type_name("JOB.toml");
  command->add_option("-o,--output", request.file, "The picture; a file of that name is replaced")
      ->required()
      ->type_name("FILE.png");
  command->add_option("--size", request.size, "Of the picture in pixels")
      ->type_name("WIDTHxHEIGHT")
      ->capture_default_str();
  add_looks(*command, request);
  add_places(*command, request);
  command->footer("Exit status: 0 the picture is written, 2 something is wrong, 130 stopped by Ctrl-C.");
}

} // namespace asperity
