// SPDX-License-Identifier: GPL-3.0-or-later
//
// stopwright-window-pace INSTRUMENT MIDI FOLDER SECONDS
//
// The real window with the real sound device, all tablets drawn and a MIDI file played, while parts are turned by the mouse
// sixty times a second: how many frames a second it paints, how long an event waits until what it did is painted, how
// often the reading moves, and the load of the audio thread meanwhile. A line for each thing that is done, each for SECONDS:
//   turning-R5 fps 59.9 longest 25.0 events 600 median 9.1 late99 18.2 worst 24.0 readings 31.0 load 21.0 status JACK ...
// with times in milliseconds and the load in per cent. FOLDER takes settings and pictures. Needs a display and a JACK server.
#include "Bench/BenchView.h"
#include "Bench/DisplayErrors.h"
#include "Live/PaceMeter.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <memory>
#include <stdexcept>
#include <string>
#include <thread>
#include <utility>
#include <vector>

namespace
{

using namespace stopwright;

constexpr int width = 1200;
constexpr int height = 800;
constexpr double dragPoints = 60.0;  ///< up and down from where the mouse was pressed
constexpr double dragsPerCycle = 90; ///< events

double nowMs()
{
    return juce::Time::getMillisecondCounterHiRes();
}

double rank (std::vector<double> values, double fraction)
{
    if (values.empty())
        return -1.0;
    std::ranges::sort (values);
    return values[static_cast<std::size_t> (fraction * static_cast<double> (values.size() - 1))];
}

class WindowPace
{
public:
    WindowPace (const juce::File& instrument, const juce::File& folder)
        : settings_ (folder),
          folder_ (folder),
          audio_ (processor_),
          session_ (processor_)
    {
        session_.open (instrument.getFullPathName().toStdString());
        std::vector<std::string> all;
        for (const auto& stop : session_.document().instrument->stops)
            if (! stop.cardFile.empty())
                all.push_back (stop.name);
        session_.drawOnly (all);
        view_ = std::make_unique<BenchView> (session_, settings_, &audio_);
        settings_.acknowledgeCautions();
        view_->setSize (width, height);
        view_->addToDesktop (juce::ComponentPeer::windowHasTitleBar | juce::ComponentPeer::windowAppearsOnTaskbar);
        view_->setVisible (true);
        view_->toFront (true);
        view_->begin();
        view_->addAndMakeVisible (meter_);
        meter_.onFrame = [this] { look(); };
    }

    ~WindowPace() { view_->removeChildComponent (&meter_); }

    bool play (const juce::File& midi)
    {
        for (int wait = 0; wait < 100 && ! audio_.hasDevice(); ++wait)
            runMessages (100);
        return audio_.hasDevice() && view_->player().playNow (midi);
    }

    void idle (const std::string& name, double seconds)
    {
        run (name, seconds, [] {});
    }

    /// Drags a ring up and down all the time, sixty events a second, each as if it came from the display at its time.
    void turn (const std::string& name, KnobCell& cell, double seconds)
    {
        const auto middle = view_->getLocalPoint (&cell, cell.ringArea().getCentre().toFloat());
        mouse (middle, false);
        mouse (middle, true);
        int event = 0;
        run (name, seconds,
             [&]
             {
                 const double phase = static_cast<double> (event++) / dragsPerCycle;
                 const double offset = dragPoints * std::abs (2.0 * (phase - std::floor (phase)) - 1.0);
                 mouse (middle.translated (0.0f, static_cast<float> (offset)), true);
             });
        mouse (middle, false);
        runMessages (300);
        session_.undo();
    }

    BenchSession& session() { return session_; }

    BenchView& view() { return *view_; }

private:
    static void runMessages (int milliseconds)
    {
        juce::MessageManager::getInstance()->runDispatchLoopUntil (milliseconds);
    }

    void run (const std::string& name, double seconds, const std::function<void()>& act)
    {
        runMessages (1000);
        meter_.begin();
        readings_ = 0;
        load_ = 0.0;
        std::atomic<bool> isOver { false };
        std::thread clock (
            [&]
            {
                while (! isOver.load())
                {
                    std::this_thread::sleep_for (std::chrono::microseconds (16667));
                    juce::MessageManager::callAsync (
                        [this, posted = nowMs(), &act, &isOver]
                        {
                            if (isOver.load())
                                return;
                            act();
                            meter_.noteHandled (posted);
                        });
                }
            });
        runMessages (juce::roundToInt (1000.0 * seconds));
        isOver.store (true);
        clock.join();
        runMessages (100); // what is posted still refers to what is here
        tell (name, seconds);
    }

    void tell (const std::string& name, double seconds) const
    {
        const auto& answers = meter_.answers();
        std::printf ("%s fps %.1f longest %.1f events %zu median %.1f late99 %.1f worst %.1f readings %.1f load %.1f "
                     "status %s\n",
                     name.c_str(), static_cast<double> (meter_.frames().size()) / seconds, rank (meter_.frames(), 1.0),
                     answers.size(), rank (answers, 0.5), rank (answers, 0.99), rank (answers, 1.0),
                     static_cast<double> (readings_) / seconds, 100.0 * load_, audio_.statusText().toRawUTF8());
        std::fflush (stdout);
        juce::FileOutputStream out (folder_.getChildFile (juce::String (name) + ".png"));
        juce::PNGImageFormat().writeImageToStream (view_->createComponentSnapshot (view_->getLocalBounds()), out);
    }

    /// Counts a frame in which another picture of the reading is up.
    void look()
    {
        load_ = std::max (load_, static_cast<double> (processor_.engine().telemetry().loadFraction));
        const int shown = view_->readings().canvas().shownCount();
        if (std::exchange (shownCount_, shown) != shown)
            ++readings_;
    }

    /// With Shift held, so that every event turns a little: without it only some reach the next preferred value.
    void mouse (juce::Point<float> place, bool isDown)
    {
        const juce::ModifierKeys modifiers (juce::ModifierKeys::shiftModifier
                                            | (isDown ? juce::ModifierKeys::leftButtonModifier : 0));
        juce::ModifierKeys::currentModifiers =
            modifiers; // the framework takes Shift from here, as the keyboard left it
        view_->getPeer()->handleMouseEvent (juce::MouseInputSource::InputSourceType::mouse, place, modifiers, 0.0f,
                                            0.0f, juce::Time::currentTimeMillis());
    }

    BenchSettings settings_;
    juce::File folder_;
    BenchProcessor processor_;
    AudioHost audio_;
    BenchSession session_;
    std::unique_ptr<BenchView> view_;
    live::PaceMeter meter_;
    int shownCount_ = 0;
    int readings_ = 0;
    double load_ = 0.0;
};

KnobCell& cellOf (WindowPace& pace, const std::string& part)
{
    auto* const cell = pace.view().sheet().findCell ({ CardKnob::Place::part, part, KnobKind::value });
    if (cell == nullptr)
        throw std::runtime_error ("no ring of " + part);
    return *cell;
}

int measure (char* arguments[])
{
    const juce::ScopedJuceInitialiser_GUI juce;
    test::surviveDisplayErrors();
    const double seconds = std::atof (arguments[4]);
    WindowPace pace { juce::File (arguments[1]), juce::File (arguments[3]) };
    if (! pace.play (juce::File (arguments[2])))
    {
        std::fputs ("no sound device, or no MIDI file to play\n", stderr);
        return 1;
    }
    pace.idle ("playing", seconds);
    pace.turn ("turning-a-part", cellOf (pace, "R5"), seconds);
    pace.turn ("turning-a-mixing-resistor", *pace.view().place().mixing(), seconds);
    for (const auto& [kind, name] :
         { std::pair (ReadingKind::wave, "wave"), std::pair (ReadingKind::compass, "compass"),
           std::pair (ReadingKind::stages, "stages") })
    {
        pace.view().readings().choose (kind);
        pace.turn (std::string ("turning-with-the-reading-") + name, cellOf (pace, "R5"), seconds);
    }
    pace.view().readings().choose (ReadingKind::harmonics);
    pace.session().beginSecondTrial();
    pace.turn ("turning-trial-B", cellOf (pace, "R5"), seconds);
    return 0;
}

} // namespace

int main (int argumentCount, char* arguments[])
{
    constexpr int expected = 5;
    if (argumentCount != expected)
    {
        std::fputs ("usage: stopwright-window-pace INSTRUMENT MIDI FOLDER SECONDS\n", stderr);
        return 2;
    }
    try
    {
        return measure (arguments);
    }
    catch (const std::exception& error)
    {
        std::fprintf (stderr, "%s\n", error.what());
        return 1;
    }
}
