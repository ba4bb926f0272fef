// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/CardSelection.h"
#include "Command/InstrumentSelection.h"
#include "Command/PhraseOptions.h"
#include "Command/Subcommand.h"
#include "Sound/OfflineRender.h"

#include <filesystem>
#include <functional>
#include <optional>
#include <vector>

namespace stopwright
{

/// `stopwright render`: a card or an instrument, played from a MIDI file or from held keys, as a WAV file.
class RenderCommand : public Subcommand
{
public:
    std::string name() const override { return "render"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    /// What was written.
    struct Written
    {
        double seconds = 0.0;
        double peak = 0.0;
        std::vector<std::string> clippedStages;
    };

    using Renderer = std::function<RenderOutcome (const RenderSink&, const RenderProgress&)>;

    void declareInstrument (CLI::App& app);
    void declareHowToWrite (CLI::App& app);
    ExitStatus renderCard (std::ostream& out, std::ostream& err) const;
    ExitStatus renderInstrument (std::ostream& out, std::ostream& err) const;
    void refuseWhatInstrumentsHave() const;
    void refuseWhatCardsHave() const;
    void refuseOverwriting (const std::vector<std::filesystem::path>& inputs) const;
    void refuseOverwritingCards (const Instrument& instrument) const;
    std::optional<Written> write (const Renderer& render, std::ostream& err) const;
    void sayWhatWasWritten (const Written& written, const std::string& whatPlayed, std::ostream& out) const;

    RenderScale scale() const { return scaleIndex_ == 0 ? RenderScale::volts : RenderScale::listening; }

    CardSelection selection_;
    PhraseOptions phrase_;
    std::filesystem::path outFile_;
    std::vector<std::string> tablets_; ///< empty until stated
    double swell_ = -1.0;              ///< negative until stated
    int rateHz_ = 48000;
    int scaleIndex_ = 0; ///< 0 volts, 1 listening
};

} // namespace stopwright
