// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/SheetPage.h"

namespace stopwright
{

/// Where a page is laid over the window. Threading: message thread.
class BenchPages
{
public:
    virtual ~BenchPages() = default;

    /// Lays a page over everything; a page that is up already goes.
    virtual void showPage (std::unique_ptr<SheetPage> page) = 0;
    virtual void closePage() = 0;
};

} // namespace stopwright
