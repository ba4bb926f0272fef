// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/Engineering.h"
#include "Units/Error.h"
#include "Units/PreferredValues.h"

#include "Support/Random.h"

#include <gtest/gtest.h>

#include <array>
#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>

namespace stopwright
{

namespace
{

constexpr std::array allQuantities { Quantity::resistance, Quantity::capacitance, Quantity::inductance,
                                     Quantity::frequency,  Quantity::voltage,     Quantity::current,
                                     Quantity::time,       Quantity::number };

struct Writing
{
    double value;
    const char* text;
};

void expectWritings (Quantity quantity, std::initializer_list<Writing> writings)
{
    for (const auto& writing : writings)
        EXPECT_EQ (formatEngineering (writing.value, quantity), writing.text);
}

void expectRoundTrip (double value)
{
    for (const auto quantity : allQuantities)
    {
        const auto text = formatEngineering (value, quantity);
        const auto again = parseEngineering (text, quantity);
        ASSERT_EQ (std::bit_cast<std::uint64_t> (again), std::bit_cast<std::uint64_t> (value)) << text;
    }
}

} // namespace

// IEC 60062:2016, 4.2
TEST (EngineeringFormat, WritesTheLetterCode)
{
    expectWritings (Quantity::resistance, { { 4700.0, "4k7" },
                                            { 47e3, "47k" },
                                            { 0.47, "R47" },
                                            { 4.7, "4R7" },
                                            { 150.0, "150" },
                                            { 2.2e6, "2M2" },
                                            { 1e6, "1M" },
                                            { 0.047, "R047" },
                                            { 1e9, "1G" },
                                            { 4712.345, "4k712345" },
                                            { -4700.0, "-4k7" } });
    expectWritings (
        Quantity::capacitance,
        { { 22e-9, "22n" }, { 4.7e-9, "4n7" }, { 1e-7, "100n" }, { 2.2e-6, "2u2" }, { 0.5e-12, "p5" }, { 1.0, "1F" } });
    expectWritings (Quantity::inductance, { { 1.5, "1H5" }, { 1.0, "1H" }, { 0.68, "680m" }, { 4.7e-3, "4m7" } });
}

TEST (EngineeringFormat, WritesTheOthersWithAPoint)
{
    expectWritings (Quantity::frequency, { { 440.0, "440" }, { 2500.0, "2.5k" }, { 261.625, "261.625" } });
    expectWritings (Quantity::voltage, { { 0.5, "500m" }, { -12.0, "-12" } });
    expectWritings (Quantity::time, { { 0.02, "20m" }, { 1e-4, "100u" } });
    expectWritings (Quantity::number, { { 0.5, "0.5" }, { 4700.0, "4700" }, { 1e-3, "0.001" } });
}

TEST (EngineeringFormat, FallsBackToAnExponent)
{
    expectWritings (Quantity::resistance, { { 1e-6, "1e-06" }, { 1e15, "1e+15" }, { 0.0, "0" } });
    expectWritings (Quantity::capacitance, { { 1e-18, "1e-18" }, { 4.7e9, "4.7e+09" } });
}

TEST (EngineeringFormat, RefusesWhatIsNotFinite)
{
    constexpr auto infinity = std::numeric_limits<double>::infinity();
    for (const double value : { infinity, -infinity, std::nan ("") })
        for (const auto quantity : allQuantities)
            EXPECT_THROW (formatEngineering (value, quantity), Error);
}

TEST (EngineeringFormat, ReadsBackBitForBit)
{
    for (const double value : { 0.0, -0.0, 1.0 / 3.0, 0.1 + 0.2, 1e-15, 1e-16, 999.9999999999999, 1e15, 5e-324,
                                std::numeric_limits<double>::max(), std::numeric_limits<double>::min() })
    {
        expectRoundTrip (value);
        expectRoundTrip (-value);
    }

    for (const auto series : { Series::e24, Series::e96 })
        for (double value = 1e-13; value < 1e10; value = nextPreferred (value, series, 1))
            expectRoundTrip (value);
}

TEST (EngineeringFormat, ReadsBackAnyNumberThereIs)
{
    Random random (4711);
    for (int trial = 0; trial < 20'000; ++trial)
    {
        expectRoundTrip (random.logUniform (1e-18, 1e18));
        const auto anything = std::bit_cast<double> (random.bits());
        if (std::isfinite (anything))
            expectRoundTrip (anything);
    }
}

TEST (EngineeringReading, RoundsAndNamesTheUnit)
{
    EXPECT_EQ (formatForReading (4700.0, Quantity::resistance), "4.70 k\u03a9");
    EXPECT_EQ (formatForReading (150.0, Quantity::resistance), "150 \u03a9");
    EXPECT_EQ (formatForReading (22e-9, Quantity::capacitance), "22.0 nF");
    EXPECT_EQ (formatForReading (1e-7, Quantity::capacitance, 2), "100 nF");
    EXPECT_EQ (formatForReading (2.2e-6, Quantity::capacitance), "2.20 \u00b5F");
    EXPECT_EQ (formatForReading (0.68, Quantity::inductance), "680 mH");
    EXPECT_EQ (formatForReading (261.6255653, Quantity::frequency), "262 Hz");
    EXPECT_EQ (formatForReading (261.6255653, Quantity::frequency, 6), "261.626 Hz");
    EXPECT_EQ (formatForReading (-0.0123456, Quantity::voltage), "-12.3 mV");
    EXPECT_EQ (formatForReading (0.02, Quantity::time, 2), "20 ms");
    EXPECT_EQ (formatForReading (1.5, Quantity::current, 2), "1.5 A");
}

TEST (EngineeringReading, CarriesIntoTheNextPrefix)
{
    EXPECT_EQ (formatForReading (999.4, Quantity::resistance), "999 \u03a9");
    EXPECT_EQ (formatForReading (999.6, Quantity::resistance), "1.00 k\u03a9");
    EXPECT_EQ (formatForReading (0.9996e-6, Quantity::capacitance), "1.00 \u00b5F");
    EXPECT_EQ (formatForReading (262.0, Quantity::frequency, 1), "300 Hz");
}

TEST (EngineeringReading, ShowsTheOddValuesToo)
{
    EXPECT_EQ (formatForReading (0.0, Quantity::resistance), "0 \u03a9");
    EXPECT_EQ (formatForReading (0.0, Quantity::number), "0");
    EXPECT_EQ (formatForReading (0.5, Quantity::number), "0.500");
    EXPECT_EQ (formatForReading (4700.0, Quantity::number), "4700");
    EXPECT_EQ (formatForReading (1e-9, Quantity::number), "1.00e-9");
    EXPECT_EQ (formatForReading (1e20, Quantity::resistance), "1.00e20 \u03a9");
    EXPECT_EQ (formatForReading (std::numeric_limits<double>::infinity(), Quantity::resistance), "inf");
    EXPECT_EQ (formatForReading (std::nan (""), Quantity::resistance), "nan");
}

TEST (EngineeringReading, IsReadableByTheReader)
{
    Random random (815);
    for (int trial = 0; trial < 2000; ++trial)
        for (const auto quantity : { Quantity::resistance, Quantity::frequency, Quantity::voltage, Quantity::time })
        {
            const auto value = random.logUniform (1e-14, 1e14);
            const auto text = formatForReading (value, quantity, 6);
            EXPECT_NEAR (parseEngineering (text, quantity) / value, 1.0, 0.6e-5) << text;
        }
}

} // namespace stopwright
