// A study's results as an SQLite file.
#include "asperity/study/study_file.h"

#include "sqlite.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <map>

namespace asperity {

namespace {

namespace fs = std::filesystem;

constexpr int kFormat = 1;               // raised when the tables change their meaning
constexpr int kApplication = 0x41537459; // tells our files from other programs' ("AStY")

constexpr const char *kTables = R"sql(
CREATE TABLE study(name TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;
CREATE TABLE input(name TEXT PRIMARY KEY, sha256 TEXT NOT NULL) WITHOUT ROWID;
CREATE TABLE level(factor INTEGER, level INTEGER, key TEXT NOT NULL, value TEXT NOT NULL,
  PRIMARY KEY(factor, level)) WITHOUT ROWID;
CREATE TABLE trial(combination INTEGER PRIMARY KEY, status INTEGER NOT NULL, why TEXT NOT NULL,
  dangers INTEGER NOT NULL, flaws INTEGER NOT NULL);
CREATE TABLE number(combination INTEGER, place INTEGER, id TEXT NOT NULL, feature TEXT NOT NULL,
  what TEXT NOT NULL, unit TEXT NOT NULL, value REAL, better INTEGER NOT NULL, wanted REAL,
  PRIMARY KEY(combination, place)) WITHOUT ROWID;
CREATE TABLE wanted(combination INTEGER, place INTEGER, feature TEXT NOT NULL, what TEXT NOT NULL,
  wanted TEXT NOT NULL, predicted REAL, unit TEXT NOT NULL, met INTEGER NOT NULL, limit_value REAL, shortfall REAL,
  PRIMARY KEY(combination, place)) WITHOUT ROWID;
)sql";

std::int64_t whole(std::size_t value) { return static_cast<std::int64_t>(value); }

bool has_tables(const SqliteDatabase &database) {
  return database.whole_number("SELECT count(*) FROM sqlite_master") > 0;
}

/// Throws unless the file is empty or holds a sound study of this format.
void look_into(const SqliteDatabase &database) {
  const std::string name = database.path().string();
  if (!has_tables(database))
    return;
  if (database.whole_number("PRAGMA application_id") != kApplication)
    throw SqliteFault(fmt::format("{} belongs to another program: give another name.", name));
  if (const std::int64_t format = database.whole_number("PRAGMA user_version"); format != kFormat)
    throw SqliteFault(fmt::format("{} has format {}, and this version reads {}: use the version of Asperity "
                                  "that wrote it, or begin a new file.",
                                  name, format, kFormat));
  SqliteStatement check(database, "PRAGMA quick_check(1)");
  if (check.step() && check.text() != "ok")
    database.fail(SQLITE_CORRUPT);
}

/// A lock held for as long as the file is open; a rollback journal also works on shared folders.
void lock(const SqliteDatabase &database) {
  database.run("PRAGMA locking_mode=EXCLUSIVE");
  database.run("PRAGMA journal_mode=DELETE");
  database.run("PRAGMA synchronous=FULL");
  database.run("BEGIN EXCLUSIVE; COMMIT");
}

void add_trial(const SqliteDatabase &database, const Trial &trial) {
  const std::int64_t combination = whole(trial.combination);
  SqliteStatement row(database, "INSERT OR REPLACE INTO trial VALUES(?,?,?,?,?)");
  row.bind(combination).bind(static_cast<std::int64_t>(trial.status)).bind(trial.why);
  row.bind(whole(trial.dangers)).bind(whole(trial.flaws)).finish();
  SqliteStatement number(database, "INSERT INTO number VALUES(?,?,?,?,?,?,?,?,?)");
  std::int64_t place = 0;
  for (const KeyNumber &n : trial.numbers) {
    number.bind(combination).bind(place++).bind(n.id).bind(n.feature).bind(n.what).bind(n.unit).bind(n.value);
    number.bind(static_cast<std::int64_t>(n.better)).bind(n.wanted).finish();
  }
  SqliteStatement wanted(database, "INSERT INTO wanted VALUES(?,?,?,?,?,?,?,?,?,?)");
  place = 0;
  for (const TrialCheck &c : trial.checks) {
    wanted.bind(combination).bind(place++).bind(c.feature).bind(c.what).bind(c.wanted).bind(c.predicted);
    wanted.bind(c.unit).bind(std::int64_t{c.met}).bind(c.limit).bind(c.shortfall).finish();
  }
}

void add_head(const SqliteDatabase &database, const StudyHead &head) {
  const StudyIdentity &identity = head.identity;
  SqliteStatement row(database, "INSERT INTO study VALUES(?,?)");
  const std::map<std::string, std::string> texts{{"version", identity.version},
                                                 {"job_sha256", identity.job_sha256},
                                                 {"grid", identity.grid},
                                                 {"roughness", identity.roughness ? "yes" : "no"},
                                                 {"identity", identity.sha256()},
                                                 {"job_text", head.job_text},
                                                 {"job_file", head.job_file.string()}};
  for (const auto &[name, value] : texts)
    row.bind(name).bind(value).finish();
  SqliteStatement input(database, "INSERT INTO input VALUES(?,?)");
  for (const StudyFileHash &file : identity.files)
    input.bind(file.name).bind(file.sha256).finish();
  SqliteStatement level(database, "INSERT INTO level VALUES(?,?,?,?)");
  for (std::size_t f = 0; f < head.grid.factors.size(); ++f)
    for (std::size_t v = 0; v < head.grid.factors[f].values.size(); ++v)
      level.bind(whole(f))
          .bind(whole(v))
          .bind(head.grid.factors[f].key)
          .bind(head.grid.factors[f].values[v])
          .finish();
}

StudyHead read_head_of(const SqliteDatabase &database) {
  std::map<std::string, std::string> texts;
  SqliteStatement row(database, "SELECT name, value FROM study");
  while (row.step()) {
    std::string name = row.text();
    texts[name] = row.text();
  }
  StudyHead head;
  head.identity = {texts["version"], texts["job_sha256"], {}, texts["grid"], texts["roughness"] == "yes"};
  head.job_text = texts["job_text"];
  head.job_file = texts["job_file"];
  SqliteStatement input(database, "SELECT name, sha256 FROM input ORDER BY name");
  while (input.step()) {
    std::string name = input.text();
    head.identity.files.push_back({std::move(name), input.text()});
  }
  SqliteStatement level(database, "SELECT factor, key, value FROM level ORDER BY factor, level");
  while (level.step()) {
    const auto factor = static_cast<std::size_t>(level.whole_number());
    head.grid.factors.resize(std::max(head.grid.factors.size(), factor + 1));
    head.grid.factors[factor].key = level.text();
    head.grid.factors[factor].values.push_back(level.text());
  }
  if (head.grid.size() == 0 || head.identity.sha256() != texts["identity"])
    database.fail(SQLITE_CORRUPT);
  return head;
}

std::vector<Trial> read_trials(const SqliteDatabase &database, std::size_t most) {
  std::vector<Trial> trials;
  std::map<std::int64_t, std::size_t> index;
  SqliteStatement row(database,
                      "SELECT combination, status, why, dangers, flaws FROM trial ORDER BY combination");
  while (row.step()) {
    const std::int64_t combination = row.whole_number(), status = row.whole_number();
    if (combination < 0 || combination >= whole(most) || status < 0 || status > 2)
      database.fail(SQLITE_CORRUPT);
    index[combination] = trials.size();
    Trial &trial = trials.emplace_back();
    trial.combination = static_cast<std::size_t>(combination);
    trial.status = static_cast<TrialStatus>(status);
    trial.why = row.text();
    trial.dangers = static_cast<std::size_t>(row.whole_number());
    trial.flaws = static_cast<std::size_t>(row.whole_number());
  }
  const auto owner = [&](std::int64_t combination) -> Trial & {
    const auto found = index.find(combination);
    if (found == index.end())
      database.fail(SQLITE_CORRUPT);
    return trials[found->second];
  };
  SqliteStatement number(database, "SELECT combination, id, feature, what, unit, value, better, wanted "
                                   "FROM number ORDER BY combination, place");
  while (number.step()) {
    KeyNumber &n = owner(number.whole_number()).numbers.emplace_back();
    n.id = number.text(), n.feature = number.text(), n.what = number.text(), n.unit = number.text();
    n.value = number.number();
    n.better = static_cast<Better>(number.whole_number());
    n.wanted = number.number();
  }
  SqliteStatement wanted(database,
                         "SELECT combination, feature, what, wanted, predicted, unit, met, limit_value, "
                         "shortfall "
                         "FROM wanted ORDER BY combination, place");
  while (wanted.step()) {
    TrialCheck &c = owner(wanted.whole_number()).checks.emplace_back();
    c.feature = wanted.text(), c.what = wanted.text(), c.wanted = wanted.text();
    c.predicted = wanted.number();
    c.unit = wanted.text();
    c.met = wanted.whole_number() != 0;
    c.limit = wanted.number();
    c.shortfall = wanted.number();
  }
  return trials;
}

/// Empty, or why the study in the file is another one.
std::string refusal(const SqliteDatabase &database, const StudyHead &head) {
  const StudyHead there = read_head_of(database);
  const std::vector<std::string> changed = differences(there.identity, head.identity);
  return changed.empty()
             ? std::string()
             : fmt::format(
                   "{} holds another study; changed since: {}. Give --results another name, or remove "
                   "the file to begin anew.",
                   database.path().string(), fmt::join(changed, ", "));
}

} // namespace

struct StudyFile::Database : SqliteDatabase {
  using SqliteDatabase::SqliteDatabase;
};

StudyFile::StudyFile(std::unique_ptr<Database> database) : database_(std::move(database)) {}
StudyFile::~StudyFile() = default;

std::unique_ptr<StudyFile> StudyFile::open(const fs::path &path, Purpose purpose, std::string &fault) {
  try {
    const bool writes = purpose == Purpose::to_write;
    std::error_code ignored;
    if (!writes && !fs::exists(path, ignored))
      throw SqliteFault(
          fmt::format("there is no file {}: give the name of a study's results.", path.string()));
    if (fs::is_directory(path, ignored))
      throw SqliteFault(fmt::format("{} is a folder: give a file name.", path.string()));
    auto database = std::make_unique<Database>(path, writes);
    if (writes && database->is_read_only())
      throw SqliteFault(
          fmt::format("{} may not be written: allow that, or give another name.", path.string()));
    look_into(*database);
    if (!writes && !has_tables(*database))
      throw SqliteFault(fmt::format("{} is empty: there is no study in it.", path.string()));
    if (writes)
      lock(*database);
    return std::unique_ptr<StudyFile>(new StudyFile(std::move(database)));
  } catch (const SqliteFault &problem) {
    fault = problem.what();
    return nullptr;
  }
}

std::string StudyFile::begin(const StudyHead &head) {
  try {
    if (has_tables(*database_)) {
      std::string fault = refusal(*database_, head);
      // A program killed while it held the lock leaves its journal, which only goes with something written.
      if (fault.empty())
        database_->run(fmt::format("PRAGMA user_version={}", kFormat));
      return fault;
    }
    SqliteTransaction transaction(*database_);
    database_->run(kTables);
    database_->run(fmt::format("PRAGMA application_id={}; PRAGMA user_version={}", kApplication, kFormat));
    add_head(*database_, head);
    transaction.commit();
    return {};
  } catch (const SqliteFault &fault) {
    return fault.what();
  }
}

std::string StudyFile::add(const Trial &trial) {
  try {
    SqliteTransaction transaction(*database_);
    add_trial(*database_, trial);
    transaction.commit();
    return {};
  } catch (const SqliteFault &fault) {
    return fault.what();
  }
}

std::string StudyFile::add_all(const std::vector<Trial> &trials) {
  try {
    SqliteTransaction transaction(*database_);
    for (const Trial &trial : trials)
      add_trial(*database_, trial);
    transaction.commit();
    return {};
  } catch (const SqliteFault &fault) {
    return fault.what();
  }
}

std::set<std::size_t> StudyFile::finished(std::string &fault) const {
  std::set<std::size_t> combinations;
  try {
    SqliteStatement row(*database_, "SELECT combination FROM trial WHERE status <> 2");
    while (row.step())
      combinations.insert(static_cast<std::size_t>(row.whole_number()));
  } catch (const SqliteFault &problem) {
    fault = problem.what();
  }
  return combinations;
}

StudyResults StudyFile::read(std::string &fault) const {
  StudyResults results;
  try {
    results.head = read_head_of(*database_);
    results.trials = read_trials(*database_, results.head.grid.size());
  } catch (const SqliteFault &problem) {
    fault = problem.what();
  }
  return results;
}

} // namespace asperity
