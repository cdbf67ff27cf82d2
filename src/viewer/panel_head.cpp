// Jobs at the table, how far their predictions are, and how they are laid beside each other.
#include "panels.h"

#include <fmt/format.h>

namespace asperity {

namespace {

void seat_state(const Ui &ui, int i) {
  const Seat &seat = ui.state.seat(i);
  if (seat.run.is_running) {
    const std::string text = fmt::format("{} {:.0f} %", seat.run.stage, 100.0 * seat.run.fraction);
    ImGui::ProgressBar(static_cast<float>(seat.run.fraction), {ui.px(150), 0},
                       seat.run.is_stopping ? "stopping" : text.c_str());
    ImGui::SameLine();
    if (ImGui::Button(i == 0 ? "Stop##a" : "Stop##b"))
      ui.wish(StopRun{i});
    return;
  }
  if (!seat.fault.empty()) {
    if (ImGui::Button(i == 0 ? "What is wrong?##a" : "What is wrong?##b"))
      ui.wish(ShowSheet{Sheet::problems});
    return;
  }
  if (seat.is_stale()) {
    ImGui::PushStyleColor(ImGuiCol_Text, ui.inks.changed);
    if (ImGui::Button(i == 0 ? "Predict anew##a" : "Predict anew##b"))
      ui.wish(Predict{i});
    ImGui::PopStyleColor();
    hint(ui, "Values were changed: what is shown was predicted without them (F5).");
    return;
  }
  if (seat.outcome) {
    const bool all_met = seat.outcome->all_met();
    ink_text(all_met ? ui.inks.met : ui.inks.missed,
             all_met ? "\xE2\x9C\x93 all met" : "\xE2\x9C\x97 not all met");
  }
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
    if (ImGui::Button(fmt::format("{}##file", seat.file.filename().string()).c_str()))
      ui.wish(SetFront{i});
    hint(ui, fmt::format("{}\n{}\nBrings this job to the front.", seat.outcome ? seat.outcome->job.title : "",
                         seat.file.string()));
    ImGui::SameLine();
    seat_state(ui, i);
  }
  ImGui::PopID();
}

void arrangement(const Ui &ui) {
  const auto choice = [&](const char *label, Arrangement wanted, const char *meaning) {
    ImGui::SameLine();
    if (small_choice(label, ui.state.space.arrangement == wanted))
      ui.wish(SetArrangement{wanted});
    hint(ui, meaning);
  };
  choice("One", Arrangement::front, "Only the job in front; Tab brings the other one forward.");
  choice("Beside", Arrangement::beside, "Both jobs, seen by the same eye.");
  choice("Wipe", Arrangement::wipe, "Both in one picture: A left, B right of a line that can be dragged.");
}

void buttons(const Ui &ui) {
  const int front = ui.state.space.front;
  const auto button = [&](const char *label, const char *meaning) {
    ImGui::SameLine();
    const bool is_pressed = ImGui::Button(label);
    hint(ui, meaning);
    return is_pressed;
  };
  if (ui.state.seat(front).is_taken() &&
      button("Reread", "Reads job and program anew and predicts, with the values being tried (F5)."))
    ui.wish(Predict{front});
  if (ui.state.seat(0).is_taken() && button("Open", "Another job, into the place in front (Ctrl+O)."))
    ui.wish(ShowSheet{Sheet::open, front});
  if (button("Keys", "Keys and mouse (F1)."))
    ui.wish(ShowSheet{Sheet::help});
  if (button(ui.state.look.is_dark ? "Light" : "Dark", "Light or dark ground."))
    ui.wish(SetDark{!ui.state.look.is_dark});
  const double scale = ui.state.look.scale;
  if (button(fmt::format("{}x", scale).c_str(), "Size of lettering and controls: 1, 1.5 or 2 times."))
    ui.wish(SetScale{scale < 1.25 ? 1.5 : (scale < 1.75 ? 2.0 : 1.0)});
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
  buttons(ui);
  if (!ui.state.look.message.empty()) {
    ImGui::SameLine(0, ui.px(14));
    soft_text(ui, ui.state.look.message);
  }
}

} // namespace asperity
