// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/Subcommand.h"
#include "Study/CompassTable.h"

#include <filesystem>
#include <string>
#include <vector>

namespace CLI
{
class Option;
} // namespace CLI

namespace stopwright
{

/// `stopwright compass`: levels and harmonics of a card or of stops of an instrument, key by key.
class CompassCommand : public Subcommand
{
public:
    std::string name() const override { return "compass"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    /// What is listed, in words, and the rows.
    struct Listing
    {
        std::string title;
        std::vector<CompassRow> rows;
    };

    Listing ofCard() const;
    Listing ofInstrument() const;

    std::filesystem::path file_;
    std::vector<std::string> stops_;
    double highestGeneratorHz_ = 0.0;
    CLI::Option* highestGenerator_ = nullptr;
    bool csv_ = false;
};

} // namespace stopwright
