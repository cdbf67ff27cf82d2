#include "walker.h"

#include "asperity/base/units.h"
#include "asperity/cut/chip.h"
#include "asperity/cut/heat.h"
#include "asperity/cut/walk.h"
#include "settling.h"
#include "station_plan.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace asperity {

namespace {

constexpr double kRoom_C = 23.0;
/// What the coarse stock cannot tell from no contact [mm].
constexpr double kThinContact_mm = 2.0 * kSkin_mm;

/// Steeper than 45 degrees, down or up.
bool is_steep(Vec3 direction) { return std::abs(direction.z) > glm::length(plan(direction)); }

void shift(AxisOffset &offset, Vec3 d) {
  for (std::size_t i = 0; i < kBendNodes; ++i) {
    offset.left[i] += plan(d);
    offset.right[i] += plan(d);
  }
  offset.axial_mm += d.z;
}

Stock::Stroke stroke_of(const Station &at, const SweptCutter &cutter) {
  const auto &nodes = at.memory.right_wall ? at.offset.right : at.offset.left;
  constexpr std::size_t kAtStepdown = 4;
  return {plan(at.sample.position_mm) + nodes[0],
          (nodes[kAtStepdown] - nodes[0]) / cutter.node_height_mm[kAtStepdown],
          at.sample.position_mm.z + at.offset.axial_mm};
}

} // namespace

double LostMotion::follow(double command_mm) {
  if (!started_) {
    started_ = true;
    slide_mm_ = command_mm;
  }
  slide_mm_ = std::clamp(slide_mm_, command_mm - half_, command_mm + half_);
  return slide_mm_ - command_mm;
}

Walker::Walker(const Job &job, const TimedPath &path, Stock &stock)
    : job_(job), path_(path), stock_(stock), trail_(stock), search_(stock), yielding_(yielding_of(job)),
      stepdown_mm_(usual_stepdown_mm(level_heights_mm(path), 0.5 * job.cutters.front().diameter_mm)),
      reach_low_mm_(job.blank.low_mm()), reach_high_mm_(job.blank.high_mm()) {
  if (job.effects.backlash) {
    memory_.x = LostMotion(job.machine.backlash_mm.x);
    memory_.y = LostMotion(job.machine.backlash_mm.y);
    memory_.z = LostMotion(job.machine.backlash_mm.z);
  }
}

const CutterModel &Walker::model_of(const PathPiece &piece) {
  auto found = models_.find(piece.tool);
  if (found == models_.end()) {
    const Cutter *cutter = job_.cutter(piece.tool);
    CutterModel model = make_cutter_model(job_, cutter ? *cutter : job_.cutters.front(), stepdown_mm_);
    const auto index = static_cast<std::uint16_t>(record_.swept.cutters.size());
    record_.swept.cutters.push_back(model.swept);
    found = models_.emplace(piece.tool, std::pair(index, std::move(model))).first;
  }
  return found->second.second;
}

bool Walker::in_air(const PathPiece &piece, const CutterModel &cutter) const {
  const Vec3 a = piece.curve.begin, b = piece.curve.end;
  // Arcs bulge beyond their ends by at most their diameter.
  const double bulge = piece.curve.is_line() ? 0.0 : 2.0 * piece.curve.radius_mm;
  const double reach = cutter.swept.profile.radius_mm() + 1.0 + bulge;
  const Vec2 low = glm::min(plan(a), plan(b)) - Vec2(reach), high = glm::max(plan(a), plan(b)) + Vec2(reach);
  const double lowest = std::min(a.z, b.z) - (piece.curve.is_plan_arc() ? 0.0 : bulge);
  return lowest > stock_.top_mm(stock_.layers() - 1) + 0.5 || high.x < reach_low_mm_.x ||
         high.y < reach_low_mm_.y || low.x > reach_high_mm_.x || low.y > reach_high_mm_.y;
}

std::uint32_t Walker::walk(std::uint32_t index) {
  const PathPiece &piece = path_.pieces[index];
  const CutterModel &cutter = model_of(piece);
  if (in_air(piece, cutter)) {
    Station end = station(index, 1.0);
    memory_.x = end.memory.x, memory_.y = end.memory.y, memory_.z = end.memory.z;
    memory_.bend = {};
    joined_ = false;
    record_.samples.push_back(end.sample);
    return index + 1;
  }
  // The first station: inherited round a smooth joint, else worked out anew.
  const Vec3 begin_heading = heading(piece, 0.0);
  const bool joins = joined_ && piece.length_mm > 0.0 && runs_on(last_heading_, begin_heading);
  if (!joins)
    trail_.carve_all();
  std::vector<Station> stations{joins ? inherited(index) : station(index, 0.0)};
  memory_.x = stations[0].memory.x, memory_.y = stations[0].memory.y, memory_.z = stations[0].memory.z;

  const double radius_mm = cutter.swept.profile.radius_mm();
  const double least_step = least_step_mm(radius_mm);
  if (const std::uint32_t last = joins ? last_in_step(path_, index, radius_mm) : index; last > index)
    return walk_together(index, last, stations[0], least_step);

  // Onwards, with shorter steps where the bending changes quickly.
  for (const double planned : planned_stations(piece, radius_mm)) {
    while (stations.back().u < planned) {
      double u = planned;
      Station next = station(index, u);
      while ((u - stations.back().u) * piece.length_mm > 2.0 * least_step &&
             largest_change_mm(stations.back().offset, next.offset) > kBendStep_mm) {
        u = 0.5 * (u + stations.back().u);
        next = station(index, u);
      }
      accept(stations.back(), next);
      stations.push_back(std::move(next));
    }
  }
  add_swept(index, stations, joins);
  end_piece(index, stations.back());
  return index + 1;
}

void Walker::end_piece(std::uint32_t index, const Station &end) {
  const PathPiece &piece = path_.pieces[index];
  joined_ = true;
  last_heading_ = piece.length_mm > 0.0 ? heading(piece, 1.0) : Vec3(0.0);
  last_offset_ = end.offset;
}

Station Walker::inherited(std::uint32_t index) const {
  Station at;
  at.memory = memory_;
  at.offset = last_offset_;
  at.sample.piece = index;
  at.sample.position_mm = path_.pieces[index].curve.begin;
  return at;
}

Station Walker::station(std::uint32_t index, double u) {
  const PathPiece &piece = path_.pieces[index];
  const CutterModel &cutter = model_of(piece);
  Station at;
  at.u = u;
  at.memory = memory_;
  CutSample &s = at.sample;
  s.piece = index;
  s.u = u;
  s.position_mm = piece.curve.point(u);
  s.time_s =
      piece.start_s + (piece.length_mm > 0.0 ? piece.time_at(u * piece.length_mm) : u * piece.duration_s);
  s.speed_mm_per_s = static_cast<float>(piece.length_mm > 0.0 ? piece.speed_at(u * piece.length_mm) : 0.0);
  const Vec3 lost(at.memory.x.follow(s.position_mm.x), at.memory.y.follow(s.position_mm.y),
                  at.memory.z.follow(s.position_mm.z));
  const Vec3 direction = heading(piece, u);
  s.plunging = piece.length_mm > 0.0 && is_steep(direction) && direction.z < 0.0;
  s.feed_per_tooth_mm =
      static_cast<float>(feed_per_tooth_mm(s.speed_mm_per_s, piece.spindle_rpm, cutter.teeth.flutes));
  const bool sideways = piece.length_mm > 0.0 && !is_steep(direction);
  settle_chips(at, piece, cutter, sideways && s.feed_per_tooth_mm >= cutter.least_chip_mm);
  s.position_mm += lost; // the cutter is where the slides are
  if (sideways)
    cut_sideways(at, piece, cutter, glm::normalize(plan(direction)));
  else if (s.plunging)
    cut_downwards(at, cutter);
  else
    at.memory.bend = {};
  s.position_mm -= lost;
  at.offset = at.memory.bend;
  shift(at.offset, lost);
  return at;
}

void Walker::settle_chips(Station &at, const PathPiece &piece, const CutterModel &cutter,
                          bool makes_chips) const {
  if (makes_chips) {
    at.memory.chipless_since_s = -1.0;
    return;
  }
  if (at.memory.chipless_since_s >= 0.0)
    return;
  // Slowing down: the chips ended when the feed per tooth fell below the least chip. Else: with the piece's
  // begin.
  const double least_speed =
      cutter.least_chip_mm * rev_per_s_from_rpm(piece.spindle_rpm) * cutter.teeth.flutes;
  const bool slowing = at.u > 0.0 && piece.acceleration_mm_per_s2 > 0.0 && !at.sample.plunging;
  at.memory.chipless_since_s =
      slowing ? at.sample.time_s -
                    std::max(0.0, least_speed - at.sample.speed_mm_per_s) / piece.acceleration_mm_per_s2
              : piece.start_s;
}

double Walker::ploughing_share(const Station &at, const CutterModel &cutter) const {
  if (at.memory.chipless_since_s < 0.0)
    return 1.0;
  const double rev_per_s = rev_per_s_from_rpm(path_.pieces[at.sample.piece].spindle_rpm);
  const double hits = (at.sample.time_s - at.memory.chipless_since_s) * rev_per_s * cutter.teeth.flutes;
  return std::exp(-hits / kHitsToRelease);
}

ForceCoefficients Walker::force_at(const Station &at, const PathPiece &piece,
                                   const CutterModel &cutter) const {
  if (piece.spindle_rpm <= 0.0)
    return {};
  ForceCoefficients k = cutter.force;
  const double share = ploughing_share(at, cutter);
  k.kte *= share, k.kre *= share, k.kae *= share;
  return k;
}

Walker::SideCut Walker::settle(Station &at, const CutterModel &cutter, const ForceCoefficients &k, Vec2 feed,
                               double level_feed) {
  constexpr int kMostRounds = 20;
  const Vec3 tip = at.sample.position_mm;
  Settling settling(at.memory.bend);
  std::optional<double> straight_depth_mm; // once looked at
  SideCut cut;
  trail_.carve_behind(plan(tip), least_step_mm(cutter.swept.profile.radius_mm()));
  search_.begin(feed);
  for (int round = 0; round < kMostRounds; ++round) {
    const AxisOffset &guess = settling.guess();
    const Contact &contact = search_.find(cutter.swept, tip + Vec3(0, 0, guess.axial_mm),
                                          at.memory.right_wall ? guess.right : guess.left);
    cut = {&contact, side_load(contact, cutter, k, yielding_, tip.z, feed, level_feed, ready_)};
    if (contact.makes_left_wall != contact.makes_right_wall)
      at.memory.right_wall = contact.makes_right_wall;
    const bool is_straight = largest_change_mm(guess, AxisOffset{}) == 0.0;
    if (is_straight)
      straight_depth_mm = contact.radial_depth_mm;
    if (!contact.any() && !is_straight && straight_depth_mm.value_or(0.0) <= kThinContact_mm) {
      // Free where it would be bent. Free again with what it would bend when straight: it touches by less
      // than the stock can tell, and counts as straight. Where it would cut deep, it cannot spring out of the
      // stock in one step: it stands where contact begins.
      settling = Settling(AxisOffset{});
      if (straight_depth_mm)
        break;
    } else if (settling.take(cut.load.offset)) {
      break;
    }
  }
  at.memory.bend = settling.guess();
  return cut;
}

void Walker::cut_sideways(Station &at, const PathPiece &piece, const CutterModel &cutter, Vec2 feed) {
  CutSample &s = at.sample;
  const double level_feed = s.feed_per_tooth_mm * glm::length(plan(heading(piece, at.u)));
  const ForceCoefficients k = force_at(at, piece, cutter);
  const SideCut cut = settle(at, cutter, k, feed, level_feed);
  const Contact &contact = *cut.contact;
  const Load &load = cut.load;

  s.in_contact = contact.any();
  s.climb = contact.any() && at.memory.right_wall;
  s.axial_depth_mm = static_cast<float>(contact.axial_depth_mm);
  s.radial_depth_mm = static_cast<float>(contact.radial_depth_mm);
  s.entry_rad = static_cast<float>(contact.widest.entry_rad);
  s.exit_rad = static_cast<float>(contact.widest.exit_rad);
  if (!contact.any())
    return;
  s.thickest_chip_mm = static_cast<float>(
      thickest_chip_mm(level_feed, std::max(0.0, contact.radial_depth_mm), cutter.teeth.radius_mm));
  for (int axis = 0; axis < 3; ++axis)
    s.mean_force_N[axis] = static_cast<float>(load.mean_force_N[axis]);
  s.peak_force_N = static_cast<float>(peak_force_N(k, contact.slices, cutter.teeth, level_feed));
  s.tip_bend_mm = static_cast<float>(away_mm(load.offset, feed, at.memory.right_wall));
  s.power_W = static_cast<float>(power_W(load.torque_Nmm, piece.spindle_rpm));
  if (s.thickest_chip_mm >= cutter.least_chip_mm) {
    // A chip cannot get hotter than where it flows.
    const double rise =
        chip_temperature_rise_K(k.ktc, k.kte, mean_chip_mm(level_feed, s.entry_rad, s.exit_rad),
                                job_.material.density_kg_per_m3, job_.material.heat_capacity_J_per_kgK);
    s.chip_temperature_C = static_cast<float>(std::min(kRoom_C + rise, job_.material.flow_temperature_C));
  }
}

void Walker::cut_downwards(Station &at, const CutterModel &cutter) {
  CutSample &s = at.sample;
  trail_.carve_all();
  const Vec3 force = plunge_force_N(stock_, cutter.swept, s.position_mm, cutter.force, cutter.teeth.flutes,
                                    s.feed_per_tooth_mm);
  const Load load = plunge_load(force, cutter, yielding_, s.position_mm.z);
  at.memory.bend = load.offset;
  s.in_contact = force.z != 0.0;
  for (int axis = 0; axis < 3; ++axis)
    s.mean_force_N[axis] = static_cast<float>(force[axis]);
  s.peak_force_N = static_cast<float>(glm::length(plan(force)));
  s.thickest_chip_mm = s.in_contact ? s.feed_per_tooth_mm : 0.0F;
}

void Walker::accept(const Station &from, const Station &to) {
  const CutterModel &cutter = model_of(path_.pieces[to.sample.piece]);
  trail_.add(stroke_of(from, cutter.swept), stroke_of(to, cutter.swept), cutter.swept,
             plan(to.sample.position_mm));
  memory_ = to.memory;
  record_.samples.push_back(to.sample);
}

void Walker::add_swept(std::uint32_t index, const std::vector<Station> &stations, bool joins) {
  const PathPiece &piece = path_.pieces[index];
  const std::uint16_t cutter = models_.at(piece.tool).first;
  std::size_t from = 0;
  while (from + 1 < stations.size()) {
    const std::size_t to = last_in_line(stations, from);
    const Station &a = stations[from], &b = stations[to];
    record_.swept.add({piece.curve, a.offset, b.offset, index, cutter, from > 0 || joins}, a.u, b.u);
    from = to;
  }
}

} // namespace asperity
