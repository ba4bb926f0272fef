// SPDX-License-Identifier: GPL-3.0-or-later
//
// What the window remembers of the user's manners from one run to the next.
#include "Bench/BenchFixture.h"

#include <fstream>
#include <limits>

namespace stopwright
{

namespace
{

class KeptMannersTest : public BenchFixture
{
protected:
    juce::File folder() const { return juce::File ((folder_ / "configuration").string()); }

    juce::File file() const { return folder().getChildFile ("stopwright").getChildFile ("bench.settings"); }

    /// Ends one run and begins the next over the same settings file.
    BenchView& nextRun()
    {
        view_.reset();
        settings_.reset();
        settings_ = std::make_unique<BenchSettings> (folder());
        return openView();
    }

    /// The settings file holds these values and nothing else.
    void writeValues (const std::vector<std::pair<std::string, std::string>>& values)
    {
        view_.reset();
        settings_.reset();
        std::filesystem::create_directories (folder_ / "configuration" / "stopwright");
        std::ofstream stream (file().getFullPathName().toStdString());
        stream << "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<PROPERTIES>\n";
        for (const auto& [name, value] : values)
            stream << "  <VALUE name=\"" << name << "\" val=\"" << value << "\"/>\n";
        stream << "</PROPERTIES>\n";
        stream.close();
        settings_ = std::make_unique<BenchSettings> (folder());
    }

    /// A mask that comes with the program.
    static juce::File shelved() { return { STOPWRIGHT_ROOT "/Presets/Masks/Krummhorn8.json" }; }

    static void pick (juce::ComboBox& box, int id) { box.setSelectedId (id, juce::sendNotificationSync); }

    void expectFirstRun (BenchView& view)
    {
        const auto& choices = view.readings().choices();
        EXPECT_EQ (choices.kind, ReadingKind::harmonics);
        EXPECT_FALSE (choices.hasPhase);
        EXPECT_FALSE (choices.wave.voltsPerDivision);
        EXPECT_FALSE (choices.wave.secondsPerDivision);
        EXPECT_EQ (choices.level, CompassLevel::rms);
        EXPECT_EQ (choices.stageKeys, StageKeys::tenNotes);
        EXPECT_EQ (choices.unit, LevelUnit::voltsPeakToPeak);
        EXPECT_EQ (view.matcher().measure(), LevelMeasure::aWeighted);
        EXPECT_EQ (view.readings().bar().volts().getText(), "auto volts");
        view.readings().finish();
        EXPECT_NE (view.readings().result().as<HarmonicReading>(), nullptr);
    }
};

} // namespace

TEST_F (KeptMannersTest, TheFirstRunBeginsWithTheUsual)
{
    expectFirstRun (openView());
}

TEST_F (KeptMannersTest, TheReadingIsThereAgain)
{
    for (const auto kind : readingKinds)
    {
        openView().readings().choose (kind);
        auto& again = nextRun().readings();
        EXPECT_EQ (again.choices().kind, kind);
        EXPECT_EQ (again.chooser().chosen(), kind);
        again.finish();
        EXPECT_EQ (again.result().reading.index(), static_cast<std::size_t> (kind) + 1);
        EXPECT_EQ (again.bar().volts().isVisible(), kind == ReadingKind::wave);
    }
}

TEST_F (KeptMannersTest, HowItIsReadIsThereAgain)
{
    auto& view = openView();
    auto& bar = view.readings().bar();
    bar.phase().setToggleState (true, juce::sendNotificationSync);
    pick (bar.volts(), 5);
    pick (bar.time(), 4);
    pick (bar.level(), static_cast<int> (CompassLevel::aWeighted) + 1);
    pick (bar.stageKeys(), static_cast<int> (StageKeys::everyKey) + 1);
    view.matcher().setMeasure (LevelMeasure::rms);
    const auto wave = view.readings().choices().wave;
    ASSERT_TRUE (wave.voltsPerDivision && wave.secondsPerDivision);
    const auto volts = bar.volts().getText();

    auto& next = nextRun();
    const auto& choices = next.readings().choices();
    EXPECT_EQ (choices.kind, ReadingKind::harmonics);
    EXPECT_TRUE (choices.hasPhase);
    EXPECT_EQ (choices.wave.voltsPerDivision, wave.voltsPerDivision);
    EXPECT_EQ (choices.wave.secondsPerDivision, wave.secondsPerDivision);
    EXPECT_EQ (choices.level, CompassLevel::aWeighted);
    EXPECT_EQ (choices.stageKeys, StageKeys::everyKey);
    EXPECT_EQ (next.matcher().measure(), LevelMeasure::rms);
    EXPECT_EQ (next.readings().bar().volts().getText(), volts);
    EXPECT_EQ (next.readings().bar().time().getSelectedId(), 4);
    EXPECT_TRUE (next.readings().bar().phase().getToggleState());

    pick (next.readings().bar().volts(), 1); // automatic again
    EXPECT_FALSE (nextRun().readings().choices().wave.voltsPerDivision);
    EXPECT_TRUE (view_->readings().choices().wave.secondsPerDivision);
}

TEST_F (KeptMannersTest, TheTargetMaskOfTheShelfIsThereAgain)
{
    const auto name = juce::String (MaskShelf::read (shelved())->name);
    openView().readings().takeMask ({ name, {} });
    auto& next = nextRun();
    ASSERT_NE (next.readings().choices().mask, nullptr);
    EXPECT_EQ (juce::String (next.readings().choices().mask->name), name);
    EXPECT_EQ (next.readings().maskPlace().file, juce::File());
    next.begin();
    EXPECT_EQ (next.messages().sentence(), "");
    next.readings().finish();
    const auto* const reading = next.readings().result().as<HarmonicReading>();
    ASSERT_NE (reading, nullptr);
    next.readings().setMask (nullptr);
    EXPECT_EQ (nextRun().readings().choices().mask, nullptr);
}

TEST_F (KeptMannersTest, TheTargetMaskOfAFileIsThereAgainAndOneThatHasGoneIsSaidUntilItIsBack)
{
    const juce::File own ((folder_ / "Own mask.json").string());
    ASSERT_TRUE (shelved().copyFileTo (own));
    openView().readings().openMask (own);
    auto& next = nextRun();
    ASSERT_NE (next.readings().choices().mask, nullptr);
    EXPECT_EQ (next.readings().maskPlace().file, own);

    own.deleteFile();
    auto& without = nextRun();
    EXPECT_EQ (without.readings().choices().mask, nullptr);
    session_.say ("Another sentence.");
    without.begin();
    EXPECT_EQ (without.messages().sentence(), "Another sentence. The target mask of the last run, "
                                                  + own.getFullPathName()
                                                  + ", is not there any more; choose another under \"Target\".");
    session_.say ({});
    ASSERT_TRUE (shelved().copyFileTo (own)); // as on a stick that is plugged in again
    auto& again = nextRun();
    EXPECT_NE (again.readings().choices().mask, nullptr);
    again.begin();
    EXPECT_EQ (again.messages().sentence(), "");
}

TEST_F (KeptMannersTest, ATargetMaskThatCannotBeReadOrIsNotOnTheShelfIsPassedOver)
{
    const juce::File own ((folder_ / "Own mask.json").string());
    own.replaceWithText ("no mask");
    for (const auto& [key, value] : { std::pair<std::string, std::string> { "targetMask", "No such mask" },
                                      { "targetMaskFile", own.getFullPathName().toStdString() },
                                      { "targetMaskFile", (folder_ / "gone.json").string() } })
    {
        writeValues ({ { key, value } });
        expectFirstRun (openView());
        EXPECT_EQ (view_->readings().choices().mask, nullptr);
        view_->begin();
        EXPECT_TRUE (view_->messages().sentence().endsWith (".")) << view_->messages().sentence();
    }
    writeValues ({ { "targetMaskFile", "relative.json" } });
    openView().begin();
    EXPECT_EQ (view_->messages().sentence(), "");
}

TEST_F (KeptMannersTest, EveryDivisionOutlastsTheTextOfTheFile)
{
    auto& bar = openView().readings().bar();
    const int last = bar.volts().getNumItems();
    for (int id = 2; id <= last; ++id)
    {
        pick (view_->readings().bar().volts(), id);
        EXPECT_EQ (nextRun().readings().bar().volts().getSelectedId(), id);
    }
}

TEST_F (KeptMannersTest, ValuesThatCannotBeChosenAreAsInTheFirstRun)
{
    const std::vector<std::string> nonsense { "-1",   "5",   "99",  "999999999999999999999",
                                              "wave", "nan", "inf", "-1e99",
                                              "e1",   "0x1", "1.5", "  ;&lt;",
                                              "",     "3 4" };
    for (const auto& value : nonsense)
    {
        SCOPED_TRACE (value);
        writeValues ({ { "reading", value },
                       { "waveVolts", value == "5" ? "0.3" : value },
                       { "waveSeconds", value == "5" ? "1e300" : value },
                       { "compassLevel", value },
                       { "stageKeys", value },
                       { "trialMeasure", value },
                       { "levelUnit", value } });
        expectFirstRun (openView());
    }
}

TEST_F (KeptMannersTest, AFileThatIsNoSettingsFileIsAsInTheFirstRun)
{
    for (const std::string text :
         { "", "\0\xff\xfe garbage", "<PROPERTIES><VALUE name=\"reading\"", "{ \"reading\": 3 }" })
    {
        writeValues ({});
        settings_.reset();
        std::ofstream (file().getFullPathName().toStdString(), std::ios::binary) << text;
        settings_ = std::make_unique<BenchSettings> (folder());
        expectFirstRun (openView());
    }
}

TEST_F (KeptMannersTest, AnOldFileWithoutThemIsAsInTheFirstRun)
{
    writeValues ({ { "night", "1" }, { "series", "7" }, { "textScale", "nan" } });
    expectFirstRun (openView());
    EXPECT_TRUE (settings_->isNight());
    EXPECT_EQ (settings_->series(), Series::e12);
    EXPECT_EQ (settings_->textScale(), 1.0f);
}

} // namespace stopwright
