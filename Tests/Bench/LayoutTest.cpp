// SPDX-License-Identifier: GPL-3.0-or-later
//
// Whether everything in the window has room, at several sizes and lettering scales, and pictures of it to look at.
#include "Bench/AudioPage.h"
#include "Bench/BenchFixture.h"
#include "Bench/Lettering.h"

#include <algorithm>
#include <fstream>

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
    return stream << layout.width << "x" << layout.height << "_text" << layout.textScale * 100.0f << "_pixels"
                  << layout.pixelScale << (layout.isNight ? "_dark" : "_light");
}

class LayoutTest : public BenchFixture, public testing::WithParamInterface<Case>
{
protected:
    /// Paints the window, with every text that it draws listed in window coordinates.
    juce::Image paint (std::vector<Lettering::Drawn>& texts)
    {
        Lettering::observer = [&] (const Lettering::Drawn& drawn)
        {
            auto moved = drawn;
            moved.area = view_->getLocalArea (drawn.owner, drawn.area);
            moved.needed = view_->getLocalArea (drawn.owner, drawn.needed);
            texts.push_back (moved);
        };
        auto image = view_->createComponentSnapshot (view_->getLocalBounds(), true, GetParam().pixelScale);
        Lettering::observer = {};
        return image;
    }

    static bool isSeen (const juce::Component& component, const juce::Component& window)
    {
        auto area = window.getLocalArea (&component, component.getLocalBounds());
        for (const auto* parent = component.getParentComponent(); parent != nullptr && parent != &window;
             parent = parent->getParentComponent())
            area = area.getIntersection (window.getLocalArea (parent, parent->getLocalBounds()));
        return ! area.isEmpty();
    }

    bool isWhollySeen (const juce::Component& component) const
    {
        const auto* const viewport = component.findParentComponentOfClass<juce::Viewport>();
        return viewport != nullptr
               && viewport->getLocalBounds().contains (viewport->getLocalArea (&component, component.getLocalBounds()));
    }

    /// A viewport, or the frame in it that shows a part of something larger.
    static bool isScrolled (juce::Component& component)
    {
        return dynamic_cast<juce::Viewport*> (&component) != nullptr
               || dynamic_cast<juce::Viewport*> (component.getParentComponent()) != nullptr;
    }

    void expectNoOverlap (juce::Component& parent)
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

    void expectTextsHaveRoom (const std::vector<Lettering::Drawn>& texts)
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

    void save (const juce::Image& image, const std::string& what)
    {
        const std::filesystem::path folder = std::filesystem::path (STOPWRIGHT_PICTURES);
        std::filesystem::create_directories (folder);
        std::ostringstream name;
        name << what << "_" << GetParam() << ".png";
        juce::File file ((folder / name.str()).string());
        file.deleteFile();
        juce::FileOutputStream stream (file);
        ASSERT_TRUE (juce::PNGImageFormat().writeImageToStream (image, stream));
    }

    void open()
    {
        settings_->setTextScale (GetParam().textScale);
        settings_->setNight (GetParam().isNight);
        openView (GetParam().width, GetParam().height);
        view_->tick();
    }
};

} // namespace

TEST_P (LayoutTest, NoTextIsCutAndNothingOverlaps)
{
    open();
    processor_.engine().key (60, true);
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value },
                   21540.0); // off the series and unsaved: the longest texts
    play (0.2);
    view_->tick();
    view_->readings().finish();
    std::vector<Lettering::Drawn> texts;
    const auto image = paint (texts);
    save (image, "bench");
    EXPECT_GE (texts.size(), 60u);
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
}

TEST_P (LayoutTest, TheStopListHasRoomToItsEnd)
{
    open();
    Telemetry telemetry;
    telemetry.clips = ~std::uint64_t { 0 }; // every lamp lit
    view_->rail().show (telemetry);
    for (std::size_t index = 0; index < session_.document().instrument->stops.size(); ++index)
        session_.draw (static_cast<int> (index), true); // bold names
    std::vector<Lettering::Drawn> texts;
    save (paint (texts), "stops");
    expectTextsHaveRoom (texts);

    view_->rail().showEnd();
    texts.clear();
    save (paint (texts), "stops_end");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    EXPECT_TRUE (std::ranges::any_of (texts, [] (const auto& drawn) { return drawn.text.endsWith (": clipped"); }));
}

TEST_P (LayoutTest, TheKnobsOfTheTremulantHaveRoom)
{
    open();
    auto* const knobs = view_->rail().findTremulantRow ("Tremulant");
    ASSERT_NE (knobs, nullptr);
    knobs->rate().takeText ("16.66"); // the longest texts
    knobs->depth().takeText ("88.8 %");
    knobs->depth().grabKeyboardFocus(); // brings it into sight
    std::vector<Lettering::Drawn> texts;
    save (paint (texts), "tremulant");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    for (const auto* text : { "rate", "16.7 Hz", "depth", "88.8 %" })
        EXPECT_TRUE (std::ranges::any_of (texts, [&] (const auto& drawn) { return drawn.text == text; })) << text;
}

TEST_P (LayoutTest, TheNameOfANodeIsTypedInSight)
{
    open();
    auto& schematic = view_->sheet().schematic();
    schematic.setProbe ("t");
    schematic.beginNodeRenaming();
    std::vector<Lettering::Drawn> texts;
    save (paint (texts), "node-name");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    const auto isEditor = [] (auto* child) { return dynamic_cast<juce::TextEditor*> (child) != nullptr; };
    const auto editor = std::ranges::find_if (schematic.getChildren(), isEditor);
    ASSERT_NE (editor, schematic.getChildren().end());
    EXPECT_TRUE (isWhollySeen (**editor));
}

TEST_P (LayoutTest, APhraseThatPlaysHasRoom)
{
    open();
    processor_.deck().play ({ .keys = { { 0.0, 60, true }, { 700.0, 60, false } }, .seconds = 700.0 });
    play (0.2);
    view_->tick();
    Telemetry telemetry;
    telemetry.limiterReductionDb = 12.34; // as when a whole organ is played
    view_->level().show (telemetry);
    std::vector<Lettering::Drawn> texts;
    save (paint (texts), "phrase");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    EXPECT_TRUE (std::ranges::any_of (texts, [] (const auto& drawn) { return drawn.text == "0:00 of 11:40"; }));
}

TEST_P (LayoutTest, ACardAloneHasRoom)
{
    session_.open (preset ("Krummhorn8.json"));
    open();
    std::vector<Lettering::Drawn> texts;
    save (paint (texts), "card");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
}

TEST_P (LayoutTest, PagesAndSentencesHaveRoom)
{
    open();
    session_.say ("Krummhorn8.json: /parts/3/value: \"4x7\" is no resistance; write for instance 4k7, 47k or 150.");
    view_->begin();
    std::vector<Lettering::Drawn> texts;
    const auto image = paint (texts);
    save (image, "cautions");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
}

TEST_P (LayoutTest, TheGlossaryHasRoom)
{
    open();
    view_->showGlossary ("retired grounded");
    std::vector<Lettering::Drawn> texts;
    save (paint (texts), "glossary");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    EXPECT_TRUE (std::ranges::any_of (texts, [] (const auto& drawn) { return drawn.text == "retired grounded"; }));
}

TEST_P (LayoutTest, TheAudioSetUpHasRoom)
{
    open();
    AudioHost host (processor_);
    auto controls = std::make_unique<AudioPage> (host);
    juce::StringArray names;
    for (int number = 1; number <= AudioPage::mostInputs + 2; ++number)
        names.add ("Keyboard controller, port " + juce::String (number));
    controls->showInputs (names);
    std::vector<SheetPage::Choice> choices;
    choices.push_back ({ "Try again", [] {} });
    choices.push_back ({ "Go on silent", [] {} });
    view_->showPage (std::make_unique<SheetPage> ("No sound device", AudioHost::noDeviceSentence(), std::move (choices),
                                                  std::move (controls), AudioPage::heightWanted()));
    std::vector<Lettering::Drawn> texts;
    save (paint (texts), "audio");
    expectTextsHaveRoom (texts);
    expectNoOverlap (*view_);
    view_->closePage(); // before the host
}

TEST_P (LayoutTest, FilesHeldOverTheWindowHaveRoom)
{
    open();
    view_->fileDragEnter ({ "/home/Organ of the school, as found.json" }, 0, 0);
    std::vector<Lettering::Drawn> texts;
    save (paint (texts), "drop");
    expectTextsHaveRoom (texts);
}

INSTANTIATE_TEST_SUITE_P (Sizes,
                          LayoutTest,
                          testing::Values (Case { 900, 600, 1.0f, 1.0f, false },
                                           Case { 900, 600, 1.5f, 2.0f, true },
                                           Case { 1200, 800, 1.0f, 1.0f, false },
                                           Case { 1200, 800, 1.5f, 1.0f, false },
                                           Case { 1680, 1050, 1.0f, 2.0f, true },
                                           Case { 1680, 1050, 1.5f, 1.0f, false }),
                          [] (const testing::TestParamInfo<Case>& layout)
                          {
                              const auto& shape = layout.param;
                              return std::to_string (shape.width) + "Text"
                                     + std::to_string (juce::roundToInt (shape.textScale * 100.0f)) + "Pixels"
                                     + std::to_string (juce::roundToInt (shape.pixelScale));
                          });

} // namespace stopwright
