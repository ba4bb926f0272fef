// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchDocument.h"
#include "Bench/BenchProcessor.h"
#include "Bench/CardKnob.h"
#include "Bench/EditHistory.h"
#include "Organ/InstrumentCards.h"

#include <functional>
#include <string>
#include <vector>

namespace stopwright
{

/// The work in hand: the open document, what was changed in it, and its sound. Every change of a card goes through
/// here: into the document, into the history, to the processor, and to the listeners. Of an instrument all drawn stops
/// sound, and the card of one, the stop in hand, is shown and changed. Which tablets are drawn is playing, not editing:
/// it has no part in the history and is not saved.
/// Threading: [control], all from the message thread.
class BenchSession
{
public:
    enum class Change
    {
        document,     ///< another card or document
        stop,         ///< another stop in hand of the same instrument, which sounds on as it did
        values,       ///< numbers or switches of the same card
        registration, ///< tablets, couplers or outlet switches of the instrument
        saved         ///< the file on disk caught up
    };

    class Listener
    {
    public:
        virtual ~Listener() = default;

        virtual void sessionChanged (Change) {}

        /// A sentence for the user: why something was refused, and the remedy.
        virtual void sessionSays (const std::string&) {}
    };

    explicit BenchSession (BenchProcessor& processor);

    /// Opens a document and plays it: of an instrument the tablets that it says are drawn, or where it says none, the
    /// stop in hand. Fails: Error with a sentence; what was open stays open.
    void open (const std::filesystem::path& file);

    /// Takes another stop in hand; the sound stays, but for unsaved changes of the stop before, which go. Fails: Error.
    void chooseStop (int index);

    /// What of the open instrument cannot sound and why: the first sentence, and how many more there are.
    std::string openingNote() const;

    /// Draws or retires a tablet of the instrument, a coupler, or switches a tremulant or a rotary speaker; by index in
    /// its list. Fails: Error on what cannot sound.
    void draw (int stop, bool isDrawn);
    void drawCoupler (int coupler, bool isDrawn);
    void switchOutlet (int outlet, bool isOn);

    /// Retires every stop and coupler.
    void retireAll();

    /// Draws these tablets alone, by name, as `stopwright render --stops`; those whose card cannot be used stay retired.
    /// Fails: Error; all stays as it was.
    void drawOnly (const std::vector<std::string>& tablets);

    /// Whether a stop of the instrument has a card and a bus, so that it sounds when it is drawn.
    bool canSound (int stop) const;

    /// What a C4 sounds at the listening level of, alone: "Krummhorn 8".
    const std::string& referenceName() const noexcept { return referenceName_; }

    /// Tells the listeners of the present document again, after a control showed something else.
    void showAgain() { notify (Change::document); }

    /// Writes the card. Fails: Error with a sentence; the card on disk stays as it was.
    /// Of a stop whose mixing resistor was turned, the instrument's document as well.
    void save();
    void saveAs (const std::filesystem::path& file);

    bool isOpen() const noexcept { return isOpen_; }

    const BenchDocument& document() const noexcept { return document_; }

    const Card& card() const noexcept { return document_.card; }

    /// What a knob stands at, and what a double-click takes it back to: what is on disk. Fails: Error on an unknown knob.
    double value (const CardKnob& knob) const;
    double savedValue (const CardKnob& knob) const;

    const KeySource& keySource() const noexcept { return keySource_; }

    /// The cards of the open instrument as they stand on disk; the card in hand is card().
    const InstrumentCards& cards() const noexcept { return cards_; }

    BenchProcessor& processor() noexcept { return processor_; }

    /// Sets a number, brought into its range. Between beginGesture and endGesture all of it is one step of the history;
    /// outside, steps with the same non-empty mergeKey become one. Fails: Error when the card's network cannot do it.
    void turn (const CardKnob& knob, double value, const std::string& mergeKey = {});
    void beginGesture();
    void endGesture();

    /// Opens or closes a switch. Fails: Error; the switch stays as it was.
    void setSwitch (const std::string& name, bool closed);

    const EditHistory& history() const noexcept { return history_; }

    void undo();
    void redo();

    /// Tells the listeners a sentence; empty takes the last one away.
    void say (const std::string& sentence);

    /// Runs `action` and says what it was refused for. Returns whether it went through.
    bool attempt (const std::function<void()>& action);

    void addListener (Listener& listener);
    void removeListener (Listener& listener);

private:
    void take (BenchDocument document);

    StopWork work() const { return { document_.card, document_.mixingOhms() }; }

    void change (const StopWork& to);
    void playDifference (const Card& from, const BenchDocument& to);
    void saveCard();
    void saveMixing();
    void play (const BenchDocument& document, const InstrumentCards& cards, bool newReference);
    void shareSavedCard();
    void notify (Change change);
    void tellEach (const std::function<void (Listener&)>& tell);

    static InstrumentCards cardsThatSound (const BenchDocument& document);

    BenchProcessor& processor_;
    BenchDocument document_;
    InstrumentCards cards_; ///< as they stand on disk; the card in hand is the document's
    std::string referenceName_;
    Card savedCard_;
    std::optional<std::string> forgoneText_; ///< another program's text of the card that the next save replaces
    KeySource keySource_;
    EditHistory history_;
    bool isOpen_ = false;

    bool gestureOpen_ = false;
    StopWork gestureStart_;
    std::string gestureName_;

    std::vector<Listener*> listeners_;
};

} // namespace stopwright
