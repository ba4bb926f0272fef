// SPDX-License-Identifier: GPL-3.0-or-later
#include "Bench/BenchFixture.h"

#include "Bench/DisplayErrors.h"

#include <juce_events/native/juce_linux_EventLoopInternal.h>

#include <algorithm>
#include <cmath>
#include <memory>

namespace stopwright
{

namespace
{

namespace fs = std::filesystem;

fs::path freshFolder()
{
    const auto name = "stopwright-bench-test-" + juce::Uuid().toString().toStdString();
    const auto folder = fs::temp_directory_path() / name;
    fs::create_directories (folder);
    for (const auto& entry : fs::directory_iterator (fs::path (STOPWRIGHT_ROOT) / "Presets"))
    {
        if (entry.is_regular_file())
            fs::copy_file (entry.path(), folder / entry.path().filename());
    }
    return folder;
}

/// What asks the display for something and waits for the answer reads the events that came before it, and the message loop,
/// which waits for more to read, then leaves them lying.
void handleDisplayEvents()
{
    for (const int source : juce::LinuxEventLoopInternal::getRegisteredFds())
        juce::LinuxEventLoopInternal::invokeEventLoopCallbackForFd (source);
}

/// JUCE, once for all tests of the program: the connection to the display cannot be opened a second time.
class JuceEnvironment : public testing::Environment
{
public:
    void SetUp() override
    {
        juce_ = std::make_unique<juce::ScopedJuceInitialiser_GUI>();
        test::surviveDisplayErrors();
    }

    void TearDown() override { juce_.reset(); }

private:
    std::unique_ptr<juce::ScopedJuceInitialiser_GUI> juce_;
};

const auto* const juceEnvironment = testing::AddGlobalTestEnvironment (new JuceEnvironment);

} // namespace

BenchFixture::BenchFixture() : folder_ (freshFolder())
{
    settings_ = std::make_unique<BenchSettings> (juce::File ((folder_ / "configuration").string()));
    processor_.setPlayConfigDetails (0, 2, rateHz, blockFrames);
    processor_.prepareToPlay (rateHz, blockFrames);
    session_.open (preset ("LarkfieldOrgan.json"));
    drawOnly ("Krummhorn 8");
}

BenchFixture::~BenchFixture()
{
    view_.reset();
    settings_.reset();
    std::error_code ignored;
    fs::remove_all (folder_, ignored);
}

int BenchFixture::stop (const std::string& tablet) const
{
    const auto& stops = session_.document().instrument->stops;
    const auto found = std::ranges::find (stops, tablet, &StopTablet::name);
    if (found == stops.end())
        throw std::runtime_error ("no stop " + tablet);
    return static_cast<int> (found - stops.begin());
}

void BenchFixture::drawOnly (const std::string& tablet)
{
    session_.retireAll();
    session_.draw (stop (tablet), true);
}

BenchView& BenchFixture::openView (int width, int height)
{
    view_ = std::make_unique<BenchView> (session_, *settings_, nullptr);
    view_->setSize (width, height);
    view_->addToDesktop (juce::ComponentPeer::windowHasTitleBar | juce::ComponentPeer::windowAppearsOnTaskbar);
    view_->setVisible (true);
    // Tooltips and the keyboard belong to the window in front; another test's may just be going. The window gets the
    // keyboard before a test gives it to a control, for it would take it from there.
    constexpr int longestWait = 40;
    int wait = 0;
    do
    {
        view_->toFront (true);
        runMessages (50);
    } while (++wait < longestWait && ! (juce::Process::isForegroundProcess() && view_->getPeer()->isFocused()));
    handleDisplayEvents();
    view_->readings().finish();
    return *view_;
}

void BenchFixture::runMessages (int milliseconds)
{
    auto& messages = *juce::MessageManager::getInstance();
    messages.runDispatchLoopUntil (milliseconds);
    // What was posted before this comes before it, however busy the machine is.
    const auto isReached = std::make_shared<bool> (false);
    juce::MessageManager::callAsync ([isReached] { *isReached = true; });
    while (! *isReached)
        messages.runDispatchLoopUntil (1);
}

std::vector<double> BenchFixture::play (double seconds)
{
    juce::AudioBuffer<float> buffer (2, blockFrames);
    juce::MidiBuffer midi;
    std::vector<double> played;
    const auto wanted = static_cast<std::size_t> (seconds * rateHz);
    while (played.size() < wanted)
    {
        processor_.processBlock (buffer, midi);
        const float* samples = buffer.getReadPointer (0);
        played.insert (played.end(), samples, samples + blockFrames);
    }
    return played;
}

double BenchFixture::settledRms (double seconds)
{
    play (0.3);
    const auto played = play (seconds);
    double sum = 0.0;
    for (const double sample : played)
        sum += sample * sample;
    return std::sqrt (sum / static_cast<double> (played.size()));
}

KnobCell& BenchFixture::cell (const std::string& part, KnobKind kind)
{
    if (view_->sheet().findCell ({ CardKnob::Place::part, part, kind }) == nullptr)
        view_->sheet().schematic().select (SchematicView::Selection { false, part }); // numbers beside the value
    auto* found = view_->sheet().findCell ({ CardKnob::Place::part, part, kind });
    if (found == nullptr)
        throw std::runtime_error ("no cell for " + part);
    return *found;
}

double BenchFixture::value (const std::string& part, KnobKind kind) const
{
    return valueOf (session_.card(), { CardKnob::Place::part, part, kind });
}

void BenchFixture::mouse (juce::Component& component, juce::Point<int> place, juce::ModifierKeys modifiers)
{
    const auto inWindow = view_->getLocalPoint (&component, place.toFloat());
    mouseTime_ += 40;
    juce::ModifierKeys::currentModifiers = modifiers; // the framework takes Shift from here, as the keyboard left it
    view_->getPeer()->handleMouseEvent (juce::MouseInputSource::InputSourceType::mouse, inWindow, modifiers, 0.0f, 0.0f,
                                        mouseTime_);
}

void BenchFixture::mouseMoveTo (juce::Component& component, juce::Point<int> place)
{
    mouse (component, place, {});
}

void BenchFixture::mousePress (juce::Component& component, juce::Point<int> place, juce::ModifierKeys modifiers)
{
    mouseTime_ += 2000; // far from the last press, so that it is no double-click by accident
    mouse (component, place, modifiers);
    mouse (component, place, modifiers.withFlags (juce::ModifierKeys::leftButtonModifier));
}

void BenchFixture::mouseDragTo (juce::Component& component, juce::Point<int> place, juce::ModifierKeys modifiers)
{
    mouse (component, place, modifiers.withFlags (juce::ModifierKeys::leftButtonModifier));
}

void BenchFixture::mouseRelease (juce::Component& component, juce::Point<int> place, juce::ModifierKeys modifiers)
{
    mouse (component, place, modifiers);
}

void BenchFixture::mouseDoubleClick (juce::Component& component, juce::Point<int> place)
{
    mousePress (component, place);
    mouseRelease (component, place);
    mouseDragTo (component, place); // no mousePress, which waits too long for it
    mouseRelease (component, place);
}

void BenchFixture::mouseWheel (juce::Component& component, juce::Point<int> place, float notches)
{
    mouse (component, place, {});
    juce::MouseWheelDetails wheel;
    wheel.deltaX = 0.0f;
    wheel.deltaY = notches * 0.2f;
    wheel.isReversed = false;
    wheel.isSmooth = false;
    wheel.isInertial = false;
    view_->getPeer()->handleMouseWheel (juce::MouseInputSource::InputSourceType::mouse,
                                        view_->getLocalPoint (&component, place.toFloat()), mouseTime_, wheel);
}

void BenchFixture::keepPicture (const juce::Image& image, const std::string& name)
{
    const std::filesystem::path folder = std::filesystem::path (STOPWRIGHT_PICTURES);
    std::filesystem::create_directories (folder);
    juce::File file ((folder / (name + ".png")).string());
    file.deleteFile();
    juce::FileOutputStream stream (file);
    ASSERT_TRUE (juce::PNGImageFormat().writeImageToStream (image, stream));
}

} // namespace stopwright
