// SPDX-License-Identifier: GPL-3.0-or-later
//
// Answers that were given and a result that is not kept do not go with the page unless that is said.
#include "Bench/BenchFixture.h"
#include "Bench/BenchWindow.h"
#include "Bench/BlindTestPanel.h"

namespace stopwright
{

namespace
{

class BlindTestPageTest : public BenchFixture
{
protected:
    /// Two trials that differ, and the page of a blind test of them.
    BlindTestPanel& begin (BenchView& view)
    {
        session_.beginSecondTrial();
        session_.turn ({ CardKnob::Place::part, "R5", KnobKind::value }, 1e3);
        view.showBlindTest();
        return *findWithin<BlindTestPanel> (view);
    }

    static bool isUp (BenchView& view) { return findWithin<BlindTestPanel> (view) != nullptr; }
};

} // namespace

TEST_F (BlindTestPageTest, WithoutAnAnswerItClosesAtOnce)
{
    pressEscape (begin (openView()));
    EXPECT_FALSE (isUp (*view_));
}

TEST_F (BlindTestPageTest, AResultThatIsKeptClosesAtOnce)
{
    auto& panel = begin (openView());
    panel.say ('B').onClick();
    panel.finish().onClick();
    pressEscape (panel);
    ASSERT_TRUE (isUp (*view_));
    EXPECT_TRUE (panel.throwAway().isVisible());
    panel.keep().onClick();
    EXPECT_FALSE (panel.throwAway().isVisible());
    pressEscape (panel);
    EXPECT_FALSE (isUp (*view_));
}

TEST_F (BlindTestPageTest, AnswersGoByTheirOwnButtonAlone)
{
    auto& panel = begin (openView());
    panel.say ('A').onClick();
    for (int press = 0; press < 3; ++press) // as a key that is held down does
        pressEscape (panel);
    ASSERT_TRUE (isUp (*view_));
    EXPECT_TRUE (panel.throwAway().isVisible());
    panel.listenTo ('X').onClick();
    EXPECT_FALSE (panel.throwAway().isVisible()) << "the test goes on";
    pressEscape (panel);
    ASSERT_TRUE (isUp (*view_));
    panel.throwAway().onClick();
    runMessages (20);
    EXPECT_FALSE (isUp (*view_));
}

TEST_F (BlindTestPageTest, OfARetiredStopThereIsNone)
{
    openView();
    session_.beginSecondTrial();
    session_.draw (session_.document().stopIndex, false);
    view_->showBlindTest();
    EXPECT_FALSE (view_->isPageUp());
    EXPECT_TRUE (view_->messages().sentence().contains ("is retired")) << view_->messages().sentence();
}

TEST_F (BlindTestPageTest, TheWindowDoesNotCloseOverAnswers)
{
    AudioHost audio (processor_);
    session_.open (preset ("LarkfieldOrgan.json"));
    BenchWindow window (session_, *settings_, audio);
    bool isClosed = false;
    window.onClosed = [&isClosed] { isClosed = true; };
    auto& panel = begin (window.view());
    panel.say ('A').onClick();
    window.closeButtonPressed();
    runMessages (20);
    EXPECT_FALSE (isClosed);
    ASSERT_TRUE (isUp (window.view()));
    EXPECT_TRUE (panel.throwAway().isVisible());
}

} // namespace stopwright
