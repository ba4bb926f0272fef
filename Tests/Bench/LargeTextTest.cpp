// SPDX-License-Identifier: GPL-3.0-or-later
//
// Whether large text is large everywhere, and not only where it was thought of.
#include "Bench/BenchFixture.h"
#include "Bench/Lettering.h"

#include <algorithm>
#include <functional>
#include <map>

namespace stopwright
{

namespace
{

class LargeTextTest : public BenchFixture
{
protected:
    /// The height of each text that is drawn; of several alike the least.
    std::map<juce::String, int> heights()
    {
        std::map<juce::String, int> found;
        Lettering::observer = [&] (const Lettering::Drawn& drawn)
        {
            const auto [place, isFirst] = found.try_emplace (drawn.text, drawn.needed.getHeight());
            if (! isFirst)
                place->second = std::min (place->second, drawn.needed.getHeight());
        };
        view_->createComponentSnapshot (view_->getLocalBounds());
        Lettering::observer = {};
        return found;
    }

    void expectGrowth (const std::map<juce::String, int>& plain, const std::map<juce::String, int>& large)
    {
        int compared = 0;
        for (const auto& [text, height] : plain)
            if (const auto found = large.find (text); found != large.end())
            {
                // An ascent is rounded up to a whole pixel at both sizes.
                EXPECT_GE (found->second, static_cast<int> (1.5 * (height - 1))) << text;
                ++compared;
            }
        EXPECT_GE (compared, 8);
    }
};

} // namespace

TEST_F (LargeTextTest, EveryTextOfTheWindowGrowsByTheScaleWhereThereIsRoom)
{
    openView (1680, 1050);
    const auto plain = heights();
    EXPECT_GE (plain.size(), 60U);
    view_->setTextScale (1.5f);
    EXPECT_EQ (Lettering::scale(), 1.5f);
    expectGrowth (plain, heights());
}

TEST_F (LargeTextTest, PagesGrowToo)
{
    openView (1680, 1050);
    view_->showGlossary ("tap");
    const auto plain = heights();
    view_->closePage();
    view_->setTextScale (1.5f);
    view_->showGlossary ("tap");
    expectGrowth (plain, heights());
    view_->closePage();

    view_->begin(); // the cautions, in a text field
    std::function<juce::TextEditor*(juce::Component&)> find = [&] (juce::Component& parent) -> juce::TextEditor*
    {
        for (auto* child : parent.getChildren())
        {
            if (auto* editor = dynamic_cast<juce::TextEditor*> (child))
                return editor;
            if (auto* editor = find (*child))
                return editor;
        }
        return nullptr;
    };
    auto* text = find (*view_);
    ASSERT_NE (text, nullptr);
    EXPECT_NEAR (text->getFont().getHeight(), 1.5f * 15.0f, 0.01f);
}

TEST_F (LargeTextTest, TheCautionsAreReadWithoutScrolling)
{
    for (const float scale : { 1.0f, 1.5f })
        for (const auto& [width, height] : { std::pair { 900, 600 }, std::pair { 1680, 1050 } })
        {
            settings_->setTextScale (scale);
            openView (width, height).begin();
            auto* const page = findWithin<SheetPage> (*view_);
            ASSERT_NE (page, nullptr);
            auto* const text = findWithin<juce::TextEditor> (*page);
            ASSERT_NE (text, nullptr);
            EXPECT_LE (text->getTextHeight(), text->getHeight()) << width << " x " << height << " at " << scale;
            view_.reset();
        }
}

TEST_F (LargeTextTest, MenusAndTooltipsGrowToo)
{
    openView (1680, 1050);
    auto* look = dynamic_cast<BenchLook*> (&view_->getLookAndFeel());
    ASSERT_NE (look, nullptr);
    const float menu = look->getPopupMenuFont().getHeight();
    const juce::Rectangle<int> screen (0, 0, 1680, 1050);
    const auto tooltip = look->getTooltipBounds ("Tap: a keyed bus this stop takes its wave from.", {}, screen);
    view_->setTextScale (1.5f);
    EXPECT_NEAR (look->getPopupMenuFont().getHeight(), 1.5f * menu, 0.01f);
    EXPECT_GE (look->getTooltipBounds ("Tap: a keyed bus this stop takes its wave from.", {}, screen).getHeight(),
               static_cast<int> (1.4 * tooltip.getHeight()));
}

} // namespace stopwright
