// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/CayleyStep.h"

#include "Circuit/ClosedForm.h"
#include "Circuit/SampleNetworks.h"
#include "Circuit/SmallSignal.h"
#include "Circuit/StateSpaceBuilder.h"
#include "Support/Tolerances.h"

#include <Eigen/Dense>
#include <cmath>
#include <complex>
#include <gtest/gtest.h>
#include <numbers>

namespace stopwright
{

namespace
{

constexpr double sampleRateHz = 192000.0;

struct Discretised
{
    Discretised (const Netlist& netlist, double rateHz)
        : builder (netlist, { netlist.output }),
          network (builder.makeStateSpace()),
          step (builder.stateCount(), builder.sourceCount(), builder.outputCount(), rateHz),
          rate (rateHz)
    {
        isBuilt = ! builder.fault() && builder.build (builder.knobs().values(), network) && step.build (network);
    }

    /// Row of responses from every source at z = exp (j 2 pi f / rate).
    Eigen::RowVectorXcd response (double frequencyHz) const
    {
        const auto z = std::polar (1.0, 2.0 * std::numbers::pi * frequencyHz / rate);
        const auto count = builder.stateCount();
        Eigen::RowVectorXcd result = step.d().row (0).cast<std::complex<double>>();
        if (count == 0)
            return result;
        const Eigen::MatrixXcd left = z * Eigen::MatrixXcd::Identity (count, count) - step.transition();
        const Eigen::MatrixXcd drive = z * step.fromPresent() + step.fromLast().cast<std::complex<double>>();
        return result + step.c().row (0) * left.partialPivLu().solve (drive);
    }

    StateSpaceBuilder builder;
    StateSpace network;
    CayleyStep step;
    double rate;
    bool isBuilt = false;
};

/// Relative to the response; below the thousandth of the largest, where a null is, to that.
double worstWarpedError (const SampleNetwork& sample)
{
    const Discretised discrete (sample.netlist, sampleRateHz);
    EXPECT_TRUE (discrete.isBuilt) << sample.name;
    if (! discrete.isBuilt)
        return 1.0;
    const SmallSignal analysis (sample.netlist);
    double worst = 0.0;
    double largest = 0.0;
    for (double frequencyHz = 11.0; frequencyHz < 90000.0; frequencyHz *= 1.31)
    {
        const double warpedHz =
            sampleRateHz / std::numbers::pi * std::tan (std::numbers::pi * frequencyHz / sampleRateHz);
        const auto digital = discrete.response (frequencyHz);
        const auto analogue = analysis.responses (sample.netlist.output, warpedHz);
        for (std::size_t source = 0; source < analogue.size(); ++source)
        {
            largest = std::max (largest, std::abs (analogue[source]));
            const double error = std::abs (digital (static_cast<Eigen::Index> (source)) - analogue[source]);
            worst = std::max (worst, error / std::max (std::abs (analogue[source]), 1e-3 * largest));
        }
    }
    return worst;
}

} // namespace

// The identity of the bilinear transform, closed form.
TEST (CayleyStep, HasTheAnalogueResponseAtTheWarpedFrequency)
{
    for (const auto& sample : sampleNetworks())
    {
        const double worst = worstWarpedError (sample);
        EXPECT_LT (worst, tolerance::discretisation) << sample.name;
        RecordProperty (sample.name, std::to_string (worst));
    }
}

// Negative twin: at the same frequency, unwarped, the responses differ.
TEST (CayleyStep, DiffersAtTheUnwarpedFrequency)
{
    const auto sample = sampleNetworks().front();
    const Discretised discrete (sample.netlist, sampleRateHz);
    const SmallSignal analysis (sample.netlist);
    const auto digital = discrete.response (20000.0) (0);
    EXPECT_GT (relativeError (digital, analysis.response ("in", sample.netlist.output, 20000.0)), 1e-3);
}

} // namespace stopwright
