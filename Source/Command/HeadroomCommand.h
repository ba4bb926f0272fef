// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/HeadroomKeys.h"
#include "Command/Subcommand.h"
#include "Study/HeadroomStudy.h"
#include "Study/InputSurvey.h"

#include <filesystem>
#include <string>
#include <vector>

namespace stopwright
{

/// `stopwright headroom`: how near the drawn stops bring each stage to its rails, which clips first, and what to change.
class HeadroomCommand : public Subcommand
{
public:
    std::string name() const override { return "headroom"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    void printInputs (const std::vector<InputReading>& readings, std::ostream& out) const;
    void printStages (const std::vector<StageHeadroom>& stages, std::ostream& out) const;

    std::filesystem::path file_;
    std::vector<std::string> stops_;
    KeyWish wish_;
    HeadroomRequest request_;
    InputLimits limits_;
    double exceededPercent_ = 0.1;
    double seriesOhms_ = 0.0;
    bool inputs_ = false;
    bool csv_ = false;
};

} // namespace stopwright
