// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/ExitStatus.h"

#include <iosfwd>
#include <string>

namespace CLI
{
class App;
} // namespace CLI

namespace stopwright
{

/// One job of the command program: "check", "harmonics" ... It declares its options once, is filled by the command line,
/// and runs at most once. Threading: [control].
class Subcommand
{
public:
    Subcommand() = default;
    virtual ~Subcommand() = default;

    // The program it is declared to calls it.
    Subcommand (const Subcommand&) = delete;
    Subcommand (Subcommand&&) = delete;
    Subcommand& operator= (const Subcommand&) = delete;
    Subcommand& operator= (Subcommand&&) = delete;

    virtual std::string name() const = 0;

    /// Adds the job, its options and its help to the program. The object must outlive `program`.
    virtual void declare (CLI::App& program) = 0;

    /// Does the job: the result goes to `out`, progress and warnings go to `err`.
    /// Fails: Error with one sentence.
    virtual ExitStatus run (std::ostream& out, std::ostream& err) = 0;
};

} // namespace stopwright
