// Pictures and JSON of an outcome as files.
#include "write_results.h"

#include "asperity/base/text_file.h"
#include "asperity/picture/chart_picture.h"
#include "asperity/picture/ra_map_picture.h"
#include "asperity/picture/write_png.h"
#include "asperity/report/outcome_json.h"
#include "result_place.h"

#include <fmt/format.h>

#include <set>

namespace asperity {

namespace fs = std::filesystem;

std::string prepare(const ResultFiles &files) {
  std::string fault = files.folder.empty() ? std::string() : fault_of_folder(files.folder);
  if (fault.empty() && !files.json.empty())
    fault = fault_of_file(files.json, "--json");
  return fault;
}

namespace {
constexpr const char *kRaEnding = "-ra";
}

std::string ra_picture_name(const std::string &picture_name) {
  return fs::path(picture_name).stem().string() + kRaEnding + ".png";
}

std::vector<std::string> picture_names(const std::vector<Feature> &features) {
  std::vector<std::string> names;
  std::set<std::string> taken;
  for (const Feature &feature : features) {
    const std::string plain = plain_name(name_of(feature));
    // Both pictures of a feature keep clear of both of any other.
    std::string name = plain;
    for (int k = 2; taken.contains(name) || taken.contains(name + kRaEnding); ++k)
      name = fmt::format("{}-{}", plain, k);
    taken.insert({name, name + kRaEnding});
    names.push_back(name + ".png");
  }
  return names;
}

Written write_results(const Outcome &outcome, const ResultFiles &files, const Progress &progress) {
  Written written;
  const auto put = [&](const fs::path &path, auto write) {
    if (!written.fault.empty() || progress.cancelled())
      return;
    written.fault = write(path);
    if (written.fault.empty())
      written.files.push_back(path);
  };
  const auto put_json = [&](const fs::path &path) {
    put(path, [&](const fs::path &to) { return write_file(to, outcome_json_text(outcome)); });
  };
  if (!files.folder.empty()) {
    const std::vector<std::string> names = picture_names(outcome.job.features);
    const auto put_picture = [&](const std::string &name, std::size_t i, auto draw) {
      put(files.folder / name, [&](const fs::path &to) {
        progress.at("drawing " + name_of(outcome.job.features[i]),
                    static_cast<double>(i) / static_cast<double>(outcome.charts.size()));
        const ChartPicture picture = draw();
        written.has_lettering = written.has_lettering && picture.has_lettering;
        return write_png(to, picture.image);
      });
    };
    for (std::size_t i = 0; i < outcome.charts.size(); ++i) {
      put_picture(names[i], i,
                  [&] { return chart_picture(outcome.charts[i], outcome.job, i, outcome.findings); });
      if (i < outcome.roughness.size())
        put_picture(ra_picture_name(names[i]), i,
                    [&] { return ra_map_picture(outcome.roughness[i], outcome.charts[i], outcome.job, i); });
    }
    put_json(files.folder / "prediction.json");
  }
  if (!files.json.empty())
    put_json(files.json);
  return written;
}

} // namespace asperity
