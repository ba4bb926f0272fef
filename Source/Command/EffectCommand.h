// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/RailSelection.h"
#include "Command/Subcommand.h"

#include <string>
#include <vector>

namespace stopwright
{

/// `stopwright effect`: what adding a stop does to every other one.
class EffectCommand : public Subcommand
{
public:
    std::string name() const override { return "effect"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    RailSelection selection_;
    std::string stop_;
    std::vector<std::string> drawn_;
    double limitDb_ = 0.5;
    int list_ = 0;
    bool csv_ = false;
};

} // namespace stopwright
