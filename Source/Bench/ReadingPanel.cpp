// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/ReadingPanel.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Bench/ReadingLessons.h"
#include "Bench/ReadingPrint.h"
#include "Bench/UsualPlaces.h"
#include "Bench/WideText.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

constexpr float margin = 8.0f;
constexpr float gap = 5.0f;
constexpr float wordRow = 17.0f;
constexpr int sentenceRows = 2;
constexpr int waitingMs = 200; ///< before a picture that is out of date makes way for a word
constexpr double lettersEm = 10.7;

} // namespace

ReadingPanel::ReadingPanel (BenchSession& session)
    : session_ (session),
      masks_ (masksFolder()),
      keeper_ (session, [this] { return kept(); }),
      worker_ ([this] (ReadingResult result) { take (std::move (result)); })
{
    setTitle ("Readings");
    chooser_.onChosen = [this] (ReadingKind kind) { choose (kind); };
    bar_.onChange = [this] (ReadingBar::Need need)
    {
        if (need == ReadingBar::Need::reading)
            request (true);
        else
            drawPicture();
        tellManner();
    };
    bar_.onTarget = [this] (juce::Component& button) { showTargets (button); };
    keep_.onClick = [this] { keeper_.showMenu (keep_); };
    keep_.setTooltip ("Keep the picture or its numbers: in a file, or as text on the clipboard.");
    canvas_.onSpot = [this] { tellSpot(); };
    addAndMakeVisible (chooser_);
    addAndMakeVisible (keep_);
    addAndMakeVisible (bar_);
    addAndMakeVisible (canvas_);
    canvas_.setTooltip (readingLesson (choices_.kind));
    session_.addListener (*this);
    request (true);
}

ReadingPanel::~ReadingPanel()
{
    session_.removeListener (*this);
}

void ReadingPanel::choose (ReadingKind kind)
{
    if (std::exchange (choices_.kind, kind) == kind)
        return;
    chooser_.show (kind);
    bar_.refresh();
    placeBar();
    canvas_.choose (-1);
    canvas_.setTooltip (readingLesson (kind));
    request (true);
    tellManner();
}

void ReadingPanel::tellManner() const
{
    if (onManner)
        onManner();
}

void ReadingPanel::takeManner (const ReadingChoices& kept)
{
    choices_.hasPhase = kept.hasPhase;
    choices_.wave = kept.wave;
    choices_.level = kept.level;
    choices_.stageKeys = kept.stageKeys;
    bar_.refresh();
    if (kept.kind == choices_.kind)
        request (true);
    else
        choose (kept.kind);
}

void ReadingPanel::setKey (int key)
{
    // Another division may have keys that the stop in hand has not.
    key = std::clamp (key, session_.keySource().lowestKey, session_.keySource().highestKey);
    if (std::exchange (key_, key) == key || choices_.kind == ReadingKind::stages)
        return;
    if (choices_.kind != ReadingKind::compass)
    {
        request (false);
        return;
    }
    result_.key = key;
    result_.keyHz = session_.keySource().tuning.keyHz (key);
    drawPicture();
}

void ReadingPanel::setProbe (std::optional<std::string> node)
{
    if (choices_.probe == node)
        return;
    choices_.probe = std::move (node);
    if (choices_.kind != ReadingKind::stages)
        request (false);
}

void ReadingPanel::setLevelUnit (LevelUnit unit)
{
    if (std::exchange (choices_.unit, unit) != unit)
        drawPicture();
}

void ReadingPanel::setMask (MaskShelf::Mask mask, const juce::File& file)
{
    choices_.mask = std::move (mask);
    maskFile_ = file;
    bar_.refresh();
    placeBar();
    if (choices_.kind == ReadingKind::harmonics)
        request (false);
    tellManner();
}

void ReadingPanel::showClips (const ClipLatch& clips)
{
    std::vector<std::string> clipped;
    for (int stage = 0; stage < clips.stageCount(); ++stage)
        if (clips.isLit (stage))
            clipped.push_back (clips.name (stage));
    if (std::exchange (clipped_, clipped) != clipped && choices_.kind == ReadingKind::stages)
        drawPicture();
}

void ReadingPanel::sessionChanged (BenchSession::Change change)
{
    const bool isOther = change == BenchSession::Change::document || change == BenchSession::Change::stop;
    if (isOther)
        key_ = std::clamp (key_, session_.keySource().lowestKey, session_.keySource().highestKey);
    if (change == BenchSession::Change::document)
        choices_.probe.reset(); // a node of another card
    if (change != BenchSession::Change::saved)
        request (isOther);
}

void ReadingPanel::request (bool isOther)
{
    if (! session_.isOpen())
    {
        canvas_.showSentence ("Open a card to see what its waves hold and what it lets through.");
        return;
    }
    ReadingRequest request { choices_, key_, session_.card(), session_.keySource() };
    if (const auto* const stop = session_.document().stopInHand(); stop != nullptr)
    {
        request.instrument = session_.document().instrument;
        request.cards = session_.cardsThatSound();
        request.cards.ofStops[static_cast<std::size_t> (session_.document().stopIndex)] = session_.card();
        request.stop = stop->name;
        request.division = stop->division;
    }
    worker_.request (std::move (request), isOther);
    if (isOther)
        startTimer (waitingMs);
}

void ReadingPanel::timerCallback()
{
    stopTimer();
    canvas_.showSentence ("Being computed...");
    repaint();
}

void ReadingPanel::take (ReadingResult result)
{
    stopTimer();
    result_ = std::move (result);
    drawPicture();
}

bool ReadingPanel::isOfChosenKind() const
{
    return result_.reading.index() == static_cast<std::size_t> (choices_.kind) + 1;
}

void ReadingPanel::drawPicture()
{
    if (! result_.refusal.empty())
    {
        canvas_.showSentence (fromUtf8 (result_.refusal));
    }
    else if (isOfChosenKind())
    {
        const double scale = Lettering::scale();
        auto picture = readingPicture (result_, choices_, clipped_,
                                       { static_cast<double> (canvas_.getWidth()),
                                         static_cast<double> (canvas_.getHeight()), lettersEm * scale, choices_.unit });
        if (picture.spots.empty())
            canvas_.showSentence (fromUtf8 (picture.sentence));
        else
            canvas_.show (std::move (picture));
    }
    tellSpot();
}

void ReadingPanel::tellSpot()
{
    canvas_.setTitle (juce::String (readingName (choices_.kind)) + ", " + placeText (100000));
    canvas_.setDescription (readingText());
    repaint (place_);
    repaint (words_);
}

juce::String ReadingPanel::readingText() const
{
    if (const auto& sentence = canvas_.sentence(); sentence.isNotEmpty())
        return sentence;
    const auto& picture = canvas_.picture();
    const int chosen = canvas_.chosen();
    return fromUtf8 (chosen >= 0 ? picture.spots[static_cast<std::size_t> (chosen)].sentence : picture.sentence);
}

juce::String ReadingPanel::placeText (int width) const
{
    if (! result_.refusal.empty() || result_.as<std::monostate>() != nullptr)
        return {};
    auto whole = fromUtf8 (readingPlace (result_, false));
    if (Lettering::widthOf (Lettering::small(), whole) <= width)
        return whole;
    return Lettering::fitted (Lettering::small(), fromUtf8 (readingPlace (result_, true)), width);
}

void ReadingPanel::paint (juce::Graphics& graphics)
{
    BenchLook::drawSheet (graphics, *this);
    const auto& colours = BenchLook::paletteOf (*this);
    const int row = Lettering::px (wordRow);
    graphics.setColour (colours.faintInk);
    Lettering::draw (graphics, *this, placeText (place_.getWidth()), Lettering::small(), place_,
                     juce::Justification::centredRight);
    auto area = words_;
    if (canvas_.sentence().isNotEmpty())
        return; // told in the picture's place
    graphics.setColour (colours.ink);
    auto lines = Lettering::wrapped (Lettering::small(), readingText(), area.getWidth());
    if (lines.size() > sentenceRows)
    {
        const auto rest = lines.joinIntoString (" ", sentenceRows - 1);
        lines.removeRange (sentenceRows - 1, lines.size());
        lines.add (Lettering::fitted (Lettering::small(), rest, area.getWidth()));
    }
    for (const auto& line : lines)
        Lettering::draw (graphics, *this, line, Lettering::small(), area.removeFromTop (row));
}

void ReadingPanel::placeBar()
{
    auto area = place_.getUnion (bar_.getBounds());
    const int width = bar_.layOut (area.getWidth());
    bar_.setBounds (area.removeFromLeft (width));
    place_ = area.withTrimmedLeft (Lettering::px (2.0f * gap));
    repaint();
}

void ReadingPanel::resized()
{
    auto area = getLocalBounds().reduced (Lettering::px (margin));
    auto first = area.removeFromTop (Lettering::px (ReadingChooser::height));
    keep_.setBounds (
        first.removeFromRight (Lettering::widthOf (Lettering::body(), keep_.getButtonText()) + Lettering::px (16.0f)));
    first.removeFromRight (Lettering::px (gap));
    chooser_.setBounds (first);
    area.removeFromTop (Lettering::px (gap));
    place_ = area.removeFromTop (Lettering::px (ReadingBar::height));
    bar_.setBounds (place_.withWidth (0));
    placeBar();
    area.removeFromTop (Lettering::px (gap));
    words_ = area.removeFromTop (sentenceRows * Lettering::px (wordRow));
    area.removeFromTop (Lettering::px (gap));
    canvas_.setBounds (area);
    drawPicture();
}

} // namespace stopwright
