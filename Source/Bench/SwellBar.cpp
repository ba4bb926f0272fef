// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/SwellBar.h"

#include "Bench/BenchLook.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/Lettering.h"

#include <utility>

namespace stopwright
{

namespace
{

constexpr double stepSize = 0.05;
constexpr float captionWidth = 96.0f;

juce::String percent (double position)
{
    return juce::String (juce::roundToInt (100.0 * position)) + " %";
}

} // namespace

SwellBar::SwellBar (Engine& engine) : engine_ (engine)
{
    setTitle ("Swell shoe");
    setTooltip (
        "Swell shoe: the pedal for loudness, and how far it is open, for the outlets that follow it. It acts behind the "
        "preamps, which can clip however far it is closed. Drag, wheel or arrow keys; MIDI expression (controller 11) moves "
        "it too.");
    setTerm (*this, "swell shoe");
    refresh();
}

void SwellBar::refresh()
{
    const double position = engine_.swell();
    if (std::exchange (shown_, position) == position)
        return;
    setDescription (percent (position));
    repaint();
}

void SwellBar::move (double position)
{
    engine_.setSwell (position);
    refresh();
}

juce::Rectangle<int> SwellBar::barArea() const
{
    return getLocalBounds()
        .withTrimmedLeft (Lettering::px (captionWidth))
        .reduced (Lettering::px (6.0f), Lettering::px (8.0f));
}

void SwellBar::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    const auto caption = getLocalBounds().removeFromLeft (Lettering::px (captionWidth));
    graphics.setColour (colours.ink);
    Lettering::draw (graphics, *this, "Swell " + percent (shown_), Lettering::body(), caption,
                     juce::Justification::centredRight);

    const auto bar = barArea().toFloat();
    const auto open = bar.withWidth (static_cast<float> (shown_) * bar.getWidth());
    graphics.setColour (colours.sheet);
    graphics.fillRect (bar);
    graphics.setColour (colours.result);
    graphics.fillRect (open);
    graphics.setColour (colours.faintInk);
    graphics.drawRect (bar, 1.0f);
    graphics.setColour (colours.ink);
    graphics.fillRect (open.getRight() - 1.5f, bar.getY() - 3.0f, 3.0f, bar.getHeight() + 6.0f);
}

void SwellBar::mouseDown (const juce::MouseEvent& event)
{
    grabKeyboardFocus();
    mouseDrag (event);
}

void SwellBar::mouseDrag (const juce::MouseEvent& event)
{
    const auto bar = barArea().toFloat();
    move (static_cast<double> ((event.position.x - bar.getX()) / bar.getWidth()));
}

void SwellBar::step (int steps)
{
    move (engine_.swell() + steps * stepSize);
}

} // namespace stopwright
