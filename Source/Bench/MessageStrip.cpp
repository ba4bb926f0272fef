// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/MessageStrip.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr float lowHeight = 30.0f;
constexpr int maxLines = 3;

} // namespace

MessageStrip::MessageStrip (BenchSession& session) : session_ (session)
{
    setTitle ("Notes");
    dismiss_.setTooltip ("Puts this note away (Escape).");
    dismiss_.onClick = [this] { sessionSays ({}); };
    addChildComponent (dismiss_);
    session_.addListener (*this);
}

MessageStrip::~MessageStrip()
{
    session_.removeListener (*this);
}

void MessageStrip::sessionSays (const std::string& sentence)
{
    sentence_ = juce::String::fromUTF8 (sentence.c_str());
    dismiss_.setVisible (sentence_.isNotEmpty());
    setDescription (sentence_);
    if (onHeightChange)
        onHeightChange();
    resized();
    repaint();
}

void MessageStrip::setStatus (const juce::String& status)
{
    if (status == status_)
        return;
    status_ = status;
    repaint();
}

int MessageStrip::textWidth (int width) const
{
    const int button = Lettering::widthOf (Lettering::body(), dismiss_.getButtonText()) + Lettering::px (24.0f);
    return std::max (100, width - button - Lettering::px (14.0f + 14.0f + 26.0f));
}

juce::TextLayout MessageStrip::layoutFor (int width) const
{
    juce::AttributedString attributed;
    attributed.setJustification (juce::Justification::centredLeft);
    attributed.append (sentence_, Lettering::body(), BenchLook::paletteOf (*this).ink);
    juce::TextLayout layout;
    layout.createLayout (attributed, static_cast<float> (textWidth (width)));
    return layout;
}

int MessageStrip::heightFor (int width) const
{
    if (sentence_.isEmpty())
        return Lettering::px (lowHeight);
    const auto layout = layoutFor (width);
    const float lineHeight = Lettering::body().getHeight();
    const float height = std::min (layout.getHeight(), lineHeight * 1.25f * maxLines);
    return std::max (Lettering::px (lowHeight), static_cast<int> (height) + Lettering::px (10.0f));
}

void MessageStrip::resized()
{
    const int width = Lettering::widthOf (Lettering::body(), dismiss_.getButtonText()) + Lettering::px (24.0f);
    dismiss_.setBounds (getLocalBounds()
                            .removeFromRight (width + Lettering::px (8.0f))
                            .withWidth (width)
                            .withSizeKeepingCentre (width, Lettering::px (26.0f)));
}

void MessageStrip::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    auto area = getLocalBounds().reduced (Lettering::px (14.0f), 0);
    if (sentence_.isEmpty())
    {
        graphics.setColour (colours.faintInk);
        Lettering::draw (graphics, *this, status_, Lettering::small(), area);
        return;
    }

    graphics.setColour (colours.sheet);
    graphics.fillRect (getLocalBounds());
    graphics.setColour (colours.notice);
    graphics.drawRect (getLocalBounds(), 2);

    // A triangle with a bar: a sentence to read, also without its colour.
    const auto sign = area.removeFromLeft (Lettering::px (26.0f))
                          .toFloat()
                          .withSizeKeepingCentre (18.0f * Lettering::scale(), 16.0f * Lettering::scale());
    juce::Path triangle;
    triangle.addTriangle (sign.getCentreX(), sign.getY(), sign.getRight(), sign.getBottom(), sign.getX(),
                          sign.getBottom());
    graphics.strokePath (triangle, juce::PathStrokeType (1.8f));
    graphics.fillRect (sign.withSizeKeepingCentre (2.0f, sign.getHeight() * 0.42f).translated (0.0f, 2.0f));
    layoutFor (getWidth()).draw (graphics, area.withWidth (textWidth (getWidth())).toFloat());
}

} // namespace stopwright
