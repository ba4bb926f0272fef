// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Circuit/PartKnob.h"
#include "Organ/InstrumentCards.h"
#include "Organ/KeySource.h"
#include "Sound/KeyEvent.h"
#include "Sound/StreamSpec.h"
#include "Sound/Telemetry.h"

#include <memory>
#include <span>
#include <string>
#include <vector>

namespace stopwright
{

/// The live instrument: one card, or a whole instrument with one stop in hand, played from keys at a listening level that cannot hurt. Cards and values change while
/// it sounds: a value ramps, a changed card is built on the control thread, handed over through one atomic slot and
/// cross-faded; what it replaces is freed on the control thread.
///
/// Threading: prepare, setCard, setInstrument and collectReplaced on one [control] thread; turn*, draw*, switch*, key*,
/// setTrialGainDb and setListeningLevelDb on that same thread or another single one; telemetry on [any] one reader; process on [audio].
class Engine
{
public:
    static constexpr double startListeningLevelDb = -30.0;
    static constexpr double lowestListeningLevelDb = -80.0;
    static constexpr double highestListeningLevelDb = -10.0;
    static constexpr double lowestTrialGainDb = -40.0;

    Engine();
    ~Engine();
    Engine (const Engine&) = delete;
    Engine& operator= (const Engine&) = delete;
    Engine (Engine&&) = delete;
    Engine& operator= (Engine&&) = delete;

    /// Sound must be stopped. May be called again with other numbers; the card stays. Fails: Error (rate, size).
    void prepare (const StreamSpec& spec);

    /// Plays `card` from now on, with a cross-fade when something sounds. With `newReference`, the listening level is
    /// measured afresh: one C4 (or the nearest key) of the card as given comes out at the listening level, rms re full
    /// scale; without it the scale stays, so that an edit that makes the card louder is heard louder.
    /// `trialGainDb` lowers this card alone, so that two trials are heard equally loud one after the other: the
    /// cross-fade carries it, and it is no part of a new reference. Clamped as setTrialGainDb does.
    /// Fails: Error with a sentence; what sounded goes on sounding.
    void setCard (const Card& card, const KeySource& keySource, bool newReference, double trialGainDb = 0.0);

    /// Plays a whole instrument from now on, as setCard a card: the tablets that it says are drawn. `tabletInHand` is the
    /// stop whose card turn and turnTapLevel are about, and whose C4 drawn alone the listening level is measured by.
    void setInstrument (const Instrument& instrument,
                        const InstrumentCards& cards,
                        const std::string& tabletInHand,
                        bool newReference,
                        double trialGainDb = 0.0);

    /// The gain of what was set last, from now on, whatever is turned: on a ramp of 20 ms. Units/range: dB, -40 .. 0,
    /// clamped, since a trial is lowered and never raised; what is not a number counts as 0.
    void setTrialGainDb (double gainDb);

    /// Of what was set last; 0 when nothing is. Threading: [control].
    double trialGainDb() const;

    /// Turns one number of the card that was set last, or of the stop in hand. Values are SI. Unknown knobs are ignored
    /// and return false.
    bool turn (const PartKnob& knob, double value);
    bool turnTapLevel (const std::string& tapName, double voltsPeakToPeak);

    /// Of the instrument that was set last: draws or retires a stop's or coupler's tablet, switches a tremulant or a
    /// rotary speaker to fast, turns a stop's mixing resistor. False when there is no such thing.
    bool draw (const std::string& tablet, bool isDrawn);
    bool drawCoupler (const std::string& tablet, bool isDrawn);
    bool switchOutlet (const std::string& outlet, bool isOn);
    bool turnMixing (const std::string& tablet, double ohms);

    /// Rate and depth of a tremulant, which it runs to in a moment while its phase goes on; what is beyond its ranges is
    /// brought into them. False when there is no tremulant of that name.
    bool turnTremulant (const std::string& outlet, const TremulantSettings& settings);

    /// What the bits of Telemetry::clips stand for in what was set last. Threading: [control].
    std::vector<std::string> clipNames() const;

    /// The swell shoe, 0 closed .. 1 open; stays where it is put. Threading: [any].
    void setSwell (double position) noexcept;
    double swell() const noexcept;

    /// Keys from the window, on the keyboard of a division. False when the queue to the audio thread is full.
    bool key (int key, bool down, int division = 0);
    bool releaseAllKeys();

    /// Counts the calls of prepare: after each of them no key is down. Threading: [any].
    int preparations() const noexcept;

    /// Clamped to the range above; ramped, never more than 6 dB in 20 ms upward.
    void setListeningLevelDb (double levelDb) noexcept;
    double listeningLevelDb() const noexcept;

    /// Frees what the audio thread has let go of. Call it a few times a second.
    void collectReplaced();

    Telemetry telemetry() noexcept;

    /// Whether a fault of the card that plays has silenced the sound; setCard makes it sound again. Threading: [any].
    bool isSilencedByFault() const noexcept;

    /// From a key going down to its effect at the device, block not counted. Threading: [control].
    int latencyFrames() const noexcept;

    /// Writes `frameCount` samples to every channel (all get the same). Any frameCount. Threading: [audio].
    void process (std::span<const KeyEvent> events, std::span<float* const> channels, int frameCount) noexcept;

private:
    struct Implementation;
    std::unique_ptr<Implementation> implementation_;
};

} // namespace stopwright
