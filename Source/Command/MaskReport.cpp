// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/MaskReport.h"

#include "Command/MaskWords.h"
#include "Command/NumberText.h"
#include "Organ/DocumentLimits.h"
#include "Organ/PlainText.h"
#include "Organ/UnknownFields.h"
#include "Units/Engineering.h"

#include <sstream>

namespace stopwright
{

namespace
{

/// "at C2 to B3; published: A Book": where an entry differs from the whole.
std::string exceptionWords (const MaskWish& wish, const TargetMask& mask)
{
    std::string words;
    if (wish.lowestKey || wish.highestKey)
        words +=
            ", at " + keysWords (wish.lowestKey.value_or (mask.lowestKey), wish.highestKey.value_or (mask.highestKey));
    if (wish.certainty || ! wish.source.empty())
        words += "; " + originWords (wish.certainty.value_or (mask.certainty), wish.source);
    return words;
}

std::string levelWords (const MaskWish& wish)
{
    return csvNumber (wish.levelDb) + " dB, " + csvNumber (wish.toleranceDb) + " dB either way";
}

std::string harmonicWords (const MaskHarmonic& harmonic)
{
    if (! harmonic.atMost)
        return levelWords (harmonic.wish);
    return "at most " + csvNumber (harmonic.wish.levelDb) + " dB, or " + csvNumber (harmonic.wish.toleranceDb)
           + " dB above it";
}

} // namespace

DocumentReport reportOf (const TargetMask& mask, const std::filesystem::path& file)
{
    std::ostringstream text;
    text << file.string() << ": mask \"" << printable (mask.name, DocumentLimits::titleCharacters) << "\"\n"
         << "  source  " << originWords (mask.certainty, mask.source) << '\n'
         << "  keys    " << keysWords (mask.lowestKey, mask.highestKey) << '\n';
    if (! mask.harmonics.empty())
        text << "  levels  of harmonics of the " << mask.unison.text() << " ft pitch, re "
             << (mask.reference == MaskReference::first ? "the first" : "the strongest") << '\n';
    for (std::size_t entry = 0; entry < mask.harmonics.size() + mask.bands.size(); ++entry)
    {
        const MaskWish& wish = wishOf (mask, entry);
        text << "  wants   " << entryWords (mask, entry) << ": ";
        if (entry < mask.harmonics.size())
        {
            text << harmonicWords (mask.harmonics[entry]);
        }
        else
        {
            const MaskBand& band = mask.bands[entry - mask.harmonics.size()];
            text << "strongest partial within " << formatForReading (band.widthHz, Quantity::frequency) << " about "
                 << formatForReading (band.centreHz, Quantity::frequency) << " at " << levelWords (wish)
                 << ", re the strongest of the tone";
        }
        text << exceptionWords (wish, mask) << '\n';
    }
    DocumentReport report;
    report.description = text.str();
    for (const auto& field : listUnknownFields (mask.unknownFields))
        report.warnings.push_back (file.string() + ": " + field.sentence);
    return report;
}

} // namespace stopwright
