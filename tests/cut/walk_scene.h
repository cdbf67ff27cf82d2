// A bar beside which a cutter runs: the smallest scene the walk can be checked on.
#pragma once

#include "asperity/cut/walk.h"

namespace asperity::test {

/// Box blank 60 x 20 mm in plan, 10 mm high, wall plane y = 0 on its -y side with allowance of stock outside.
/// PETG-like coefficients, 6 mm two-flute cutter, all effects but those asked for switched off.
inline Job bar_job(double allowance_mm) {
  Job job;
  job.material.ktc_N_per_mm2 = 110, job.material.krc_N_per_mm2 = 30, job.material.kac_N_per_mm2 = 16;
  job.material.kte_N_per_mm = 3, job.material.kre_N_per_mm = 3, job.material.kae_N_per_mm = 0.6;
  job.material.density_kg_per_m3 = 1270, job.material.heat_capacity_J_per_kgK = 1200;
  job.material.elastic_modulus_MPa = 2000;
  job.machine.stiffness_xy_N_per_um = 0.3;
  Cutter cutter;
  cutter.diameter_mm = 6, cutter.flute_length_mm = 20, cutter.stick_out_mm = 25,
  cutter.shank_diameter_mm = 4.8;
  cutter.runout_mm = 0;
  job.cutters = {cutter};
  job.blank.shape = BlankShape::box;
  job.blank.centre = {30.0, 10.0 - 0.5 * allowance_mm};
  job.blank.size_mm = {60.0, 20.0 + allowance_mm};
  job.blank.z_bottom_mm = 0, job.blank.z_top_mm = 10;
  job.effects.blank_bending = false;
  return job;
}

/// One straight move of the cutter at steady speed.
inline PathPiece straight(Vec3 from, Vec3 to, double feed_mm_per_s, double start_s) {
  PathPiece piece;
  piece.curve = Curve::line(from, to);
  piece.length_mm = piece.curve.length_mm();
  piece.v_in_mm_per_s = piece.v_peak_mm_per_s = piece.v_out_mm_per_s = piece.feed_mm_per_s = feed_mm_per_s;
  piece.start_s = start_s;
  piece.duration_s = piece.length_mm / feed_mm_per_s;
  piece.spindle_rpm = 18000;
  piece.tool = 1;
  piece.kind = MoveKind::feed;
  piece.turn = SpindleTurn::clockwise;
  return piece;
}

inline CutRecord walk(const Job &job, const LargeArray<PathPiece> &pieces) {
  TimedPath path;
  path.pieces = pieces;
  Stock stock = make_stock(job, path);
  return walk_path(job, path, stock, Progress{});
}

} // namespace asperity::test
