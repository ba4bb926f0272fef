// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/Subcommand.h"

#include <filesystem>

namespace stopwright
{

/// `stopwright check`: says what a document is, or what is wrong with it and where.
class CheckCommand : public Subcommand
{
public:
    std::string name() const override { return "check"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    std::filesystem::path file_;
};

} // namespace stopwright
