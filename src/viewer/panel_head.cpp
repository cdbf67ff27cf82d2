// Jobs at the table, how far their predictions are, and how they are laid beside each other.
#include "panels.h"

#include <fmt/format.h>

namespace asperity {

namespace {

void stop_button(const Ui &ui, int i) {
  ImGui::SameLine();
  if (ImGui::Button(i == 0 ? "Stop##a" : "Stop##b"))
    ui.wish(StopRun{i});
  hint(ui, "Stops this prediction; what is shown stays (Esc).");
}

void call_to_predict(const Ui &ui, int i, const char *label, const char *meaning) {
  ImGui::PushStyleColor(ImGuiCol_Text, ui.inks.changed);
  if (ImGui::Button(fmt::format("{}##again{}", label, i).c_str()))
    ui.wish(Predict{i});
  ImGui::PopStyleColor();
  hint(ui, meaning);
}

void seat_state(const Ui &ui, int i) {
  const Seat &seat = ui.state.seat(i);
  if (seat.run.is_running) {
    const std::string text = fmt::format("{} {:.0f} %", seat.run.stage, 100.0 * seat.run.fraction);
    const float width = ui.px(is_wide(ui) ? 150 : 84);
    ImGui::ProgressBar(static_cast<float>(seat.run.fraction), {width, 0},
                       seat.run.is_stopping ? "stopping" : shortened(text, width - ui.px(6)).c_str());
    hint(ui, text);
    return stop_button(ui, i);
  }
  if (!seat.fault.empty()) {
    if (ImGui::Button(i == 0 ? "What is wrong?##a" : "What is wrong?##b"))
      ui.wish(ShowSheet{Sheet::problems});
    return;
  }
  if (!seat.outcome)
    return;
  if (!seat.has(Grain::fine))
    return call_to_predict(ui, i, "Predict", "It was stopped: what is shown is only a first look (F5).");
  if (seat.is_stale())
    return call_to_predict(ui, i, "Predict anew",
                           "Values were changed: what is shown was predicted without them (F5).");
  const bool all_met = seat.outcome->all_met();
  const std::string sign = all_met ? "\xE2\x9C\x93" : "\xE2\x9C\x97",
                    words = all_met ? " all met" : " not all met";
  ink_text(all_met ? ui.inks.met : ui.inks.missed, is_wide(ui) ? sign + words : sign);
  hint(ui, all_met ? "All that the job wants is met." : "Something that the job wants is not met.");
}

void one_seat(const Ui &ui, int i) {
  const Seat &seat = ui.state.seat(i);
  ImGui::PushID(i);
  ImGui::AlignTextToFramePadding();
  seat_letter(ui, i);
  ImGui::SameLine();
  if (!seat.is_taken()) {
    if (ImGui::Button(i == 0 ? "Open a job" : "Compare with..."))
      ui.wish(ShowSheet{Sheet::open, i});
    hint(ui, "Reads a job file and predicts it (Ctrl+O). A file can also be dropped on the window.");
  } else {
    const std::string name = shortened(seat.file.filename().string(), ui.px(is_wide(ui) ? 150 : 76));
    if (ImGui::Button(fmt::format("{}##file", name).c_str()))
      ui.wish(SetFront{i});
    hint(ui, fmt::format("{}\n{}\nBrings this job to the front.", seat.outcome ? seat.outcome->job.title : "",
                         seat.file.string()));
    ImGui::SameLine();
    seat_state(ui, i);
  }
  ImGui::PopID();
}

struct ArrangementName {
  const char *label, *meaning;
};
constexpr ArrangementName kArrangements[] = {
    {"One", "Only the job in front; Tab brings the other one forward."},
    {"Beside", "Both jobs, seen by the same eye."},
    {"Wipe", "Both in one picture: A left, B right of a line that can be dragged."}};

void arrangement(const Ui &ui) {
  for (int i = 0; i < 3; ++i) {
    ImGui::SameLine();
    const auto wanted = static_cast<Arrangement>(i);
    if (small_choice(kArrangements[i].label, ui.state.space.arrangement == wanted))
      ui.wish(SetArrangement{wanted});
    hint(ui, kArrangements[i].meaning);
  }
}

/// As buttons in a row, or one under the other in a menu.
template <class Show> void commands(const Ui &ui, const Show &show) {
  const int front = ui.state.space.front;
  if (ui.state.seat(front).is_taken() &&
      show("Reread", "Reads job and program anew and predicts, with the values being tried (F5)."))
    ui.wish(Predict{front});
  if (ui.state.seat(0).is_taken() && show("Open", "Another job, into the place in front (Ctrl+O)."))
    ui.wish(ShowSheet{Sheet::open, front});
  if (ui.state.seat(1).is_taken() && show("Leave B", "Takes the second job off the table."))
    ui.wish(LeaveSeat{1});
  if (show("Keys", "Keys and mouse (F1)."))
    ui.wish(ShowSheet{Sheet::help});
  if (show(ui.state.look.is_dark ? "Light" : "Dark", "Light or dark ground."))
    ui.wish(SetDark{!ui.state.look.is_dark});
  const double scale = ui.state.look.scale;
  if (show(fmt::format("{}x", scale).c_str(), "Size of lettering and controls: 1, 1.5 or 2 times."))
    ui.wish(SetScale{scale < 1.25 ? 1.5 : (scale < 1.75 ? 2.0 : 1.0)});
}

void command_row(const Ui &ui) {
  commands(ui, [&](const char *label, const char *meaning) {
    ImGui::SameLine();
    const bool is_pressed = ImGui::Button(label);
    hint(ui, meaning);
    return is_pressed;
  });
}

void command_menu(const Ui &ui) {
  ImGui::SameLine();
  if (ImGui::Button("More"))
    ImGui::OpenPopup("more");
  if (!ImGui::BeginPopup("more"))
    return;
  commands(ui, [&](const char *label, const char *meaning) {
    const bool is_pressed = ImGui::Selectable(label);
    hint(ui, meaning);
    return is_pressed;
  });
  ImGui::EndPopup();
}

} // namespace

void head_panel(const Ui &ui) {
  one_seat(ui, 0);
  if (ui.state.seat(0).is_taken()) {
    ImGui::SameLine(0, ui.px(18));
    one_seat(ui, 1);
  }
  if (ui.state.has_both())
    arrangement(ui);
  if (is_wide(ui))
    command_row(ui);
  else
    command_menu(ui);
  if (ui.state.look.message.empty())
    return;
  ImGui::SameLine(0, ui.px(14));
  short_text(ui, ui.inks.soft, ui.state.look.message, ImGui::GetContentRegionAvail().x);
}

} // namespace asperity
