// SQLite's handles and errors.
#include "sqlite.h"

#include <fmt/format.h>

#include <cmath>
#include <limits>
#include <system_error>

namespace asperity {

namespace fs = std::filesystem;

namespace {

std::string remedy_for(int code) {
  switch (code & 0xff) {
  case SQLITE_NOTADB:
  case SQLITE_CORRUPT:
    return "it is not a study's file, or it is damaged: give another name, or bring back a copy of it";
  case SQLITE_FULL:
    return "the disk is full: make room and start the same command again; what was finished is kept";
  case SQLITE_IOERR:
    return "the disk is full or fails: make room or choose another disk, then start the same command again; "
           "what was finished is kept";
  case SQLITE_READONLY:
    return "it may not be written: allow that, or give another name";
  case SQLITE_CANTOPEN:
    return "it cannot be opened: check that the folder is there and that you may write into it";
  case SQLITE_BUSY:
  case SQLITE_LOCKED:
    return "another study command is working on it: wait until that has ended";
  default:
    return "check the file and the disk";
  }
}

} // namespace

SqliteDatabase::SqliteDatabase(fs::path path, bool may_create) : path_(std::move(path)) {
  const int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOMUTEX | (may_create ? SQLITE_OPEN_CREATE : 0);
  const int code = ::sqlite3_open_v2(path_.c_str(), &handle_, flags, nullptr);
  if (code == SQLITE_OK)
    return;
  const std::string text =
      fmt::format("cannot use {}: {} ({}).", path_.string(), remedy_for(code), ::sqlite3_errstr(code));
  ::sqlite3_close(handle_);
  throw SqliteFault(text);
}

SqliteDatabase::~SqliteDatabase() { ::sqlite3_close(handle_); }

void SqliteDatabase::fail(int code) const {
  const int error = ::sqlite3_system_errno(handle_);
  const bool is_disk = (code & 0xff) == SQLITE_IOERR || (code & 0xff) == SQLITE_CANTOPEN;
  const std::string cause = is_disk && error != 0 ? std::error_code(error, std::generic_category()).message()
                                                  : std::string(::sqlite3_errmsg(handle_));
  throw SqliteFault(fmt::format("cannot use {}: {} ({}).", path_.string(), remedy_for(code), cause));
}

void SqliteDatabase::run(const std::string &statement) const {
  if (const int code = ::sqlite3_exec(handle_, statement.c_str(), nullptr, nullptr, nullptr);
      code != SQLITE_OK)
    fail(code);
}

std::int64_t SqliteDatabase::whole_number(const std::string &query) const {
  SqliteStatement statement(*this, query);
  return statement.step() ? statement.whole_number() : 0;
}

SqliteStatement::SqliteStatement(const SqliteDatabase &database, std::string_view text)
    : database_(database) {
  const int code =
      ::sqlite3_prepare_v2(database.handle(), text.data(), static_cast<int>(text.size()), &handle_, nullptr);
  if (code != SQLITE_OK)
    database.fail(code);
}

SqliteStatement::~SqliteStatement() { ::sqlite3_finalize(handle_); }

SqliteStatement &SqliteStatement::bind(std::string_view text) {
  const int code =
      ::sqlite3_bind_text(handle_, ++next_, text.data(), static_cast<int>(text.size()), SQLITE_TRANSIENT);
  if (code != SQLITE_OK)
    database_.fail(code);
  return *this;
}

SqliteStatement &SqliteStatement::bind(std::int64_t value) {
  if (const int code = ::sqlite3_bind_int64(handle_, ++next_, value); code != SQLITE_OK)
    database_.fail(code);
  return *this;
}

SqliteStatement &SqliteStatement::bind(double value) {
  const int code = std::isnan(value) ? ::sqlite3_bind_null(handle_, ++next_)
                                     : ::sqlite3_bind_double(handle_, ++next_, value);
  if (code != SQLITE_OK)
    database_.fail(code);
  return *this;
}

bool SqliteStatement::step() {
  const int code = ::sqlite3_step(handle_);
  if (code != SQLITE_ROW && code != SQLITE_DONE)
    database_.fail(code);
  next_ = 0;
  return code == SQLITE_ROW;
}

void SqliteStatement::finish() {
  while (step()) {
  }
  ::sqlite3_reset(handle_);
}

std::string SqliteStatement::text() {
  const int column = next_++;
  const auto *bytes = ::sqlite3_column_text(handle_, column);
  const auto count = static_cast<std::size_t>(::sqlite3_column_bytes(handle_, column));
  return bytes ? std::string(reinterpret_cast<const char *>(bytes), count) : std::string();
}

std::int64_t SqliteStatement::whole_number() { return ::sqlite3_column_int64(handle_, next_++); }

double SqliteStatement::number() {
  const int column = next_++;
  return ::sqlite3_column_type(handle_, column) == SQLITE_NULL ? std::numeric_limits<double>::quiet_NaN()
                                                               : ::sqlite3_column_double(handle_, column);
}

SqliteTransaction::~SqliteTransaction() {
  if (is_open_) // a failed ROLLBACK leaves nothing to do: SQLite has rolled back by itself
    ::sqlite3_exec(database_.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
}

void SqliteTransaction::commit() {
  database_.run("COMMIT");
  is_open_ = false;
}

} // namespace asperity
