// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchSession.h"
#include "Bench/ClipButton.h"
#include "Bench/ClipLatch.h"
#include "Bench/RailRow.h"
#include "Bench/TermMark.h"
#include "Bench/TremulantRow.h"

#include <memory>
#include <vector>

namespace stopwright
{

/// The stop rail of the open instrument as a list: the tablets of each division, couplers, what switches its outlets
/// with the knobs of its tremulants, and a lamp for each stage of its preamps that stays lit once it clipped. Without an instrument there is nothing in it.
/// Threading: message thread.
class RailPanel : public juce::Component, private BenchSession::Listener
{
public:
    explicit RailPanel (BenchSession& session);
    ~RailPanel() override;

    /// Lights the lamps of what the audio thread last reported.
    void show (const Telemetry& telemetry);

    /// Takes a stop in hand, after what must be asked is asked; by index in Instrument::stops.
    std::function<void (int)> onTakeInHand;

    /// The line of that name, or nullptr.
    RailRow* findRow (const juce::String& name, RailRow::Sign sign = RailRow::Sign::contact) const;

    /// The knobs of the tremulant of that outlet, or nullptr.
    TremulantRow* findTremulantRow (const std::string& outlet) const;

    /// "no stage clipped", or how many did.
    juce::String clipText() const { return lamps_.getButtonText(); }

    ClipButton& lamps() noexcept { return lamps_; }

    /// Scrolls the list to its end.
    void showEnd();

    const ClipLatch& clips() const noexcept { return clips_; }

    void paint (juce::Graphics& graphics) override;
    void resized() override;

private:
    enum class Kind
    {
        stop,
        coupler,
        outlet,
        stage
    };

    struct Line
    {
        Kind kind;
        int index; ///< in the instrument's list of the kind
        std::unique_ptr<RailRow> row;
        juce::String heading; ///< over it, when it is the first of its group
        juce::Rectangle<int> headingArea;
        TremulantRow* knobs = nullptr; ///< below it
    };

    /// What scrolls: the headings are painted, the lines are children.
    class Sheet : public juce::Component
    {
    public:
        void paint (juce::Graphics& graphics) override;
        void mouseWheelMove (const juce::MouseEvent& event, const juce::MouseWheelDetails& wheel) override;
        std::vector<Line> lines;
    };

    void sessionChanged (BenchSession::Change change) override;
    void rebuild();
    void keepTremulants();
    void addGroup (const juce::String& heading, Kind kind, const std::vector<int>& indices);
    RailRow::Face faceOf (Kind kind, int index) const;
    juce::String lessonOf (Kind kind, int index) const;
    juce::String termOf (Kind kind, int index) const;
    TremulantRow* knobsBelow (Kind kind, int index) const;
    void refresh();
    void use (Kind kind, int index);
    void focusLine (int place, bool isGrabbing);
    int placeOf (Kind kind, int index) const;
    void putLampsOut();
    int layOut (int width);

    BenchSession& session_;
    ClipLatch clips_;
    TermMark heading_ { "Stops", "stop rail", TermMark::Style::title };
    juce::TextButton retireAll_ { "Retire all" };
    ClipButton lamps_;
    juce::Viewport viewport_;
    Sheet sheet_;
    std::vector<std::unique_ptr<TremulantRow>> tremulants_; ///< they outlast a rebuild: one of them may be what turned
    int focusLine_ = 0;
};

} // namespace stopwright
