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
      entries_ (states, sources, outputs, length_),
      product_ (length_ * outputs + states, (length_ + 1) * sources, states),
      drive_ (static_cast<std::size_t> (length_ + 1) * static_cast<std::size_t> (sources)),
      shifted_ (static_cast<std::size_t> (states)),
      results_ (2 * static_cast<std::size_t> (product_.outputSize()))
{}

void BlockStep::build (const CayleyStep& step) noexcept
{
    fromPresent_ = step.fromPresent();
    Table table { *this };
    entries_.place (step, table);
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
