// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/ElementStance.h"

#include <algorithm>

namespace stopwright
{

namespace
{

constexpr SymbolPose lying { 0, false };
constexpr SymbolPose lyingReversed { 2, true }; ///< left and right exchanged, what is above stays above
constexpr SymbolPose upright { 1, false };      ///< first lead at the top
constexpr SymbolPose uprightReversed { 3, true };

class StanceFinder
{
public:
    StanceFinder (const Card& card, const CardGraph& graph, const std::vector<int>& layers, const GraphElement& element)
        : card_ (card),
          graph_ (graph),
          layers_ (layers),
          element_ (element)
    {}

    ElementStance find() const
    {
        auto found = element_.kind == ElementKind::part ? findPart (card_.parts[element_.index].value)
                                                        : ElementStance { Stance::across, lying, {} };
        if (std::none_of (element_.nodes.begin(), element_.nodes.end(),
                          [&] (int node) { return graph_.isSignal (node); }))
            found.stance = Stance::loose;
        found.leads = posedLeads (card_, element_, found.pose);
        return found;
    }

private:
    ElementStance findPart (const PartValue& value) const
    {
        if (std::holds_alternative<OpAmp> (value))
            return { Stance::across, { 0, isPlusAbove() }, {} };
        if (transistorIn (value) != nullptr)
            return { Stance::across, { 0, isEmitterAbove (std::holds_alternative<Pnp> (value)) }, {} };
        if (std::holds_alternative<Potentiometer> (value))
            return findPotentiometer();
        return findBetween (0, 1);
    }

    int node (std::size_t lead) const { return element_.nodes[lead]; }

    bool isSignal (std::size_t lead) const { return graph_.isSignal (node (lead)); }

    int layer (std::size_t lead) const { return layers_[static_cast<std::size_t> (node (lead))]; }

    bool isRailAbove (std::size_t lead) const
    {
        if (node (lead) < 0)
            return false;
        const auto& at = graph_.nodes[static_cast<std::size_t> (node (lead))];
        return at.role == NodeRole::rail && at.isAbove;
    }

    /// The sign of an op-amp's input should not get in the way of its other input.
    bool isPlusAbove() const
    {
        return (isSignal (0) && ! isSignal (1) && node (1) >= 0 && ! isRailAbove (1))
               || (isSignal (1) && isRailAbove (0));
    }

    /// A part of two leads, or the track of a potentiometer.
    ElementStance findBetween (std::size_t first, std::size_t second) const
    {
        if (isSignal (first) && isSignal (second) && node (first) != node (second))
            return { Stance::across, layer (first) <= layer (second) ? lying : lyingReversed, {} };
        if (isSignal (first))
            return isRailAbove (second) ? ElementStance { Stance::standing, uprightReversed, {} }
                                        : ElementStance { Stance::hanging, upright, {} };
        if (isSignal (second))
            return isRailAbove (first) ? ElementStance { Stance::standing, upright, {} }
                                       : ElementStance { Stance::hanging, uprightReversed, {} };
        return { Stance::loose, height (first) >= height (second) ? upright : uprightReversed, {} };
    }

    /// How high a node belongs that is no signal node.
    int height (std::size_t lead) const
    {
        if (node (lead) < 0)
            return 0;
        const auto& at = graph_.nodes[static_cast<std::size_t> (node (lead))];
        if (at.role == NodeRole::rail)
            return at.isAbove ? 2 : -2;
        if (at.role == NodeRole::named)
            return 1;
        return at.role == NodeRole::common ? -1 : 1;
    }

    ElementStance findPotentiometer() const
    {
        const bool isWiperApart = isSignal (1) && node (1) != node (0) && node (1) != node (2);
        if (! isWiperApart)
            return withWiperToSign (findBetween (0, 2));
        const auto ends = height (0) >= height (2) ? upright : uprightReversed;
        const SymbolPose wiperLeft { ends.quarterTurns, ! ends.isMirrored };
        const auto isLeftOfWiper = [&] (std::size_t lead) { return ! isSignal (lead) || layer (lead) < layer (1); };
        const auto isRightOfWiper = [&] (std::size_t lead) { return ! isSignal (lead) || layer (lead) > layer (1); };
        if (isLeftOfWiper (0) && isLeftOfWiper (2))
            return { Stance::across, ends, {} };
        if (isRightOfWiper (0) && isRightOfWiper (2))
            return { Stance::across, wiperLeft, {} };
        if (! isSignal (0) || ! isSignal (2))
            return { Stance::across, ends, {} };
        return { Stance::across, layer (0) <= layer (2) ? lying : lyingReversed, {} };
    }

    /// A wiper on common or a rail below points down where the track lies.
    ElementStance withWiperToSign (ElementStance found) const
    {
        if (! found.pose.isUpright() && node (1) >= 0 && ! isSignal (1) && ! isRailAbove (1))
            found.pose.isMirrored = ! found.pose.isMirrored;
        return found;
    }

    /// How strongly a node is drawn downward by what joins it to common and the rails.
    int weight (int at) const
    {
        if (! graph_.isSignal (at))
            return at < 0 ? 0 : 2 * downward (at);
        int sum = 0;
        for (const auto& other : graph_.elements)
            if (other.kind == ElementKind::part && other.nodes.size() == 2)
                for (std::size_t lead = 0; lead < 2; ++lead)
                    if (other.nodes[lead] == at && other.nodes[1 - lead] >= 0
                        && ! graph_.isSignal (other.nodes[1 - lead]))
                        sum += downward (other.nodes[1 - lead]);
        return sum;
    }

    int downward (int at) const
    {
        const auto& held = graph_.nodes[static_cast<std::size_t> (at)];
        if (held.role == NodeRole::rail)
            return held.isAbove ? -2 : 2;
        return 1;
    }

    bool isEmitterAbove (bool isPnp) const
    {
        const int emitter = weight (node (2));
        const int collector = weight (node (0));
        return emitter != collector ? emitter < collector : isPnp;
    }

    const Card& card_;
    const CardGraph& graph_;
    const std::vector<int>& layers_;
    const GraphElement& element_;
};

} // namespace

std::vector<SymbolLead> posedLeads (const Card& card, const GraphElement& element, SymbolPose pose)
{
    auto leads = element.kind == ElementKind::part  ? symbolLeads (card.parts[element.index].value)
                 : element.kind == ElementKind::tap ? std::vector { tapLead() }
                                                    : std::vector { outputLead() };
    for (auto& lead : leads)
        lead = { pose.apply (lead.end), pose.apply (lead.outward) };
    return leads;
}

ElementStance
    stanceOf (const Card& card, const CardGraph& graph, const std::vector<int>& layers, const GraphElement& element)
{
    return StanceFinder (card, graph, layers, element).find();
}

} // namespace stopwright
