// What every section of the sheet draws on; each section is a string of HTML.
#pragma once

#include "asperity/sheet/answer.h"
#include "asperity/sheet/sheet_html.h"

#include <nlohmann/json.hpp>

#include <string>
#include <vector>

namespace asperity {

struct SheetPage {
  const SheetInput &input;
  Answer answer;
  std::vector<nlohmann::json> predictions; ///< outcome_json of each plan: profiles are drawn from it
  std::string rules;                       ///< style rules that only this sheet needs: places of marks

  const Outcome &outcome(std::size_t plan) const { return *input.outcomes[plan]; }
  const std::string &letter(std::size_t plan) const { return input.comparison.plans[plan].letter; }
  std::size_t plans() const { return input.outcomes.size(); }
};

/// <span class="letter p1">B</span>
std::string letter_html(const SheetPage &page, std::size_t plan);
/// <section id=...><h2>...</h2>
std::string section_begin(std::string_view id, std::string_view heading);
/// A number with its id, plan and all digits beside what is read.
std::string number_html(const SheetPage &page, const KeyNumber &number, std::size_t plan);
/// Class of a plan's colour and dash, in turn.
std::string plan_class(std::size_t plan);
/// Index of the feature of that name; nothing if the plan has none.
std::optional<std::size_t> feature_named(const Job &job, const std::string &name);
/// Names of all features of all plans, in the order they first come.
std::vector<std::string> feature_names(const SheetPage &page);
std::string png_uri(const Image &image);

std::string head_section(const SheetPage &page);
std::string plan_section(const SheetPage &page);
std::string wanted_section(const SheetPage &page);
std::string picture_section(SheetPage &page);
std::string turn_section(const SheetPage &page);
std::string strip_section(const SheetPage &page);
std::string profile_section(const SheetPage &page);
std::string number_section(const SheetPage &page);
std::string finding_section(const SheetPage &page);
std::string limit_section(const SheetPage &page);
std::string file_section(const SheetPage &page);

/// The thinned-out surfaces of all plans, for the script; see assets/turn.js.
std::string surfaces_json(const SheetPage &page);

} // namespace asperity
