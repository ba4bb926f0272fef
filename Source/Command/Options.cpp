// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/Options.h"

#include "Command/NameList.h"
#include "Command/NumberText.h"
#include "Units/Error.h"
#include "Units/Pitch.h"
#include "Units/QuotedText.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include <algorithm>
#include <charconv>
#include <functional>
#include <string_view>

namespace stopwright
{

namespace
{

/// Runs a reader that throws Error, and turns its sentence into wrong usage.
CLI::Option* addText (CLI::App& app,
                      const std::string& name,
                      const std::string& help,
                      const std::function<void (const std::string&)>& reader)
{
    const auto guarded = [name, reader] (const std::string& text)
    {
        try
        {
            reader (text);
        }
        catch (const Error& fault)
        {
            throw CLI::ValidationError (name, fault.what());
        }
    };
    return app.add_option_function<std::string> (name, guarded, help);
}

double readQuantity (std::string_view text, const QuantityRange& range)
{
    const double value = parseEngineering (text, range.quantity);
    if (value >= range.lowest && value <= range.highest)
        return value;
    throw Error (quotedText (text) + " is out of range, which is " + csvNumber (range.lowest) + " to "
                 + csvNumber (range.highest) + " " + range.unit);
}

int readWhole (std::string_view text, int lowest, int highest)
{
    int value = 0;
    const auto* const end = text.data() + text.size();
    const auto result = std::from_chars (text.data(), end, value);
    if (result.ec == std::errc() && result.ptr == end && value >= lowest && value <= highest)
        return value;
    throw Error (quotedText (text) + " must be a whole number from " + std::to_string (lowest) + " to "
                 + std::to_string (highest));
}

int readChoice (const std::string& text, const std::vector<std::string>& words)
{
    const auto found = std::find (words.begin(), words.end(), text);
    if (found != words.end())
        return static_cast<int> (found - words.begin());
    std::string choice;
    for (const auto& word : words)
        choice += (choice.empty() ? "" : " or ") + word;
    throw Error (quotedText (text) + " must be " + choice);
}

std::vector<int> readKeys (std::string_view text)
{
    constexpr std::string_view separators = " ,\t";
    std::vector<int> keys;
    for (auto start = text.find_first_not_of (separators); start != std::string_view::npos;)
    {
        const auto end = std::min (text.find_first_of (separators, start), text.size());
        const int key = parseKey (text.substr (start, end - start));
        if (std::find (keys.begin(), keys.end(), key) == keys.end())
            keys.push_back (key);
        start = text.find_first_not_of (separators, end);
    }
    if (keys.empty())
        throw Error ("name at least one key, as in \"C4 E4\"");
    return keys;
}

std::vector<double> readQuantities (std::string_view text, const QuantityRange& range)
{
    constexpr std::string_view separators = " ,\t";
    std::vector<double> values;
    for (auto start = text.find_first_not_of (separators); start != std::string_view::npos;)
    {
        const auto end = std::min (text.find_first_of (separators, start), text.size());
        values.push_back (readQuantity (text.substr (start, end - start), range));
        start = text.find_first_not_of (separators, end);
    }
    if (values.empty())
        throw Error ("name at least one value, as in \"47k, 82k\"");
    return values;
}

std::vector<std::string> readNames (std::string_view text)
{
    auto names = namesIn (text);
    if (names.empty())
        throw Error ("the name is empty; name at least one, as in \"Diapason 8, Oboe 8\"");
    return names;
}

std::string readName (std::string_view text)
{
    if (text.find_first_not_of (" \t") == std::string_view::npos)
        throw Error ("the name is empty; name one, as in \"Diapason 8\"");
    return std::string (text);
}

} // namespace

CLI::Option* addQuantity (CLI::App& app,
                          const std::string& name,
                          const QuantityRange& range,
                          double& target,
                          const std::string& help)
{
    return addText (app, name, help,
                    [range, &target] (const std::string& text) { target = readQuantity (text, range); })
        ->type_name ("VALUE");
}

CLI::Option* addQuantities (CLI::App& app,
                            const std::string& name,
                            const QuantityRange& range,
                            std::vector<double>& target,
                            const std::string& help)
{
    return addText (app, name, help,
                    [range, &target] (const std::string& text) { target = readQuantities (text, range); })
        ->type_name ("VALUES");
}

CLI::Option*
    addWhole (CLI::App& app, const std::string& name, int lowest, int highest, int& target, const std::string& help)
{
    return addText (app, name, help,
                    [lowest, highest, &target] (const std::string& text)
                    { target = readWhole (text, lowest, highest); })
        ->type_name ("NUMBER");
}

CLI::Option* addKey (CLI::App& app, const std::string& name, int& target, const std::string& help)
{
    return addText (app, name, help, [&target] (const std::string& text) { target = parseKey (text); })
        ->type_name ("KEY");
}

CLI::Option* addChoice (CLI::App& app,
                        const std::string& name,
                        const std::vector<std::string>& words,
                        int& target,
                        const std::string& help)
{
    return addText (app, name, help, [words, &target] (const std::string& text) { target = readChoice (text, words); });
}

CLI::Option* addName (CLI::App& app, const std::string& name, std::string& target, const std::string& help)
{
    return addText (app, name, help, [&target] (const std::string& text) { target = readName (text); })
        ->type_name ("NAME");
}

CLI::Option*
    addNames (CLI::App& app, const std::string& name, std::vector<std::string>& target, const std::string& help)
{
    return addText (app, name, help, [&target] (const std::string& text) { target = readNames (text); })
        ->type_name ("NAMES");
}

CLI::Option* addKeys (CLI::App& app, const std::string& name, std::vector<int>& target, const std::string& help)
{
    return addText (app, name, help, [&target] (const std::string& text) { target = readKeys (text); })
        ->type_name ("KEYS");
}

} // namespace stopwright
