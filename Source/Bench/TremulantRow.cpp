// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/TremulantRow.h"

namespace stopwright
{

TremulantRow::TremulantRow (BenchSession& session, const std::string& outlet)
    : rate_ (session, { CardKnob::Place::tremulantRate, outlet, KnobKind::value }, series_),
      depth_ (session, { CardKnob::Place::tremulantDepth, outlet, KnobKind::value }, series_)
{
    addAndMakeVisible (rate_);
    addAndMakeVisible (depth_);
}

void TremulantRow::refresh()
{
    rate_.refresh();
    depth_.refresh();
}

void TremulantRow::resized()
{
    auto area = getLocalBounds();
    rate_.setBounds (area.removeFromTop (area.getHeight() / 2));
    depth_.setBounds (area);
}

} // namespace stopwright
