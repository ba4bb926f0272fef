// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/DocumentFields.h"
#include "Organ/Instrument.h"

namespace stopwright
{

// Outlets. For the .cpp files of this folder only. Threading: [control]. Fails: DocumentError.

Outlet readOutlet (FieldReader& fields, const Instrument& instrument, UnknownFieldStore& unknown);
JsonTree outletTree (const Outlet& outlet, UnknownFieldSource& unknown);

} // namespace stopwright
