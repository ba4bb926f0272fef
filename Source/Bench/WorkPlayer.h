// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "Bench/BenchDocument.h"
#include "Bench/BenchProcessor.h"
#include "Circuit/NetlistCheck.h"
#include "Organ/InstrumentCards.h"

#include <map>
#include <string>
#include <vector>

namespace stopwright
{

/// Turns the work into sound: by turning knobs where that is enough, else by building it anew, with a cross-fade. A card
/// that cannot be computed as it stands sounds on as it last could, and its faults are told. Threading: [control].
class WorkPlayer
{
public:
    explicit WorkPlayer (BenchProcessor& processor) : processor_ (processor) {}

    /// Plays another document; the listening level is measured afresh. Fails: Error; what sounded goes on sounding.
    void open (const BenchDocument& document);

    /// Has the sound follow the work. Fails: Error; what sounded goes on sounding.
    void follow (const BenchDocument& document);

    /// The same while another trial is taken in hand, `gainDb` (0 or less) being what the whole is lowered by from then on.
    /// With `alwaysFades` a cross-fade is heard also where nothing changed, so that it tells nothing. Fails: as `follow`.
    void followTrial (const BenchDocument& document, double gainDb, bool alwaysFades);

    /// Lowers the whole by another gain, 0 dB or less, while it sounds; no step is heard.
    void setGainDb (double gainDb);

    /// What is drawn is drawn in the work too, where `follow` starts from.
    void noteRegistration (const BenchWork& work) { sounding_.takeRegistrationOf (work); }

    /// What is wrong with a card of the work, errors first; empty where nothing is. By its name in BenchWork::trials.
    const std::vector<Finding>& faultsOf (const std::string& cardName) const;

    /// Whether an error among the faults keeps the card from sounding.
    bool isUnsound (const std::string& cardName) const;

    /// What of the open instrument cannot sound and why: the first sentence, and how many more there are.
    std::string openingNote() const;

    /// Whether a stop of the instrument has a card that can be computed, and a bus, so that it sounds when it is drawn.
    bool canSound (const BenchDocument& document, int stop) const;

    /// The cards of an instrument as they are heard: those of the work where there are such. Empty for a card alone.
    InstrumentCards cardsThatSound() const;

    /// The cards of an instrument with those of `work` where it has any; those on disk that cannot be computed are left
    /// out. Empty for a card alone.
    InstrumentCards cardsOf (const BenchWork& work) const;

    /// What a C4 sounds at the listening level of, alone: "Krummhorn 8".
    const std::string& referenceName() const noexcept { return referenceName_; }

private:
    void judge (const BenchDocument& document);
    BenchWork soundPartOf (const BenchDocument& document) const;
    void build (const BenchDocument& document, double gainDb);
    bool turnTo (const BenchWork& to);
    bool turnMixings (const BenchWork& to);
    bool turnTremulants (const BenchWork& to);
    void play (const BenchWork& work, const KeySource& keySource, double gainDb);
    void playInstrument (const BenchWork& work, double gainDb);
    InstrumentCards soundCardsOf (const BenchWork& work) const;
    std::string referenceTablet (const BenchWork& work, const InstrumentCards& cards) const;

    BenchProcessor& processor_;
    BenchWork sounding_;    ///< what the engine has; of cards without faults only
    InstrumentCards cards_; ///< of the instrument's stops as they stand on disk, those without faults
    std::map<std::string, std::vector<Finding>> faults_;
    std::map<std::string, Card> judged_; ///< the cards that faults_ are of
    std::string referenceName_;
    bool hasReference_ = false;
    double gainDb_ = 0.0; ///< that trial in hand is as loud as the other
};

} // namespace stopwright
