// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/RailSelection.h"
#include "Command/Subcommand.h"

#include <string>
#include <vector>

namespace stopwright
{

/// `stopwright together`: what drawn stops, and held keys, add up to, and whether two stops cancel.
class TogetherCommand : public Subcommand
{
public:
    std::string name() const override { return "together"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    RailSelection selection_;
    std::vector<std::string> stops_;
    std::vector<int> keys_;
    std::vector<int> chord_;
    int list_ = 0;
    bool csv_ = false;
};

} // namespace stopwright
