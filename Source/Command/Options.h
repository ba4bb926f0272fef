// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Units/Engineering.h"

#include <string>
#include <vector>

namespace CLI
{
class App;
class Option;
} // namespace CLI

namespace stopwright
{

/// Options of the command line in the trade's units. A value that cannot be read or lies out of range is wrong usage, and
/// the sentence shows the text. Threading: [control].
struct QuantityRange
{
    Quantity quantity = Quantity::number;
    double lowest = 0.0;
    double highest = 0.0;
    const char* unit = "";
};

/// A value in engineering notation: 440, 4k7, 0.5.
CLI::Option* addQuantity (CLI::App& app,
                          const std::string& name,
                          const QuantityRange& range,
                          double& target,
                          const std::string& help);

/// Some of them, separated by commas or spaces: "47k, 82k". At least one.
CLI::Option* addQuantities (CLI::App& app,
                            const std::string& name,
                            const QuantityRange& range,
                            std::vector<double>& target,
                            const std::string& help);

/// A whole number.
CLI::Option*
    addWhole (CLI::App& app, const std::string& name, int lowest, int highest, int& target, const std::string& help);

/// A key by name: C4, F#3.
CLI::Option* addKey (CLI::App& app, const std::string& name, int& target, const std::string& help);

/// One of some words; `target` becomes the place of the chosen one.
CLI::Option* addChoice (CLI::App& app,
                        const std::string& name,
                        const std::vector<std::string>& words,
                        int& target,
                        const std::string& help);

/// One name, as it is: "Diapason 8". Not an empty one.
CLI::Option* addName (CLI::App& app, const std::string& name, std::string& target, const std::string& help);

/// Names separated by commas, the spaces around them apart: "Diapason 8, Oboe 8". At least one.
CLI::Option*
    addNames (CLI::App& app, const std::string& name, std::vector<std::string>& target, const std::string& help);

/// Keys by name, separated by spaces or commas: "C4 E4".
CLI::Option* addKeys (CLI::App& app, const std::string& name, std::vector<int>& target, const std::string& help);

} // namespace stopwright
