// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Study/RailStudy.h"
#include "Study/StopEffect.h"
#include "Study/TapLoad.h"

#include <iosfwd>
#include <vector>

namespace stopwright
{

/// What `stopwright effect` prints, as tables and as CSV. Threading: [control].
class EffectReport
{
public:
    EffectReport (const RailStudy& study, std::size_t stop, const RailState& state, double limitDb);

    void printTables (std::ostream& out) const;
    void csvStops (std::ostream& out) const;
    void csvTaps (std::ostream& out) const;

private:
    bool isOverLimit (const OtherStopChange& change) const noexcept;
    void printStops (std::ostream& out) const;
    void printTaps (std::ostream& out) const;
    void printTapNotes (const TapLoad& load, std::ostream& out) const;
    void printWarnings (std::ostream& out) const;

    const RailStudy& study_;
    std::size_t stop_;
    double limitDb_;
    std::vector<OtherStopChange> changes_;
    std::vector<TapLoad> loads_;
};

} // namespace stopwright
