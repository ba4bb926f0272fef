// SPDX-License-Identifier: GPL-3.0-or-later
#include "Units/Engineering.h"
#include "Units/EngineeringLetters.h"
#include "Units/Error.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstddef>

namespace stopwright
{

namespace
{

bool isBlank (char c)
{
    return c == ' ' || c == '\t';
}

bool isDigit (char c)
{
    return c >= '0' && c <= '9';
}

/// Reads one value from left to right: sign, digits, then an exponent or a prefix letter, then a unit.
///
/// The text is brought into plain decimal form and converted once, so that "4n7" is the very double that 4.7e-9 is.
class ValueReader
{
public:
    ValueReader (std::string_view text, Quantity quantity) : text_ (text), rest_ (text), quantity_ (quantity) {}

    double read()
    {
        skipBlanks();
        readSign();
        readDigits();
        if (! readExponent())
            readLetter();
        if (digitCount_ == 0)
            refuse ("it has no digits");

        skipBlanks();
        readUnit();
        skipBlanks();
        if (! rest_.empty())
            refuse (quotedText (rest_) + " at its end means nothing here");

        return convert();
    }

private:
    [[noreturn]] void refuse (const std::string& reason) const
    {
        const auto& words = wordsFor (quantity_);
        throw Error (quotedText (text_) + " is not " + std::string (words.name) + ": " + reason + "; write it like "
                     + std::string (words.examples) + ".");
    }

    bool nextIsDigit() const { return ! rest_.empty() && isDigit (rest_.front()); }

    void skipBlanks()
    {
        while (! rest_.empty() && isBlank (rest_.front()))
            rest_.remove_prefix (1);
    }

    bool take (std::string_view start)
    {
        if (! rest_.starts_with (start))
            return false;

        rest_.remove_prefix (start.size());
        return true;
    }

    void takeDigits()
    {
        const auto count = static_cast<std::size_t> (std::ranges::find_if_not (rest_, isDigit) - rest_.begin());
        decimal_ += rest_.substr (0, count);
        digitCount_ += count;
        rest_.remove_prefix (count);
    }

    void readSign()
    {
        if (take ("-"))
            decimal_ += '-';
        else
            take ("+");
    }

    void readDigits()
    {
        takeDigits();
        if (digitCount_ == 0)
            decimal_ += '0'; // "R47", ".5"

        if (take ("."))
        {
            hasPoint_ = true;
            decimal_ += '.';
            takeDigits();
        }
        else if (rest_.starts_with (","))
            refuse ("the decimal sign is a point, not a comma");
    }

    bool readExponent()
    {
        if (digitCount_ == 0 || ! (rest_.starts_with ("e") || rest_.starts_with ("E")))
            return false;

        auto number = rest_.substr (1);
        if (number.starts_with ("+"))
            number.remove_prefix (1);

        const auto* const end = number.data() + number.size();
        const auto [stop, failure] = std::from_chars (number.data(), end, exponent_);
        if (failure != std::errc() || (number.data() != rest_.data() + 1 && *number.data() == '-'))
            refuse ("its exponent is no whole number");

        rest_ = { stop, static_cast<std::size_t> (end - stop) };
        if (takePrefix())
            refuse ("it has both an exponent and a prefix");
        return true;
    }

    /// A prefix, or the letter of the unit in place of the point.
    void readLetter()
    {
        const auto direct = ! rest_.empty() && ! isBlank (rest_.front());
        skipBlanks();

        const char pointLetter = wordsFor (quantity_).pointLetter;
        const auto isUnitLetter = pointLetter != 0 && rest_.size() > 1 && rest_[0] == pointLetter && isDigit (rest_[1]);
        if (isUnitLetter)
        {
            rest_.remove_prefix (1);
            unitIsRead_ = true;
        }
        else if (! takePrefix())
            return;

        if (nextIsDigit())
            readDigitsAfterLetter (direct);
    }

    void readDigitsAfterLetter (bool direct)
    {
        if (hasPoint_ || ! direct)
            refuse (hasPoint_ ? "it has a point and a letter in place of one" : "there is a blank inside the number");

        decimal_ += '.';
        takeDigits();
    }

    bool takePrefix()
    {
        const auto all = prefixes();
        const auto found = std::ranges::find_if (all, [this] (const Prefix& p) { return rest_.starts_with (p.text); });
        if (found == all.end())
            return false;

        if (found->text == "M" && (quantity_ == Quantity::capacitance || quantity_ == Quantity::inductance))
            refuse ("M is mega, and no such part is made (m is milli, u is micro)");

        rest_.remove_prefix (found->text.size());
        exponent_ += found->exponent;
        prefixIsRead_ = true;
        return true;
    }

    void readUnit()
    {
        const auto all = unitSpellings();
        const auto found =
            std::ranges::find_if (all, [this] (const UnitSpelling& u) { return rest_.starts_with (u.text); });
        if (found == all.end())
            return;

        if (found->quantity != quantity_)
            refuse (std::string (found->text) + " is the unit of " + std::string (wordsFor (found->quantity).name));

        if (unitIsRead_ || (prefixIsRead_ && found->text == "R"))
            refuse ("it has two letters where one belongs");

        rest_.remove_prefix (found->text.size());
    }

    double convert()
    {
        // from_chars wants a digit beside the point and knows no plus sign.
        if (decimal_.back() == '.')
            decimal_ += '0';
        const auto plain = decimal_ + 'e' + std::to_string (exponent_);

        double value = 0.0;
        const auto [stop, failure] = std::from_chars (plain.data(), plain.data() + plain.size(), value);
        const auto isZero = decimal_.find_first_not_of ("-0.") == std::string::npos;
        if (failure != std::errc() || ! std::isfinite (value) || (value == 0.0 && ! isZero))
            refuse ("it is beyond what can be computed with");

        return value;
    }

    std::string_view text_;
    std::string_view rest_;
    Quantity quantity_;
    std::string decimal_;
    std::size_t digitCount_ = 0;
    int exponent_ = 0;
    bool hasPoint_ = false;
    bool prefixIsRead_ = false;
    bool unitIsRead_ = false;
};

} // namespace

double parseEngineering (std::string_view text, Quantity quantity)
{
    return ValueReader (text, quantity).read();
}

} // namespace stopwright
