// SPDX-License-Identifier: GPL-3.0-or-later
//
// Where everything in BenchView is, and what of it is left out.
#include "Bench/BenchView.h"
#include "Bench/Lettering.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr float gap = 8.0f;
constexpr float levelHeight = 100.0f;
constexpr float railShare = 0.2f;
constexpr float narrowestRail = 196.0f;
constexpr float widestRail = 230.0f;
constexpr float sheetShare = 0.6f;
constexpr float narrowestReadings = 356.0f;
constexpr float lowestKeyboard = 82.0f; ///< two rows of letters under the sharps
constexpr float highestKeyboard = 150.0f;
constexpr float heightBesideKeyboard = 400.0f; ///< of the window, before the keyboard grows

} // namespace

int BenchView::keyboardHeight() const
{
    if (! settings_.isKeyboardShown())
        return 0;
    return juce::jlimit (Lettering::px (lowestKeyboard), Lettering::px (highestKeyboard),
                         (getHeight() - Lettering::px (heightBesideKeyboard)) / 3);
}

void BenchView::resized()
{
    if (getWidth() <= 0 || getHeight() <= 0)
        return;
    const float room =
        std::min (static_cast<float> (getWidth()) / smallestWidth, static_cast<float> (getHeight()) / smallestHeight);
    Lettering::setScale (std::min (textScale_, room));

    auto area = getLocalBounds();
    const int space = Lettering::px (gap);
    header_.setBounds (area.removeFromTop (header_.heightFor (area.getWidth())));
    messages_.setBounds (area.removeFromBottom (messages_.heightFor (area.getWidth())));
    area.reduce (space, 0);
    area.removeFromTop (space);

    playBar_.showKeyboard (settings_.isKeyboardShown());
    playBar_.setBounds (area.removeFromBottom (keyboardHeight() + Lettering::px (PlayBar::rowHeight)));
    area.removeFromBottom (Lettering::px (4.0f));

    column_.setVisible (session_.document().instrument.has_value() && settings_.isRailShown());
    if (column_.isVisible())
    {
        const int share = juce::roundToInt (railShare * static_cast<float> (area.getWidth()));
        column_.setBounds (
            area.removeFromLeft (juce::jlimit (Lettering::px (narrowestRail), Lettering::px (widestRail), share)));
        area.removeFromLeft (space);
    }
    const int sheetWidth = std::min (juce::roundToInt (sheetShare * static_cast<float> (area.getWidth())),
                                     area.getWidth() - space - Lettering::px (narrowestReadings));
    sheet_.setBounds (area.removeFromLeft (sheetWidth));
    area.removeFromLeft (space);
    level_.setBounds (area.removeFromBottom (Lettering::px (levelHeight)));
    area.removeFromBottom (space);
    readings_.setBounds (area);
    if (page_ != nullptr)
        page_->setBounds (getLocalBounds());

    // Children whose bounds stayed the same still have to follow the lettering.
    for (auto* panel : panels())
        panel->resized();
}

void BenchView::showRail (bool isShown)
{
    settings_.setRailShown (isShown);
    resized();
}

void BenchView::showKeyboard (bool isShown)
{
    settings_.setKeyboardShown (isShown);
    resized();
}

} // namespace stopwright
