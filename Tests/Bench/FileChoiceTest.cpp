// SPDX-License-Identifier: GPL-3.0-or-later
//
// The window's own choice of a file, for desktops that bring none: in its lettering, by day and by night.
#include "Bench/BenchFixture.h"
#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"

#include <algorithm>
#include <map>

namespace stopwright
{

namespace
{

class FileChoiceTest : public BenchFixture
{
protected:
    FileChoiceTest() { juce::LookAndFeel::setDefaultLookAndFeel (&look_); }

    ~FileChoiceTest() override
    {
        juce::LookAndFeel::setDefaultLookAndFeel (nullptr);
        Lettering::setScale (1.0f);
    }

    /// A painted choice of a card among the presets, and what was written into its rows.
    juce::Image paint (int width, std::vector<Lettering::Drawn>& texts)
    {
        const juce::File folder (folder_.string());
        const juce::WildcardFileFilter filter ("*.json", "*", "cards");
        juce::FileBrowserComponent browser (juce::FileBrowserComponent::openMode
                                                | juce::FileBrowserComponent::canSelectFiles,
                                            folder, &filter, nullptr);
        browser.setSize (width, 480);
        auto* const list = findWithin<juce::ListBox> (browser);
        for (int wait = 0; wait < 100 && list != nullptr && list->getModel()->getNumRows() == 0; ++wait)
            runMessages (50); // the folder is read on a thread
        Lettering::observer = [&texts] (const Lettering::Drawn& drawn) { texts.push_back (drawn); };
        const auto image = browser.createComponentSnapshot (browser.getLocalBounds());
        Lettering::observer = {};
        return image;
    }

    static const Lettering::Drawn* find (const std::vector<Lettering::Drawn>& texts, const juce::String& text)
    {
        const auto found = std::ranges::find_if (texts, [&] (const auto& drawn) { return drawn.text.contains (text); });
        return found == texts.end() ? nullptr : &*found;
    }

    BenchLook look_;
};

} // namespace

TEST_F (FileChoiceTest, ItsRowsGrowWithTheTextAndNothingIsCut)
{
    std::map<float, int> heights;
    for (const float scale : { 1.0f, 1.5f })
    {
        Lettering::setScale (scale);
        look_.setNight (scale > 1.0f);
        std::vector<Lettering::Drawn> texts;
        keepPicture (paint (juce::roundToInt (640.0f * scale), texts),
                     scale > 1.0f ? "file_choice_150" : "file_choice_100");
        const auto* const name = find (texts, "Krummhorn8.json");
        ASSERT_NE (name, nullptr);
        heights[scale] = name->needed.getHeight();
        EXPECT_NE (find (texts, " KB"), nullptr);
        EXPECT_NE (find (texts, ":"), nullptr); // a time
        EXPECT_EQ (find (texts, "..."), nullptr);
        for (const auto& drawn : texts)
        {
            EXPECT_TRUE (drawn.area.contains (drawn.needed)) << drawn.text;
        }
    }
    EXPECT_GE (heights[1.5f], heights[1.0f] * 14 / 10);
}

TEST_F (FileChoiceTest, ANarrowOneShowsTheNamesAlone)
{
    std::vector<Lettering::Drawn> texts;
    paint (360, texts);
    ASSERT_NE (find (texts, "Krummhorn8.json"), nullptr);
    EXPECT_EQ (find (texts, "KB"), nullptr);
    EXPECT_EQ (find (texts, "bytes"), nullptr);
}

TEST_F (FileChoiceTest, SizesAndTimesAreAsDarkAsTheNamesByDayAndAsLightByNight)
{
    for (const bool isNight : { false, true })
    {
        look_.setNight (isNight);
        std::vector<Lettering::Drawn> texts;
        const auto image = paint (640, texts);
        const auto ink = look_.palette().ink;
        int inked = 0;
        for (int y = 40; y < 300; ++y)
            for (int x = 440; x < 610; ++x)
                inked += image.getPixelAt (x, y) == ink;
        EXPECT_GT (inked, 10) << (isNight ? "night" : "day");
    }
}

} // namespace stopwright
