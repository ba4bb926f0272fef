// SPDX-License-Identifier: GPL-3.0-or-later
//
// The part of BenchSession that writes files.
#include "Bench/BenchSession.h"

#include "Organ/CardDocument.h"
#include "Organ/DocumentFile.h"
#include "Organ/InstrumentDocument.h"
#include "Units/Error.h"

namespace stopwright
{

/// Refuses once to replace what another program wrote; when it is told again, it is meant.
void BenchSession::requireUnchanged (const std::filesystem::path& file, const std::string& knownText)
{
    std::error_code ignored;
    if (! std::filesystem::exists (file, ignored))
        return;
    const auto text = readDocumentFile (file);
    if (text == knownText)
        return;
    auto& forgone = forgoneTexts_[file];
    if (forgone == text)
        return;
    forgone = text;
    throw Error (file.filename().string()
                 + " was changed by another program since it was opened here. To keep both, use \"Save as\" for your "
                   "card; to replace what the other one wrote, save again.");
}

void BenchSession::save()
{
    if (document_.cardFile().empty())
        throw Error ("This card has no file yet; use \"Save as\" and give it a name.");
    for (const auto& [name, pair] : document_.trials)
    {
        if (! document_.isCardUnsaved (name))
            continue;
        saveCard (name);
        saveSecond (name);
    }
    if (document_.isInstrumentUnsaved())
        saveInstrument();
    say ({}); // why it could not be saved before
    notify (Change::saved);
}

void BenchSession::saveCard (const std::string& name)
{
    const auto& card = document_.trials.at (name).a;
    auto& saved = document_.savedTrials[name];
    if (card == saved.pair.a)
        return;
    const auto file = document_.fileOfCard (name);
    requireUnchanged (file, saved.fileText);
    writeCard (card, file);
    saved.pair.a = card;
    saved.fileText = readDocumentFile (file);
}

void BenchSession::saveSecond (const std::string& name)
{
    const auto& second = document_.trials.at (name).b;
    auto& saved = document_.savedTrials[name];
    const auto file = document_.fileOfSecond (name);
    if (second && second != saved.pair.b)
    {
        requireUnchanged (file, saved.secondFileText);
        writeCard (*second, file);
        saved.secondFileText = readDocumentFile (file);
    }
    else if (! second && saved.pair.b)
    {
        requireUnchanged (file, saved.secondFileText);
        std::error_code error;
        std::filesystem::remove (file, error);
        if (error)
            throw Error (file.filename().string() + " cannot be taken away: " + error.message()
                         + ". Give yourself the right to write in its folder, and save again.");
        saved.secondFileText.clear();
    }
    saved.pair.b = second;
}

/// What is drawn is not written: it stays as the document had it.
void BenchSession::saveInstrument()
{
    requireUnchanged (document_.instrumentFile, document_.instrumentFileText);
    auto instrument = *document_.instrument;
    if (document_.savedInstrument)
        takeRegistration (instrument, *document_.savedInstrument);
    writeInstrument (instrument, document_.instrumentFile);
    document_.instrumentFileText = readDocumentFile (document_.instrumentFile);
    document_.savedInstrument = std::move (instrument);
}

void BenchSession::saveAs (const std::filesystem::path& file)
{
    writeCard (document_.card(), file);
    if (! document_.instrument)
    {
        document_.looseCardFile = file;
        auto& saved = document_.savedTrials[{}];
        saved.pair.a = document_.card();
        saved.fileText = readDocumentFile (file);
        saved.pair.b.reset();
        saved.secondFileText.clear();
    }
    if (document_.instrument)
        tell ("A copy is kept in " + file.string() + ". The tablet keeps its own card, "
              + document_.cardFile().filename().string() + ", and \"Save\" writes that one.");
    else
        say ({});
    notify (Change::saved);
}

} // namespace stopwright
