// SPDX-License-Identifier: GPL-3.0-or-later
//
// Whether every reading has room at several sizes and lettering scales, and pictures of them to look at.
#include "Bench/BenchFixture.h"
#include "Bench/Lettering.h"

#include <sstream>

namespace stopwright
{

namespace
{

struct Case
{
    int width;
    int height;
    float textScale;
    float pixelScale;
    bool isNight;
};

std::ostream& operator<< (std::ostream& stream, const Case& layout)
{
    return stream << layout.width << "x" << layout.height << "_text" << layout.textScale * 100.0f
                  << (layout.isNight ? "_dark" : "_light");
}

class ReadingLayoutTest : public BenchFixture, public testing::WithParamInterface<Case>
{
protected:
    ReadingPanel& open()
    {
        settings_->setTextScale (GetParam().textScale);
        settings_->setNight (GetParam().isNight);
        auto& panel = openView (GetParam().width, GetParam().height).readings();
        session_.draw (stop ("Stopped flute 8"), true);
        panel.setMask (MaskShelf::read (juce::File (STOPWRIGHT_ROOT "/Presets/Masks/Krummhorn8.json")));
        return panel;
    }

    /// Paints the panel, saves it, and looks at every text that was drawn.
    void look (ReadingPanel& panel, const std::string& what)
    {
        std::vector<Lettering::Drawn> texts;
        Lettering::observer = [&] (const Lettering::Drawn& drawn)
        {
            auto moved = drawn;
            moved.area = panel.getLocalArea (drawn.owner, drawn.area);
            moved.needed = panel.getLocalArea (drawn.owner, drawn.needed);
            texts.push_back (moved);
        };
        const auto image = panel.createComponentSnapshot (panel.getLocalBounds(), true, GetParam().pixelScale);
        Lettering::observer = {};
        save (image, what);
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

    void save (const juce::Image& image, const std::string& what)
    {
        const std::filesystem::path folder = std::filesystem::path (STOPWRIGHT_PICTURES);
        std::filesystem::create_directories (folder);
        std::ostringstream name;
        name << "reading_" << what << "_" << GetParam() << ".png";
        juce::File file ((folder / name.str()).string());
        file.deleteFile();
        juce::FileOutputStream stream (file);
        ASSERT_TRUE (juce::PNGImageFormat().writeImageToStream (image, stream));
    }
};

} // namespace

TEST_P (ReadingLayoutTest, NoTextIsCutOrOverAnother)
{
    auto& panel = open();
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
    auto& panel = open();
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
                          testing::Values (Case { 900, 600, 1.0f, 2.0f, true },
                                           Case { 1200, 800, 1.0f, 1.0f, false },
                                           Case { 1200, 800, 1.5f, 1.0f, true },
                                           Case { 1680, 1050, 1.0f, 1.0f, true },
                                           Case { 1680, 1050, 1.5f, 1.0f, false }),
                          [] (const testing::TestParamInfo<Case>& layout)
                          {
                              const auto& shape = layout.param;
                              return std::to_string (shape.width) + "Text"
                                     + std::to_string (juce::roundToInt (shape.textScale * 100.0f));
                          });

} // namespace stopwright
