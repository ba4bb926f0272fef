// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchFixture.h"

#include <fstream>
#include <sstream>
#include <string>

namespace stopwright
{

/// The bench with the demonstration organ, for tests of what is heard of a change.
class OrganSession : public BenchFixture
{
protected:
    static constexpr int upper = 0; ///< of the divisions of the demonstration organ
    static constexpr int lower = 1;

    Engine& engine() { return processor_.engine(); }

    void turn (const std::string& part, double value)
    {
        session_.turn ({ CardKnob::Place::part, part, KnobKind::value }, value);
    }

    /// Puts a text in place of another in a copied document.
    void change (const std::string& file, const std::string& from, const std::string& to)
    {
        std::ifstream in (preset (file));
        std::ostringstream text;
        text << in.rdbuf();
        in.close();
        auto changed = text.str();
        const auto place = changed.find (from);
        ASSERT_NE (place, std::string::npos) << from;
        changed.replace (place, from.size(), to);
        std::ofstream (preset (file)) << changed;
    }
};

} // namespace stopwright
