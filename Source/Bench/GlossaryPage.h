// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/TermList.h"
#include "Organ/Glossary.h"

#include <memory>
#include <vector>

namespace stopwright
{

/// The controls of the glossary: a field that searches while it is typed in, the terms that it found, the text of the one
/// that is chosen, the terms that this one leads to, and the way back. Up and down choose a term from the field too.
/// Threading: message thread.
class GlossaryPage : public juce::Component, private juce::ListBoxModel, private juce::KeyListener
{
public:
    static constexpr float height = 366.0f; ///< at lettering scale 1

    /// `glossary` must outlive it.
    explicit GlossaryPage (const Glossary& glossary);
    ~GlossaryPage() override;

    /// Shows a term; the first one when there is none of that name.
    void show (const juce::String& term);

    /// What is shown; nullptr when the search found nothing.
    const GlossaryTerm* shown() const noexcept { return shown_; }

    juce::TextEditor& field() noexcept { return field_; }

    const std::vector<std::unique_ptr<juce::TextButton>>& references() const noexcept { return references_; }

    juce::TextButton& back() noexcept { return back_; }

    int foundCount() const noexcept { return static_cast<int> (found_.size()); }

    /// Whether the text has room, for a test.
    bool doesTextFit() const;

    /// Told when Escape is pressed in the field.
    std::function<void()> onEscape;

    using juce::Component::keyPressed;
    void paint (juce::Graphics& graphics) override;
    void resized() override;
    void lookAndFeelChanged() override;

    void parentHierarchyChanged() override { lookAndFeelChanged(); } // only in the window has it its look

private:
    int getNumRows() override { return foundCount(); }

    void paintListBoxItem (int, juce::Graphics&, int, int, bool) override {} // its lines paint

    juce::Component* refreshComponentForRow (int row, bool isSelected, juce::Component* existing) override;
    juce::String getNameForRow (int row) override;
    void selectedRowsChanged (int lastRowSelected) override;
    bool keyPressed (const juce::KeyPress& key, juce::Component* origin) override;

    void search();
    void choose (const GlossaryTerm* term);
    void follow (const std::string& name);
    void goBack();
    void fillReferences();
    int layOutReferences (juce::Rectangle<int> area, bool isPlacing);
    juce::TextLayout layout() const;

    const Glossary& glossary_;
    juce::TextEditor field_;
    TermList list_;
    juce::TextButton back_ { "Back" };
    std::vector<const GlossaryTerm*> found_;
    std::vector<const GlossaryTerm*> path_; ///< where references were followed from
    const GlossaryTerm* shown_ = nullptr;
    std::vector<std::unique_ptr<juce::TextButton>> references_;
    juce::Rectangle<int> nameArea_, alsoArea_, textArea_, seeArea_;
};

} // namespace stopwright
