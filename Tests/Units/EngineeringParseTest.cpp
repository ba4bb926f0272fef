// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/Engineering.h"
#include "Units/Error.h"

#include "Support/Random.h"

#include <gtest/gtest.h>

#include <array>
#include <clocale>
#include <cmath>
#include <string>

namespace stopwright
{

namespace
{

struct Reading
{
    const char* text;
    double value;
};

void expectReadings (Quantity quantity, std::initializer_list<Reading> readings)
{
    for (const auto& reading : readings)
        EXPECT_EQ (parseEngineering (reading.text, quantity), reading.value) << reading.text;
}

std::string refusal (std::string_view text, Quantity quantity)
{
    try
    {
        return "taken as " + std::to_string (parseEngineering (text, quantity));
    }
    catch (const Error& error)
    {
        return error.what();
    }
}

constexpr std::array allQuantities { Quantity::resistance, Quantity::capacitance, Quantity::inductance,
                                     Quantity::frequency,  Quantity::voltage,     Quantity::current,
                                     Quantity::time,       Quantity::number };

} // namespace

// IEC 60062:2016, 4.2 (examples from memory): the letter takes the place of the point.
TEST (EngineeringParse, ReadsTheLetterCodeOfResistors)
{
    expectReadings (Quantity::resistance,
                    { { "R10", 0.1 },     { "R332", 0.332 },  { "1R0", 1.0 },    { "3R32", 3.32 },
                      { "59R04", 59.04 }, { "10R", 10.0 },    { "332R", 332.0 }, { "590R4", 590.4 },
                      { "1K0", 1000.0 },  { "3K32", 3320.0 }, { "10K", 10e3 },   { "332K", 332e3 },
                      { "1M0", 1e6 },     { "3M32", 3.32e6 }, { "10M", 10e6 },   { "590M4", 590.4e6 },
                      { "1G0", 1e9 },     { "3G32", 3.32e9 }, { "1T0", 1e12 },   { "10T", 10e12 } });
}

// IEC 60062:2016, 4.2 (examples from memory).
TEST (EngineeringParse, ReadsTheLetterCodeOfCapacitors)
{
    expectReadings (Quantity::capacitance, { { "p10", 0.1e-12 },
                                             { "p332", 0.332e-12 },
                                             { "1p0", 1e-12 },
                                             { "59p04", 59.04e-12 },
                                             { "332p", 332e-12 },
                                             { "1n0", 1e-9 },
                                             { "3n32", 3.32e-9 },
                                             { "332n", 332e-9 },
                                             { "1u0", 1e-6 },
                                             { "1\u00b50", 1e-6 },
                                             { "5\u03bc9", 5.9e-6 },
                                             { "100\u00b5", 100e-6 },
                                             { "1m0", 1e-3 },
                                             { "3m32", 3.32e-3 },
                                             { "1F0", 1.0 },
                                             { "10F", 10.0 } });
}

TEST (EngineeringParse, ReadsWhatStandsOnDrawings)
{
    expectReadings (Quantity::resistance,
                    { { "4k7", 4700.0 },      { "47k", 47e3 },       { "47K", 47e3 },    { "R47", 0.47 },
                      { "0R47", 0.47 },       { "4R7", 4.7 },        { "470R", 470.0 },  { "2M2", 2.2e6 },
                      { "680m", 0.68 },       { "150", 150.0 },      { "4.7k", 4700.0 }, { "  47k\t", 47e3 },
                      { "47 k\u03a9", 47e3 }, { "47k\u2126", 47e3 }, { "47kohm", 47e3 }, { "47 k ohms", 47e3 },
                      { "4k7 Ohm", 4700.0 },  { "150 ohm", 150.0 },  { "0", 0.0 },       { "+12", 12.0 },
                      { "-12", -12.0 },       { "5.", 5.0 },         { ".5", 0.5 } });
    expectReadings (Quantity::capacitance, { { "22n", 22e-9 },
                                             { "4n7", 4.7e-9 },
                                             { "0.1u", 0.1e-6 },
                                             { "0.1\u00b5", 0.1e-6 },
                                             { "0.1\u03bc", 0.1e-6 },
                                             { "22nF", 22e-9 },
                                             { "22 nF", 22e-9 },
                                             { "4n7F", 4.7e-9 },
                                             { "2.2e-8", 2.2e-8 },
                                             { "2.2E-8 F", 2.2e-8 } });
    expectReadings (
        Quantity::inductance,
        { { "1H5", 1.5 }, { "1H", 1.0 }, { "680m", 0.68 }, { "680mH", 0.68 }, { "H5", 0.5 }, { "4m7H", 4.7e-3 } });
}

TEST (EngineeringParse, ReadsTheOtherQuantities)
{
    expectReadings (Quantity::frequency,
                    { { "440", 440.0 }, { "440Hz", 440.0 }, { "2.5 kHz", 2500.0 }, { "2M", 2e6 } });
    expectReadings (Quantity::voltage, { { "3V3", 3.3 }, { "-12V", -12.0 }, { "500mV", 0.5 }, { "12 V", 12.0 } });
    expectReadings (Quantity::current, { { "20mA", 0.02 }, { "1A5", 1.5 }, { "100u", 100e-6 } });
    expectReadings (Quantity::time, { { "20ms", 0.02 }, { "0.5s", 0.5 }, { "3 s", 3.0 }, { "50u", 50e-6 } });
    expectReadings (Quantity::number, { { "0.5", 0.5 }, { "1e3", 1000.0 }, { "1E+3", 1000.0 }, { "10k", 10e3 } });
}

TEST (EngineeringParse, IsExactToTheLastBit)
{
    // 4.7 * 1e-9 is one step off 4.7e-9; the reader must not compute like that.
    ASSERT_NE (4.7 * 1e-9, 4.7e-9);
    EXPECT_EQ (parseEngineering ("4n7", Quantity::capacitance), 4.7e-9);
    EXPECT_EQ (parseEngineering ("0.0047u", Quantity::capacitance), 4.7e-9);
    EXPECT_EQ (parseEngineering ("4700p", Quantity::capacitance), 4.7e-9);
    EXPECT_TRUE (std::signbit (parseEngineering ("-0", Quantity::number)));
}

TEST (EngineeringParse, RefusesRubbish)
{
    for (const auto* text : { "",         " ",        "k",     "R",      "ohm",           ".",
                              "-",        "+",        "e5",    "nan",    "inf",           "-inf",
                              "infinity", "4k7k",     "4k7n",  "4kk",    "4k7R",          "4R7R",
                              "4R7k",     "47kR",     "4.7k2", "4..7",   "4.7.1",         "--4",
                              "+-4",      "4-",       "4 7",   "4k 7",   "4 k7",          "1e",
                              "1e+",      "1e+-5",    "1e5.5", "1e3k",   "0x10",          "1_000",
                              "1,5",      "4,7k",     "4k7!",  "47z",    "\xff",          "4\xc2",
                              "47 kk",    "12ohmohm", "1e999", "1e-999", "1e99999999999", "4'7" })
        EXPECT_THROW (parseEngineering (text, Quantity::resistance), Error) << text;

    EXPECT_THROW (parseEngineering (std::string_view ("47\0k", 4), Quantity::resistance), Error);
    for (const auto quantity : allQuantities)
        EXPECT_THROW (parseEngineering (std::string_view ("1\0005", 3), quantity), Error);
}

TEST (EngineeringParse, RefusesTheUnitOfAnotherQuantity)
{
    EXPECT_EQ (refusal ("22nF", Quantity::resistance),
               "\"22nF\" is not a resistance: F is the unit of a capacitance; write it like 4k7, R47, 2M2 or 150.");
    EXPECT_EQ (parseEngineering ("22n", Quantity::resistance), 22e-9) << "the range is the caller's";

    constexpr std::array units { "ohm", "F", "H", "Hz", "V", "A", "s" };
    for (std::size_t unit = 0; unit < units.size(); ++unit)
        for (std::size_t quantity = 0; quantity < allQuantities.size(); ++quantity)
        {
            const auto text = std::string ("12 m") + units[unit];
            if (unit == quantity)
                EXPECT_EQ (parseEngineering (text, allQuantities[quantity]), 12e-3) << text;
            else
                EXPECT_THROW (parseEngineering (text, allQuantities[quantity]), Error) << text;
        }
}

TEST (EngineeringParse, RefusesMegaWhereItCannotBeMeant)
{
    EXPECT_EQ (refusal ("0.1M", Quantity::capacitance),
               "\"0.1M\" is not a capacitance: M is mega, and no such part is made (m is milli, u is micro); write it "
               "like 22n, 4n7, 0.1u or 470p.");
    EXPECT_THROW (parseEngineering ("1MH", Quantity::inductance), Error);
    EXPECT_THROW (parseEngineering ("2M2", Quantity::capacitance), Error);
    EXPECT_EQ (parseEngineering ("2M2", Quantity::resistance), 2.2e6);
    EXPECT_EQ (parseEngineering ("2m2", Quantity::resistance), 2.2e-3) << "case matters";
}

TEST (EngineeringParse, SaysWhatIsWrong)
{
    EXPECT_EQ (refusal ("4,7k", Quantity::resistance),
               "\"4,7k\" is not a resistance: the decimal sign is a point, not a comma; write it like 4k7, R47, 2M2 or "
               "150.");
    EXPECT_NE (refusal ("4k7n", Quantity::resistance).find ("\"n\" at its end means nothing here"), std::string::npos);
    EXPECT_NE (refusal ("", Quantity::time).find ("it has no digits"), std::string::npos);
    EXPECT_NE (refusal ("1e3k", Quantity::number).find ("both an exponent and a prefix"), std::string::npos);
    EXPECT_NE (refusal ("4.7k2", Quantity::resistance).find ("a letter in place of one"), std::string::npos);
    EXPECT_NE (refusal ("4 k7", Quantity::resistance).find ("a blank inside the number"), std::string::npos);
    EXPECT_NE (refusal ("1e999", Quantity::number).find ("beyond what can be computed with"), std::string::npos);
    EXPECT_LT (refusal (std::string (1'000'000, 'x'), Quantity::number).size(), 300U) << "long text is cut";
}

TEST (EngineeringParse, TakesAMillionDigits)
{
    EXPECT_EQ (parseEngineering ("0." + std::string (1'000'000, '0') + "e1000000", Quantity::number), 0.0);
    EXPECT_EQ (parseEngineering (std::string (1'000'000, '0') + "47k", Quantity::resistance), 47e3);
}

TEST (EngineeringParse, DoesNotDependOnTheLocale)
{
    const std::string before = std::setlocale (LC_ALL, nullptr);
    for (const auto* locale : { "de_DE.UTF-8", "fr_FR.UTF-8", "C.UTF-8", "C" })
        if (std::setlocale (LC_ALL, locale) != nullptr)
        {
            EXPECT_EQ (parseEngineering ("4.7k", Quantity::resistance), 4700.0) << locale;
            EXPECT_EQ (formatForReading (4700.0, Quantity::resistance), "4.70 k\u03a9") << locale;
        }
    std::setlocale (LC_ALL, before.c_str());
}

TEST (EngineeringParse, NeverDoesMoreThanRefuse)
{
    // Mostly characters that mean something here, so that the deep branches are reached, and some of any kind.
    constexpr std::string_view alphabet = "0123456789.,+-eE pnum\xc2\xb5\xce\xbc\xce\xa9kKMGTRFHVAshz\t";
    Random random (60062);
    int taken = 0;
    for (int trial = 0; trial < 200'000; ++trial)
    {
        std::string text (static_cast<std::size_t> (random.integer (0, 9)), ' ');
        for (char& c : text)
            c = random.chance (0.95) ? alphabet[static_cast<std::size_t> (random.integer (0, alphabet.size() - 1))]
                                     : static_cast<char> (random.integer (0, 255));

        const auto quantity = allQuantities[static_cast<std::size_t> (random.integer (0, allQuantities.size() - 1))];
        try
        {
            ASSERT_TRUE (std::isfinite (parseEngineering (text, quantity))) << text;
            ++taken;
        }
        catch (const Error&)
        {
            continue;
        }
    }

    EXPECT_GT (taken, 5'000) << "too few legal texts to mean anything";
}

} // namespace stopwright
