// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/RailSelection.h"
#include "Command/Subcommand.h"
#include "Study/SourceStudy.h"

#include <filesystem>
#include <string>
#include <vector>

namespace stopwright
{

/// `stopwright source`: which partials that a mask wants the tapped waves do not have, why, and which keyed bus has them.
class SourceCommand : public Subcommand
{
public:
    std::string name() const override { return "source"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    RailSelection instrument_;
    std::filesystem::path maskFile_;
    std::string stop_;
    std::vector<int> keys_;
    double limitDb_ = SourceStudy::usualLimitDb;
    bool csv_ = false;
};

} // namespace stopwright
