// SPDX-License-Identifier: GPL-3.0-or-later
//
// What PartDesk changes on the card, and where the keyboard goes then.
#include "Bench/PartDesk.h"

#include "Bench/Lettering.h"
#include "Bench/WideText.h"
#include "Organ/CardEdit.h"
#include "Organ/RailEdit.h"

#include <utility>

namespace stopwright
{

/// The row's choice is in one of its own callbacks when the sheet is drawn anew: later, then.
void PartDesk::solder (std::size_t lead, const std::string& node)
{
    if (! selection_)
        return;
    juce::MessageManager::callAsync (
        [safe = juce::Component::SafePointer<PartDesk> (this), selection = *selection_, lead, node]
        {
            if (safe == nullptr)
                return;
            auto& session = safe->session_;
            const auto to = node.empty() ? proposedNodeName (session.card()) : node;
            session.attempt (
                [&]
                {
                    session.editCard (selection.name + " soldered to " + (to == "0" ? "common" : to),
                                      [&] (Card& card)
                                      {
                                          card = selection.isTap
                                                     ? rewireTap (std::move (card), selection.name, to)
                                                     : rewireLead (std::move (card), selection.name, lead, to);
                                      });
                });
        });
}

void PartDesk::takeFrom (const std::string& keyedBus)
{
    if (! selection_)
        return;
    juce::MessageManager::callAsync (
        [safe = juce::Component::SafePointer<PartDesk> (this), name = selection_->name, keyedBus]
        {
            if (safe == nullptr)
                return;
            auto& session = safe->session_;
            session.attempt (
                [&]
                {
                    session.edit (name + " taken from " + keyedBus,
                                  [&] (BenchWork& work)
                                  {
                                      auto& card = work.pair().inHand();
                                      card = moveTapToKeyedBus (std::move (card), name, *work.instrument, keyedBus);
                                  });
                });
        });
}

/// The keyboard goes to the row of a lead, to the first control where there is none.
void PartDesk::takeFocusAt (std::size_t lead)
{
    if (lead < leads_.size() && leads_[lead]->isVisible())
        leads_[lead]->box().grabKeyboardFocus();
    else
        takeFocus();
}

void PartDesk::takeFocus()
{
    if (! numbers_.empty() && ! hasLeadsOnly())
        numbers_.front()->grabKeyboardFocus();
    else if (! leads_.empty() && leads_.front()->isVisible())
        leads_.front()->box().grabKeyboardFocus();
    else if (selection_)
        turn_.grabKeyboardFocus();
}

void PartDesk::beginRenaming()
{
    if (! selection_)
        return;
    editor_.open (*this, rename_.getBounds().withWidth (Lettering::px (150.0f)).constrainedWithin (getLocalBounds()),
                  { "Name of the part",
                    fromUtf8 (selection_->name),
                    true,
                    [this] (const juce::String& text) { return takeName (text); },
                    {},
                    [this]
                    {
                        if (selection_ && onRenamed)
                            onRenamed (*selection_);
                    } });
}

bool PartDesk::takeName (const juce::String& name)
{
    if (! selection_)
        return false;
    const auto before = *selection_;
    const Selection after { before.isTap, name.trim().toStdString() };
    if (after == before)
        return true;
    selection_ = after; // before the sheet is drawn anew
    const bool isTaken = session_.attempt (
        [&]
        {
            session_.editCard (before.name + " renamed " + after.name,
                               [&] (Card& card)
                               {
                                   card = before.isTap ? renameTap (std::move (card), before.name, after.name)
                                                       : renamePart (std::move (card), before.name, after.name);
                               });
        });
    if (! isTaken)
        selection_ = before;
    else if (onRenamed)
        onRenamed (after);
    return isTaken;
}

} // namespace stopwright
