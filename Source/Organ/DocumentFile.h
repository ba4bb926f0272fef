// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Organ/DocumentError.h"

#include <filesystem>
#include <string>
#include <string_view>

namespace stopwright
{

/// The bytes of a document. Only regular files within DocumentLimits::bytes are opened: a directory, device, pipe or
/// socket is refused by name before it is touched. Threading: [control]. Fails: DocumentError.
std::string readDocumentFile (const std::filesystem::path& file);

/// Replaces a file atomically: a temporary file beside it is written, flushed to the disc and renamed over it, so that
/// a reader (or a power cut) finds the old text or the new one whole. Permissions are kept; a symbolic link stays and
/// its target is replaced. Threading: [control]. Fails: DocumentError, with the old file untouched.
void writeDocumentFile (std::string_view text, const std::filesystem::path& file);

} // namespace stopwright
