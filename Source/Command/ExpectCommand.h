// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/CardSelection.h"
#include "Command/Subcommand.h"
#include "Study/ProbeLoad.h"
#include "Study/ThermalNoise.h"

#include <optional>
#include <string>
#include <vector>

namespace stopwright
{

/// `stopwright expect`: what scope and meters will show of a key at a node, and what else is heard there.
class ExpectCommand : public Subcommand
{
public:
    std::string name() const override { return "expect"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    BenchPoint point() const;
    std::string placeWords() const;
    void printWave (const BenchPoint& point, std::ostream& out) const;

    CardSelection selection_;
    std::string stop_;
    std::string node_;
    int place_ = 0;
    std::vector<int> keys_;
    std::optional<ProbeLoad> probe_;
    NoiseBand band_;
    double strayFarads_ = 2e-12;
    double amplifierVolts_ = 20e-9;
    bool wave_ = false;
    bool csv_ = false;
};

} // namespace stopwright
