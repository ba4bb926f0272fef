// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/RowSearch.h"

#include "Sheet/RowChains.h"

#include <algorithm>
#include <cstdint>
#include <map>
#include <set>

namespace stopwright
{

namespace
{

using Chains = std::vector<std::vector<std::size_t>>;

constexpr std::size_t smallPlan = 14; ///< chains; larger ones get fewer starts
constexpr int startsOfSmall = 16;
constexpr int startsOfLarge = 3;
constexpr int mostRounds = 12;
constexpr long workOfAll = 80'000'000; ///< bounds the time that a large card takes
constexpr std::size_t usualItems = 96; ///< with more the work falls as their square

class RowSearcher
{
public:
    explicit RowSearcher (const RowPlan& plan) : plan_ (plan), cost_ (plan), chains_ (chainsOf (plan)) {}

    RowLayout find()
    {
        RowChoice best;
        long bestCost = -1;
        const int starts = chains_.size() <= smallPlan ? startsOfSmall : startsOfLarge;
        mostWork_ = workFor (plan_.items.size()) / (starts + 1);
        for (int start = 0; start < starts; ++start)
        {
            begin (start);
            work_ = 0;
            descend (chains_);
            if (bestCost < 0 || now_ < bestCost)
            {
                best = choice_;
                bestCost = now_;
            }
        }
        choice_ = best;
        now_ = bestCost;
        work_ = 0;
        descend (singles());
        return layout();
    }

private:
    /// So many that moving one chain alone would cost too much.
    bool isCrowd() const { return plan_.items.size() > usualItems; }

    static long workFor (std::size_t items)
    {
        const double share = static_cast<double> (usualItems) / static_cast<double> (std::max (usualItems, items));
        return static_cast<long> (static_cast<double> (workOfAll) * share * share);
    }

    /// Every chain in a row of its own, in an order that differs from start to start.
    void begin (int start)
    {
        std::vector<std::size_t> order (chains_.size());
        for (std::size_t index = 0; index < order.size(); ++index)
            order[index] = index;
        if (start > 0)
            for (std::size_t index = order.size(); index > 1; --index)
                std::swap (order[index - 1], order[next() % index]);
        choice_.rows.assign (plan_.items.size(), 0);
        choice_.isFlipped.assign (plan_.items.size(), false);
        for (std::size_t place = 0; place < order.size(); ++place)
            for (const auto item : chains_[order[place]])
                choice_.rows[item] = 2 * static_cast<int> (place);
        now_ = cost_.of (choice_);
    }

    /// A linear congruential generator (Knuth's MMIX constants): the same numbers everywhere.
    std::size_t next()
    {
        random_ = random_ * 6364136223846793005U + 1442695040888963407U;
        return static_cast<std::size_t> (random_ >> 33U);
    }

    Chains singles() const
    {
        Chains all (plan_.items.size());
        for (std::size_t index = 0; index < all.size(); ++index)
            all[index] = { index };
        return all;
    }

    /// What judging a choice costs, about.
    long workOfTrial() const { return static_cast<long> (plan_.items.size() * plan_.items.size()); }

    void descend (const Chains& chains)
    {
        for (int round = 0; round < mostRounds; ++round)
        {
            const long before = now_;
            for (std::size_t index = 0; index < chains.size() && work_ < mostWork_; ++index)
                moveChain (chains[index]);
            for (std::size_t index = 0; index < chains.size() && work_ < mostWork_; ++index)
                for (std::size_t other = 0; other < index; ++other)
                    swapChains (chains[index], chains[other]);
            shiftRows();
            flipAmplifiers();
            if (now_ == before || work_ >= mostWork_)
                return;
        }
    }

    bool accept (const RowChoice& candidate)
    {
        if (isCrowd() && work_ >= mostWork_)
            return false;
        work_ += workOfTrial();
        const long cost = cost_.of (candidate, now_);
        if (cost >= now_)
            return false;
        now_ = cost;
        choice_ = candidate;
        return true;
    }

    std::pair<int, int> extent() const
    {
        const auto [low, high] = std::minmax_element (choice_.rows.begin(), choice_.rows.end());
        return { *low, *high };
    }

    /// Tries every row, as it is and with a row or two made free for it.
    void moveChain (const std::vector<std::size_t>& chain)
    {
        const auto [low, high] = extent();
        const auto start = choice_;
        for (int row = low - 2; row <= high + 2; ++row)
            for (int inserted = 0; inserted <= 2; ++inserted)
            {
                auto candidate = start;
                for (auto& other : candidate.rows)
                    other += inserted > 0 && other >= row ? inserted : 0;
                for (const auto item : chain)
                    candidate.rows[item] = row;
                accept (candidate);
            }
    }

    void swapChains (const std::vector<std::size_t>& chain, const std::vector<std::size_t>& other)
    {
        auto candidate = choice_;
        const int row = choice_.rows[chain.front()];
        const int otherRow = choice_.rows[other.front()];
        if (row == otherRow)
            return;
        for (const auto item : chain)
            candidate.rows[item] = otherRow;
        for (const auto item : other)
            candidate.rows[item] = row;
        accept (candidate);
    }

    /// Moves all that lies below a row up or down together.
    void shiftRows()
    {
        const auto [low, high] = extent();
        for (int row = high; row > low; --row)
            for (const int by : { -1, 1 })
            {
                auto candidate = choice_;
                for (auto& other : candidate.rows)
                    other += other >= row ? by : 0;
                accept (candidate);
            }
    }

    void flipAmplifiers()
    {
        for (std::size_t index = 0; index < plan_.items.size(); ++index)
            if (plan_.items[index].canFlip)
            {
                auto candidate = choice_;
                candidate.isFlipped[index] = ! candidate.isFlipped[index];
                accept (candidate);
            }
    }

    RowLayout layout()
    {
        cost_.of (choice_);
        RowLayout found;
        found.itemRows = choice_.rows;
        found.isFlipped = choice_.isFlipped;
        found.hangerRows.reserve (plan_.hangers.size());
        for (const auto& hanger : plan_.hangers)
            found.hangerRows.push_back (hanger.isAbove ? cost_.highestRow (hanger.node) - 1
                                                       : cost_.lowestRow (hanger.node) + 1);
        std::set<int> used (found.itemRows.begin(), found.itemRows.end());
        used.insert (found.hangerRows.begin(), found.hangerRows.end());
        std::map<int, int> number;
        for (const int row : used)
            number.emplace (row, static_cast<int> (number.size()));
        for (auto& row : found.itemRows)
            row = number.at (row);
        for (auto& row : found.hangerRows)
            row = number.at (row);
        found.rowCount = static_cast<int> (number.size());
        return found;
    }

    const RowPlan& plan_;
    RowCost cost_;
    Chains chains_;
    RowChoice choice_;
    long now_ = 0;
    long work_ = 0;
    long mostWork_ = 0;
    std::uint64_t random_ = 1;
};

} // namespace

RowLayout searchRows (const RowPlan& plan)
{
    return RowSearcher (plan).find();
}

} // namespace stopwright
