// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchView.h"

#include "Bench/Lettering.h"

#include <utility>

namespace stopwright
{

namespace
{

constexpr int framesPerSecond = 60;
constexpr int tooltipDelayMs = 800;

} // namespace

BenchView::BenchView (BenchSession& session, BenchSettings& settings, AudioHost* audio)
    : session_ (session),
      settings_ (settings),
      audio_ (audio),
      tooltips_ (this, tooltipDelayMs),
      hands_ (session.processor().engine()),
      typing_ (hands_),
      actions_ (session, settings, *this),
      player_ (session),
      drop_ (session, actions_, player_),
      header_ (session,
               { [this] { actions_.askAndOpen(); }, [this] { actions_.save(); }, [this] { actions_.saveAs(); },
                 [this] { showAudio ({}); }, [this] (juce::Component& button) { showViewMenu (button); },
                 [this] (int index) { actions_.chooseStop (index); } }),
      rail_ (session),
      matcher_ (session, hands_),
      sheet_ (session, matcher_, { [this] { askForSecondTrial(); }, [this] { showBlindTest(); } }),
      place_ (session, sheet_.seriesInForce()),
      column_ (rail_, place_),
      readings_ (session),
      level_ (session.processor().engine()),
      playBar_ (session, hands_, typing_, player_),
      messages_ (session)
{
    setTitle ("Stopwright bench");
    setWantsKeyboardFocus (true);
    setFocusContainerType (FocusContainerType::keyboardFocusContainer); // else Tab goes round over the window itself
    setLookAndFeel (&look_);
    juce::LookAndFeel::setDefaultLookAndFeel (&look_); // menus and file choosers are windows of their own
    hands_.onKeyDown = [this] (int key) { setKeyInHand (key); };
    sheet_.setSeries (settings_.series());
    sheet_.onSeriesChosen = [this] (Series series) { settings_.setSeries (series); };
    messages_.onHeightChange = [this] { resized(); };
    joinAudio();

    playBar_.phrase().onMenu = [this] (juce::Component& button) { showPlayMenu (button); };
    sheet_.onProbe = [this] (const std::string& node)
    { readings_.setProbe (node.empty() ? std::nullopt : std::optional (node)); };
    followManners();
    drop_.onMask = [this] (const juce::File& file) { session_.attempt ([&] { readings_.openMask (file); }); };
    place_.onChanges = [this] { showChanges(); };
    rail_.onTakeInHand = [this] (int stop) { actions_.chooseStop (stop); };

    for (auto* panel : panels())
        addAndMakeVisible (panel);
    session_.addListener (*this);
    setNight (settings_.isNight());
    setTextScale (settings_.textScale());
    startTimerHz (framesPerSecond);
}

BenchView::~BenchView()
{
    stopTimer();
    leaveAudio();
    session_.removeListener (*this);
    page_.reset();
    juce::LookAndFeel::setDefaultLookAndFeel (nullptr);
    setLookAndFeel (nullptr);
}

std::array<juce::Component*, 7> BenchView::panels()
{
    return { &header_, &column_, &sheet_, &readings_, &level_, &playBar_, &messages_ };
}

void BenchView::begin()
{
    if (const auto missed = std::exchange (missedMask_, {}); ! missed.empty())
        session_.say ((messages_.sentence() + " ").trimStart().toStdString() + missed);
    if (settings_.areCautionsAcknowledged())
        startAudio();
    else
        showCautions (true);
}

void BenchView::setNight (bool isNight)
{
    look_.setNight (isNight);
    settings_.setNight (isNight);
    applyLook();
}

void BenchView::setTextScale (float scale)
{
    textScale_ = juce::jlimit (Lettering::smallestScale, Lettering::largestScale, scale);
    settings_.setTextScale (textScale_);
    applyLook();
}

void BenchView::applyLook()
{
    sendLookAndFeelChange();
    resized();
    repaint();
}

void BenchView::sessionChanged (BenchSession::Change change)
{
    if (change == BenchSession::Change::document)
    {
        playBar_.allOff();
        isFaultTold_ = false;
        level_.setReference (juce::String::fromUTF8 (session_.referenceName().c_str()),
                             session_.document().instrument.has_value());
        resized();
    }
    if (onTitle)
    {
        const auto& document = session_.document();
        onTitle (juce::String::fromUTF8 (document.title().c_str()) + (document.isUnsaved() ? " (unsaved)" : "")
                 + " - Stopwright bench");
    }
}

void BenchView::tick()
{
    session_.processor().engine().collectReplaced();
    session_.processor().deck().collect();
    const auto telemetry = session_.processor().engine().telemetry();
    level_.show (isRunning() ? telemetry : Telemetry {});
    rail_.show (telemetry);
    readings_.showClips (rail_.clips());
    playBar_.refresh();
    matcher_.followKeys();
    if (telemetry.lastKey >= 0 && std::exchange (lastKey_, telemetry.lastKey) != telemetry.lastKey)
        setKeyInHand (telemetry.lastKey);
    updateStatus (telemetry);
    keepFocus();

    if (telemetry.silencedByFault && ! std::exchange (isFaultTold_, true))
        session_.say (
            "The sound was silenced because the network ran away: its volts grew without limit. Undo the last change, or "
            "give it less feedback.");
    if (! telemetry.silencedByFault)
        isFaultTold_ = false;
}

/// Whether anything is being played, on a device or on none; without, the last telemetry stays as it was.
bool BenchView::isRunning() const
{
    return audio_ == nullptr || audio_->hasDevice() || audio_->isSilent();
}

void BenchView::setKeyInHand (int key)
{
    readings_.setKey (key);
    matcher_.setKey (key);
}

void BenchView::keepFocus()
{
    // Whenever the window has the keyboard, one of its controls must have it: the page's, while one is up.
    const auto* peer = getPeer();
    if (peer == nullptr || ! peer->isFocused()
        || juce::ModalComponentManager::getInstance()->getNumModalComponents() > 0)
        return;
    const auto* focused = juce::Component::getCurrentlyFocusedComponent();
    if (page_ != nullptr)
    {
        if (focused == nullptr || ! page_->isParentOf (focused))
            page_->takeFocus();
    }
    else if (focused == nullptr || ! isParentOf (focused))
    {
        playBar_.takeFocus();
    }
}

void BenchView::showPage (std::unique_ptr<SheetPage> page)
{
    playBar_.allOff();
    page_ = std::move (page);
    addAndMakeVisible (*page_);
    page_->lookAndFeelChanged();
    page_->setBounds (getLocalBounds());
    page_->takeFocus();
}

void BenchView::closePage()
{
    page_.reset();
    if (isShowing())
        playBar_.takeFocus();
}

void BenchView::paint (juce::Graphics& graphics)
{
    graphics.fillAll (look_.palette().paper);
}

} // namespace stopwright
