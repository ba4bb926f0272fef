// SPDX-License-Identifier: GPL-3.0-or-later
#include "Circuit/BlockStep.h"

#include <algorithm>
#include <cstring>
#include <utility>

namespace stopwright
{

namespace
{

/// A block of L samples takes (L outputs + N) ((L + 1) sources + N) / L multiply-adds a sample: of the lengths 8 and 16 the
/// longer one is the cheaper from here on.
constexpr int statesForLongBlocks = 13;
constexpr int portsForLongBlocks = 4;

constexpr int pieceLength = 8;

int chooseLength (int states, int sources, int outputs) noexcept
{
    return states >= statesForLongBlocks && sources * outputs <= portsForLongBlocks ? 16 : 8;
}

} // namespace

BlockStep::BlockStep (int states, int sources, int outputs)
    : stateCount_ (states),
      sourceCount_ (sources),
      outputCount_ (outputs),
      length_ (chooseLength (states, sources, outputs)),
      fromPresent_ (Matrix::Zero (states, sources)),
      kept_ (Matrix::Zero (states, sources)),
      nextKept_ (Matrix::Zero (states, sources)),
      heard_ (Matrix::Zero (outputs, states)),
      nextHeard_ (Matrix::Zero (outputs, states)),
      direct_ (Matrix::Zero (outputs, sources)),
      power_ (Matrix::Zero (states, states)),
      nextPower_ (Matrix::Zero (states, states)),
      product_ (length_ * outputs + states, (length_ + 1) * sources, states),
      drive_ (static_cast<std::size_t> (length_ + 1) * static_cast<std::size_t> (sources)),
      shifted_ (static_cast<std::size_t> (states)),
      results_ (2 * static_cast<std::size_t> (product_.outputSize()))
{}

void BlockStep::build (const CayleyStep& step) noexcept
{
    fromPresent_ = step.fromPresent();
    placeDrive (step);
    placeStates (step);
}

// u[j] is heard in y[n] through C T^(n-1-j) K and kept in s[L] through T^(L-1-j) K; u[n] is heard in y[n] through F.
void BlockStep::placeDrive (const CayleyStep& step) noexcept
{
    kept_ = step.fromLast();
    kept_.noalias() += step.transition().lazyProduct (step.fromPresent());
    direct_ = step.d();
    direct_.noalias() += step.c().lazyProduct (step.fromPresent());

    for (int age = 0; age <= length_; ++age)
    {
        for (int sample = std::max (age, 1); sample <= length_; ++sample)
            for (int output = 0; output < outputCount_; ++output)
                for (int source = 0; source < sourceCount_; ++source)
                    product_.set (outputRow (sample, output), sourceColumn (sample - age, source),
                                  direct_ (output, source));
        if (age == length_)
            break;
        for (int state = 0; state < stateCount_; ++state)
            for (int source = 0; source < sourceCount_; ++source)
                product_.set (stateRow() + state, sourceColumn (length_ - 1 - age, source), kept_ (state, source));
        direct_.noalias() = step.c().lazyProduct (kept_);
        nextKept_.noalias() = step.transition().lazyProduct (kept_);
        kept_.swap (nextKept_);
    }
}

// s[0] is heard in y[n] through C T^n and kept in s[L] through T^L, which takes squarings only: L is a power of two.
void BlockStep::placeStates (const CayleyStep& step) noexcept
{
    heard_ = step.c();
    for (int sample = 1; sample <= length_; ++sample)
    {
        nextHeard_.noalias() = heard_.lazyProduct (step.transition());
        heard_.swap (nextHeard_);
        for (int output = 0; output < outputCount_; ++output)
            for (int state = 0; state < stateCount_; ++state)
                product_.set (outputRow (sample, output), stateColumn() + state, heard_ (output, state));
    }

    power_ = step.transition();
    for (int exponent = 1; exponent < length_; exponent *= 2)
    {
        nextPower_.noalias() = power_.lazyProduct (power_);
        power_.swap (nextPower_);
    }
    for (int row = 0; row < stateCount_; ++row)
        for (int column = 0; column < stateCount_; ++column)
            product_.set (stateRow() + row, stateColumn() + column, power_ (row, column));
}

void BlockStep::run (double* states,
                     double* lastSources,
                     const double* const* sources,
                     double* const* outputs,
                     int offset,
                     int blockCount) noexcept
{
    for (int source = 0; source < sourceCount_; ++source)
        drive_[static_cast<std::size_t> (sourceColumn (length_, source))] = lastSources[source];
    for (int state = 0; state < stateCount_; ++state)
    {
        double sum = states[state];
        for (int source = 0; source < sourceCount_; ++source)
            sum -= fromPresent_ (state, source) * lastSources[source];
        shifted_[static_cast<std::size_t> (state)] = sum;
    }

    const double* shifted = shifted_.data();
    double* result = results_.data();
    double* nextResult = result + product_.outputSize();
    for (int block = 0; block < blockCount; ++block)
    {
        runBlock (sources, outputs, offset + block * length_, shifted, result);
        shifted = result + stateRow();
        std::swap (result, nextResult);
    }

    for (int source = 0; source < sourceCount_; ++source)
        lastSources[source] = drive_[static_cast<std::size_t> (sourceColumn (length_, source))];
    for (int state = 0; state < stateCount_; ++state)
    {
        double sum = shifted[state];
        for (int source = 0; source < sourceCount_; ++source)
            sum += fromPresent_ (state, source) * lastSources[source];
        states[state] = sum;
    }
}

// Copies go in pieces of eight samples of known size: a call of memmove would cost as much as the product.
void BlockStep::runBlock (const double* const* sources,
                          double* const* outputs,
                          int firstFrame,
                          const double* shifted,
                          double* result) noexcept
{
    double* drive = drive_.data();
    for (int source = 0; source < sourceCount_; ++source, drive += length_ + 1)
    {
        drive[0] = drive[length_];
        for (int piece = 0; piece < length_; piece += pieceLength)
            std::memcpy (drive + 1 + piece, sources[source] + firstFrame + piece, pieceLength * sizeof (double));
    }
    product_.multiply (drive_.data(), shifted, result);
    const double* heard = result;
    for (int output = 0; output < outputCount_; ++output, heard += length_)
        for (int piece = 0; piece < length_; piece += pieceLength)
            std::memcpy (outputs[output] + firstFrame + piece, heard + piece, pieceLength * sizeof (double));
}

} // namespace stopwright
