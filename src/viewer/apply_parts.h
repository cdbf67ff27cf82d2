// One function a wish, sorted by what they are about.
#pragma once

#include "wish.h"

namespace asperity {

// apply_run.cpp
void take(AppState &state, const OpenFile &wish);
void take(AppState &state, const LeaveSeat &wish);
void take(AppState &state, const Predict &wish);
void take(AppState &state, const StopRun &wish);
void take(AppState &state, const RunStarted &wish);
void take(AppState &state, const RunReports &wish);
void take(AppState &state, const RunShows &wish);
void take(AppState &state, const RunEnded &wish);
void take(AppState &state, const CloseWindow &wish);

// apply_space.cpp
void take(AppState &state, const SetCamera &wish);
void take(AppState &state, const FitEye &wish);
void take(AppState &state, const FlyTo &wish);
void take(AppState &state, const FitPart &wish);
void take(AppState &state, const LookFrom &wish);
void take(AppState &state, const SetLamp &wish);
void take(AppState &state, const SetColour &wish);
void take(AppState &state, const SetExaggeration &wish);
void take(AppState &state, const SetThings &wish);
void take(AppState &state, const SetMoment &wish);
void take(AppState &state, const SetPlaying &wish);
void take(AppState &state, const SetPlayRate &wish);
void take(AppState &state, const SetArrangement &wish);
void take(AppState &state, const SetFront &wish);
void take(AppState &state, const SetWipe &wish);
void take(AppState &state, const Tick &wish);

// apply_choice.cpp
void take(AppState &state, const ChooseFinding &wish);
void take(AppState &state, const StepFinding &wish);
void take(AppState &state, const ChooseLine &wish);
void take(AppState &state, const Picked &wish);

// apply_strip.cpp
void take(AppState &state, const ShowFeature &wish);
void take(AppState &state, const SetSheetView &wish);
void take(AppState &state, const FitSheet &wish);
void take(AppState &state, const FitStrip &wish);
void take(AppState &state, const SetStripLamp &wish);
void take(AppState &state, const TraceBetween &wish);
void take(AppState &state, const LayTrace &wish);
void take(AppState &state, const TraceStarted &wish);
void take(AppState &state, const TraceLaid &wish);
void take(AppState &state, const ClearTrace &wish);
void take(AppState &state, const CloseupLaid &wish);

// apply_section.cpp
void take(AppState &state, const SetSection &wish);
void take(AppState &state, const SetSectionView &wish);
void take(AppState &state, const FitSection &wish);
void take(AppState &state, const FitCut &wish);

// apply_what_if.cpp
void take(AppState &state, const ChangeValue &wish);
void take(AppState &state, const ResetValue &wish);
void take(AppState &state, const Undo &wish);
void take(AppState &state, const Redo &wish);
void take(AppState &state, const SaveEnded &wish);
void take(AppState &state, const SetSaveName &wish);

// apply_look.cpp
void take(AppState &state, const SetDark &wish);
void take(AppState &state, const SetScale &wish);
void take(AppState &state, const ShowLower &wish);
void take(AppState &state, const ShowSheet &wish);
void take(AppState &state, const ShowWhatIf &wish);
void take(AppState &state, const SetFolder &wish);
void take(AppState &state, const Say &wish);

} // namespace asperity
