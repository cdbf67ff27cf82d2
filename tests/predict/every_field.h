// Every field of a job changed in turn, those added later included.
#pragma once

#include "struct_fields.h"

#include "asperity/job/job.h"

#include <functional>
#include <string>

namespace asperity::test {

/// The job with one field changed, and where that field stands: "cutter, field 13".
using OneChange = std::function<void(const std::string &where, const Job &changed)>;

/// A small step that leaves a usable job; false where the type has none (names are lengthened, lists left).
inline bool nudge(double &v) { return v += 0.03 * v + 0.007, true; }
inline bool nudge(int &v) { return ++v, true; }
inline bool nudge(bool &v) { return v = !v, true; }
inline bool nudge(std::string &v) { return v += "x", true; }
inline bool nudge(Vec2 &v) { return nudge(v.x); }
inline bool nudge(Vec3 &v) { return nudge(v.x), nudge(v.y), nudge(v.z); }
inline bool nudge(std::optional<double> &v) { return v = v.value_or(0.2) * 1.01 + 0.003, true; }
template <class T> bool nudge(T &) { return false; }

/// `part` picks a struct out of a job.
template <class Part>
void change_every_field(const Job &job, const std::string &name, const Part &part, const OneChange &visit) {
  using Struct = std::decay_t<decltype(part(std::declval<Job &>()))>;
  constexpr std::size_t kCount = fields::count<Struct>();
  const auto change = [&]<std::size_t I>(std::integral_constant<std::size_t, I>) {
    Job changed = job;
    // tie() gives references to const of a job that is not.
    using Field = std::tuple_element_t<I, decltype(fields::tie(std::declval<const Struct &>()))>;
    auto &field = const_cast<std::remove_const_t<std::remove_reference_t<Field>> &>(
        std::get<I>(fields::tie(static_cast<const Struct &>(part(changed)))));
    if (nudge(field))
      visit(name + ", field " + std::to_string(I), changed);
  };
  [&]<std::size_t... I>(std::index_sequence<I...>) {
    (change(std::integral_constant<std::size_t, I>{}), ...);
  }
  (std::make_index_sequence<kCount>{});
}

} // namespace asperity::test
