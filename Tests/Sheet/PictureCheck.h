// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Sheet/ReadingPicture.h"

#include <string>
#include <vector>

namespace stopwright::test
{

/// What is wrong with the texts and spots of a picture: a text beyond its edges or over another, a spot beyond its edges
/// or without a sentence. Empty when nothing is.
std::string pictureFault (const ReadingPicture& picture);

/// Height of the boxes of one ink, upright areas only, in the order drawn.
std::vector<DrawingBox> boxesOf (const Drawing& drawing, Ink ink, bool isHatched);

/// Whether a text of the drawing contains this.
bool hasText (const Drawing& drawing, const std::string& part);

/// The sizes that every picture is tried at: the smallest a window gives, a usual one, and paper.
std::vector<ReadingFormat> someFormats();

} // namespace stopwright::test
