// SPDX-License-Identifier: GPL-3.0-or-later
//
// The part of BenchSession about the two trials of the stop in hand.
#include "Bench/BenchSession.h"

#include "Organ/CardDocument.h"
#include "Units/Error.h"

namespace stopwright
{

namespace
{

void requireTwo (const BenchSession& session)
{
    if (! session.hasTwoTrials())
        throw Error ("There is no trial B of this stop yet; begin one first.");
}

} // namespace

void BenchSession::beginSecondTrial()
{
    edit ("trial B begun",
          [] (BenchWork& work)
          {
              auto& pair = work.pair();
              pair.b = pair.inHand();
              pair.isB = true;
          });
}

void BenchSession::loadSecondTrial (const std::filesystem::path& file)
{
    edit ("trial B from " + file.filename().string(),
          [&] (BenchWork& work)
          {
              work.pair().b = readCard (file);
              work.pair().isB = true;
          });
}

void BenchSession::takeTrial (bool isB, double gainDb, bool alwaysFades)
{
    requireTwo (*this);
    endGesture();
    auto document = document_;
    const bool wasUnsound = isUnsound();
    document.pair().isB = isB;
    player_.followTrial (document, gainDb, alwaysFades);

    const BenchWork before = document_.work();
    document_ = std::move (document);
    keySource_ = document_.keySource();
    tellDifference (before, wasUnsound);
}

void BenchSession::copyToOtherTrial()
{
    requireTwo (*this);
    edit (isSecondTrial() ? "trial B copied to A" : "trial A copied to B",
          [] (BenchWork& work)
          {
              auto& pair = work.pair();
              (pair.isB ? pair.a : *pair.b) = Card (pair.inHand());
          });
}

void BenchSession::keepTrialInHand()
{
    requireTwo (*this);
    edit (isSecondTrial() ? "trial B kept" : "trial A kept",
          [] (BenchWork& work)
          {
              auto& pair = work.pair();
              pair.a = Card (pair.inHand());
              pair.b.reset();
              pair.isB = false;
          });
}

} // namespace stopwright
