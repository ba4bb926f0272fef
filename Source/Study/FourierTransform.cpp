// SPDX-License-Identifier: GPL-3.0-or-later
#include "Study/FourierTransform.h"

#include "Units/Error.h"

#include <bit>
#include <fftw3.h>
#include <string>
#include <vector>

namespace stopwright
{

namespace
{

using Complex = std::complex<double>;

/// C++ lays a complex number out as the library wants it (ISO C++, complex.numbers).
fftw_complex* asPairs (Complex* values) noexcept
{
    return reinterpret_cast<fftw_complex*> (values);
}

std::size_t checkedSize (std::size_t size)
{
    constexpr std::size_t largest = std::size_t { 1 } << 24;
    if (size < 2 || size > largest || ! std::has_single_bit (size))
        throw Error ("A transform of " + std::to_string (size) + " points cannot be made: take a power of two.");
    return size;
}

} // namespace

void FourierTransform::PlanDeleter::operator() (fftw_plan_s* plan) const noexcept
{
    fftw_destroy_plan (plan);
}

// Planned by estimate, which does not touch the values, and for any alignment, as the plan will meet other arrays.
FourierTransform::Plan FourierTransform::makePlan (std::size_t size, int sign)
{
    std::vector<Complex> values (size);
    return Plan (fftw_plan_dft_1d (static_cast<int> (size), asPairs (values.data()), asPairs (values.data()), sign,
                                   FFTW_ESTIMATE | FFTW_UNALIGNED));
}

FourierTransform::FourierTransform (std::size_t size)
    : size_ (checkedSize (size)),
      forward_ (makePlan (size, FFTW_FORWARD)),
      backward_ (makePlan (size, FFTW_BACKWARD))
{}

void FourierTransform::run (const Plan& plan, std::span<Complex> values) noexcept
{
    fftw_execute_dft (plan.get(), asPairs (values.data()), asPairs (values.data()));
}

void FourierTransform::forward (std::span<Complex> values) const noexcept
{
    run (forward_, values);
}

void FourierTransform::backward (std::span<Complex> values) const noexcept
{
    run (backward_, values);
}

} // namespace stopwright
