// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/HeaderBar.h"

#include "Bench/BenchLook.h"
#include "Bench/GlossaryTerms.h"
#include "Bench/Lettering.h"
#include "Bench/WideText.h"

#include <algorithm>
#include <utility>

namespace stopwright
{

namespace
{

constexpr float rowHeight = 40.0f;
constexpr float buttonHeight = 30.0f;
constexpr float gap = 6.0f;
constexpr float margin = 14.0f;
constexpr float widestStops = 232.0f;
constexpr float narrowestStops = 196.0f;
constexpr float narrowestTitle = 120.0f; ///< beyond which a second row is better

} // namespace

HeaderBar::HeaderBar (BenchSession& session, Actions actions) : session_ (session), actions_ (std::move (actions))
{
    open_.onClick = actions_.open;
    save_.onClick = actions_.save;
    saveAs_.onClick = actions_.saveAs;
    undo_.onClick = [this] { session_.attempt ([this] { session_.undo(); }); };
    redo_.onClick = [this] { session_.attempt ([this] { session_.redo(); }); };
    audio_.onClick = actions_.audio;
    view_.onClick = [this] { actions_.view (view_); };
    open_.setTooltip ("Open a card or an instrument (Ctrl+O).");
    save_.setTooltip (
        "Write every changed card back to its file, and what was changed on the rail to the instrument's (Ctrl+S).");
    saveAs_.setTooltip ("Write the card in hand to another file; a tablet keeps its own (Ctrl+Shift+S).");
    audio_.setTooltip ("Sound device, and which MIDI inputs are heard.");
    view_.setTooltip ("Recent files, text size, unit of levels, light or dark, glossary, cautions.");
    stops_.setTitle ("Stop in hand");
    stops_.setTooltip (
        "Stop: one voice of the organ, drawn by a tablet. The one chosen here is in hand: its parts and readings are "
        "shown and changed; what sounds is what is drawn in the list of stops. The proposed stop stands first.");
    setTerm (stops_, "stop in hand");
    stops_.onChange = [this] { actions_.chooseStop (stops_.getSelectedId() - 1); };

    addChildComponent (stops_);
    for (auto* button : buttons_)
        addAndMakeVisible (*button);
    session_.addListener (*this);
    sessionChanged (BenchSession::Change::document);
}

HeaderBar::~HeaderBar()
{
    session_.removeListener (*this);
}

void HeaderBar::sessionChanged (BenchSession::Change change)
{
    if (change == BenchSession::Change::document || change == BenchSession::Change::stop
        || change == BenchSession::Change::rail)
        fillStops();
    refresh();
}

void HeaderBar::fillStops()
{
    stops_.clear (juce::dontSendNotification);
    const auto& document = session_.document();
    stops_.setVisible (document.instrument.has_value());
    if (document.instrument)
    {
        const auto& stops = document.instrument->stops;
        for (const bool proposed : { true, false })
        {
            for (std::size_t index = 0; index < stops.size(); ++index)
            {
                if (stops[index].proposed != proposed)
                    continue;
                const int id = static_cast<int> (index) + 1;
                stops_.addItem (fromUtf8 (stops[index].name) + (proposed ? " (proposed)" : ""), id);
                stops_.setItemEnabled (id, ! stops[index].cardFile.empty());
            }
        }
        stops_.setSelectedId (document.stopIndex + 1, juce::dontSendNotification);
    }
    resized();
}

void HeaderBar::refresh()
{
    const auto& history = session_.history();
    const bool isOpen = session_.isOpen();
    save_.setEnabled (isOpen);
    saveAs_.setEnabled (isOpen);
    undo_.setEnabled (history.canUndo());
    redo_.setEnabled (history.canRedo());
    undo_.setTooltip (history.canUndo() ? "Take back: " + fromUtf8 (history.undoName()) + " (Ctrl+Z)."
                                        : "Nothing to take back.");
    redo_.setTooltip (history.canRedo() ? "Do again: " + fromUtf8 (history.redoName()) + " (Ctrl+Shift+Z)."
                                        : "Nothing to do again.");
    repaint();
}

juce::String HeaderBar::titleText() const
{
    if (! session_.isOpen())
        return "No document";
    const auto& document = session_.document();
    const auto name = document.instrument ? fromUtf8 (document.instrument->name) : fromUtf8 (document.card().name);
    return name.isEmpty() ? "Card without a name" : name;
}

int HeaderBar::buttonWidth (const juce::TextButton& button) const
{
    return Lettering::widthOf (Lettering::body(), button.getButtonText()) + Lettering::px (22.0f);
}

int HeaderBar::buttonsWidth() const
{
    int width = 0;
    for (const auto* button : buttons_)
        width += buttonWidth (*button) + Lettering::px (gap);
    return width;
}

int HeaderBar::markWidth()
{
    return Lettering::widthOf (Lettering::small(), "unsaved") + Lettering::px (22.0f);
}

/// What is left for title and stops where all is in one row.
int HeaderBar::roomInRow (int width) const
{
    return width - buttonsWidth() - markWidth() - Lettering::px (2.0f * margin + gap);
}

bool HeaderBar::isOneRow (int width) const
{
    const int title = std::min (Lettering::widthOf (Lettering::title(), titleText()), Lettering::px (narrowestTitle));
    return roomInRow (width) >= title + (stops_.isVisible() ? Lettering::px (narrowestStops + gap) : 0);
}

/// The stops give way to the title, and then the title to the stops.
int HeaderBar::stopsWidth (int width) const
{
    const int left = roomInRow (width) - Lettering::widthOf (Lettering::title(), titleText()) - Lettering::px (gap);
    return isOneRow (width) ? juce::jlimit (Lettering::px (narrowestStops), Lettering::px (widestStops), left)
                            : Lettering::px (widestStops);
}

int HeaderBar::heightFor (int width) const
{
    return Lettering::px (rowHeight) * (isOneRow (width) ? 1 : 2);
}

juce::Rectangle<int> HeaderBar::titleArea() const
{
    auto row = getLocalBounds().reduced (Lettering::px (margin), 0).removeFromTop (Lettering::px (rowHeight));
    const int right = isOneRow (getWidth()) ? buttonsWidth() : 0;
    const int stops = stops_.isVisible() ? stopsWidth (getWidth()) + Lettering::px (gap) : 0;
    return row.withTrimmedRight (right + stops + Lettering::px (gap));
}

void HeaderBar::resized()
{
    const bool oneRow = isOneRow (getWidth());
    auto area = getLocalBounds().reduced (Lettering::px (margin), 0);
    auto first = area.removeFromTop (Lettering::px (rowHeight));
    auto second = oneRow ? first : area.removeFromTop (Lettering::px (rowHeight));
    auto& buttonRow = oneRow ? first : second;
    const int height = Lettering::px (buttonHeight);

    auto run = oneRow ? buttonRow.removeFromRight (buttonsWidth()) : buttonRow;
    for (auto* button : buttons_)
    {
        button->setBounds (
            run.removeFromLeft (buttonWidth (*button)).withSizeKeepingCentre (buttonWidth (*button), height));
        run.removeFromLeft (Lettering::px (gap));
    }
    if (oneRow)
        first.removeFromRight (Lettering::px (gap));
    if (stops_.isVisible())
    {
        const int width = stopsWidth (getWidth());
        stops_.setBounds (first.removeFromRight (width).withSizeKeepingCentre (width, height));
    }
}

void HeaderBar::paint (juce::Graphics& graphics)
{
    BenchLook::drawSheet (graphics, *this);
    const auto& colours = BenchLook::paletteOf (*this);
    auto area = titleArea();
    const bool isUnsaved = session_.isOpen() && session_.document().isUnsaved();
    const auto mark = juce::String (isUnsaved ? "unsaved" : "saved");

    graphics.setColour (colours.ink);
    const auto title = Lettering::fitted (Lettering::title(), titleText(), area.getWidth() - markWidth());
    Lettering::draw (graphics, *this, title, Lettering::title(),
                     area.removeFromLeft (Lettering::widthOf (Lettering::title(), title)));
    if (! session_.isOpen())
        return;

    auto markArea = area.removeFromLeft (markWidth()).withTrimmedLeft (Lettering::px (8.0f));
    const float dotSize = 7.0f * Lettering::scale();
    const auto dot = markArea.removeFromLeft (Lettering::px (11.0f)).toFloat().withSizeKeepingCentre (dotSize, dotSize);
    graphics.setColour (isUnsaved ? colours.notice : colours.faintInk);
    if (isUnsaved)
        graphics.fillEllipse (dot);
    else
        graphics.drawEllipse (dot, 1.2f);
    Lettering::draw (graphics, *this, mark, Lettering::small(), markArea);
}

} // namespace stopwright
