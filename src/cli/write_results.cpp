// Pictures and JSON of an outcome as files.
#include "write_results.h"

#include "asperity/base/text_file.h"
#include "asperity/picture/chart_picture.h"
#include "asperity/picture/write_png.h"
#include "asperity/report/outcome_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <set>
#include <unistd.h>

namespace asperity {

namespace fs = std::filesystem;

namespace {

std::string fault_of_folder(const fs::path &folder) {
  std::error_code error;
  if (fs::exists(folder, error) && !fs::is_directory(folder, error))
    return fmt::format("{} is a file, and results need a folder: give --out another name.", folder.string());
  fs::create_directories(folder, error);
  if (error)
    return fmt::format("cannot make the folder {}: {}. Give --out a place you may write to.", folder.string(),
                       error.message());
  if (::access(folder.c_str(), W_OK | X_OK) != 0)
    return fmt::format("cannot write into {}: give --out a folder you may write to.", folder.string());
  return {};
}

std::string fault_of_file(const fs::path &file) {
  std::error_code error;
  const fs::path parent = file.has_parent_path() ? file.parent_path() : fs::path(".");
  if (fs::is_directory(file, error))
    return fmt::format("{} is a folder: give --json a file name.", file.string());
  if (!fs::is_directory(parent, error))
    return fmt::format("there is no folder {}: make it first, or give --json another name.", parent.string());
  const bool is_device = fs::exists(file, error) && !fs::is_regular_file(file, error);
  if (::access(is_device ? file.c_str() : parent.c_str(), W_OK) != 0)
    return fmt::format("cannot write {}: give --json a place you may write to.", file.string());
  return {};
}

std::string plain_name(const std::string &name) {
  constexpr std::size_t kLongest = 100;
  std::string plain;
  for (char c : name) {
    const auto byte = static_cast<unsigned char>(c);
    const bool is_kept = std::isalnum(byte) || byte >= 0x80u || c == '-' || c == '_';
    if (is_kept)
      plain += static_cast<char>(byte < 0x80u ? std::tolower(byte) : c);
    else if (!plain.empty() && plain.back() != '-')
      plain += '-';
  }
  plain.resize(std::min(plain.size(), kLongest));
  while (!plain.empty() && plain.back() == '-')
    plain.pop_back();
  return plain.empty() ? "feature" : plain;
}

} // namespace

std::string prepare(const ResultFiles &files) {
  std::string fault = files.folder.empty() ? std::string() : fault_of_folder(files.folder);
  if (fault.empty() && !files.json.empty())
    fault = fault_of_file(files.json);
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
