// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/Subcommand.h"
#include "Organ/TargetMask.h"
#include "Study/MaskFit.h"

#include <filesystem>
#include <string>
#include <vector>

namespace stopwright
{

/// `stopwright mask`: how far a stop is from a target mask, key by key.
class MaskCommand : public Subcommand
{
public:
    std::string name() const override { return "mask"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    struct Comparison
    {
        std::string what; ///< the stop, and where it is heard
        std::vector<MaskFit> fits;
    };

    Comparison compare (const TargetMask& mask) const;
    Comparison compareCard (const TargetMask& mask) const;
    Comparison compareStop (const TargetMask& mask) const;

    std::filesystem::path document_;
    std::filesystem::path maskFile_;
    std::string stop_;
    std::vector<int> keys_;
    bool csv_ = false;
};

} // namespace stopwright
