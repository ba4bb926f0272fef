// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/ClosedForm.h"
#include "Circuit/NetlistSketch.h"
#include "Support/Tolerances.h"

#include <algorithm>
#include <cmath>
#include <gtest/gtest.h>
#include <numbers>

// Element values, by formula and as the four-digit tables print them: A. I. Zverev, "Handbook of Filter Synthesis", 1967;
// G. Matthaei, L. Young, E. M. T. Jones, "Microwave Filters, Impedance-Matching Networks, and Coupling Structures", 1964,
// ch. 4 (both from memory). The responses are the defining polynomials.

namespace stopwright
{
namespace
{

using Elements = std::vector<double>;

constexpr double pi = std::numbers::pi;
constexpr double edgeHz = 1000.0;
constexpr double loadOhms = 600.0;

/// sin of odd multiples of a quarter of the order's angle: a_k in the handbooks.
double oddSine (int k, int order)
{
    return std::sin ((2 * k - 1) * pi / (2 * order));
}

Elements butterworthDoubly (int order)
{
    Elements elements;
    elements.reserve (static_cast<std::size_t> (order));
    for (int k = 1; k <= order; ++k)
        elements.push_back (2.0 * oddSine (k, order));
    return elements;
}

/// Seen from the ideal source; the handbooks count from the load.
Elements butterworthSingly (int order)
{
    Elements elements { oddSine (1, order) };
    for (int k = 2; k <= order; ++k)
    {
        const double cosine = std::cos ((k - 1) * pi / (2 * order));
        elements.push_back (oddSine (k, order) * oddSine (k - 1, order) / (cosine * cosine * elements.back()));
    }
    std::reverse (elements.begin(), elements.end());
    return elements;
}

/// ln coth (ripple / 17.37) with 17.37 = 40 / ln 10 written out.
double chebyshevBeta (double rippleDb)
{
    return std::log (1.0 / std::tanh (rippleDb * std::log (10.0) / 40.0));
}

Elements chebyshevDoubly (int order, double rippleDb)
{
    const double gamma = std::sinh (chebyshevBeta (rippleDb) / (2 * order));
    const auto b = [&] (int k) { return gamma * gamma + std::pow (std::sin (k * pi / order), 2.0); };
    Elements elements { 2.0 * oddSine (1, order) / gamma };
    for (int k = 2; k <= order; ++k)
        elements.push_back (4.0 * oddSine (k - 1, order) * oddSine (k, order) / (b (k - 1) * elements.back()));
    return elements;
}

double chebyshevLoad (int order, double rippleDb)
{
    return order % 2 == 1 ? 1.0 : std::pow (1.0 / std::tanh (chebyshevBeta (rippleDb) / 4.0), 2.0);
}

Elements chebyshevSingly (int order, double rippleDb)
{
    const double gamma = std::sinh (chebyshevBeta (rippleDb) / (2 * order));
    const auto d = [&] (int k)
    {
        const double angle = k * pi / (2 * order);
        return (gamma * gamma + std::pow (std::sin (angle), 2.0)) * std::pow (std::cos (angle), 2.0);
    };
    Elements elements { oddSine (1, order) / gamma };
    for (int k = 2; k <= order; ++k)
        elements.push_back (oddSine (k - 1, order) * oddSine (k, order) / (d (k - 1) * elements.back()));
    std::reverse (elements.begin(), elements.end());
    return elements;
}

/// Series inductor, shunt capacitor, series inductor ... scaled to edgeHz and loadOhms.
Netlist ladder (const Elements& elements, double sourceOhms, double load)
{
    const double edge = 2.0 * pi * edgeHz;
    NetlistSketch sketch;
    sketch.tap ("in", "n0", sourceOhms * loadOhms);
    std::string node = "n0";
    for (std::size_t index = 0; index < elements.size(); ++index)
    {
        if (index % 2 == 1)
        {
            sketch.capacitor (numbered ("C", index + 1), node, "0", elements[index] / (edge * loadOhms));
            continue;
        }
        sketch.inductor (numbered ("L", index + 1), node, numbered ("n", index + 1), elements[index] * loadOhms / edge);
        node = numbered ("n", index + 1);
    }
    return sketch.resistor ("RL", node, "0", load * loadOhms).output (node);
}

double butterworthMagnitude (int order, double ratio)
{
    return 1.0 / std::sqrt (1.0 + std::pow (ratio, 2 * order));
}

double chebyshevMagnitude (int order, double rippleDb, double ratio)
{
    const double polynomial =
        ratio <= 1.0 ? std::cos (order * std::acos (ratio)) : std::cosh (order * std::acosh (ratio));
    return 1.0 / std::sqrt (1.0 + (std::pow (10.0, rippleDb / 10.0) - 1.0) * polynomial * polynomial);
}

/// Worst relative error of |H| from a twentieth of the edge to five times it.
template <typename Magnitude>
double worstMagnitudeError (const Netlist& netlist, double scale, const Magnitude& magnitude)
{
    const SmallSignal analysis (netlist);
    double worst = 0.0;
    for (int step = 0; step <= 100; ++step)
    {
        const double ratio = 0.05 * std::pow (100.0, step / 100.0);
        const double want = scale * magnitude (ratio);
        worst = std::max (worst,
                          std::abs (std::abs (analysis.response ("in", netlist.output, ratio * edgeHz)) / want - 1.0));
    }
    return worst;
}

void expectTable (const Elements& elements, const Elements& printed)
{
    ASSERT_EQ (elements.size(), printed.size());
    for (std::size_t index = 0; index < printed.size(); ++index)
        EXPECT_NEAR (elements[index], printed[index], 5.1e-5) << "element " << index + 1 << " of " << printed.size();
}

TEST (LadderFilters, ElementsAreThoseOfThePrintedTables)
{
    expectTable (butterworthDoubly (4), { .7654, 1.8478, 1.8478, .7654 });
    expectTable (butterworthDoubly (7), { .4450, 1.2470, 1.8019, 2.0, 1.8019, 1.2470, .4450 });
    expectTable (butterworthSingly (2), { 1.4142, .7071 });
    expectTable (butterworthSingly (5), { 1.5451, 1.6944, 1.3820, .8944, .3090 });
    expectTable (butterworthSingly (7), { 1.5576, 1.7988, 1.6588, 1.3972, 1.0550, .6560, .2225 });
    expectTable (chebyshevDoubly (4, 0.1), { 1.1088, 1.3062, 1.7704, .8181 });
    expectTable (chebyshevDoubly (7, 0.5), { 1.7373, 1.2582, 2.6383, 1.3443, 2.6383, 1.2582, 1.7373 });
    expectTable (chebyshevDoubly (6, 1.0), { 2.1546, 1.1041, 3.0634, 1.1518, 2.9367, .8101 });
    expectTable (chebyshevDoubly (5, 3.0), { 3.4813, .7619, 4.5375, .7619, 3.4813 });
    expectTable (chebyshevSingly (5, 0.1), { 1.3759, 1.5924, 1.5562, 1.2490, .5734 });
    expectTable (chebyshevSingly (4, 1.0), { 1.2817, 1.9093, 1.4126, 1.0495 });
    expectTable (chebyshevSingly (3, 3.0), { 2.0302, 1.1739, 1.6744 });
    EXPECT_NEAR (chebyshevLoad (2, 0.1), 1.3554, 5.1e-5);
    EXPECT_NEAR (chebyshevLoad (2, 3.0), 5.8095, 1e-3);
}

TEST (LadderFilters, ButterworthBetweenEqualResistancesIsMaximallyFlat)
{
    for (int order = 2; order <= 8; ++order)
        EXPECT_LT (worstMagnitudeError (ladder (butterworthDoubly (order), 1.0, 1.0), 0.5,
                                        [order] (double ratio) { return butterworthMagnitude (order, ratio); }),
                   tolerance::transferFunction)
            << "order " << order;
}

TEST (LadderFilters, ButterworthFromAnIdealSourceIsMaximallyFlat)
{
    for (int order = 2; order <= 7; ++order)
        EXPECT_LT (worstMagnitudeError (ladder (butterworthSingly (order), 0.0, 1.0), 1.0,
                                        [order] (double ratio) { return butterworthMagnitude (order, ratio); }),
                   tolerance::transferFunction)
            << "order " << order;
}

TEST (LadderFilters, ChebyshevBetweenResistancesHasEqualRipple)
{
    for (const double rippleDb : { 0.1, 0.5, 1.0, 3.0 })
        for (int order = 2; order <= 8; ++order)
        {
            // The passband's crests pass all the power the source has: |H| = 1/2 sqrt (RL/Rs).
            const double load = chebyshevLoad (order, rippleDb);
            EXPECT_LT (worstMagnitudeError (ladder (chebyshevDoubly (order, rippleDb), 1.0, load),
                                            0.5 * std::sqrt (load),
                                            [=] (double ratio) { return chebyshevMagnitude (order, rippleDb, ratio); }),
                       tolerance::transferFunction)
                << "order " << order << ", " << rippleDb << " dB";
        }
}

TEST (LadderFilters, ChebyshevFromAnIdealSourceHasEqualRipple)
{
    for (const double rippleDb : { 0.1, 0.5, 1.0, 3.0 })
        for (int order = 2; order <= 7; ++order)
        {
            // At 0 Hz the load has the source's voltage; an even order has a trough of the ripple there.
            const double atRest = chebyshevMagnitude (order, rippleDb, 0.0);
            EXPECT_LT (worstMagnitudeError (ladder (chebyshevSingly (order, rippleDb), 0.0, 1.0), 1.0 / atRest,
                                            [=] (double ratio) { return chebyshevMagnitude (order, rippleDb, ratio); }),
                       tolerance::transferFunction)
                << "order " << order << ", " << rippleDb << " dB";
        }
}

TEST (LadderFilters, OneElementOffByAMillionthIsSeen)
{
    auto elements = butterworthDoubly (5);
    elements[2] *= 1.0 + 1e-6;
    EXPECT_GT (worstMagnitudeError (ladder (elements, 1.0, 1.0), 0.5,
                                    [] (double ratio) { return butterworthMagnitude (5, ratio); }),
               tolerance::transferFunction);
}

TEST (LadderFilters, ButterworthPolesLieOnACircle)
{
    const double edge = 2.0 * pi * edgeHz;
    for (int order = 2; order <= 8; ++order)
    {
        const auto poles = SmallSignal (ladder (butterworthDoubly (order), 1.0, 1.0)).poles();
        ASSERT_EQ (poles.size(), static_cast<std::size_t> (order));
        for (int k = 1; k <= order; ++k)
        {
            const auto want =
                edge * std::complex<double> (-oddSine (k, order), std::cos ((2 * k - 1) * pi / (2 * order)));
            const auto nearest =
                std::min_element (poles.begin(), poles.end(),
                                  [&want] (auto a, auto b) { return std::abs (a - want) < std::abs (b - want); });
            EXPECT_LT (relativeError (*nearest, want), tolerance::transferFunction)
                << "order " << order << ", pole " << k;
        }
    }
}

} // namespace
} // namespace stopwright
