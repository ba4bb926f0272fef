// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/LayoutFixture.h"

#include <sstream>

namespace stopwright
{

namespace
{

bool isSeen (const juce::Component& component, const juce::Component& window)
{
    auto area = window.getLocalArea (&component, component.getLocalBounds());
    for (const auto* parent = component.getParentComponent(); parent != nullptr && parent != &window;
         parent = parent->getParentComponent())
        area = area.getIntersection (window.getLocalArea (parent, parent->getLocalBounds()));
    return ! area.isEmpty();
}

/// A viewport, or the frame in it that shows a part of something larger.
bool isScrolled (juce::Component& component)
{
    return dynamic_cast<juce::Viewport*> (&component) != nullptr
           || dynamic_cast<juce::Viewport*> (component.getParentComponent()) != nullptr;
}

} // namespace

std::ostream& operator<< (std::ostream& stream, const LayoutCase& layout)
{
    return stream << layout.width << "x" << layout.height << "_text" << layout.textScale * 100.0f << "_pixels"
                  << layout.pixelScale << (layout.isNight ? "_dark" : "_light");
}

std::vector<LayoutCase> windowCases()
{
    return { { 900, 600, 1.0f, 1.0f, false },  { 900, 600, 1.5f, 2.0f, true },   { 1200, 800, 1.0f, 1.0f, false },
             { 1200, 800, 1.5f, 1.0f, false }, { 1680, 1050, 1.0f, 2.0f, true }, { 1680, 1050, 1.5f, 1.0f, false } };
}

std::string nameOf (const testing::TestParamInfo<LayoutCase>& layout)
{
    const auto& shape = layout.param;
    return std::to_string (shape.width) + "Text" + std::to_string (juce::roundToInt (shape.textScale * 100.0f));
}

BenchView& LayoutFixture::open()
{
    settings_->setTextScale (GetParam().textScale);
    settings_->setNight (GetParam().isNight);
    openView (GetParam().width, GetParam().height);
    view_->tick();
    return *view_;
}

juce::Image LayoutFixture::paint (juce::Component& component, std::vector<Lettering::Drawn>& texts) const
{
    Lettering::observer = [&] (const Lettering::Drawn& drawn)
    {
        auto moved = drawn;
        moved.area = component.getLocalArea (drawn.owner, drawn.area);
        moved.needed = component.getLocalArea (drawn.owner, drawn.needed);
        texts.push_back (moved);
    };
    auto image = component.createComponentSnapshot (component.getLocalBounds(), true, GetParam().pixelScale);
    Lettering::observer = {};
    return image;
}

void LayoutFixture::save (const juce::Image& image, const std::string& what) const
{
    std::ostringstream name;
    name << what << "_" << GetParam();
    keepPicture (image, name.str());
}

bool LayoutFixture::isWhollySeen (const juce::Component& component)
{
    const auto* const viewport = component.findParentComponentOfClass<juce::Viewport>();
    return viewport != nullptr
           && viewport->getLocalBounds().contains (viewport->getLocalArea (&component, component.getLocalBounds()));
}

void LayoutFixture::expectNoOverlap (juce::Component& parent) const
{
    const auto& children = parent.getChildren();
    for (int first = 0; first < children.size(); ++first)
    {
        auto* one = children[first];
        // The framework's caret may stand a pixel out of its line.
        if (! one->isVisible() || dynamic_cast<juce::TooltipWindow*> (one) != nullptr
            || dynamic_cast<juce::CaretComponent*> (one) != nullptr)
            continue;
        if (! isScrolled (parent) && dynamic_cast<SchematicView*> (&parent) == nullptr)
        {
            EXPECT_TRUE (parent.getLocalBounds().contains (one->getBounds()) || one->getBounds().isEmpty())
                << one->getTitle() << " sticks out: " << one->getBounds().toString();
            for (int second = first + 1; second < children.size(); ++second)
            {
                auto* other = children[second];
                if (! other->isVisible() || dynamic_cast<juce::TooltipWindow*> (other) != nullptr
                    || dynamic_cast<SheetPage*> (other) != nullptr)
                    continue;
                EXPECT_FALSE (one->getBounds().intersects (other->getBounds()))
                    << one->getTitle() << " and " << other->getTitle();
            }
        }
        expectNoOverlap (*one);
    }
}

void LayoutFixture::expectTextsHaveRoom (const std::vector<Lettering::Drawn>& texts) const
{
    const auto window = view_->getLocalBounds();
    for (std::size_t first = 0; first < texts.size(); ++first)
    {
        const auto& one = texts[first];
        if (! isSeen (*one.owner, *view_))
            continue;
        EXPECT_TRUE (one.area.contains (one.needed))
            << "cut: \"" << one.text << "\" has " << one.area.toString() << " and needs " << one.needed.toString();
        EXPECT_TRUE (window.contains (one.needed.getCentre())) << one.text;
        for (std::size_t second = first + 1; second < texts.size(); ++second)
        {
            const auto& other = texts[second];
            EXPECT_FALSE (other.owner == one.owner && one.needed.intersects (other.needed))
                << "\"" << one.text << "\" over \"" << other.text << "\"";
        }
    }
}

} // namespace stopwright
