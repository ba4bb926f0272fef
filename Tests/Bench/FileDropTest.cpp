// SPDX-License-Identifier: GPL-3.0-or-later
//
// Files that are dropped onto the window.
#include "Bench/BenchFixture.h"

#include <fstream>

namespace stopwright
{

namespace
{

class FileDropTest : public BenchFixture
{
protected:
    void drop (const juce::StringArray& files)
    {
        ASSERT_TRUE (view_->isInterestedInFileDrag (files));
        view_->fileDragEnter (files, 10, 10);
        view_->filesDropped (files, 10, 10);
    }

    juce::String path (const std::string& name) { return juce::String (preset (name).string()); }

    juce::String sentence() { return view_->messages().sentence(); }
};

} // namespace

TEST_F (FileDropTest, ACardOrAnInstrumentIsOpened)
{
    openView();
    drop ({ path ("Oboe8.json") });
    EXPECT_FALSE (session_.document().instrument.has_value());
    EXPECT_EQ (session_.card().name, "Oboe 8");
    EXPECT_TRUE (sentence().isEmpty()) << sentence();
    drop ({ path ("LarkfieldOrgan.json") });
    EXPECT_TRUE (session_.document().instrument.has_value());
}

TEST_F (FileDropTest, UnsavedWorkIsAskedAboutFirst)
{
    openView();
    session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 1e3);
    drop ({ path ("Oboe8.json") });
    EXPECT_TRUE (view_->isPageUp());
    EXPECT_TRUE (session_.document().instrument.has_value()) << "what is open stays until the answer";
    EXPECT_FALSE (view_->isInterestedInFileDrag ({ path ("Oboe8.json") })) << "one question at a time";
}

TEST_F (FileDropTest, AMidiFilePlaysWhateverItIsCalled)
{
    openView();
    drop ({ path ("DemonstrationPhrase.mid") });
    EXPECT_TRUE (view_->player().isPlaying());
    view_->player().stop();
    std::filesystem::copy_file (preset ("DemonstrationPhrase.mid"), preset ("phrase.backup"));
    drop ({ path ("phrase.backup") });
    EXPECT_TRUE (view_->player().isPlaying());
}

TEST_F (FileDropTest, AMaskGoesWhereItIsTaken)
{
    openView();
    std::filesystem::copy_file (std::filesystem::path (STOPWRIGHT_ROOT) / "Presets/Masks/Krummhorn8.json",
                                preset ("Mask.json"));
    EXPECT_EQ (view_->readings().choices().mask, nullptr);
    drop ({ path ("Mask.json") });
    EXPECT_NE (view_->readings().choices().mask, nullptr);
    EXPECT_TRUE (session_.document().instrument.has_value()) << "the organ stays open";
}

TEST_F (FileDropTest, WhatCannotBeUsedIsSaidInASentence)
{
    openView();
    drop ({ path ("Oboe8.json"), path ("Trumpet8.json") });
    EXPECT_EQ (sentence(),
               "2 files were dropped; drop one at a time: a card, an instrument, a target mask or a MIDI file.");
    drop ({ juce::String (folder_.string()) });
    EXPECT_TRUE (sentence().contains ("is a folder")) << sentence();
    std::ofstream (preset ("photo.png")) << "not a picture";
    drop ({ path ("photo.png") });
    EXPECT_TRUE (sentence().contains ("\"photo.png\" is neither")) << sentence();
    std::ofstream (preset ("Bad.json")) << "{ \"stopwright\": 1, ";
    drop ({ path ("Bad.json") });
    EXPECT_TRUE (sentence().contains ("Bad.json")) << sentence();
    drop ({ path ("gone.json") });
    EXPECT_TRUE (sentence().contains ("gone.json")) << sentence();
    EXPECT_EQ (session_.card().name, "Krummhorn 8");
    EXPECT_FALSE (view_->player().isPlaying());
    drop ({ path ("Oboe8.json") });
    EXPECT_TRUE (sentence().isEmpty()) << "what was said goes";
}

TEST_F (FileDropTest, WhatWillHappenIsReadBeforeTheFileIsLetGo)
{
    EXPECT_EQ (FileDrop::promiseFor ({ "/a/Oboe8.json" }), "Let go to open \"Oboe8.json\".");
    EXPECT_EQ (FileDrop::promiseFor ({ "/a/tune.MID" }), "Let go to play \"tune.MID\".");
    EXPECT_TRUE (FileDrop::promiseFor ({ "/a/b.json", "/a/c.json" }).startsWith ("One file at a time"));

    openView();
    const auto picture = [this] { return view_->createComponentSnapshot (view_->getLocalBounds(), true); };
    const auto centre = view_->getLocalBounds().getCentre();
    const auto before = picture().getPixelAt (4, centre.y);
    view_->fileDragEnter ({ path ("Oboe8.json") }, 10, 10);
    EXPECT_NE (picture().getPixelAt (4, centre.y), before);
    view_->fileDragExit ({ path ("Oboe8.json") });
    EXPECT_EQ (picture().getPixelAt (4, centre.y), before);
}

} // namespace stopwright
