// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/Subcommand.h"
#include "Organ/Card.h"

#include <filesystem>
#include <string>

namespace stopwright
{

/// `stopwright drawing`: the schematic of a card as an SVG file.
class DrawingCommand : public Subcommand
{
public:
    std::string name() const override { return "drawing"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    Card card() const;

    std::filesystem::path document_;
    std::filesystem::path output_;
    std::string stop_;
    bool zigzag_ = false;
};

} // namespace stopwright
