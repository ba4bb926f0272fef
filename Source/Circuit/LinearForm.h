// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace stopwright
{

/// A voltage written as a sum of the quantities of a network: sum_k weight_k z[index_k], sparse, in ascending index.
/// Threading: [control].
class LinearForm
{
public:
    struct Term
    {
        int index = 0;
        double weight = 0.0;
    };

    /// Adds weight z[index]; a term that cancels to exactly zero is dropped.
    void add (int index, double weight);

    /// Adds scale times another form.
    void add (const LinearForm& other, double scale);

    const std::vector<Term>& terms() const noexcept { return terms_; }

    bool isZero() const noexcept { return terms_.empty(); }

private:
    std::vector<Term> terms_;
};

/// a - b.
LinearForm difference (const LinearForm& a, const LinearForm& b);

} // namespace stopwright
