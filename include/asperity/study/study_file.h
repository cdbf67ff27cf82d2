// A study's results as an SQLite file: every trial in a transaction of its own, so that nothing is ever lost.
#pragma once

#include "asperity/study/trial.h"

#include <filesystem>
#include <memory>
#include <set>
#include <string>

namespace asperity {

/// Faults are sentences that say what is wrong and what to do; an empty one means that all went well.
/// While a StudyFile lives, no other program can write the file.
class StudyFile {
public:
  /// to_write: made if it is not there; to_read: must hold a study.
  enum class Purpose { to_write, to_read };

  /// Nothing, and `fault` is set, when the file cannot be used.
  static std::unique_ptr<StudyFile> open(const std::filesystem::path &path, Purpose purpose,
                                         std::string &fault);
  ~StudyFile();
  StudyFile(const StudyFile &) = delete;
  StudyFile &operator=(const StudyFile &) = delete;

  /// Begins the study in an empty file, or refuses when another one is in it.
  std::string begin(const StudyHead &head);
  /// A trial that could not be done for want of memory is replaced.
  std::string add(const Trial &trial);
  /// All trials in one transaction.
  std::string add_all(const std::vector<Trial> &trials);
  /// Combinations that need no more work.
  std::set<std::size_t> finished(std::string &fault) const;
  StudyResults read(std::string &fault) const;

private:
  struct Database;
  explicit StudyFile(std::unique_ptr<Database> database);
  std::unique_ptr<Database> database_;
};

} // namespace asperity
