// What makes two runs the same study: job, the files it names, varied values, version of the program.
#pragma once

#include "asperity/study/grid.h"

#include <filesystem>
#include <string>
#include <vector>

namespace asperity {

struct StudyFileHash {
  std::string name;   ///< as written in the job or the varied values
  std::string sha256; ///< "missing" when there is no such file
  bool operator==(const StudyFileHash &) const = default;
};

struct StudyIdentity {
  std::string version; ///< of the program that predicts
  std::string job_sha256;
  std::vector<StudyFileHash> files; ///< programs, meshes and included values, sorted by name
  std::string grid;                 ///< a line a factor: "key = [value, value]"
  bool roughness = false;           ///< read even where no Ra is wanted

  bool operator==(const StudyIdentity &) const = default;
  /// One fingerprint of all of it.
  std::string sha256() const;
};

/// What is not the same, in words: "the job file", "plunge.ngc", ...; empty if they are equal.
std::vector<std::string> differences(const StudyIdentity &a, const StudyIdentity &b);

/// Everything a study begins from.
struct StudyHead {
  StudyIdentity identity;
  StudyGrid grid;
  std::string job_text;
  std::filesystem::path job_file; ///< absolute
};

/// Reads and fingerprints the inputs. Programs that are missing are no problem yet: others may be there.
std::optional<StudyHead> read_head(const std::filesystem::path &job_file, const StudyGrid &grid,
                                   bool roughness, const std::string &version, Problems &problems);

/// Looks whether the inputs have been written to since: a cheap look at sizes and times first.
class InputWatch {
public:
  explicit InputWatch(const StudyHead &head);
  /// True once an input no longer holds what the head was read from.
  bool is_changed();

private:
  std::string stamps() const;
  StudyHead head_;
  std::string seen_;
};

} // namespace asperity
