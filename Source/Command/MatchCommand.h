// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/RailSelection.h"
#include "Command/Subcommand.h"
#include "Study/StockResistors.h"
#include "Study/StopMatch.h"

#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// `stopwright match`: two stops beside each other over the compass, and the mixing resistor that makes the wanted step.
class MatchCommand : public Subcommand
{
public:
    std::string name() const override { return "match"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    RailSelection selection_;
    std::string stop_, reference_;
    std::vector<std::string> drawn_;
    double offsetDb_ = 0.0;
    int measure_ = 0;
    int against_ = 0;
    std::vector<int> keys_;
    int at_ = -1;
    int series_ = 2;
    std::vector<double> stock_;
    int list_ = 0;
    bool csv_ = false;
};

} // namespace stopwright
