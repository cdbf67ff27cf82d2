// SQLite's handles as values that close themselves, its errors as sentences.
#pragma once

#include <sqlite3.h>

#include <cstdint>
#include <filesystem>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>

namespace asperity {

/// Thrown inside this room only: what is wrong with the file and what to do.
struct SqliteFault : std::runtime_error {
  using std::runtime_error::runtime_error;
};

class SqliteDatabase {
public:
  SqliteDatabase(std::filesystem::path path, bool may_create);
  ~SqliteDatabase();
  SqliteDatabase(const SqliteDatabase &) = delete;
  SqliteDatabase &operator=(const SqliteDatabase &) = delete;

  const std::filesystem::path &path() const { return path_; }
  sqlite3 *handle() const { return handle_; }
  bool is_read_only() const { return ::sqlite3_db_readonly(handle_, "main") == 1; }
  void run(const std::string &statement) const;
  std::int64_t whole_number(const std::string &query) const;
  /// Throws the fault that SQLite has just reported.
  [[noreturn]] void fail(int code) const;

private:
  std::filesystem::path path_;
  sqlite3 *handle_ = nullptr;
};

/// A prepared statement: bind left to right, step, read left to right.
class SqliteStatement {
public:
  SqliteStatement(const SqliteDatabase &database, std::string_view text);
  ~SqliteStatement();
  SqliteStatement(const SqliteStatement &) = delete;
  SqliteStatement &operator=(const SqliteStatement &) = delete;

  SqliteStatement &bind(std::string_view text);
  SqliteStatement &bind(std::int64_t value);
  /// Not a number is kept as NULL.
  SqliteStatement &bind(double value);
  /// True while there is a row.
  bool step();
  /// Runs it to its end and makes it ready for the next values.
  void finish();

  std::string text();
  std::int64_t whole_number();
  double number(); ///< NULL: not a number

private:
  const SqliteDatabase &database_;
  sqlite3_stmt *handle_ = nullptr;
  int next_ = 0;
};

/// Rolls back unless committed.
class SqliteTransaction {
public:
  explicit SqliteTransaction(const SqliteDatabase &database) : database_(database) {
    database_.run("BEGIN IMMEDIATE");
  }
  ~SqliteTransaction();
  SqliteTransaction(const SqliteTransaction &) = delete;
  SqliteTransaction &operator=(const SqliteTransaction &) = delete;
  void commit();

private:
  const SqliteDatabase &database_;
  bool is_open_ = true;
};

} // namespace asperity
