// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <complex>
#include <cstddef>
#include <memory>
#include <span>

struct fftw_plan_s;

namespace stopwright
{

/// Discrete Fourier transform of one length, a power of two, in place, by FFTW.
/// Threading: construct and destroy on one [control] thread, since FFTW plans are not made side by side; the const
/// functions may be called by several threads.
class FourierTransform
{
public:
    /// Range: size a power of two, 2 .. 2^24. Fails: Error on another one.
    explicit FourierTransform (std::size_t size);

    std::size_t size() const noexcept { return size_; }

    /// values[n] = sum over k of values[k] e^(-2 pi i k n / size). values.size() is the size.
    void forward (std::span<std::complex<double>> values) const noexcept;

    /// The same with the other sign of the exponent; not divided by the size.
    void backward (std::span<std::complex<double>> values) const noexcept;

private:
    struct PlanDeleter
    {
        void operator() (fftw_plan_s* plan) const noexcept;
    };

    using Plan = std::unique_ptr<fftw_plan_s, PlanDeleter>;

    static Plan makePlan (std::size_t size, int sign);
    static void run (const Plan& plan, std::span<std::complex<double>> values) noexcept;

    std::size_t size_;
    Plan forward_;
    Plan backward_;
};

} // namespace stopwright
