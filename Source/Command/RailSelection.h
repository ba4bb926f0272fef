// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/RailStudy.h"

#include <filesystem>
#include <string>
#include <vector>

namespace CLI
{
class App;
} // namespace CLI

namespace stopwright
{

/// The instrument of a command line whose stop rail is studied. Threading: [control].
class RailSelection
{
public:
    /// Adds INSTRUMENT.
    void declare (CLI::App& app);

    /// Fails: Error on a document or card that cannot be used.
    RailStudy load() const;

private:
    std::filesystem::path file_;
};

/// The same of a file. Threading: [control]. Fails: Error on a document or card that cannot be used.
RailStudy readRail (const std::filesystem::path& file);

/// The stops of these names, all of one division; with no names, those of the first drawn stop's division that are drawn
/// when the instrument is opened. Threading: [control]. Fails: Error (no such stop, stops of two divisions, none drawn).
std::vector<std::size_t> stopsOfOneDivision (const RailStudy& study, const std::vector<std::string>& names);

/// The stops of these names, in their order. Threading: [control]. Fails: Error as RailStudy::findStop.
std::vector<std::size_t> stopsNamed (const RailStudy& study, const std::vector<std::string>& names);

} // namespace stopwright
