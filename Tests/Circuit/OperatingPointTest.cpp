// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/OperatingPoint.h"

#include "Circuit/DeviceNetworks.h"
#include "Circuit/FindingSearch.h"
#include "Circuit/JunctionLaw.h"
#include "Circuit/NetlistCheck.h"
#include "Units/Error.h"

#include <cmath>
#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

constexpr double thermal = JunctionLaw::thermalVolts;

Netlist diodeBehindResistor (double volts, double ohms, const Diode& diode)
{
    return NetlistSketch()
        .part ("V1", { "in", "0" }, Supply { volts, 0.0 })
        .resistor ("R1", "in", "d", ohms)
        .part ("D1", { "d", "0" }, diode)
        .output ("d");
}

struct LambertRow
{
    double ohms, saturationAmps, exponentVolts, volts, diodeVolts;
};

const OperatingPoint::Device& device (const OperatingPoint& point, const std::string& part)
{
    return *std::find_if (point.devices.begin(), point.devices.end(), [&] (const auto& d) { return d.part == part; });
}

/// Root of a rising function between two points, by halving.
double rootOf (double low, double high, const std::function<double (double)>& function)
{
    for (int step = 0; step < 200; ++step)
    {
        const double middle = 0.5 * (low + high);
        (function (middle) < 0.0 ? low : high) = middle;
    }
    return low;
}

/// Collector current of a transistor whose base hangs on `theveninVolts` behind `theveninOhms`, and whose emitter goes
/// to common through `emitterOhms`: the textbook's bias equation with Vbe = Vt ln (Ic / Is + 1).
double biasAmps (const Transistor& transistor, double theveninVolts, double theveninOhms, double emitterOhms)
{
    const auto excess = [&] (double collectorAmps)
    {
        const double beta = transistor.forwardBeta;
        const double baseAmps = collectorAmps / beta;
        return baseAmps * theveninOhms + thermal * std::log (collectorAmps / transistor.saturationAmps + 1.0)
               + (collectorAmps + baseAmps) * emitterOhms - theveninVolts;
    };
    return rootOf (0.0, 1.0, excess);
}

} // namespace

// Vd = V + R Is - nVt W ((R Is / nVt) e^((V + R Is) / nVt)): T. C. Banwell, A. Jayakumar, "Exact analytical solution for
// current flow through diode with series resistance", Electronics Letters 36(4), 2000. Values of the right side by
// scipy.special.wrightomega. The bound is what leastSiemens in parallel takes off.
TEST (OperatingPoint, DiodeBehindAResistorFollowsLambertsFunction)
{
    const LambertRow rows[] = {
        { 1e3, 2.52e-9, 45.3e-3, 0.5, 0.449088051334 },    { 1e3, 2.52e-9, 45.3e-3, 1.0, 0.548002218829 },
        { 1e3, 2.52e-9, 45.3e-3, 5.0, 0.650566789255 },    { 1e3, 2.52e-9, 45.3e-3, 20.0, 0.718024141666 },
        { 1e3, 2.52e-9, 45.3e-3, -1.0, -0.999997480000 },  { 2.2e3, 1e-14, 25.852e-3, 0.5, 0.495381819519 },
        { 2.2e3, 1e-14, 25.852e-3, 1.0, 0.610061019300 },  { 2.2e3, 1e-14, 25.852e-3, 5.0, 0.672281753819 },
        { 2.2e3, 1e-14, 25.852e-3, 20.0, 0.710917537343 }, { 10e3, 1e-12, 38.778e-3, 0.5, 0.496376174814 },
        { 10e3, 1e-12, 38.778e-3, 1.0, 0.671185841668 },   { 10e3, 1e-12, 38.778e-3, 5.0, 0.770240660579 },
        { 10e3, 1e-12, 38.778e-3, 20.0, 0.828844368296 },
    };
    for (const auto& row : rows)
    {
        const Diode diode { row.saturationAmps, row.exponentVolts / thermal, 0.0 };
        const auto point = findOperatingPoint (diodeBehindResistor (row.volts, row.ohms, diode));
        EXPECT_NEAR (point.voltsAt ("d"), row.diodeVolts, row.ohms * 1e-12 + 1e-11) << row.ohms << ' ' << row.volts;
        EXPECT_NEAR (device (point, "D1").leadAmps[0], (row.volts - point.voltsAt ("d")) / row.ohms, 1e-13);
        EXPECT_NEAR (device (point, "V1").leadAmps[0], -(row.volts - point.voltsAt ("d")) / row.ohms, 1e-13);
    }
}

TEST (OperatingPoint, SeriesResistanceOfADiodeIsAResistorMore)
{
    const auto apart = findOperatingPoint (diodeBehindResistor (5.0, 1e3, { 2.52e-9, 1.752, 0.0 }));
    const auto within = findOperatingPoint (diodeBehindResistor (5.0, 900.0, { 2.52e-9, 1.752, 100.0 }));
    EXPECT_NEAR (within.voltsAt ("d"), apart.voltsAt ("d") + 100.0 * device (apart, "D1").leadAmps[0], 1e-11);
    const auto small = findOperatingPoint (diodeBehindResistor (5.0, 999.5, { 2.52e-9, 1.752, 0.5 }));
    EXPECT_NEAR (device (small, "D1").leadAmps[0], device (apart, "D1").leadAmps[0], 1e-13);
}

// The bias of the common-emitter stage by the textbook's equation (closed form but for one root).
TEST (OperatingPoint, CommonEmitterStageHasItsBias)
{
    const auto point = findOperatingPoint (commonEmitter (silicon()).output ("out"));
    const double thevenin = 15.0 * 22.0 / 122.0;
    const double amps = biasAmps (silicon(), thevenin, 100e3 * 22e3 / 122e3, 2.2e3);
    const auto& transistor = device (point, "Q1");
    EXPECT_NEAR (transistor.leadAmps[0], amps, 1e-7 * amps);
    EXPECT_NEAR (transistor.leadAmps[1], amps / 200.0, 1e-6 * amps / 200.0);
    EXPECT_NEAR (transistor.leadAmps[0] + transistor.leadAmps[1] + transistor.leadAmps[2], 0.0, 1e-15);
    EXPECT_NEAR (point.voltsAt ("c"), 15.0 - 10e3 * amps, 1e-6);
    EXPECT_EQ (transistor.region, OperatingPoint::Region::active);
    EXPECT_NEAR (point.storeAt ("C1"), -point.voltsAt ("b"), 1e-12);
    EXPECT_NEAR (point.storeAt ("C2"), point.voltsAt ("c"), 1e-9);
}

// Closed form: Ic = beta Ib + (beta + 1) ICBO for a base fed with Ib by a large resistor.
TEST (OperatingPoint, LeakageShiftsTheBiasBeta1Times)
{
    const auto collectorAmps = [] (double leak)
    {
        const auto point = findOperatingPoint (NetlistSketch()
                                                   .part ("V1", { "-", "0" }, Supply { -9.0, 0.0 })
                                                   .resistor ("RB", "-", "b", 1e6)
                                                   .resistor ("RC", "-", "c", 2.2e3)
                                                   .part ("Q1", { "c", "b", "0" }, Pnp { germanium (leak) })
                                                   .output ("c"));
        EXPECT_EQ (device (point, "Q1").region, OperatingPoint::Region::active);
        const double baseAmps = device (point, "Q1").leadAmps[1];
        const double amps = device (point, "Q1").leadAmps[0];
        // The collector junction's own Is / bR counts like leak, and Is of the transport current flows besides.
        EXPECT_NEAR (amps, 60.0 * baseAmps - 61.0 * (leak + 1e-6 / 20.0) - 1e-6, 1e-9) << leak;
        return amps;
    };
    const double tight = collectorAmps (0.0);
    const double leaky = collectorAmps (10e-6);
    // The base current hardly changes (9 V over 1 M), so the shift is 61 times the leak.
    EXPECT_NEAR (leaky - tight, -61.0 * 10e-6, 0.01 * 61.0 * 10e-6);
}

TEST (OperatingPoint, TellsTheRegions)
{
    using Region = OperatingPoint::Region;
    const auto regionWithBaseOhms = [] (double ohms, double volts)
    {
        const auto point = findOperatingPoint (NetlistSketch()
                                                   .part ("V1", { "+", "0" }, Supply { 9.0, 0.0 })
                                                   .part ("V2", { "x", "0" }, Supply { volts, 0.0 })
                                                   .resistor ("RB", "x", "b", ohms)
                                                   .resistor ("RC", "+", "c", 1e3)
                                                   .part ("Q1", { "c", "b", "0" }, Npn { silicon() })
                                                   .output ("c"));
        return device (point, "Q1").region;
    };
    EXPECT_EQ (regionWithBaseOhms (1e6, 5.0), Region::active);
    EXPECT_EQ (regionWithBaseOhms (1e4, 5.0), Region::saturated);
    EXPECT_EQ (regionWithBaseOhms (1e4, -5.0), Region::cutOff);
    EXPECT_EQ (regionWords (Region::cutOff), "cut off");
    EXPECT_EQ (device (findOperatingPoint (diodeBehindResistor (5.0, 1e3, signalDiode())), "D1").region,
               Region::conducting);
    EXPECT_EQ (device (findOperatingPoint (diodeBehindResistor (-5.0, 1e3, signalDiode())), "D1").region,
               Region::blocking);
}

// A chain has nodes that nothing but junctions reach; each diode takes its equal share. Closed form.
TEST (OperatingPoint, DiodesInAChainShareTheVolts)
{
    NetlistSketch sketch;
    sketch.part ("V1", { "in", "0" }, Supply { 12.0, 0.0 }).resistor ("R1", "in", "d0", 1e3);
    for (std::size_t k = 0; k < 8; ++k)
        sketch.part (numbered ("D", k), { numbered ("d", k), k == 7 ? "0" : numbered ("d", k + 1) }, signalDiode());
    const auto point = findOperatingPoint (sketch.output ("d0"));
    for (std::size_t k = 0; k < 8; ++k)
        EXPECT_NEAR (point.voltsAt (numbered ("d", k)), point.voltsAt ("d0") * static_cast<double> (8 - k) / 8.0, 1e-9);
}

// A multivibrator's two halves rest alike by symmetry (closed form), or on either side; a Darlington has a base that only
// another transistor feeds.
TEST (OperatingPoint, FindsPointsOfAwkwardNetworks)
{
    const auto darlington = findOperatingPoint (NetlistSketch()
                                                    .part ("V1", { "+", "0" }, Supply { 12.0, 0.0 })
                                                    .resistor ("R1", "+", "b", 1e6)
                                                    .part ("Q1", { "+", "b", "m" }, Npn { silicon() })
                                                    .part ("Q2", { "+", "m", "e" }, Npn { silicon() })
                                                    .resistor ("RE", "e", "0", 100.0)
                                                    .output ("e"));
    const double baseAmps = (12.0 - darlington.voltsAt ("b")) / 1e6;
    EXPECT_NEAR (darlington.voltsAt ("e") / 100.0, baseAmps * 201.0 * 201.0, 1e-6 * baseAmps * 201.0 * 201.0);

    const auto latch = findOperatingPoint (NetlistSketch()
                                               .part ("V1", { "+", "0" }, Supply { 9.0, 0.0 })
                                               .resistor ("R1", "+", "c1", 1e3)
                                               .resistor ("R2", "+", "c2", 1e3)
                                               .resistor ("R3", "c1", "b2", 10e3)
                                               .resistor ("R4", "c2", "b1", 10e3)
                                               .part ("Q1", { "c1", "b1", "0" }, Npn { silicon() })
                                               .part ("Q2", { "c2", "b2", "0" }, Npn { silicon() })
                                               .output ("c1"));
    const auto& q1 = device (latch, "Q1");
    EXPECT_NEAR ((9.0 - latch.voltsAt ("c1")) / 1e3 - (latch.voltsAt ("c1") - latch.voltsAt ("b2")) / 10e3,
                 q1.leadAmps[0], 1e-12);
}

TEST (OperatingPoint, NodesBehindCapacitorsRestAtZero)
{
    const auto point = findOperatingPoint (NetlistSketch()
                                               .tap ("W1", "in")
                                               .resistor ("R1", "in", "d", 1e3)
                                               .part ("V1", { "+", "0" }, Supply { 5.0, 0.0 })
                                               .resistor ("R2", "+", "d", 1e3)
                                               .part ("D1", { "d", "0" }, signalDiode())
                                               .capacitor ("C1", "d", "out", 1e-6)
                                               .output ("out"));
    EXPECT_EQ (point.voltsAt ("out"), 0.0);
    EXPECT_NEAR (point.storeAt ("C1"), point.voltsAt ("d"), 1e-12);
    EXPECT_GT (point.voltsAt ("d"), 0.5);
}

TEST (OperatingPoint, SaysWhatHasNoRestingPoint)
{
    const auto integrator = NetlistSketch()
                                .tap ("W1", "in")
                                .part ("V1", { "+", "0" }, Supply { 5.0, 0.0 })
                                .resistor ("R0", "+", "m", 1e6)
                                .resistor ("R1", "in", "m", 1e4)
                                .capacitor ("C1", "m", "out", 1e-8)
                                .opAmp ("U1", "0", "m", "out")
                                .part ("D1", { "out", "x" }, signalDiode())
                                .resistor ("R2", "x", "0", 1e4)
                                .output ("x");
    const auto search = searchOperatingPoint (integrator);
    ASSERT_FALSE (search.point);
    EXPECT_NE (search.sentence.find ("no resting point"), std::string::npos) << search.sentence;
    EXPECT_TRUE (refuses (integrator, search.subject, { "no resting point", "0 Hz" }));
    EXPECT_THROW ((void) findOperatingPoint (integrator), Error);
}

} // namespace stopwright
