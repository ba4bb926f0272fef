// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/CardSelection.h"
#include "Command/Subcommand.h"

namespace stopwright
{

/// `stopwright harmonics`: every partial of one key, as the taps have it and as the card lets it through.
class HarmonicsCommand : public Subcommand
{
public:
    std::string name() const override { return "harmonics"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    CardSelection selection_;
    int key_ = 60;
    bool csv_ = false;
};

} // namespace stopwright
