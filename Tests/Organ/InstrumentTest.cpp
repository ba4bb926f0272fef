// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/Instrument.h"

#include "Support/Tolerances.h"
#include "Units/Error.h"
#include "Units/Pitch.h"

#include <gtest/gtest.h>

namespace stopwright
{

namespace
{

Card quintCard()
{
    Card card;
    card.taps.emplace_back();
    card.taps[0].footage = Footage::parse ("2 2/3");
    return card;
}

double pitchOf (const KeySource& source, int key, const std::string& footage)
{
    const auto generator = source.tuning.generatorFor (key, Footage::parse (footage));
    return generator ? source.tuning.frequencyHz (*generator) : 0.0;
}

} // namespace

TEST (KeySource, OfACardAloneIsTemperedWithExactMutations)
{
    const auto source = keySourceForCardAlone (quintCard());
    EXPECT_EQ (source.lowestKey, 36);
    EXPECT_EQ (source.highestKey, 96);
    // ISO 16:1975, A4 = 440 Hz; a twelfth is exactly three times the unison.
    EXPECT_NEAR (centsBetween (440.0, pitchOf (source, 69, "8")), 0.0, tolerance::tuningCents);
    EXPECT_NEAR (pitchOf (source, 60, "2 2/3") / pitchOf (source, 60, "8"), 3.0, 1e-9);
}

TEST (KeySource, OfAnInstrumentHasItsTuningAndCompass)
{
    Instrument organ;
    organ.divisions = { { "Upper", 36, 96, {} }, { "Pedal", 36, 65, {} } };
    organ.tuning.referenceHz = 442.0;
    organ.keyer.shape = KeyerShape::contact;
    const auto source = keySourceOf (organ, "Pedal", quintCard());
    EXPECT_EQ (source.highestKey, 65);
    EXPECT_EQ (source.keyer.shape, KeyerShape::contact);
    EXPECT_NEAR (centsBetween (442.0, pitchOf (source, 69, "8")), 0.0, tolerance::tuningCents);

    // Borrowed from the scale: nineteen semitones, 1.955 cents flat of the third harmonic.
    EXPECT_NEAR (centsBetween (pitchOf (source, 60, "8"), pitchOf (source, 60, "2 2/3")), 1900.0,
                 tolerance::tuningCents);
}

TEST (KeySource, EndsAtTheHighestGenerator)
{
    Instrument organ;
    organ.divisions = { { "Upper", 36, 96, {} } };
    const auto source = keySourceOf (organ, "Upper", Card());
    EXPECT_GT (pitchOf (source, 96, "2"), 8372.0); // C9
    EXPECT_EQ (pitchOf (source, 97, "2"), 0.0);    // C#9

    organ.tuning.top = TopBehaviour::breakBack;
    EXPECT_NEAR (centsBetween (equalTemperedHz (109), pitchOf (keySourceOf (organ, "Upper", Card()), 97, "2")), 0.0,
                 tolerance::tuningCents);
}

TEST (KeySource, RefusesWhatTheInstrumentDoesNotHave)
{
    Instrument organ;
    organ.divisions = { { "Upper", 36, 96, {} }, { "Pedal", 36, 65, {} } };
    try
    {
        keySourceOf (organ, "Swell", Card());
        FAIL();
    }
    catch (const Error& error)
    {
        EXPECT_STREQ (error.what(), "The instrument has no division \"Swell\"; it has Upper and Pedal.");
    }

    organ.tuning.kind = TuningKind::topOctave;
    organ.tuning.divisors = { 478, 451, 426, 402, 379, 358, 338, 319, 301, 284, 268, 253 };
    EXPECT_NO_THROW (keySourceOf (organ, "Upper", quintCard()));
    organ.tuning.mutations = MutationSource::exact;
    EXPECT_THROW (keySourceOf (organ, "Upper", quintCard()), Error);
}

TEST (KeySource, OfATopOctaveHasItsOwnPitches)
{
    Instrument organ;
    organ.divisions = { { "Upper", 36, 96, {} } };
    organ.tuning.kind = TuningKind::topOctave;
    organ.tuning.divisors = { 478, 451, 426, 402, 379, 358, 338, 319, 301, 284, 268, 253 };
    const auto source = keySourceOf (organ, "Upper", Card());
    // Whole-number division: 2000240 / 284 / 16 for A4, 0.762 cents sharp of 440 Hz.
    EXPECT_NEAR (centsBetween (440.0, pitchOf (source, 69, "8")), 0.762, tolerance::tuningCents);
}

} // namespace stopwright
