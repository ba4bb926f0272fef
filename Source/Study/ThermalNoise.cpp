// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/ThermalNoise.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace stopwright
{

namespace
{

constexpr double boltzmann = 1.380649e-23; // J/K, exact in the SI since 2019

} // namespace

double integratedNoise (const std::function<double (double frequencyHz)>& density, const NoiseBand& band)
{
    constexpr double panelsAnOctave = 128.0;
    constexpr std::array<double, 3> places { -0.7745966692414834, 0.0, 0.7745966692414834 };
    constexpr std::array<double, 3> weights { 5.0 / 9.0, 8.0 / 9.0, 5.0 / 9.0 };
    const double octaves = std::log2 (band.toHz / band.fromHz);
    const int panels = std::max (1, static_cast<int> (std::ceil (octaves * panelsAnOctave)));
    const double width = std::log (band.toHz / band.fromHz) / panels; // in the logarithm, where df = f d (ln f)
    double power = 0.0;
    for (int panel = 0; panel < panels; ++panel)
        for (std::size_t point = 0; point < places.size(); ++point)
        {
            const double hz = band.fromHz * std::exp (width * (panel + 0.5 + 0.5 * places[point]));
            power += 0.5 * width * weights[point] * hz * density (hz);
        }
    return std::sqrt (std::max (0.0, power));
}

double thermalNoise (const std::function<std::complex<double> (double frequencyHz)>& ohms, const NoiseBand& band)
{
    return integratedNoise ([&] (double hz) { return 4.0 * boltzmann * band.kelvin * ohms (hz).real(); }, band);
}

BusNoise busNoise (const RailStudy& rail,
                   std::size_t bus,
                   const RailState& state,
                   const NoiseBand& band,
                   double amplifierVolts,
                   const std::function<std::complex<double> (double frequencyHz)>& onward)
{
    const MixingBus& values = rail.instrument().mixingBuses[bus];
    const double heat = 4.0 * boltzmann * band.kelvin;
    const auto gain = [&] (double hz)
    { return std::abs (1.0 + values.feedbackOhms * rail.busSiemens (bus, state, hz)); };
    const auto density = [&] (double hz)
    {
        const auto siemens = rail.busSiemens (bus, state, hz);
        const double onwardPower = onward ? std::norm (onward (hz)) : 1.0;
        if (values.kind == BusKind::passive)
            return onwardPower * heat * (1.0 / siemens).real();
        const double ohms = values.feedbackOhms;
        return onwardPower
               * (std::pow (amplifierVolts * gain (hz), 2) + heat * ohms + heat * siemens.real() * ohms * ohms);
    };
    constexpr double gainHz = 1000.0;
    return { integratedNoise (density, band), values.kind == BusKind::virtualEarth ? gain (gainHz) : 1.0 };
}

} // namespace stopwright
