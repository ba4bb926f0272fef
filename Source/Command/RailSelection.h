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

/// Fails: Error when nothing leads from a stop to an outlet. Threading: [control].
void requireHeard (const RailStudy& study, std::size_t stop);

/// The stop of this name. Threading: [control]. Fails: Error (no such stop, one that cannot be heard).
std::size_t stopNamed (const RailStudy& study, const std::string& name);

/// The stops of these names, each once, in their order. Threading: [control]. Fails: Error (no such stop, one that cannot be heard).
std::vector<std::size_t> stopsNamed (const RailStudy& study, const std::vector<std::string>& names);

/// The rail with these stops drawn and no others, or as the instrument is opened when there are none.
/// Threading: [control]. Fails: Error (no such stop, one that cannot be heard).
RailState stateWith (const RailStudy& study, const std::vector<std::string>& drawn);

/// A stop's name fit to stand in a line of text. Threading: [control].
std::string stopName (const RailStudy& study, std::size_t stop);

/// The same as a cell of a CSV file. Threading: [control].
std::string csvStopName (const RailStudy& study, std::size_t stop);

} // namespace stopwright
