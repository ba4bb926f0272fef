// SPDX-License-Identifier: GPL-3.0-or-later
//
// Whether every reading has room at several sizes and lettering scales, and pictures of them to look at.
#include "Bench/LayoutFixture.h"

namespace stopwright
{

namespace
{

class ReadingLayoutTest : public LayoutFixture
{
protected:
    ReadingPanel& openReadings()
    {
        auto& panel = open().readings();
        session_.draw (stop ("Stopped flute 8"), true);
        panel.setMask (MaskShelf::read (juce::File (STOPWRIGHT_ROOT "/Presets/Masks/Krummhorn8.json")));
        return panel;
    }

    /// Paints the panel, saves it, and looks at every text that was drawn.
    void look (ReadingPanel& panel, const std::string& what)
    {
        std::vector<Lettering::Drawn> texts;
        save (paint (panel, texts), "reading_" + what);
        EXPECT_GE (texts.size(), 8u) << what;
        for (std::size_t first = 0; first < texts.size(); ++first)
        {
            const auto& one = texts[first];
            EXPECT_TRUE (one.area.contains (one.needed)) << what << ": cut: \"" << one.text << "\" has "
                                                         << one.area.toString() << ", needs " << one.needed.toString();
            EXPECT_FALSE (one.text.endsWith ("...") && one.owner == &panel) << what << ": shortened: " << one.text;
            for (std::size_t second = first + 1; second < texts.size(); ++second)
                EXPECT_FALSE (one.needed.intersects (texts[second].needed))
                    << what << ": \"" << one.text << "\" over \"" << texts[second].text << "\"";
        }
    }
};

} // namespace

TEST_P (ReadingLayoutTest, NoTextIsCutOrOverAnother)
{
    auto& panel = openReadings();
    panel.bar().phase().setToggleState (true, juce::sendNotificationSync);
    for (const auto kind : readingKinds)
    {
        panel.choose (kind);
        panel.finish();
        const auto name = panel.chooser().getTitle().fromLastOccurrenceOf (" ", false, false).toStdString();
        look (panel, name);
        const int spots = static_cast<int> (panel.canvas().picture().spots.size());
        ASSERT_GT (spots, 0) << name;
        panel.canvas().choose (spots / 3);
        look (panel, name + "_chosen");
        panel.canvas().choose (-1);
    }
}

TEST_P (ReadingLayoutTest, SentencesHaveRoom)
{
    auto& panel = openReadings();
    panel.setProbe ("nowhere");
    panel.finish();
    look (panel, "refusal");
    panel.setProbe ({});
    panel.choose (ReadingKind::stages);
    session_.retireAll();
    panel.finish();
    look (panel, "undrawn");
}

INSTANTIATE_TEST_SUITE_P (Sizes,
                          ReadingLayoutTest,
                          testing::Values (LayoutCase { 900, 600, 1.0f, 2.0f, true },
                                           LayoutCase { 1200, 800, 1.0f, 1.0f, false },
                                           LayoutCase { 1200, 800, 1.5f, 1.0f, true },
                                           LayoutCase { 1680, 1050, 1.0f, 1.0f, true },
                                           LayoutCase { 1680, 1050, 1.5f, 1.0f, false }),
                          nameOf);

} // namespace stopwright
