// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/Subcommand.h"
#include "Study/ResponseTable.h"

#include <filesystem>

namespace stopwright
{

/// `stopwright response`: what a card's network does to a tap's voltage over frequency.
class ResponseCommand : public Subcommand
{
public:
    std::string name() const override { return "response"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    std::filesystem::path cardFile_;
    ResponseRequest request_;
    int points_ = 0; ///< 0 until stated
    bool csv_ = false;
};

} // namespace stopwright
