// Opening a job, saving one, and what is wrong with one.
#include "panels.h"

#include <imgui_stdlib.h>

#include <fmt/format.h>

#include <algorithm>
#include <system_error>

namespace asperity {

namespace {

namespace fs = std::filesystem;
constexpr std::size_t kMostEntries = 2000;
constexpr ImGuiWindowFlags kSheet =
    ImGuiWindowFlags_NoCollapse | ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoResize;

bool begin_sheet(const Ui &ui, const char *title, float width, float height, bool &is_open) {
  const ImVec2 whole = ImGui::GetIO().DisplaySize;
  ImGui::SetNextWindowPos({0.5f * whole.x, 0.5f * whole.y}, ImGuiCond_Always, {0.5f, 0.5f});
  ImGui::SetNextWindowSize({std::min(ui.px(static_cast<double>(width)), 0.94f * whole.x),
                            std::min(ui.px(static_cast<double>(height)), 0.94f * whole.y)});
  return ImGui::Begin(title, &is_open, kSheet);
}

struct Entries {
  std::vector<fs::path> folders, jobs;
};

/// What cannot be read is left out: the list is only an aid.
Entries entries_of(const fs::path &folder) {
  Entries entries;
  std::error_code fault;
  for (fs::directory_iterator at(folder, fs::directory_options::skip_permission_denied, fault), end;
       !fault && at != end; at.increment(fault)) {
    std::error_code ignored;
    const bool is_hidden = at->path().filename().string().starts_with('.');
    if (!is_hidden && at->is_directory(ignored))
      entries.folders.push_back(at->path());
    else if (at->path().extension() == ".toml")
      entries.jobs.push_back(at->path());
    if (entries.folders.size() + entries.jobs.size() > kMostEntries)
      break;
  }
  std::sort(entries.folders.begin(), entries.folders.end());
  std::sort(entries.jobs.begin(), entries.jobs.end());
  return entries;
}

} // namespace

void open_sheet(const Ui &ui) {
  bool is_open = true;
  if (begin_sheet(ui, "Open a job", 520, 420, is_open)) {
    const fs::path &folder = ui.state.folder;
    wrapped_text(folder.string());
    soft_text(ui, fmt::format("It takes the place {}.", ui.state.look.open_into == 0 ? "A" : "B"));
    ImGui::Separator();
    if (ImGui::BeginChild("entries")) {
      if (folder.has_parent_path() && folder != folder.root_path() && ImGui::Selectable("folder above"))
        ui.wish(SetFolder{folder.parent_path()});
      const Entries entries = entries_of(folder);
      for (const fs::path &each : entries.folders)
        if (ImGui::Selectable(fmt::format("{}/", each.filename().string()).c_str()))
          ui.wish(SetFolder{each});
      for (const fs::path &each : entries.jobs)
        if (ImGui::Selectable(each.filename().string().c_str()))
          ui.wish(OpenFile{ui.state.look.open_into, each});
      if (entries.jobs.empty())
        soft_text(ui, "No job file (.toml) in this folder.");
    }
    ImGui::EndChild();
  }
  ImGui::End();
  if (!is_open)
    ui.wish(ShowSheet{Sheet::none});
}

void save_sheet(const Ui &ui) {
  bool is_open = true;
  if (begin_sheet(ui, "Save as a new job", 460, 210, is_open)) {
    const int seat = ui.state.space.front;
    wrapped_text(fmt::format("The new job is written beside {}, whose text it keeps, with the {} changed "
                             "values.",
                             ui.state.seat(seat).file.filename().string(),
                             ui.state.seat(seat).changes.size()));
    std::string name = ui.state.look.save_name;
    ImGui::SetNextItemWidth(-FLT_MIN);
    if (ImGui::InputText("##name", &name))
      ui.wish(SetSaveName{name});
    mark_place(ui, "save name");
    if (ui.state.look.save_would_replace)
      ink_text(ui.inks.missed, "A file of this name is there already.");
    if (ImGui::Button(ui.state.look.save_would_replace ? "Replace it" : "Save"))
      ui.says.save = SaveJob{seat, name, ui.state.look.save_would_replace};
    mark_place(ui, "save");
    ImGui::SameLine();
    if (ImGui::Button("Leave it"))
      ui.wish(ShowSheet{Sheet::none});
    wrapped_text(ui.state.look.message);
  }
  ImGui::End();
  if (!is_open)
    ui.wish(ShowSheet{Sheet::none});
}

void problems_sheet(const Ui &ui) {
  bool is_open = true;
  if (begin_sheet(ui, "What is wrong with the files", 620, 420, is_open)) {
    for (int seat = 0; seat < 2; ++seat) {
      const Seat &at = ui.state.seat(seat);
      if (at.fault.empty())
        continue;
      heading(ui, at.file.filename().string());
      ImGui::PushStyleColor(ImGuiCol_Text, ui.inks.danger);
      wrapped_text(at.fault);
      ImGui::PopStyleColor();
      if (!at.newest)
        continue;
      for (const Problem &problem : at.newest->problems) {
        ImGui::Spacing();
        wrapped_text(text_of(problem));
      }
      if (at.newest->problems_left_out > 0)
        soft_text(ui, fmt::format("and {} more", at.newest->problems_left_out));
      if (ImGui::Button(seat == 0 ? "Read A again" : "Read B again"))
        ui.wish(Predict{seat});
    }
  }
  ImGui::End();
  if (!is_open)
    ui.wish(ShowSheet{Sheet::none});
}

} // namespace asperity
