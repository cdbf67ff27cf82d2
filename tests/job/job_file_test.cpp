// Whole files: what defaults are noted, what is no job at all, and that no damage to a file can do harm.
#include "job_text.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <random>
#include <set>

namespace asperity {
namespace {

const char *const kReference = ASPERITY_SOURCE_DIR "/scenes/reference.toml";

std::string reference_text() {
  std::ifstream file(kReference, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

Job small_job(std::string_view text = kSmallJob) {
  Problems problems;
  const auto job = read_text(text, problems);
  for (const Problem &each : problems.all())
    ADD_FAILURE() << text_of(each);
  return job.value_or(Job{});
}

bool is_noted(const Job &job, std::string_view begin) {
  return std::any_of(job.defaults_used.begin(), job.defaults_used.end(),
                     [begin](const std::string &each) { return each.starts_with(begin); });
}

Problem first_problem(const std::filesystem::path &file) {
  Problems problems;
  EXPECT_FALSE(read_job(file, problems).has_value());
  EXPECT_TRUE(problems.has_errors());
  return problems.all().empty() ? Problem{} : problems.all().front();
}

TEST(JobFile, DefaultsAreNotedWithTheirSource) {
  const Job job = small_job();
  EXPECT_TRUE(is_noted(job, "machine.acceleration_x_mm_per_s2 = 400 (controller documentation"));
  EXPECT_TRUE(is_noted(job, "machine.backlash_x_mm = 0 (taken as none"));
  EXPECT_TRUE(is_noted(job, "material.ktc_N_per_mm2 = 110 (derived from data-sheet strength 48 MPa"));
  EXPECT_TRUE(is_noted(job, "cutter 1.runout_mm = 0.02 (from memory"));
  EXPECT_TRUE(is_noted(job, "cutter 1.material = carbide ("));
  EXPECT_TRUE(is_noted(job, "blank.centre_mm = [0, 0] ("));
  EXPECT_TRUE(is_noted(job, "setup.z_zero_error_mm = 0 ("));
  EXPECT_FALSE(is_noted(job, "machine.stiffness_xy_N_per_um"));
  EXPECT_FALSE(is_noted(job, "setup.program_zero_mm"));
}

TEST(JobFile, SectionLeftOutIsNotedKeyByKey) {
  const Job job = small_job(replaced(kSmallJob, "[machine]\nstiffness_xy_N_per_um = 0.4\n", ""));
  const auto machine_keys =
      std::count_if(job.defaults_used.begin(), job.defaults_used.end(),
                    [](const std::string &each) { return each.starts_with("machine."); });
  EXPECT_EQ(machine_keys, 16);
  EXPECT_TRUE(is_noted(job, "machine.stiffness_xy_N_per_um = 0.5 ("));
}

TEST(JobFile, ProgramIsLookedForBesideTheJobFile) {
  const Job job = small_job();
  EXPECT_EQ(job.program.parent_path(), job.file.parent_path());
  EXPECT_EQ(job.program.filename(), "sheave.ngc");
}

TEST(JobFile, EffectsAreOnUnlessSwitchedOff) {
  const Job job = small_job();
  EXPECT_FALSE(job.effects.runout);
  EXPECT_TRUE(job.effects.backlash);
}

TEST(JobFile, MaterialOfOnesOwnNeedsNoShippedName) {
  const std::string text = replaced(
      kSmallJob, "name = \"PETG (printed)\"",
      "name = \"lignum vitae\"\nktc_N_per_mm2 = 60\nkrc_N_per_mm2 = 12\nkac_N_per_mm2 = 9\nkte_N_per_mm = 3\n"
      "kre_N_per_mm = 3\nkae_N_per_mm = 0.6\ndensity_kg_per_m3 = 1230\nheat_capacity_J_per_kgK = 1700\n"
      "conductivity_W_per_mK = 0.2\nflow_temperature_C = 250\nsoftening_temperature_C = 200\n"
      "elastic_modulus_MPa = 14000\nbreak_stress_MPa = 80\nfriction = 0.2\nown_ra_low_um = 2\n"
      "own_ra_high_um = 4\ncalibrated = true");
  const Job job = small_job(text);
  EXPECT_EQ(job.material.name, "lignum vitae");
  EXPECT_EQ(job.material.density_kg_per_m3, 1230);
  EXPECT_TRUE(job.material.calibrated);
}

TEST(JobFile, DoubtfulValuesAreWarningsOnly) {
  Problems problems;
  EXPECT_TRUE(read_text(replaced(kSmallJob, "flute_length_mm = 20.0", "flute_length_mm = 30.0"), problems));
  EXPECT_TRUE(read_text(replaced(kSmallJob, "nominal = 62.0", "nominal = 60.0"), problems));
  EXPECT_TRUE(read_text(replaced(kSmallJob, "[machine]", "calibrated = true\n[machine]"), problems));
  EXPECT_FALSE(problems.has_errors());
  ASSERT_EQ(problems.all().size(), 3u);
  EXPECT_NE(problems.all()[0].message.find("reaches into the holder"), std::string::npos);
  EXPECT_NE(problems.all()[1].message.find("drawn at 62 mm"), std::string::npos);
  EXPECT_NE(problems.all()[2].message.find("no force coefficient of your own"), std::string::npos);
}

TEST(JobFile, AllMistakesAreReportedAtOnce) {
  std::string text = replaced(kSmallJob, "flutes = 2", "flutes = 0");
  text = replaced(text, "top_mm = 11.0", "top_mm = 0.5");
  text = replaced(text, "[effects]", "[effects]\ngremlins = true");
  Problems problems;
  EXPECT_FALSE(read_text(text, problems).has_value());
  EXPECT_EQ(problems.error_count(), 3u);
}

TEST(JobFile, FilesThatAreNoJobAreReported) {
  const TestFolder folder;
  EXPECT_NE(first_problem(folder.write("empty.toml", "")).message.find("says nothing"), std::string::npos);
  EXPECT_NE(first_problem(folder.write("remarks.toml", "# nothing\n\n")).message.find("says nothing"),
            std::string::npos);
  const Problem binary =
      first_problem(folder.write("binary.toml", std::string_view("\x7f\x45\x4c\x46\0\xff\xfe", 7)));
  EXPECT_NE(binary.message.find("cannot be read as TOML"), std::string::npos);
  EXPECT_EQ(binary.line, 1);
  EXPECT_NE(first_problem(folder.path()).message, "");
  EXPECT_NE(first_problem(folder.path() / "absent.toml").message, "");
  const Problem deep = first_problem(folder.write("deep.toml", "a = " + std::string(100000, '[')));
  EXPECT_NE(deep.message.find("cannot be read as TOML"), std::string::npos);
  EXPECT_NE(first_problem(folder.write("large.toml", std::string((4u << 20) + 1, '\n'))).message, "");
}

/// Every key any section knows, as its own remedy lists them.
std::set<std::string> known_keys() {
  std::set<std::string> keys;
  std::string text = reference_text();
  for (const char *sections :
       {"", "[material]\n", "[machine]\n", "[[cutter]]\n", "[blank]\n", "[[blank.hole]]", "[[blank.boss]]\n",
        "[[wall]]\n", "[[floor]]\n", "[[floor.island]]", "[[dome]]\n", "[hold_down]\n", "[[hold_down.bolt]]",
        "[[hold_down.clamp]]", "[setup]\n", "[effects]\n", "[chart]\n"}) {
    const auto at = text.find(sections);
    EXPECT_NE(at, std::string::npos) << sections;
    const auto line_end = *sections ? text.find('\n', at) + 1 : at;
    const TestFolder folder;
    folder.write("reference.ngc", "M2\n");
    std::string changed = text;
    changed.insert(line_end, "xxqqxxqq = 1\n");
    const std::string remedy = first_problem(folder.write("job.toml", changed)).remedy;
    EXPECT_TRUE(remedy.starts_with("Known here: ")) << sections << remedy;
    std::string word;
    for (char c : remedy.substr(std::string("Known here:").size()) + ",")
      if (c == ',' || c == '.')
        keys.insert(std::exchange(word, ""));
      else if (c != ' ')
        word += c;
  }
  keys.erase("");
  return keys;
}

TEST(JobFile, ReferenceExplainsEveryKnownKey) {
  const std::string text = reference_text();
  const std::set<std::string> keys = known_keys();
  EXPECT_GT(keys.size(), 100u);
  for (const std::string &key : keys)
    EXPECT_NE(text.find(key), std::string::npos) << key << " is not in scenes/reference.toml";
}

/// However a file is damaged: a job and no error, or no job and an error.
void expect_orderly(const TestFolder &folder, const std::string &text) {
  Problems problems;
  const bool is_read = read_job(folder.write("job.toml", text), problems).has_value();
  EXPECT_NE(is_read, problems.has_errors());
}

TEST(JobFile, CutShortAnywhereItIsReportedOrRead) {
  const TestFolder folder;
  folder.write("reference.ngc", "M2\n");
  const std::string text = reference_text();
  for (std::size_t length = 1; length < text.size(); length += 37)
    expect_orderly(folder, text.substr(0, length));
}

TEST(JobFile, ScrambledAnywhereItIsReportedOrRead) {
  const TestFolder folder;
  folder.write("sheave.ngc", "M2\n");
  std::mt19937 random(20);
  const std::string text(kSmallJob);
  constexpr std::string_view kSpoilers = "0-9.[]{}=\"'#\n,ae\xff\\";
  for (int i = 0; i < 800; ++i) {
    std::string damaged = text;
    for (int hits = 0; hits <= i % 3; ++hits)
      damaged[random() % damaged.size()] = kSpoilers[random() % kSpoilers.size()];
    expect_orderly(folder, damaged);
  }
}

} // namespace
} // namespace asperity
