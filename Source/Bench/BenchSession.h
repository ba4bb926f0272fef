// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchDocument.h"
#include "Bench/BenchProcessor.h"
#include "Bench/CardKnob.h"
#include "Bench/EditHistory.h"
#include "Bench/WorkPlayer.h"

#include <functional>
#include <map>
#include <string>
#include <vector>

namespace stopwright
{

/// The work in hand: the open document, what was changed in it, and its sound. Every change goes through here: into the
/// document, into the history, to the sound, and to the listeners. Of an instrument all drawn stops sound, and the card of
/// one, the stop in hand, is shown and changed; changes of other stops stay where they are until they are saved or undone.
/// Which tablets are drawn is playing, not editing: it has no part in the history and is not saved.
/// Threading: [control], all from the message thread.
class BenchSession
{
public:
    enum class Change
    {
        document,     ///< another card or document
        stop,         ///< another stop or card in hand of the same instrument
        network,      ///< parts, taps, their nodes or names of the card in hand, or whether it can be computed
        values,       ///< numbers or switches of the same network
        trial,        ///< the other trial is in hand, or there is one more or one less
        rail,         ///< what the instrument says of its stops
        registration, ///< tablets, couplers or outlet switches of the instrument
        saved         ///< the files on disk caught up
    };

    class Listener
    {
    public:
        virtual ~Listener() = default;

        virtual void sessionChanged (Change) {}

        /// A sentence for the user: why something was refused, and the remedy.
        virtual void sessionSays (const std::string&) {}

        /// A sentence for the user that asks nothing of him: what was done, and where it is.
        virtual void sessionTells (const std::string&) {}
    };

    explicit BenchSession (BenchProcessor& processor);

    /// Opens a document and plays it: of an instrument the tablets that it says are drawn, or where it says none, the
    /// stop in hand. A card that cannot be computed is shown with its faults and is silent. Fails: Error with a sentence;
    /// what was open stays open.
    void open (const std::filesystem::path& file);

    /// Takes another stop in hand; the sound stays, and so does the work on the stop before. Fails: Error.
    void chooseStop (int index);

    /// What of the open instrument cannot sound and why: the first sentence, and how many more there are.
    std::string openingNote() const { return player_.openingNote(); }

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
    bool canSound (int stop) const { return player_.canSound (document_, stop); }

    /// The cards of the instrument as they are heard; empty for a card alone.
    InstrumentCards cardsThatSound() const { return player_.cardsThatSound(); }

    /// The same as they stand in the work, also where they cannot be computed.
    InstrumentCards cardsInWork() const { return player_.cardsOf (document_); }

    /// What a C4 sounds at the listening level of, alone: "Krummhorn 8".
    const std::string& referenceName() const noexcept { return player_.referenceName(); }

    /// Tells the listeners of the present document again, after a control showed something else.
    void showAgain() { notify (Change::document); }

    /// Writes everything that was changed. A file that another program changed meanwhile is refused once.
    /// Fails: Error with a sentence; the file it is about stays as it was.
    void save();

    /// Writes the card in hand to another file. A card without an instrument is from then on that file's; a stop keeps
    /// its own, and the file is a copy. Fails: Error.
    void saveAs (const std::filesystem::path& file);

    bool isOpen() const noexcept { return isOpen_; }

    const BenchDocument& document() const noexcept { return document_; }

    /// Good until the next change, like what `document` gives.
    const Card& card() const noexcept { return document_.card(); }

    /// What is wrong with the card in hand, errors first. With an error in it the card sounds as it last could.
    const std::vector<Finding>& faults() const { return player_.faultsOf (document_.cardName()); }

    bool isUnsound() const { return player_.isUnsound (document_.cardName()); }

    /// What a knob stands at, and what a double-click takes it back to: what is on disk. Fails: Error on an unknown knob.
    double value (const CardKnob& knob) const;
    double savedValue (const CardKnob& knob) const;

    const KeySource& keySource() const noexcept { return keySource_; }

    BenchProcessor& processor() noexcept { return processor_; }

    /// Sets a number, brought into its range. Between beginGesture and endGesture all of it is one step of the history;
    /// outside, steps with the same non-empty mergeKey become one. Fails: Error when a network that could be computed no
    /// longer can.
    void turn (const CardKnob& knob, double value, const std::string& mergeKey = {});
    void beginGesture();
    void endGesture();

    bool isGestureOpen() const noexcept { return gestureOpen_; }

    /// Opens or closes a switch. Fails: Error as `turn`; the switch stays as it was.
    void setSwitch (const std::string& name, bool closed);

    /// Any change of the work, told as `what`, as one step of the history. It may leave the card in hand in a state that
    /// cannot be computed: see faults. Fails: Error of `change`, or of an instrument that cannot be played; all stays.
    void edit (const std::string& what,
               const std::function<void (BenchWork&)>& change,
               const std::string& mergeKey = {});

    /// The same for the card in hand.
    void
        editCard (const std::string& what, const std::function<void (Card&)>& change, const std::string& mergeKey = {});

    /// Takes work in that was kept elsewhere, as one step of the history. Fails: Error; all stays.
    void restore (const BenchWork& work);

    /// Trial B begins as a copy of the card in hand and is taken in hand.
    void beginSecondTrial();

    /// Another card is trial B of the stop and is taken in hand. Fails: Error.
    void loadSecondTrial (const std::filesystem::path& file);

    /// Takes trial A or B in hand. `gainDb`, 0 or less, is what all sound is lowered by to be as loud as the other.
    /// With `alwaysFades` a cross-fade is heard also where it is in hand already. Not part of the history.
    void takeTrial (bool isB, double gainDb, bool alwaysFades = false);

    /// What all sound is lowered by, from now on, so that the trial in hand is as loud as the other; 0 dB or less.
    void setTrialGainDb (double gainDb) { player_.setGainDb (gainDb); }

    void flipTrial (double gainDb = 0.0) { takeTrial (! isSecondTrial(), gainDb); }

    /// The other trial becomes a copy of the one in hand.
    void copyToOtherTrial();

    /// Only the trial in hand stays, as the card.
    void keepTrialInHand();

    bool hasTwoTrials() const { return isOpen_ && document_.pair().b.has_value(); }

    bool isSecondTrial() const { return isOpen_ && document_.pair().isB; }

    const EditHistory& history() const noexcept { return history_; }

    void undo();
    void redo();

    /// Tells the listeners a sentence; empty takes the last one away.
    void say (const std::string& sentence);

    /// The same for one that asks nothing of the user.
    void tell (const std::string& sentence);

    /// The sentence that was told last; empty once it was taken away.
    const std::string& sentence() const noexcept { return sentence_; }

    /// Takes a sentence away, unless another has been told since.
    void withdraw (const std::string& sentence);

    /// Runs `action` and says what it was refused for. Returns whether it went through.
    bool attempt (const std::function<void()>& action);

    void addListener (Listener& listener);
    void removeListener (Listener& listener);

private:
    void apply (const BenchWork& to);
    void applySound (const BenchWork& to);
    void goTo (const BenchWork& step);
    void note (const BenchWork& before, const std::string& what, const std::string& mergeKey);
    void tellDifference (const BenchWork& before, bool wasUnsound);
    void saveCard (const std::string& name);
    void saveSecond (const std::string& name);
    void saveInstrument();
    void requireUnchanged (const std::filesystem::path& file, const std::string& knownText);
    void notify (Change change);
    void tellEach (const std::function<void (Listener&)>& tell);

    BenchProcessor& processor_;
    BenchDocument document_;
    WorkPlayer player_;
    std::map<std::filesystem::path, std::string> forgoneTexts_; ///< of other programs, that the next save replaces
    KeySource keySource_;
    EditHistory history_;
    bool isOpen_ = false;

    bool gestureOpen_ = false;
    BenchWork gestureStart_;
    std::string gestureName_;

    std::vector<Listener*> listeners_;
    std::string sentence_;
};

} // namespace stopwright
