// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/LargerLetters.h"

#include "Sheet/NodeLabels.h"
#include "Sheet/TextWidth.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace stopwright
{

namespace
{

constexpr int steps = 12; ///< tried factors between 1 and the one that is wished for

DrawingPoint grown (DrawingPoint point, DrawingPoint from, double factor)
{
    return { from.x + factor * (point.x - from.x), from.y + factor * (point.y - from.y) };
}

DrawnText grown (DrawnText text, DrawingPoint from, double factor)
{
    text.at = grown (text.at, from, factor);
    text.size *= factor;
    return text;
}

DrawingPoint nearestIn (const DrawingBox& box, DrawingPoint point)
{
    return { std::clamp (point.x, box.x, box.right()), std::clamp (point.y, box.y, box.bottom()) };
}

DrawingBox unionOf (const DrawingBox& one, const DrawingBox& other)
{
    const double x = std::min (one.x, other.x);
    const double y = std::min (one.y, other.y);
    return { x, y, std::max (one.right(), other.right()) - x, std::max (one.bottom(), other.bottom()) - y };
}

class LetterGrower
{
public:
    LetterGrower (SchematicLayout& layout, double factor)
        : layout_ (layout),
          factor_ (factor),
          fixed_ (takenBoxes (withoutTexts (layout)))
    {
        for (auto& node : layout_.nodes)
        {
            if (! node.label.text.empty())
            {
                loose_.push_back (&node.label);
                shortNames_[&node.label] = node.shortName;
            }
            for (auto& sign : node.signs)
                if (! sign.name.text.empty())
                    loose_.push_back (&sign.name);
        }
    }

    void grow()
    {
        for (auto& item : layout_.items)
            tryFactors ([&] (double factor) { return tryItem (item, factor); });
        for (auto* text : loose_)
            growLoose (*text);
    }

private:
    /// A name that does not get to its size whole is shortened rather than left small.
    void growLoose (DrawnText& text)
    {
        if (tryLoose (text, factor_))
            return;
        if (const auto name = shortNames_.find (&text); name != shortNames_.end())
            text.text = name->second;
        tryFactors ([&] (double factor) { return tryLoose (text, factor); });
    }

    /// What no letters move: bodies, wires, dots and signs. Rings are asked by their radius.
    static SchematicLayout withoutTexts (SchematicLayout layout)
    {
        for (auto& item : layout.items)
        {
            item.labelBox = {};
            item.ringRadius = 0.0;
        }
        for (auto& node : layout.nodes)
            for (auto& sign : node.signs)
                sign.name.text.clear();
        return layout;
    }

    template <typename Try>
    void tryFactors (const Try& attempt) const
    {
        for (int step = steps; step > 0; --step)
            if (attempt (1.0 + (factor_ - 1.0) * step / steps))
                return;
    }

    bool isFree (const DrawingBox& box, const void* owner) const
    {
        if (box.x < 0.0 || box.y < 0.0 || box.right() > layout_.width || box.bottom() > layout_.height)
            return false;
        const auto meetsBox = [&] (const DrawingBox& other) { return other.meets (box); };
        const auto meetsItem = [&] (const SheetItem& item)
        {
            const auto nearest = nearestIn (box, item.middle);
            return (&item != owner && item.labelBox.meets (box))
                   || std::hypot (nearest.x - item.middle.x, nearest.y - item.middle.y) < item.ringRadius;
        };
        const auto meetsText = [&] (const DrawnText* text) { return text != owner && textBox (*text).meets (box); };
        return std::ranges::none_of (fixed_, meetsBox) && std::ranges::none_of (layout_.items, meetsItem)
               && std::ranges::none_of (loose_, meetsText);
    }

    bool tryItem (SheetItem& item, double factor) const
    {
        const auto from = nearestIn (item.labelBox, item.middle);
        const auto corner = grown (DrawingPoint { item.labelBox.x, item.labelBox.y }, from, factor);
        DrawingBox box { corner.x, corner.y, factor * item.labelBox.width, factor * item.labelBox.height };
        auto label = item.label;
        for (auto& line : label)
        {
            line = grown (line, from, factor);
            box = unionOf (box, textBox (line));
        }
        if (! isFree (box, &item))
            return false;
        item.label = std::move (label);
        item.labelBox = box;
        return true;
    }

    /// Upward from where it stands, or downward; a little aside where that helps.
    bool tryLoose (DrawnText& text, double factor) const
    {
        const auto box = textBox (text);
        for (const double aside : { 0.0, 3.0, -3.0, 6.0, -6.0 })
            for (const double y : { box.bottom(), box.y })
            {
                auto larger = grown (text, { text.at.x, y }, factor);
                larger.at.x += aside;
                if (! isFree (textBox (larger), &text))
                    continue;
                text = larger;
                return true;
            }
        return false;
    }

    SchematicLayout& layout_;
    double factor_;
    std::vector<DrawingBox> fixed_;
    std::vector<DrawnText*> loose_; ///< names of nodes and rails
    std::map<const DrawnText*, std::string> shortNames_;
};

} // namespace

SchematicLayout withLargerLetters (SchematicLayout layout, double factor)
{
    if (factor > 1.0)
        LetterGrower (layout, factor).grow();
    return layout;
}

} // namespace stopwright
