// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/HeadroomStudy.h"

#include <functional>
#include <string>
#include <vector>

namespace stopwright
{

/// Which keys are taken to be held for the levels of an instrument's stages.
enum class StageKeys
{
    tenNotes, ///< C2 G2 C3 E3 G3 C4 E4 G4 C5 E5 on one keyboard, as far as it goes; common practice, no source
    everyKey  ///< of every keyboard
};

/// The levels of all stages behind the drawn stops.
struct StageReading
{
    std::vector<StageHeadroom> stages;
    StageKeys keys = StageKeys::tenNotes;
    std::string division;           ///< of the ten notes
    std::vector<HeldKey> held;      ///< what was held
    std::vector<std::string> drawn; ///< the stops
};

/// The name of a stage in an instrument: "preamp: stage", or the bus. As InstrumentVoice::clipNames has it.
std::string titleOf (const StageHeadroom& stage);

/// `division` is where the ten notes are held if a stop that it plays is drawn, else they are held on the keyboard of the
/// first drawn stop. Stops without a card in `cards` are silent.
/// `isUnwanted`, which may be empty, stops it as headroomOf does.
/// Threading: [control]. Fails: Error as headroomOf, and when no stop is drawn.
StageReading stageReading (const Instrument& instrument,
                           const InstrumentCards& cards,
                           const std::string& division,
                           StageKeys keys,
                           const std::function<bool()>& isUnwanted = {});

} // namespace stopwright
