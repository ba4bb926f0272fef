// SPDX-License-Identifier: GPL-3.0-or-later
//
// stopwright-jack-capture OUT.wav SECONDS CLIENT [SPIN]
//
// Records the first two outputs of a JACK client into a 32-bit float WAV, for the live test; of "-" silence, to see how the
// server does without a client. With SPIN it idles away that share of every period on the processor: what such a client is
// late for is the machine's doing. Prints how many frames were recorded, how many were lost, how many dropouts the server
// told of meanwhile, and the load of the whole graph that it states (per cent of a period): mean and highest.

#include <jack/jack.h>
#include <jack/ringbuffer.h>
#include <sndfile.h>

#include <algorithm>
#include <array>
#include <atomic>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <thread>
#include <vector>

namespace
{

constexpr std::size_t channels = 2;
constexpr std::size_t ringBytes = 1 << 21;
constexpr std::chrono::milliseconds settling { 200 };
constexpr std::chrono::milliseconds betweenLoads { 100 };

struct Capture
{
    std::array<jack_port_t*, channels> ports {};
    jack_ringbuffer_t* ring = nullptr;
    std::atomic<bool> isRecording { false };
    std::atomic<long> lostFrames { 0 };
    std::atomic<int> dropouts { 0 };
    double spinSecondsPerFrame = 0.0;
};

void spin (double seconds)
{
    const auto until = std::chrono::steady_clock::now() + std::chrono::duration<double> (seconds);
    while (std::chrono::steady_clock::now() < until)
    {}
}

int process (jack_nframes_t frames, void* argument)
{
    auto& capture = *static_cast<Capture*> (argument);
    if (! capture.isRecording.load (std::memory_order_acquire))
        return 0;
    if (capture.spinSecondsPerFrame > 0.0)
        spin (capture.spinSecondsPerFrame * frames);

    std::array<const float*, channels> inputs {};
    for (std::size_t channel = 0; channel < channels; ++channel)
        inputs[channel] = static_cast<const float*> (jack_port_get_buffer (capture.ports[channel], frames));

    for (jack_nframes_t frame = 0; frame < frames; ++frame)
    {
        const std::array<float, channels> sample { inputs[0][frame], inputs[1][frame] };
        if (jack_ringbuffer_write_space (capture.ring) < sizeof (sample))
            capture.lostFrames.fetch_add (1, std::memory_order_relaxed);
        else
            jack_ringbuffer_write (capture.ring, reinterpret_cast<const char*> (sample.data()), sizeof (sample));
    }
    return 0;
}

int countDropout (void* argument)
{
    auto& capture = *static_cast<Capture*> (argument);
    if (capture.isRecording.load (std::memory_order_relaxed))
        capture.dropouts.fetch_add (1, std::memory_order_relaxed);
    return 0;
}

[[noreturn]] void giveUp (const std::string& sentence)
{
    std::fprintf (stderr, "stopwright-jack-capture: %s\n", sentence.c_str());
    std::exit (1);
}

void connectTo (jack_client_t* client, const Capture& capture, const std::string& source)
{
    const auto* const* outputs =
        jack_get_ports (client, ("^" + source + ":").c_str(), JACK_DEFAULT_AUDIO_TYPE, JackPortIsOutput);
    for (std::size_t channel = 0; channel < channels; ++channel)
    {
        if (outputs == nullptr || outputs[channel] == nullptr)
            giveUp ("the client \"" + source + "\" has no two outputs; is it running?");
        if (jack_connect (client, outputs[channel], jack_port_name (capture.ports[channel])) != 0)
            giveUp ("the output " + std::string (outputs[channel]) + " cannot be connected.");
    }
}

/// What the server states about its load, asked again and again.
class LoadReadings
{
public:
    explicit LoadReadings (jack_client_t* client) : client_ (client) {}

    void readWhenDue()
    {
        const auto now = std::chrono::steady_clock::now();
        if (now < due_)
            return;
        due_ = now + betweenLoads;
        const double load = static_cast<double> (jack_cpu_load (client_));
        sum_ += load;
        highest_ = std::max (highest_, load);
        ++count_;
    }

    double mean() const { return sum_ / std::max (1, count_); }

    double highest() const { return highest_; }

private:
    jack_client_t* client_;
    std::chrono::steady_clock::time_point due_;
    double sum_ = 0.0;
    double highest_ = 0.0;
    int count_ = 0;
};

long record (Capture& capture, SNDFILE* file, long framesWanted, LoadReadings& load)
{
    std::vector<float> chunk (4096 * channels);
    long framesDone = 0;
    while (framesDone < framesWanted)
    {
        load.readWhenDue();
        const auto waiting =
            static_cast<long> (jack_ringbuffer_read_space (capture.ring) / (channels * sizeof (float)));
        const long frames = std::min ({ waiting, framesWanted - framesDone, 4096L });
        if (frames == 0)
        {
            std::this_thread::sleep_for (std::chrono::milliseconds (5));
            continue;
        }
        const auto samples = static_cast<std::size_t> (frames) * channels;
        jack_ringbuffer_read (capture.ring, reinterpret_cast<char*> (chunk.data()), samples * sizeof (float));
        sf_writef_float (file, chunk.data(), frames);
        framesDone += frames;
    }
    return framesDone;
}

} // namespace

int main (int argumentCount, char** arguments)
{
    if (argumentCount != 4 && argumentCount != 5)
        giveUp ("usage: stopwright-jack-capture OUT.wav SECONDS CLIENT [SPIN]");

    auto* client = jack_client_open ("capture", JackNoStartServer, nullptr);
    if (client == nullptr)
        giveUp ("no JACK server is running; start jackd first.");

    Capture capture;
    capture.ring = jack_ringbuffer_create (ringBytes);
    for (std::size_t channel = 0; channel < channels; ++channel)
        capture.ports[channel] = jack_port_register (client, ("in_" + std::to_string (channel + 1)).c_str(),
                                                     JACK_DEFAULT_AUDIO_TYPE, JackPortIsInput, 0);
    if (argumentCount == 5)
        capture.spinSecondsPerFrame = std::atof (arguments[4]) / jack_get_sample_rate (client);
    jack_set_process_callback (client, process, &capture);
    jack_set_xrun_callback (client, countDropout, &capture);

    SF_INFO format {};
    format.samplerate = static_cast<int> (jack_get_sample_rate (client));
    format.channels = channels;
    format.format = SF_FORMAT_WAV | SF_FORMAT_FLOAT;
    auto* file = sf_open (arguments[1], SFM_WRITE, &format);
    if (file == nullptr)
        giveUp ("the file " + std::string (arguments[1]) + " cannot be written.");

    if (jack_activate (client) != 0)
        giveUp ("the client cannot be activated.");
    if (arguments[3] != std::string ("-"))
        connectTo (client, capture, arguments[3]);

    // Connecting puts the server's graph in another order; what is heard while it does so is not the bench's.
    std::this_thread::sleep_for (settling);
    capture.isRecording.store (true, std::memory_order_release);
    LoadReadings load (client);
    const long frames = record (capture, file, std::lround (std::atof (arguments[2]) * format.samplerate), load);

    jack_client_close (client);
    jack_ringbuffer_free (capture.ring);
    sf_close (file);
    std::printf ("frames %ld lost %ld dropouts %d loadmean %.1f loadmax %.1f\n", frames, capture.lostFrames.load(),
                 capture.dropouts.load(), load.mean(), load.highest());
    return 0;
}
