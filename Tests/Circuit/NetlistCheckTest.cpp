// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/NetlistCheck.h"

#include "Circuit/FindingSearch.h"
#include "Circuit/NetlistSketch.h"
#include "Circuit/SmallSignal.h"
#include "Support/Random.h"
#include "Units/Error.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace stopwright
{
namespace
{

Netlist faulty()
{
    return NetlistSketch()
        .tap ("W1", "in")
        .resistor ("R1", "in", "t", 47e3)
        .resistor ("R2", "t", "loose", 1e3)
        .resistor ("R3", "t", "0", -5.0)
        .resistor ("R4", "t", "t", 1e3)
        .output ("t");
}

TEST (NetlistCheck, ErrorsComeFirst)
{
    const auto findings = findFaults (faulty());
    ASSERT_EQ (findings.size(), 3U);
    EXPECT_EQ (findings[0].severity, Severity::error);
    EXPECT_EQ (findings[1].severity, Severity::error);
    EXPECT_EQ (findings[2].severity, Severity::warning);
    EXPECT_EQ (findings[2].subject, "R2");
}

TEST (NetlistCheck, RequireSoundThrowsTheFirstError)
{
    try
    {
        requireSound (faulty());
        FAIL() << "a faulty network was let through";
    }
    catch (const Error& error)
    {
        EXPECT_EQ (error.what(), findFaults (faulty()).front().sentence);
    }
    EXPECT_NO_THROW (requireSound (NetlistSketch().tap ("W1", "t").resistor ("R1", "t", "loose", 1e3).output ("t")));
}

TEST (NetlistCheck, AnEmptyNetlistIsRefused)
{
    EXPECT_TRUE (refuses (Netlist {}, "", { "no output" }));
    EXPECT_TRUE (refuses (NetlistSketch().output ("t"), "t", { "touches the output" }));
}

/// Netlists at random: some sound, most with one fault or several.
class NetlistLottery
{
public:
    explicit NetlistLottery (std::uint64_t seed) : random_ (seed) {}

    Netlist draw()
    {
        nodeCount_ = random_.integer (1, 7);
        faultChance_ = random_.chance (0.5) ? 0.0 : 0.1;
        NetlistSketch sketch;
        for (int k = random_.integer (0, 3); k > 0; --k)
            sketch.tap (name ("W", k), node(), random_.chance (0.4) ? 0.0 : value (1.0, 1e6));
        for (int k = random_.integer (0, 14); k > 0; --k)
            addPart (sketch, k);
        return sketch.output (node());
    }

private:
    std::string name (const std::string& letters, int number)
    {
        return random_.chance (0.2 * faultChance_) ? "R1" : numbered (letters, static_cast<std::size_t> (number));
    }

    std::string node()
    {
        const int index = random_.integer (0, nodeCount_);
        return random_.chance (0.2 * faultChance_) ? "" : std::to_string (index);
    }

    double value (double low, double high)
    {
        constexpr double notANumber = std::numeric_limits<double>::quiet_NaN();
        constexpr double infinity = std::numeric_limits<double>::infinity();
        if (! random_.chance (faultChance_))
            return random_.logUniform (low, high);
        const std::vector<double> bad { 0.0, -1.0, 1e30, 1e-30, notANumber, infinity, -infinity };
        return bad[static_cast<std::size_t> (random_.integer (0, static_cast<int> (bad.size()) - 1))];
    }

    OpAmp opAmp()
    {
        OpAmp amplifier;
        if (random_.chance (0.5))
            amplifier.gainBandwidthHz = value (1e4, 1e7);
        if (random_.chance (0.3))
            amplifier.openLoopDb = value (20.0, 120.0);
        return amplifier;
    }

    void addPart (NetlistSketch& sketch, int number)
    {
        switch (random_.integer (0, 6))
        {
            case 0:
                sketch.capacitor (name ("C", number), node(), node(), value (1e-12, 1e-5));
                break;
            case 1:
                sketch.inductor (name ("L", number), node(), node(), value (1e-3, 10.0), value (1.0, 1e3));
                break;
            case 2:
                sketch.opAmp (name ("U", number), node(), node(), node(), opAmp());
                break;
            case 3:
                sketch.contact (name ("S", number), node(), node(), random_.chance (0.5));
                break;
            case 4:
                sketch.potentiometer (name ("P", number), node(), node(), node(),
                                      { value (1e3, 1e6), random_.uniform (0.0, 1.0), Taper::log });
                break;
            default:
                sketch.resistor (name ("R", number), node(), node(), value (1.0, 1e7));
                break;
        }
    }

    Random random_;
    int nodeCount_ = 1;
    double faultChance_ = 0.0;
};

bool areSame (const std::vector<Finding>& a, const std::vector<Finding>& b)
{
    const auto isSame = [] (const Finding& x, const Finding& y)
    { return x.severity == y.severity && x.subject == y.subject && x.sentence == y.sentence; };
    return std::equal (a.begin(), a.end(), b.begin(), b.end(), isSame);
}

void expectFiniteResponses (const Netlist& netlist)
{
    const SmallSignal analysis (netlist);
    for (const double frequencyHz : { 1.0, 440.0, 20e3 })
    {
        for (const auto& response : analysis.responses (netlist.output, frequencyHz))
            EXPECT_TRUE (std::isfinite (std::abs (response)));
        EXPECT_TRUE (std::isfinite (std::abs (analysis.impedance (netlist.output, frequencyHz))));
    }
    for (const auto& pole : analysis.poles())
        EXPECT_LE (pole.real(), 1e-3 + 1e-8 * std::abs (pole));
}

TEST (NetlistCheck, RandomNetlistsAreJudgedAlikeEveryTimeAndSoundOnesAnswer)
{
    NetlistLottery lottery (20240611);
    int soundCount = 0;
    for (int round = 0; round < 4000; ++round)
    {
        const auto netlist = lottery.draw();
        const auto findings = findFaults (netlist);
        EXPECT_TRUE (areSame (findings, findFaults (netlist))) << "round " << round;
        for (const auto& finding : findings)
        {
            EXPECT_FALSE (finding.sentence.empty());
            EXPECT_EQ (finding.sentence.back(), '.') << finding.sentence;
        }
        if (findings.empty() || findings.front().severity == Severity::warning)
        {
            ++soundCount;
            expectFiniteResponses (netlist);
        }
    }
    EXPECT_GT (soundCount, 100);
}

} // namespace
} // namespace stopwright
