// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/ExpectWords.h"

#include "Command/NumberText.h"
#include "Command/TextTable.h"
#include "Units/Decibels.h"
#include "Units/Engineering.h"
#include "Units/Pitch.h"

#include <cmath>
#include <ostream>
#include <string>

namespace stopwright
{

namespace
{

std::string volts (double value)
{
    return formatForReading (value, Quantity::voltage, 4);
}

double loadRmsDb (const Expectation& one)
{
    return toDecibels (one.loaded.rmsVolts / one.open.rmsVolts);
}

void printReadings (std::span<const Expectation> expectations, bool isLoaded, std::ostream& out)
{
    TextTable table ({ "key", "Hz", "peak to peak", "highest", "lowest", "true rms", "averaging meter", "crest dB" });
    for (const Expectation& one : expectations)
    {
        const MeterReadings& readings = isLoaded ? one.loaded : one.open;
        table.addRow ({ keyName (one.key), fixedNumber (one.keyHz, 2), volts (readings.peakToPeakVolts()),
                        volts (readings.highestVolts), volts (readings.lowestVolts), volts (readings.rmsVolts),
                        volts (readings.averageVolts), fixedNumber (readings.crestDb(), 2) });
    }
    table.print (out);
}

void printBleed (std::span<const Expectation> expectations, double strayFarads, std::ostream& out)
{
    out << "\nAll unplayed keys through " << formatForReading (strayFarads, Quantity::capacitance)
        << " each (2 pF is common practice), dB re the key alone:\n";
    TextTable table ({ "key", "bleed dB", "A-weighted dB", "fundamentals dB" });
    for (const Expectation& one : expectations)
        table.addRow ({ keyName (one.key), fixedNumber (one.bleed.levelDb, 2), fixedNumber (one.bleed.aWeightedDb, 2),
                        fixedNumber (one.bleed.fundamentalsDb, 2) });
    table.print (out);
    if (std::isinf (expectations.front().bleed.levelDb))
        out << "Taps without a source resistance let nothing in; give them sourceOhms.\n";
}

} // namespace

void printExpectationsCsv (std::span<const Expectation> expectations, std::ostream& out)
{
    out << expectCsvHeader << '\n';
    for (const Expectation& one : expectations)
    {
        out << keyName (one.key);
        for (const double value :
             { one.keyHz, one.open.peakToPeakVolts(), one.open.highestVolts, one.open.lowestVolts, one.open.rmsVolts,
               one.open.averageVolts, one.loaded.peakToPeakVolts(), one.loaded.rmsVolts, one.loaded.averageVolts,
               loadRmsDb (one), one.loadedFundamentalDb })
            out << ',' << csvNumber (value);
        out << ',' << (one.cornerHz ? csvNumber (*one.cornerHz) : std::string());
        for (const double value : { one.sourceOhms, one.noise.volts, one.noise.noiseGain, one.bleed.levelDb,
                                    one.bleed.aWeightedDb, one.bleed.fundamentalsDb })
            out << ',' << csvNumber (value);
        out << '\n';
    }
}

void printExpectationsTable (std::span<const Expectation> expectations,
                             const std::optional<ProbeLoad>& probe,
                             const NoiseBand& band,
                             double strayFarads,
                             std::ostream& out)
{
    printReadings (expectations, false, out);
    const Expectation& first = expectations.front();
    if (probe)
    {
        out << "\nWith " << formatForReading (probe->ohms, Quantity::resistance) << " and "
            << formatForReading (probe->farads, Quantity::capacitance) << " connected:\n";
        printReadings (expectations, true, out);
        for (const Expectation& one : expectations)
            out << keyName (one.key) << ": " << fixedNumber (loadRmsDb (one), 3) << " dB rms, "
                << fixedNumber (one.loadedFundamentalDb, 3) << " dB at " << fixedNumber (one.keyHz, 2) << " Hz\n";
        out << "its corner: "
            << (first.cornerHz ? formatForReading (*first.cornerHz, Quantity::frequency) : "none up to 10 MHz") << '\n';
    }
    out << "\nsource impedance " << formatForReading (first.sourceOhms, Quantity::resistance) << " at 1 kHz; noise "
        << volts (first.noise.volts) << " rms, " << formatForReading (band.fromHz, Quantity::frequency) << " to "
        << formatForReading (band.toHz, Quantity::frequency) << " at " << csvNumber (band.kelvin) << " K";
    if (first.noise.noiseGain > 1.0)
        out << ", noise gain of the virtual earth " << fixedNumber (first.noise.noiseGain, 2);
    out << '\n';
    printBleed (expectations, strayFarads, out);
}

} // namespace stopwright
