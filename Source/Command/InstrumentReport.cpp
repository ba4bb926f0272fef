// SPDX-License-Identifier: GPL-3.0-or-later
#include "Command/InstrumentReport.h"

#include "Command/CardReport.h"
#include "Command/InstrumentDoubts.h"
#include "Command/InstrumentWords.h"
#include "Organ/InstrumentCards.h"
#include "Organ/UnknownFields.h"
#include "Units/Error.h"

#include <algorithm>
#include <set>

namespace stopwright
{

namespace
{

/// Each sentence once: several stops may share a card.
void append (const std::vector<std::string>& sentences, std::vector<std::string>& list)
{
    for (const auto& sentence : sentences)
        if (std::find (list.begin(), list.end(), sentence) == list.end())
            list.push_back (sentence);
}

/// What the network check finds in the cards, each file once.
class CardFindings
{
public:
    CardFindings (const std::filesystem::path& document, DocumentReport& report)
        : document_ (document),
          report_ (report)
    {}

    void look (const std::optional<Card>& card, const std::string& cardFile)
    {
        if (! card)
            return;
        const auto file = cardPath (document_, cardFile);
        if (! seen_.insert (file).second)
            return;
        const auto found = reportOf (*card, file);
        append (found.errors, report_.errors);
        append (found.warnings, report_.warnings);
    }

private:
    const std::filesystem::path& document_;
    DocumentReport& report_;
    std::set<std::filesystem::path> seen_;
};

void checkCards (const Instrument& instrument,
                 const InstrumentCards& cards,
                 const std::filesystem::path& file,
                 DocumentReport& report)
{
    append (cards.errors, report.errors);
    CardFindings findings (file, report);
    for (std::size_t i = 0; i < instrument.stops.size(); ++i)
        findings.look (cards.ofStops[i], instrument.stops[i].cardFile);
    for (std::size_t p = 0; p < instrument.preamps.size(); ++p)
        for (std::size_t s = 0; s < instrument.preamps[p].stages.size(); ++s)
            findings.look (cards.ofStages[p][s], instrument.preamps[p].stages[s].cardFile);
}

} // namespace

DocumentReport reportOf (const Instrument& instrument, const std::filesystem::path& file)
{
    DocumentReport report;
    const auto prefix = file.string() + ": ";
    for (const auto& field : listUnknownFields (instrument.unknownFields))
        report.warnings.push_back (prefix + field.sentence);
    try
    {
        report.description = describe (instrument, file);
        const auto cards = findInstrumentCards (instrument, file);
        checkCards (instrument, cards, file, report);
        for (const auto& doubt : doubtsOf (instrument, cards))
            report.warnings.push_back (prefix + doubt);
    }
    catch (const Error& fault)
    {
        report.errors.push_back (prefix + fault.what());
    }
    return report;
}

} // namespace stopwright
