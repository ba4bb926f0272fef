// SPDX-License-Identifier: GPL-3.0-or-later
//
// How SchematicView is painted.
#include "Bench/SchematicView.h"

#include "Bench/BenchLook.h"
#include "Bench/DrawingPainter.h"
#include "Circuit/FindingPlace.h"

namespace stopwright
{

std::optional<juce::Rectangle<float>> SchematicView::placeOfFault (const Finding& finding) const
{
    const auto place = findingPlace (finding, netlistOf (session_.card()));
    if (place.kind == FindingPlace::Kind::node)
    {
        const auto* const node = layout_.findNode (place.name);
        if (node == nullptr)
            return {};
        return juce::Rectangle<float> (22.0f, 22.0f).withCentre (toView (node->probe));
    }
    const auto* const item = itemOf ({ place.kind == FindingPlace::Kind::tap, place.name });
    if (item == nullptr)
        return {};
    const float side = 2.0f * static_cast<float> (item->ringRadius) * scale_ + 8.0f;
    return juce::Rectangle<float> (side, side).withCentre (toView (item->middle));
}

/// A dashed circle in the colour of notices round what a finding is about.
void SchematicView::paintFaults (juce::Graphics& graphics) const
{
    graphics.setColour (BenchLook::paletteOf (*this).notice);
    for (const auto& finding : session_.faults())
    {
        const auto place = placeOfFault (finding);
        if (! place)
            continue;
        juce::Path circle;
        circle.addEllipse (*place);
        juce::Path dashed;
        const float dashes[] = { 6.0f, 3.0f };
        juce::PathStrokeType (2.0f).createDashedStroke (dashed, circle, dashes, 2);
        graphics.fillPath (dashed);
    }
}

/// A flag with a point at the node.
void SchematicView::paintProbe (juce::Graphics& graphics) const
{
    const auto* const node = probe_.empty() ? nullptr : layout_.findNode (probe_);
    if (node == nullptr)
        return;
    const auto at = toView (node->probe);
    const float unit = 7.0f * scale_;
    juce::Path probe;
    probe.startNewSubPath (at);
    probe.lineTo (at.translated (unit, -2.0f * unit));
    probe.lineTo (at.translated (2.2f * unit, -1.4f * unit));
    probe.closeSubPath();
    const auto& colours = BenchLook::paletteOf (*this);
    graphics.setColour (colours.result);
    graphics.fillPath (probe);
    graphics.fillEllipse (juce::Rectangle<float> (7.0f, 7.0f).withCentre (at));
}

void SchematicView::paint (juce::Graphics& graphics)
{
    {
        const juce::Graphics::ScopedSaveState state (graphics);
        graphics.addTransform (juce::AffineTransform::scale (scale_).translated (origin_));
        DrawingPainter (graphics, BenchLook::paletteOf (*this)).paint (drawing_);
    }
    paintFaults (graphics);
}

void SchematicView::paintOverChildren (juce::Graphics& graphics)
{
    if (! nameEditor_.isOpen()) // it would lie on the line
        paintProbe (graphics);
    for (const auto& handle : handles_)
    {
        const auto place = handle->draggedTo();
        if (! place)
            continue;
        graphics.setColour (BenchLook::paletteOf (*this).result);
        const float dashes[] = { 5.0f, 4.0f };
        graphics.drawDashedLine ({ handle->getBounds().getCentre().toFloat(), *place }, dashes, 2, 2.0f);
        const auto node = layout_.nodeAt (fromView (*place), wireTolerance);
        graphics.drawEllipse (juce::Rectangle<float> (12.0f, 12.0f).withCentre (*place), node ? 3.0f : 1.0f);
    }
}

} // namespace stopwright
