// SPDX-License-Identifier: GPL-3.0-or-later
#include "Sheet/SvgWriter.h"

#include "Organ/PlainText.h"

#include <array>
#include <charconv>
#include <set>

namespace stopwright
{

namespace
{

constexpr double hatchSpacing = 4.0;
constexpr double hatchWidth = 0.8;

/// Hundredths of a point, no exponent, a point whatever the locale.
std::string number (double value)
{
    constexpr int decimals = 2;
    std::array<char, 400> digits {};
    const auto end =
        std::to_chars (digits.data(), digits.data() + digits.size(), value, std::chars_format::fixed, decimals).ptr;
    std::string text (digits.data(), end);
    text.erase (text.find_last_not_of ('0') + 1);
    if (text.ends_with ('.'))
        text.pop_back();
    return text == "-0" ? "0" : text;
}

std::string escaped (const std::string& text)
{
    std::string safe;
    for (const char letter : printable (text, text.size()))
    {
        if (letter == '&')
            safe += "&amp;";
        else if (letter == '<')
            safe += "&lt;";
        else if (letter == '>')
            safe += "&gt;";
        else
            safe += letter;
    }
    return safe;
}

std::string attribute (const char* name, const std::string& value)
{
    return std::string (" ").append (name).append ("=\"").append (value).append ("\"");
}

std::string places (const std::vector<DrawingPoint>& points)
{
    std::string text;
    for (const auto& point : points)
        text.append (text.empty() ? "" : " ").append (number (point.x)).append (",").append (number (point.y));
    return text;
}

class SvgDocument
{
public:
    SvgDocument (const Drawing& drawing, const InkColours& inks) : drawing_ (drawing), inks_ (inks) {}

    std::string text()
    {
        const auto width = number (drawing_.width);
        const auto height = number (drawing_.height);
        text_ = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\""
                + attribute ("width", width + "pt") + attribute ("height", height + "pt")
                + attribute ("viewBox", "0 0 " + width + " " + height) + ">\n";
        addPatterns();
        text_ += "<rect" + attribute ("width", width) + attribute ("height", height)
                 + attribute ("fill", colour (Ink::sheet)) + "/>\n";
        for (const auto& area : drawing_.areas)
            add (area);
        for (const auto& line : drawing_.lines)
            add (line);
        for (const auto& line : drawing_.texts)
            add (line);
        return text_ + "</svg>\n";
    }

private:
    std::string colour (Ink ink, double strength = 1.0) const { return hexText (inks_.of (ink, strength)); }

    static std::string patternName (const std::string& colour) { return "hatch-" + colour.substr (1); }

    void addPatterns()
    {
        std::set<std::string> colours;
        for (const auto& area : drawing_.areas)
            if (area.isHatched)
                colours.insert (colour (area.ink, area.strength));
        for (const auto& each : colours)
        {
            const auto size = number (hatchSpacing);
            text_ += "<defs><pattern" + attribute ("id", patternName (each))
                     + attribute ("patternUnits", "userSpaceOnUse") + attribute ("width", size)
                     + attribute ("height", size) + attribute ("patternTransform", "rotate(45)") + "><line"
                     + attribute ("x1", number (0.5 * hatchWidth)) + attribute ("y1", "0")
                     + attribute ("x2", number (0.5 * hatchWidth)) + attribute ("y2", size) + attribute ("stroke", each)
                     + attribute ("stroke-width", number (hatchWidth)) + "/></pattern></defs>\n";
        }
    }

    void add (const DrawnArea& area)
    {
        const auto fill = colour (area.ink, area.strength);
        text_.append ("<polygon").append (attribute ("points", places (area.points)));
        text_ +=
            attribute ("fill", area.isHatched ? std::string ("url(#").append (patternName (fill)).append (")") : fill);
        text_ += "/>\n";
    }

    void add (const DrawnLine& line)
    {
        text_ += (line.isClosed ? "<polygon" : "<polyline") + attribute ("points", places (line.points))
                 + attribute ("fill", "none") + attribute ("stroke", colour (line.ink))
                 + attribute ("stroke-width", number (line.width)) + attribute ("stroke-linejoin", "round");
        if (line.isDashed)
            text_ += attribute ("stroke-dasharray", "4 3");
        text_ += "/>\n";
    }

    void add (const DrawnText& text)
    {
        constexpr std::array<const char*, 3> anchors { "start", "middle", "end" };
        text_ += "<text" + attribute ("x", number (text.at.x)) + attribute ("y", number (text.at.y))
                 + attribute ("font-family", "'DejaVu Sans', Verdana, sans-serif")
                 + attribute ("font-size", number (text.size))
                 + attribute ("text-anchor", anchors[static_cast<std::size_t> (text.align)])
                 + attribute ("fill", colour (text.ink));
        if (text.isBold)
            text_ += attribute ("font-weight", "bold");
        text_.append (">").append (escaped (text.text)).append ("</text>\n");
    }

    const Drawing& drawing_;
    const InkColours& inks_;
    std::string text_;
};

} // namespace

std::string svgText (const Drawing& drawing, const InkColours& inks)
{
    return SvgDocument (drawing, inks).text();
}

} // namespace stopwright
