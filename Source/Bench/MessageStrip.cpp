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
    dismiss_.onClick = [this] { show ({}, false); };
    addChildComponent (dismiss_);
    session_.addListener (*this);
}

MessageStrip::~MessageStrip()
{
    session_.removeListener (*this);
}

void MessageStrip::show (const std::string& sentence, bool isWarning)
{
    isWarning_ = isWarning;
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
    graphics.setColour (isWarning_ ? colours.notice : colours.faintInk);
    graphics.drawRect (getLocalBounds(), isWarning_ ? 2 : 1);

    paintSign (graphics, area.removeFromLeft (Lettering::px (26.0f)).toFloat());
    layoutFor (getWidth()).draw (graphics, area.withWidth (textWidth (getWidth())).toFloat());
}

/// Known apart without their colour: a triangle with a bar for a sentence to mind, a tick for what was done.
void MessageStrip::paintSign (juce::Graphics& graphics, juce::Rectangle<float> area) const
{
    const auto sign = area.withSizeKeepingCentre (18.0f * Lettering::scale(), 16.0f * Lettering::scale());
    juce::Path path;
    if (isWarning_)
    {
        path.addTriangle (sign.getCentreX(), sign.getY(), sign.getRight(), sign.getBottom(), sign.getX(),
                          sign.getBottom());
        graphics.fillRect (sign.withSizeKeepingCentre (2.0f, sign.getHeight() * 0.42f).translated (0.0f, 2.0f));
    }
    else
    {
        path.startNewSubPath (sign.getRelativePoint (0.1f, 0.5f));
        path.lineTo (sign.getRelativePoint (0.4f, 0.85f));
        path.lineTo (sign.getRelativePoint (0.9f, 0.15f));
    }
    graphics.strokePath (path, juce::PathStrokeType (1.8f));
}

} // namespace stopwright
