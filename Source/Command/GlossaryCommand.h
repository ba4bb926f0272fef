// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/Subcommand.h"

#include <string>

namespace stopwright
{

/// `stopwright glossary`: what the words of the trade mean.
class GlossaryCommand : public Subcommand
{
public:
    std::string name() const override { return "glossary"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    std::string term_;
};

} // namespace stopwright
