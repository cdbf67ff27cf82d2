// The panels of the window: each draws its part of the state and says what the user wants.
#pragma once

#include "ui.h"

namespace asperity {

void head_panel(const Ui &ui);     ///< jobs at the table, runs, arrangement
void wanted_panel(const Ui &ui);   ///< what is wanted and whether it is met
void numbers_panel(const Ui &ui);  ///< sizes, roughness, times
void findings_panel(const Ui &ui); ///< what is wrong
void why_panel(const Ui &ui);      ///< the chosen finding or place: size, cause, remedy
void what_if_panel(const Ui &ui);  ///< values to try
void program_panel(const Ui &ui);  ///< the program's text
void choices_panel(const Ui &ui);  ///< colours, exaggeration, what is shown, lamp
void space_panel(const Ui &ui);    ///< the part in space, one job or two
void lower_panel(const Ui &ui);    ///< the feature laid flat or cut through
void strip_panel(const Ui &ui);    ///< the flat sheet itself
void section_panel(const Ui &ui);  ///< the cut itself
void profile_panel(const Ui &ui);  ///< the trace laid on it
void time_panel(const Ui &ui);     ///< moment on the path
void help_sheet(const Ui &ui);
void open_sheet(const Ui &ui);
void save_sheet(const Ui &ui);
void problems_sheet(const Ui &ui);

/// Colour legend in the lower left corner of a picture.
void draw_legend(const Ui &ui, const Drawn &drawn, ImVec2 low, ImVec2 high);
/// The findings' numbers on their marks.
void draw_mark_numbers(const Ui &ui, const ShownPicture &picture, ImVec2 low);
/// Words on a plate that can be read over any picture.
void draw_plate(const Ui &ui, ImVec2 at, std::string_view text, ImU32 ink);

/// High enough for the part and what lies below it.
bool is_roomy(const Ui &ui);
/// Wide enough for three columns.
bool is_wide(const Ui &ui);
/// What lies below the part, or in its place where there is no room for both.
Lower lower_shown(const Ui &ui);

/// Everything, in its place.
void lay_out(const Ui &ui);
/// What the keys ask for.
void read_keys(const Ui &ui);

} // namespace asperity
