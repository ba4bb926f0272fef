// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"
#include "Organ/ChangeList.h"

#include <juce_gui_basics/juce_gui_basics.h>

#include <memory>
#include <vector>

namespace stopwright
{

/// The list of changes: what is otherwise than it was found, how to put it back at the organ, and a button that puts it
/// back here. Threading: message thread.
class ChangesPanel : public juce::Component, private BenchSession::Listener
{
public:
    static constexpr float height = 320.0f; ///< at lettering scale 1

    explicit ChangesPanel (BenchSession& session);
    ~ChangesPanel() override;

    const std::vector<Alteration>& alterations() const noexcept { return alterations_; }

    /// Puts one back, as one step of the history.
    void putBack (std::size_t index);

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    /// An alteration as it is written: as many lines as it takes.
    struct Row
    {
        juce::StringArray words;
        juce::StringArray wayBack;
        juce::Rectangle<int> area;
    };

    /// What scrolls: texts are painted, buttons are children.
    struct List : juce::Component
    {
        void paint (juce::Graphics& graphics) override;
        std::vector<std::unique_ptr<juce::TextButton>> buttons;
        std::vector<Row> rows;
    };

    void sessionChanged (BenchSession::Change change) override;
    void rebuild();

    BenchSession& session_;
    std::vector<Alteration> alterations_;
    juce::Viewport viewport_;
    List list_;
};

} // namespace stopwright
