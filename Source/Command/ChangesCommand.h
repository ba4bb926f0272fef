// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/Subcommand.h"

#include <filesystem>

namespace stopwright
{

/// `stopwright changes`: what of an instrument or a card is otherwise than it was found.
class ChangesCommand : public Subcommand
{
public:
    std::string name() const override { return "changes"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    std::filesystem::path file_;
    bool csv_ = false;
};

} // namespace stopwright
