// Which trials no other beats.
#include "asperity/study/front.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <limits>
#include <numeric>
#include <optional>

namespace asperity {

std::vector<bool> best_possible(const std::vector<MeritPair> &points) {
  std::vector<std::size_t> order(points.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t i, std::size_t k) {
    return points[i].a != points[k].a ? points[i].a > points[k].a : points[i].b > points[k].b;
  });
  // From the best a down, a point stands on the front only if its b beats all before it.
  std::vector<bool> on_front(points.size(), false);
  double best_b = -std::numeric_limits<double>::infinity();
  for (std::size_t at = 0; at < order.size();) {
    const MeritPair &first = points[order[at]];
    const bool is_best = first.b > best_b;
    for (; at < order.size() && points[order[at]].a == first.a; ++at)
      on_front[order[at]] = is_best && points[order[at]].b == first.b;
    best_b = std::max(best_b, first.b);
  }
  return on_front;
}

namespace {

std::string known_ids(const std::vector<KeyNumber> &columns) {
  std::string text;
  for (const KeyNumber &column : columns)
    text += (text.empty() ? "" : ", ") + column.id;
  return text;
}

std::optional<KeyNumber> meaning_of(const StudyResults &results, std::string_view id, std::string &fault) {
  const std::vector<KeyNumber> columns = number_columns(results);
  if (const KeyNumber *column = find_number(columns, id))
    return *column;
  fault = columns.empty() ? std::string("no combination could be predicted: there are no numbers to show.")
                          : fmt::format("no result is called {}: choose from {}.", id, known_ids(columns));
  return std::nullopt;
}

bool differs(const StudyResults &results, std::string_view id) {
  std::optional<double> first;
  for (const Trial &trial : results.trials)
    if (const KeyNumber *number = find_number(trial.numbers, id)) {
      if (first && *first != number->value)
        return true;
      first = number->value;
    }
  return false;
}

/// The numbers that a wanted finish is judged by, as they are called.
std::vector<std::string> ids_of(const TrialCheck &check) {
  if (check.what.starts_with("witness"))
    return {check.feature + "/witness_depth_um", check.feature + "/level_step_um"};
  if (check.what.starts_with("Ra"))
    return {check.feature + "/ra_high_um"};
  if (check.what.starts_with("lip"))
    return {check.feature + "/lip_mm"};
  return {};
}

} // namespace

Front front_of(const StudyResults &results, std::string_view x_id, std::string_view y_id,
               std::string &fault) {
  Front front;
  const auto x = meaning_of(results, x_id, fault);
  const auto y = x ? meaning_of(results, y_id, fault) : std::nullopt;
  if (!y)
    return front;
  front.x = *x;
  front.y = *y;
  front.has_direction = x->better != Better::neither && y->better != Better::neither;
  std::vector<MeritPair> merits;
  for (std::size_t i = 0; i < results.trials.size(); ++i) {
    const KeyNumber *a = find_number(results.trials[i].numbers, x_id);
    const KeyNumber *b = find_number(results.trials[i].numbers, y_id);
    if (!a || !b) {
      ++front.left_out;
      continue;
    }
    front.points.push_back({i, a->value, b->value, false});
    merits.push_back({merit(*a), merit(*b)});
  }
  const std::vector<bool> on_front = best_possible(merits);
  for (std::size_t i = 0; i < merits.size(); ++i)
    front.points[i].is_on_front = front.has_direction && on_front[i];
  return front;
}

std::string default_x(const StudyResults &) { return "time_s"; }

namespace {

/// A number of the surface (else of the job) that differs, or empty.
std::string first_that_differs(const StudyResults &results, bool of_surface) {
  for (const KeyNumber &column : number_columns(results))
    if (column.feature.empty() != of_surface && column.better != Better::neither && column.id != "time_s" &&
        differs(results, column.id))
      return column.id;
  return {};
}

} // namespace

std::string default_y(const StudyResults &results) {
  std::vector<std::string> wanted;
  for (const char *kind : {"witness", "Ra", "lip"})
    for (const Trial &trial : results.trials)
      for (const TrialCheck &check : trial.checks)
        for (const std::string &id : ids_of(check))
          if (check.what.starts_with(kind) && std::find(wanted.begin(), wanted.end(), id) == wanted.end())
            wanted.push_back(id);
  for (const std::string &id : wanted)
    if (differs(results, id))
      return id;
  std::string id = first_that_differs(results, true);
  if (id.empty())
    id = wanted.empty() ? first_that_differs(results, false) : wanted.front();
  return id.empty() ? default_x(results) : id;
}

} // namespace asperity
