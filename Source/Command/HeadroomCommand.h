// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/Subcommand.h"
#include "Study/HeadroomStudy.h"
#include "Study/InputStress.h"

#include <filesystem>
#include <string>
#include <vector>

namespace stopwright
{

struct SelectedInstrument;

/// `stopwright headroom`: how near the drawn stops bring each stage to its rails, which clips first, and what to change.
class HeadroomCommand : public Subcommand
{
public:
    std::string name() const override { return "headroom"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    std::vector<HeldKey> heldKeys (const SelectedInstrument& selected) const;
    void runInputs (const SelectedInstrument& selected, const std::vector<HeldKey>& held, std::ostream& out) const;

    std::filesystem::path file_;
    std::vector<std::string> stops_;
    std::vector<int> chord_ { 36, 43, 48, 52, 55, 60, 64, 67, 72, 76 }; // C2 G2 C3 E3 G3 C4 E4 G4 C5 E5
    std::string division_;
    HeadroomRequest request_;
    InputLimits limits_;
    double exceededPercent_ = 0.1;
    double seriesOhms_ = 0.0;
    bool allKeys_ = false;
    bool inputs_ = false;
    bool csv_ = false;
};

} // namespace stopwright
