// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchFixture.h"

#include <algorithm>
#include <fstream>
#include <sstream>

namespace stopwright
{

namespace
{

class ReadingPanelTest : public BenchFixture
{
protected:
    ReadingPanel& open()
    {
        auto& panel = openView().readings();
        session_.addListener (listener_);
        return panel;
    }

    ~ReadingPanelTest() override { session_.removeListener (listener_); }

    ReadingPanel& show (ReadingKind kind)
    {
        auto& panel = open();
        panel.choose (kind);
        panel.finish();
        return panel;
    }

    const HarmonicReading& harmonics() { return *view_->readings().result().as<HarmonicReading>(); }

    static std::string contentOf (const std::filesystem::path& file)
    {
        std::ifstream stream (file, std::ios::binary);
        std::ostringstream text;
        text << stream.rdbuf();
        return text.str();
    }

    juce::File fileIn (const std::string& name) const { return juce::File ((folder_ / name).string()); }

    struct Listener : BenchSession::Listener
    {
        void sessionSays (const std::string& sentence) override { said = sentence; }

        std::string said;
    };

    Listener listener_;
};

} // namespace

TEST_F (ReadingPanelTest, FollowsTheKeyAndTheKnobs)
{
    auto& panel = open();
    EXPECT_EQ (harmonics().key, 60);
    const double before = harmonics().bars.back().resultPeakVolts;

    panel.setKey (48);
    panel.finish();
    EXPECT_EQ (harmonics().key, 48);
    EXPECT_NEAR (harmonics().keyHz, 130.81, 0.2);

    panel.setKey (60);
    cell ("C4").takeText ("8n2"); // eight times the capacitor across the output
    panel.finish();
    EXPECT_LT (harmonics().bars.back().resultPeakVolts, 0.5 * before);
}

TEST_F (ReadingPanelTest, TellsTheNumbersOfAPartial)
{
    auto& panel = open();
    EXPECT_TRUE (panel.readingText().startsWith ("Strongest: partial ")) << panel.readingText();
    panel.canvas().choose (1);
    EXPECT_TRUE (panel.readingText().startsWith ("Partial 2, 523 Hz")) << panel.readingText();
    panel.canvas().keyPressed (juce::KeyPress (juce::KeyPress::rightKey));
    EXPECT_TRUE (panel.readingText().startsWith ("Partial 3, 785 Hz")) << panel.readingText();
    EXPECT_TRUE (panel.readingText().contains (" pp of ")) << panel.readingText();
    panel.setLevelUnit (LevelUnit::voltsRms);
    EXPECT_TRUE (panel.readingText().contains (" rms of ")) << panel.readingText();
    panel.setLevelUnit (LevelUnit::dbu);
    EXPECT_TRUE (panel.readingText().contains (" dBu of ")) << panel.readingText();
    panel.canvas().choose (9999);
    EXPECT_TRUE (panel.readingText().startsWith ("Strongest")) << panel.readingText();
}

TEST_F (ReadingPanelTest, TheArrowKeysGoThroughAllReadings)
{
    auto& panel = open();
    panel.chooser().grabKeyboardFocus();
    EXPECT_TRUE (panel.chooser().hasKeyboardFocus (false));
    for (std::size_t kind = 1; kind < readingKinds.size(); ++kind)
    {
        ASSERT_TRUE (panel.chooser().keyPressed (juce::KeyPress (juce::KeyPress::rightKey)));
        panel.finish();
        EXPECT_EQ (panel.choices().kind, readingKinds[kind]);
        EXPECT_FALSE (panel.canvas().picture().spots.empty()) << kind;
        EXPECT_TRUE (panel.canvas().sentence().isEmpty()) << panel.canvas().sentence();
        EXPECT_EQ (panel.result().reading.index(), kind + 1);
    }
    panel.chooser().keyPressed (juce::KeyPress (juce::KeyPress::rightKey));
    EXPECT_EQ (panel.choices().kind, ReadingKind::stages) << "the last stays";
    EXPECT_FALSE (panel.chooser().keyPressed (juce::KeyPress ('3'))) << "number keys are the keyboard's";
}

TEST_F (ReadingPanelTest, AWordIsChosenByTheMouse)
{
    auto& panel = open();
    const auto place = panel.chooser().areaOf (ReadingKind::wave).getCentre();
    mousePress (panel.chooser(), place);
    mouseRelease (panel.chooser(), place);
    EXPECT_EQ (panel.choices().kind, ReadingKind::wave);
    EXPECT_TRUE (panel.bar().volts().isVisible());
    EXPECT_FALSE (panel.bar().target().isVisible());
}

TEST_F (ReadingPanelTest, EveryPictureOfTheCardMovesWithAKnob)
{
    auto& panel = open();
    for (const auto kind : { ReadingKind::harmonics, ReadingKind::response, ReadingKind::wave, ReadingKind::compass })
    {
        panel.choose (kind);
        panel.finish();
        const auto before = panel.canvas().picture().drawing;
        session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, value ("R5") * 3.0);
        panel.finish();
        const auto& after = panel.canvas().picture().drawing;
        const bool isSame =
            std::ranges::equal (before.lines, after.lines, {}, &DrawnLine::points, &DrawnLine::points)
            && std::ranges::equal (before.areas, after.areas, {}, &DrawnArea::points, &DrawnArea::points);
        EXPECT_FALSE (isSame) << static_cast<int> (kind);
    }
}

TEST_F (ReadingPanelTest, TheStagesFollowTheTablets)
{
    auto& panel = show (ReadingKind::stages);
    const auto rmsOf = [&] (std::size_t stage) { return panel.result().as<StageReading>()->stages[stage].rmsVolts; };
    const double before = rmsOf (0);
    EXPECT_EQ (panel.result().as<StageReading>()->drawn, std::vector<std::string> { "Krummhorn 8" });
    session_.draw (stop ("Oboe 8"), true);
    panel.finish();
    EXPECT_NE (rmsOf (0), before);
    session_.retireAll();
    panel.finish();
    EXPECT_TRUE (panel.canvas().sentence().contains ("draw one")) << panel.canvas().sentence();
}

TEST_F (ReadingPanelTest, ALampThatIsLitStandsBeforeItsStage)
{
    auto& panel = show (ReadingKind::stages);
    const auto before = panel.canvas().picture().drawing.areas.size();
    Telemetry telemetry;
    telemetry.clips = ~std::uint64_t { 0 };
    view_->rail().show (telemetry);
    panel.showClips (view_->rail().clips());
    EXPECT_GT (panel.canvas().picture().drawing.areas.size(), before);
}

TEST_F (ReadingPanelTest, AProbeLooksAtItsNode)
{
    auto& panel = open();
    const double before = harmonics().bars.front().resultPeakVolts;
    panel.setProbe ("t");
    panel.finish();
    EXPECT_NE (harmonics().bars.front().resultPeakVolts, before);
    EXPECT_TRUE (panel.placeText (10000).endsWith ("at node t")) << panel.placeText (10000);

    panel.setProbe ("nowhere");
    panel.finish();
    EXPECT_TRUE (panel.canvas().sentence().contains ("nowhere")) << panel.canvas().sentence();
    panel.setProbe ({});
    panel.finish();
    EXPECT_DOUBLE_EQ (harmonics().bars.front().resultPeakVolts, before);
}

TEST_F (ReadingPanelTest, ATargetIsHeldAgainstTheHarmonics)
{
    auto& panel = open();
    EXPECT_FALSE (harmonics().mask.has_value());
    panel.setMask (MaskShelf::read (juce::File (STOPWRIGHT_ROOT "/Presets/Masks/Krummhorn8.json")));
    panel.finish();
    ASSERT_TRUE (harmonics().mask.has_value());
    EXPECT_EQ (harmonics().mask->windows.size(), 10u);
    EXPECT_TRUE (panel.bar().target().getButtonText().startsWith ("Target: Krummhorn"));
    panel.canvas().choose (0);
    EXPECT_TRUE (panel.readingText().contains ("target ")) << panel.readingText();
}

TEST_F (ReadingPanelTest, TheScopeIsSetByHandOrByItself)
{
    auto& panel = show (ReadingKind::wave);
    const auto sentences = [&] { return panel.canvas().picture().spots.front().sentence; };
    const auto automatic = sentences();
    panel.bar().time().setSelectedId (2, juce::sendNotificationSync);
    EXPECT_NE (sentences(), automatic);
    ASSERT_TRUE (panel.choices().wave.secondsPerDivision.has_value());
    EXPECT_DOUBLE_EQ (*panel.choices().wave.secondsPerDivision, 20e-6);
    panel.bar().time().setSelectedId (1, juce::sendNotificationSync);
    EXPECT_EQ (sentences(), automatic);
}

TEST_F (ReadingPanelTest, ASilentKeyAndACardAloneAreAnsweredInWords)
{
    session_.open (preset ("Krummhorn8.json"));
    auto& panel = show (ReadingKind::stages);
    EXPECT_TRUE (panel.canvas().sentence().contains ("open an instrument")) << panel.canvas().sentence();
    EXPECT_FALSE (panel.keeper().keep (ReadingKeeper::Form::csv, fileIn ("none.csv")));
    EXPECT_TRUE (juce::String (listener_.said).contains ("no reading")) << listener_.said;
    EXPECT_FALSE (fileIn ("none.csv").exists());
}

TEST_F (ReadingPanelTest, AKeyWithoutGeneratorIsAnsweredInWords)
{
    auto card = juce::File (preset ("Krummhorn8.json").string());
    card.replaceWithText (card.loadFileAsString().replace ("\"footage\": \"8\"", "\"footage\": \"1/2\""));
    session_.open (preset ("Krummhorn8.json"));
    auto& panel = open();
    EXPECT_TRUE (panel.canvas().sentence().isEmpty()) << panel.canvas().sentence();
    panel.setKey (96); // C7, sixteen times 2093 Hz
    for (const auto kind : { ReadingKind::harmonics, ReadingKind::wave })
    {
        panel.choose (kind);
        panel.finish();
        EXPECT_TRUE (panel.canvas().sentence().startsWith ("No generator sounds")) << panel.canvas().sentence();
        EXPECT_FALSE (panel.keeper().keep (ReadingKeeper::Form::svg, fileIn ("silent.svg")));
    }
    panel.setKey (60);
    panel.finish();
    EXPECT_TRUE (panel.canvas().sentence().isEmpty()) << panel.canvas().sentence();
}

TEST_F (ReadingPanelTest, EveryReadingIsKeptInEveryForm)
{
    auto& panel = open();
    for (const auto kind : readingKinds)
    {
        panel.choose (kind);
        panel.finish();
        const auto name = "kept" + std::to_string (static_cast<int> (kind));
        ASSERT_TRUE (panel.keeper().keep (ReadingKeeper::Form::svg, fileIn (name))) << listener_.said;
        ASSERT_TRUE (panel.keeper().keep (ReadingKeeper::Form::csv, fileIn (name + ".csv"))) << listener_.said;
        ASSERT_TRUE (panel.keeper().keep (ReadingKeeper::Form::png, fileIn (name + ".png"))) << listener_.said;

        const auto xml = juce::parseXML (fileIn (name + ".svg"));
        ASSERT_NE (xml, nullptr) << name;
        EXPECT_TRUE (xml->hasTagName ("svg"));
        EXPECT_GT (xml->getNumChildElements(), 20);
        const auto csv = contentOf (folder_ / (name + ".csv"));
        EXPECT_GE (std::ranges::count (csv, '\n'), 2) << csv;
        const auto image = juce::ImageFileFormat::loadFrom (fileIn (name + ".png"));
        EXPECT_EQ (image.getWidth(), 1328);
        EXPECT_EQ (image.getHeight(), 928);
    }
}

TEST_F (ReadingPanelTest, AFileIsNotReplacedUnasked)
{
    auto& panel = open();
    fileIn ("there.svg").replaceWithText ("mine");
    EXPECT_FALSE (panel.keeper().keep (ReadingKeeper::Form::svg, fileIn ("there")));
    EXPECT_EQ (contentOf (folder_ / "there.svg"), "mine");
    EXPECT_TRUE (juce::String (listener_.said).contains ("there already")) << listener_.said;
    EXPECT_TRUE (panel.keeper().keep (ReadingKeeper::Form::svg, fileIn ("there.svg")));
    EXPECT_FALSE (panel.keeper().keep (ReadingKeeper::Form::csv, fileIn ("no/such/folder.csv")));
    EXPECT_GT (listener_.said.size(), 10u);
}

} // namespace stopwright
