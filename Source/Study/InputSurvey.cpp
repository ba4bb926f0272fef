// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/InputSurvey.h"

#include "Study/RailStudy.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace stopwright
{

namespace
{

constexpr double impedanceHz = 1000.0;

/// Something with feedback around it: its output's peak, the siemens of its sources and its feedback resistor.
struct FedBack
{
    double peakVolts = 0.0;
    double siemens = 0.0;
    double feedbackOhms = 0.0;
};

InputDrive whenClipping (const FedBack& stage, SupplyRails rails)
{
    const double excess = stage.peakVolts - std::min (-rails.low, rails.high);
    const double ohms = 1.0 / (stage.siemens + 1.0 / stage.feedbackOhms);
    return { std::isfinite (excess) ? std::max (0.0, excess / stage.feedbackOhms * ohms) : 0.0, ohms, 0.0 };
}

InputDrive whenOff (const FedBack& stage)
{
    return { stage.peakVolts / stage.feedbackOhms / stage.siemens, 1.0 / stage.siemens, 0.0 };
}

/// What the input of a stage is connected to.
struct Before
{
    double peakVolts = 0.0;
    double ohms = 0.0;
    bool isPassive = false;
};

Before behind (const StageHeadroom& stage)
{
    const double reach = std::max (-stage.limits.low, stage.limits.high);
    return { std::min (stage.peakVolts(), reach), 0.0, false };
}

const PreampStage& stageNamed (const Instrument& instrument, const StageHeadroom& found)
{
    const auto preamp = std::ranges::find (instrument.preamps, found.preamp, &Preamp::name);
    return *std::ranges::find (preamp->stages, found.name, &PreampStage::name);
}

std::optional<InputReading> readingOfStage (const PreampStage& values, const StageHeadroom& found, const Before& before)
{
    const bool inverts = values.kind == StageKind::amplifier && values.gain < 0.0;
    if (values.kind == StageKind::circuit || (inverts && ! values.coupling))
        return {};
    InputReading reading { found.name, found.preamp, { before.peakVolts, before.ohms, 0.0 }, {}, {}, {} };
    reading.rails = values.rails.value_or (noLimits); // what a follower can sink is no limit of its base
    InputDrive off = reading.on;
    if (inverts)
    {
        const double inputOhms = values.coupling->inputOhms;
        const double siemens = 1.0 / (before.ohms + inputOhms);
        reading.on = whenClipping ({ found.peakVolts(), siemens, -values.gain * inputOhms }, reading.rails);
        off.sourceOhms += inputOhms;
    }
    if (before.isPassive)
        reading.off = off;
    return reading;
}

void finish (InputReading& reading, const InputLimits& each, double seriesOhms)
{
    InputLimits limits = each;
    limits.rails = reading.rails;
    reading.on.seriesOhms = seriesOhms;
    reading.stress = inputStress (reading.on, limits);
    reading.stress.ampsOff = 0.0;
    reading.stress.seriesOhmsOff = 0.0;
    if (! reading.off)
        return;
    reading.off->seriesOhms = seriesOhms;
    const auto off = inputStress (*reading.off, limits);
    reading.stress.ampsOff = off.ampsOff;
    reading.stress.seriesOhmsOff = off.seriesOhmsOff;
}

InputReading readingOfBus (const MixingBus& bus, const StageHeadroom& found, double siemens)
{
    const FedBack earth { found.peakVolts(), siemens, bus.feedbackOhms };
    return { found.name, {}, whenClipping (earth, found.limits), found.limits, whenOff (earth), {} };
}

} // namespace

std::vector<InputReading> inputSurvey (const Instrument& instrument,
                                       const InstrumentCards& cards,
                                       const std::vector<HeldKey>& held,
                                       const InputLimits& each,
                                       double seriesOhms)
{
    const RailStudy rail (instrument, cards);
    std::vector<InputReading> readings;
    Before ofBus;
    Before before;
    std::string preamp;
    const HeadroomRequest withoutRemedies { .held = held, .marginDb = -std::numeric_limits<double>::infinity() };
    for (const StageHeadroom& found : headroomOf (instrument, cards, withoutRemedies))
    {
        if (found.preamp.empty())
        {
            const auto bus = std::ranges::find (instrument.mixingBuses, found.name, &MixingBus::name);
            const auto index = static_cast<std::size_t> (bus - instrument.mixingBuses.begin());
            const double siemens = std::abs (rail.busSiemens (index, rail.asOpened(), impedanceHz));
            ofBus = behind (found);
            if (found.role == StageRole::busAmplifier)
                readings.push_back (readingOfBus (*bus, found, siemens));
            else
                ofBus = { found.peakVolts(), 1.0 / siemens, true };
            preamp.clear();
            continue;
        }
        if (found.preamp != preamp)
            before = ofBus;
        preamp = found.preamp;
        if (auto reading = readingOfStage (stageNamed (instrument, found), found, before))
            readings.push_back (std::move (*reading));
        before = behind (found);
    }
    for (InputReading& reading : readings)
        finish (reading, each, seriesOhms);
    return readings;
}

} // namespace stopwright
