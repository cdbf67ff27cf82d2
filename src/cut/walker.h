// The walk itself: one state carried along the path, one station at a time.
#pragma once

#include "bending.h"
#include "trail.h"

#include "asperity/cut/record.h"
#include "asperity/cut/stock.h"
#include "asperity/cut/walk.h"
#include "asperity/motion/timed_path.h"

#include <map>

namespace asperity {

/// Lost motion of one axis: the slide follows its command only outside the gap.
class LostMotion {
public:
  explicit LostMotion(double gap_mm) : half_(0.5 * gap_mm) {}
  /// Slide minus command after the command has moved to x [mm].
  double follow(double command_mm);

private:
  double half_;
  bool started_ = false;
  double slide_mm_ = 0.0;
};

/// What one moment inherits from the one before.
struct Memory {
  LostMotion x{0.0}, y{0.0}, z{0.0};
  AxisOffset bend;              ///< without lost motion
  bool right_wall = true;       ///< the last wall made lay to the right
  double chipless_since_s = -1; ///< when the teeth stopped making chips; negative: they make chips
};

/// The state at one place of a piece.
struct Station {
  double u = 0;
  CutSample sample;
  AxisOffset offset; ///< lost motion included
  Memory memory;     ///< to be inherited once the station is accepted
};

class Walker {
public:
  Walker(const Job &job, const TimedPath &path, Stock &stock);
  /// Makes room, so that the record does not grow by copying.
  void expect(const RecordSize &size) {
    record_.samples.reserve(static_cast<std::size_t>(size.samples));
    record_.swept.pieces.reserve(static_cast<std::size_t>(size.pieces));
    record_.swept.offsets.reserve(static_cast<std::size_t>(size.offsets));
  }
  /// One piece, or several short ones that run on. Returns the next one to walk.
  std::uint32_t walk(std::uint32_t index);
  /// What all walked pieces left.
  const SweptPath &swept() const { return record_.swept; }
  CutRecord take() {
    trail_.carve_all();
    return std::move(record_);
  }

private:
  bool in_air(const PathPiece &piece, const CutterModel &cutter) const;
  const CutterModel &model_of(const PathPiece &piece);
  /// The begin of a piece that goes on where the last one ended.
  Station inherited(std::uint32_t index) const;
  Station station(std::uint32_t index, double u);
  /// With the edge's share that is left while no chips are made.
  ForceCoefficients force_at(const Station &at, const PathPiece &piece, const CutterModel &cutter) const;
  /// Force bends the cutter out of the stock, which lowers the force: both as they agree, and at.memory with
  /// them.
  struct SideCut {
    const Contact *contact; ///< until the next station
    Load load;
  };
  SideCut settle(Station &at, const CutterModel &cutter, const ForceCoefficients &k, Vec2 feed,
                 double level_feed);
  void cut_sideways(Station &at, const PathPiece &piece, const CutterModel &cutter, Vec2 feed);
  void cut_downwards(Station &at, const CutterModel &cutter);
  void settle_chips(Station &at, const PathPiece &piece, const CutterModel &cutter, bool makes_chips) const;
  double ploughing_share(const Station &at, const CutterModel &cutter) const;
  /// Short pieces from `first` on, `last` at most, which begin at `from`. Returns the next one to walk.
  std::uint32_t walk_together(std::uint32_t first, std::uint32_t last, const Station &from,
                              double least_step_mm);
  void accept(const Station &from, const Station &to);
  void end_piece(std::uint32_t index, const Station &end);
  void add_swept(std::uint32_t index, const std::vector<Station> &stations, bool joins);

  const Job &job_;
  const TimedPath &path_;
  Stock &stock_;
  Trail trail_;
  ContactSearch search_;
  ReadySlices ready_;
  Yielding yielding_;
  double stepdown_mm_;
  Vec2 reach_low_mm_{0.0},
      reach_high_mm_{0.0}; ///< plan box in which a cutter axis may meet the blank, less its radius
  std::map<std::uint16_t, std::pair<std::uint16_t, CutterModel>>
      models_; ///< by tool; first = index in swept.cutters
  Memory memory_;
  bool joined_ = false; ///< the path has been followed without a gap up to the next piece's begin
  Vec3 last_heading_{0.0};
  AxisOffset last_offset_;
  CutRecord record_;
};

/// Usual distance between neighbouring levels.
double usual_stepdown_mm(const std::vector<double> &levels_mm, double otherwise_mm);

} // namespace asperity
