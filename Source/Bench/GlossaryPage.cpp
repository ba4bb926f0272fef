// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/GlossaryPage.h"

#include "Bench/BenchLook.h"
#include "Bench/Lettering.h"
#include "Bench/WideText.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr float listWidth = 226.0f;
constexpr float rowHeight = 25.0f;
constexpr float gap = 8.0f;
constexpr float buttonHeight = 28.0f;

} // namespace

GlossaryPage::GlossaryPage (const Glossary& glossary) : glossary_ (glossary)
{
    setTitle ("Glossary");
    field_.setTitle ("Search the glossary");
    field_.setTooltip ("Type a word, or a part of one; up and down choose among what is found.");
    field_.onTextChange = [this] { search(); };
    field_.onEscapeKey = [this]
    {
        if (onEscape)
            onEscape();
    };
    field_.setJustification (juce::Justification::centredLeft);
    field_.addKeyListener (this);
    list_.setModel (this);
    list_.setTitle ("Terms that were found");
    list_.setTooltip ("Up and down choose a term.");
    back_.setTooltip ("Back to the term that led here.");
    back_.onClick = [this] { goBack(); };
    addAndMakeVisible (field_);
    addAndMakeVisible (list_);
    addAndMakeVisible (back_);
    search();
}

GlossaryPage::~GlossaryPage()
{
    field_.removeKeyListener (this);
    list_.setModel (nullptr);
}

void GlossaryPage::show (const juce::String& term)
{
    field_.setText ({}, juce::dontSendNotification);
    path_.clear();
    search();
    if (const auto* const wanted = glossary_.find (term.toStdString()))
        choose (wanted);
}

/// Keeps the term that is shown while it is among what is found.
void GlossaryPage::search()
{
    found_ = glossary_.search (field_.getText().trim().toStdString());
    list_.updateContent();
    list_.repaint();
    const bool isStillFound = field_.isEmpty() && std::ranges::find (found_, shown_) != found_.end();
    choose (isStillFound ? shown_ : found_.empty() ? nullptr : found_.front());
}

void GlossaryPage::choose (const GlossaryTerm* term)
{
    shown_ = term;
    const auto place = std::ranges::find (found_, term);
    if (place == found_.end())
        list_.deselectAllRows();
    else
        list_.selectRow (static_cast<int> (place - found_.begin()));
    fillReferences();
    back_.setEnabled (! path_.empty());
    setDescription (term != nullptr ? fromUtf8 (term->name) + ": " + fromUtf8 (term->text) : "nothing found");
    resized();
    repaint();
}

void GlossaryPage::follow (const std::string& name)
{
    path_.push_back (shown_);
    field_.setText ({}, juce::dontSendNotification);
    found_ = glossary_.search ({});
    list_.updateContent();
    choose (glossary_.find (name));
    field_.grabKeyboardFocus();
}

void GlossaryPage::goBack()
{
    if (path_.empty())
        return;
    const auto* const term = path_.back();
    path_.pop_back();
    field_.setText ({}, juce::dontSendNotification);
    found_ = glossary_.search ({});
    list_.updateContent();
    choose (term);
}

void GlossaryPage::fillReferences()
{
    // One of them may be what was clicked: it goes when that click has been worked off.
    auto old = std::make_shared<std::vector<std::unique_ptr<juce::TextButton>>> (std::move (references_));
    for (auto& button : *old)
        removeChildComponent (button.get());
    juce::MessageManager::callAsync ([old] {});
    references_.clear();
    if (shown_ == nullptr)
        return;
    for (const auto& name : shown_->seeAlso)
    {
        auto& button = *references_.emplace_back (std::make_unique<juce::TextButton> (fromUtf8 (name)));
        button.setTooltip ("See also: goes to this term.");
        button.onClick = [this, name] { follow (name); };
        addAndMakeVisible (button);
    }
}

void GlossaryPage::selectedRowsChanged (int lastRowSelected)
{
    if (! juce::isPositiveAndBelow (lastRowSelected, foundCount()))
        return;
    if (const auto* const term = found_[static_cast<std::size_t> (lastRowSelected)]; term != shown_)
    {
        path_.clear();
        choose (term);
    }
}

bool GlossaryPage::keyPressed (const juce::KeyPress& key, juce::Component*)
{
    const bool isDown = key == juce::KeyPress::downKey;
    if ((! isDown && key != juce::KeyPress::upKey) || found_.empty())
        return false;
    list_.selectRow (std::clamp (list_.getSelectedRow() + (isDown ? 1 : -1), 0, foundCount() - 1));
    return true;
}

juce::String GlossaryPage::getNameForRow (int row)
{
    return juce::isPositiveAndBelow (row, foundCount()) ? fromUtf8 (found_[static_cast<std::size_t> (row)]->name)
                                                        : juce::String();
}

juce::Component* GlossaryPage::refreshComponentForRow (int row, bool isSelected, juce::Component* existing)
{
    return TermList::lineFor (existing, getNameForRow (row), isSelected);
}

juce::TextLayout GlossaryPage::layout() const
{
    juce::AttributedString attributed;
    attributed.setJustification (juce::Justification::topLeft);
    if (shown_ != nullptr)
        attributed.append (fromUtf8 (shown_->text), Lettering::body(), BenchLook::paletteOf (*this).ink);
    juce::TextLayout layout;
    layout.createLayout (attributed, static_cast<float> (textArea_.getWidth()));
    return layout;
}

bool GlossaryPage::doesTextFit() const
{
    return layout().getHeight() <= static_cast<float> (textArea_.getHeight());
}

void GlossaryPage::paint (juce::Graphics& graphics)
{
    const auto& colours = BenchLook::paletteOf (*this);
    graphics.setColour (colours.ink);
    if (shown_ == nullptr)
    {
        Lettering::draw (graphics, *this, "No term has this in it.", Lettering::body(), nameArea_);
        return;
    }
    Lettering::draw (graphics, *this, fromUtf8 (shown_->name), Lettering::title(), nameArea_);
    layout().draw (graphics, textArea_.toFloat());
    graphics.setColour (colours.faintInk);
    juce::StringArray also;
    for (const auto& name : shown_->alsoCalled)
        also.add (fromUtf8 (name));
    if (! also.isEmpty())
        Lettering::draw (graphics, *this, "also: " + also.joinIntoString (", "), Lettering::small(), alsoArea_);
    if (! references_.empty())
        Lettering::draw (graphics, *this, "See also", Lettering::small(), seeArea_);
}

/// Lays the references in rows from the left; returns how tall they are.
int GlossaryPage::layOutReferences (juce::Rectangle<int> area, bool isPlacing)
{
    const int line = Lettering::px (buttonHeight);
    const int space = Lettering::px (gap);
    int x = 0;
    int y = 0;
    for (auto& button : references_)
    {
        const int width = Lettering::widthOf (Lettering::body(), button->getButtonText()) + Lettering::px (22.0f);
        if (x > 0 && x + width > area.getWidth())
        {
            x = 0;
            y += line + space;
        }
        if (isPlacing)
            button->setBounds (area.getX() + x, area.getY() + y, width, line);
        x += width + space;
    }
    return references_.empty() ? 0 : y + line;
}

void GlossaryPage::resized()
{
    auto area = getLocalBounds();
    const int space = Lettering::px (gap);
    auto left = area.removeFromLeft (Lettering::px (listWidth));
    field_.setBounds (left.removeFromTop (Lettering::px (buttonHeight)));
    left.removeFromTop (space);
    list_.setRowHeight (Lettering::px (rowHeight));
    list_.setBounds (left);
    list_.scrollToEnsureRowIsOnscreen (std::max (0, list_.getSelectedRow()));

    area.removeFromLeft (2 * space);
    auto top = area.removeFromTop (Lettering::px (buttonHeight));
    back_.setBounds (
        top.removeFromRight (Lettering::widthOf (Lettering::body(), back_.getButtonText()) + Lettering::px (22.0f)));
    nameArea_ = top;
    const int referencesHeight = layOutReferences (area, false);
    auto references = area.removeFromBottom (referencesHeight);
    layOutReferences (references, true);
    seeArea_ = area.removeFromBottom (references_.empty() ? 0 : Lettering::px (22.0f));
    const bool hasAlso = shown_ != nullptr && ! shown_->alsoCalled.empty();
    alsoArea_ = area.removeFromTop (hasAlso ? Lettering::px (20.0f) : 0);
    textArea_ = area.withTrimmedTop (space);
}

void GlossaryPage::lookAndFeelChanged()
{
    const auto& colours = BenchLook::paletteOf (*this);
    field_.applyFontToAllText (Lettering::body());
    field_.applyColourToAllText (colours.ink);
    field_.setTextToShowWhenEmpty ("Search", colours.faintInk);
    list_.getViewport()->setScrollBarThickness (Lettering::px (12.0f));
    list_.setOutlineThickness (1);
    list_.setColour (juce::ListBox::outlineColourId, colours.hairline);
}

} // namespace stopwright
