// Pictures and JSON of an outcome as files.
#include "write_results.h"

#include "asperity/base/text_file.h"
#include "asperity/picture/chart_picture.h"
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

std::vector<std::string> picture_names(const std::vector<Feature> &features) {
  std::vector<std::string> names;
  std::set<std::string> taken;
  for (const Feature &feature : features) {
    const std::string plain = plain_name(name_of(feature));
    std::string name = plain;
    for (int k = 2; !taken.insert(name).second; ++k)
      name = fmt::format("{}-{}", plain, k);
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
    for (std::size_t i = 0; i < outcome.charts.size(); ++i)
      put(files.folder / names[i], [&](const fs::path &to) {
        progress.at("drawing " + name_of(outcome.job.features[i]),
                    static_cast<double>(i) / static_cast<double>(outcome.charts.size()));
        const ChartPicture picture = chart_picture(outcome.charts[i], outcome.job, i, outcome.findings);
        written.has_lettering = written.has_lettering && picture.has_lettering;
        return write_png(to, picture.image);
      });
    put_json(files.folder / "prediction.json");
  }
  if (!files.json.empty())
    put_json(files.json);
  return written;
}

} // namespace asperity
