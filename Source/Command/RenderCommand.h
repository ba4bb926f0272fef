// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Command/CardSelection.h"
#include "Command/Subcommand.h"
#include "Sound/OfflineRender.h"

#include <filesystem>
#include <vector>

namespace stopwright
{

/// `stopwright render`: a card, played from a MIDI file or from held keys, as a WAV file.
class RenderCommand : public Subcommand
{
public:
    std::string name() const override { return "render"; }

    void declare (CLI::App& program) override;
    ExitStatus run (std::ostream& out, std::ostream& err) override;

private:
    void declareWhatToPlay (CLI::App& app);
    void declareHowToWrite (CLI::App& app);
    void refuseContradictions() const;
    void refuseOverwritingInput() const;
    Phrase phraseFor (const KeySource& keySource, std::ostream& err) const;
    Phrase heldPhrase (const KeySource& keySource) const;
    Phrase midiPhrase (const KeySource& keySource, std::ostream& err) const;

    RenderScale scale() const { return scaleIndex_ == 0 ? RenderScale::volts : RenderScale::listening; }

    double tailOr (double seconds) const { return tailSeconds_ >= 0.0 ? tailSeconds_ : seconds; }

    CardSelection selection_;
    std::filesystem::path outFile_;
    std::filesystem::path midiFile_;
    std::vector<int> keys_;
    double seconds_ = 0.0;      ///< 0 until stated
    double tailSeconds_ = -1.0; ///< negative until stated
    int rateHz_ = 48000;
    int scaleIndex_ = 0; ///< 0 volts, 1 listening
};

} // namespace stopwright
