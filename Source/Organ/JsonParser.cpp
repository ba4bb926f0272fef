// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/DocumentError.h"
#include "Organ/DocumentLimits.h"
#include "Organ/JsonTree.h"
#include "Organ/PlainText.h"
#include "Units/QuotedText.h"

#include <algorithm>
#include <iterator>
#include <vector>

namespace stopwright
{

namespace
{

/// Walks a text and lets the outside see how far the parser has read, to tell the line of a fault.
class WatchedText
{
public:
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;

    WatchedText (const char* at, const char** cursor) : at_ (at), cursor_ (cursor) {}

    reference operator*() const { return *at_; }

    WatchedText& operator++()
    {
        *cursor_ = ++at_;
        return *this;
    }

    WatchedText operator++ (int)
    {
        auto before = *this;
        ++*this;
        return before;
    }

    bool operator== (const WatchedText& other) const { return at_ == other.at_; }

    bool operator!= (const WatchedText& other) const { return at_ != other.at_; }

private:
    const char* at_;
    const char** cursor_;
};

/// What the library found wrong, without its preamble and without the text it had just read, which can be megabytes.
std::string reasonOf (const nlohmann::detail::exception& fault)
{
    constexpr int numberOverflow = 406;
    if (fault.id == numberOverflow)
        return "a number is too large for this program; write one that a computer can hold.";

    std::string reason = fault.what();
    if (const auto dash = reason.find (" - "); dash != std::string::npos)
        reason.erase (0, dash + 3);
    if (const auto read = reason.find ("; last read: "); read != std::string::npos)
    {
        const auto expected = reason.rfind ("; expected ");
        reason.erase (read, expected != std::string::npos && expected > read ? expected - read : std::string::npos);
    }
    return "this is not valid JSON: " + printable (reason, 120) + ".";
}

/// Builds the tree from the parser's events. Every event is checked before memory is spent on it.
class TreeBuilder : public nlohmann::json_sax<JsonTree>
{
public:
    TreeBuilder (std::string_view text, std::string origin)
        : text_ (text),
          origin_ (std::move (origin)),
          cursor_ (text.data())
    {}

    JsonTree build()
    {
        const auto* begin = text_.data();
        JsonTree::sax_parse (WatchedText (begin, &cursor_), WatchedText (begin + text_.size(), &cursor_), this);
        return std::move (root_);
    }

    bool null() override { return add (nullptr); }

    bool boolean (bool value) override { return add (value); }

    bool number_integer (number_integer_t value) override { return add (value); }

    bool number_unsigned (number_unsigned_t value) override { return add (value); }

    bool number_float (number_float_t value, const string_t& /*text*/) override { return add (value); }

    bool string (string_t& value) override { return add (std::move (value)); }

    bool binary (binary_t& /*value*/) override { refuse ("this is not a text document."); }

    bool start_object (std::size_t /*size*/) override { return open (JsonTree::object()); }

    bool start_array (std::size_t /*size*/) override { return open (JsonTree::array()); }

    bool end_object() override { return close(); }

    bool end_array() override { return close(); }

    bool key (string_t& name) override
    {
        const auto& object = *open_.back();
        if (object.contains (name))
            refuse ("the field " + quotedText (name) + " stands twice in the same object; keep one of them.");
        if (object.size() == DocumentLimits::fieldsPerObject)
            refuse ("an object has more than 256 fields, which no document of this program has.");
        key_ = std::move (name);
        return true;
    }

    bool parse_error (std::size_t /*position*/,
                      const std::string& /*token*/,
                      const nlohmann::detail::exception& fault) override
    {
        refuse (reasonOf (fault));
    }

private:
    bool add (JsonTree value)
    {
        place (std::move (value));
        return true;
    }

    bool open (JsonTree value)
    {
        if (open_.size() == DocumentLimits::depth)
            refuse ("the document is nested deeper than 64 levels.");
        open_.push_back (place (std::move (value)));
        return true;
    }

    bool close()
    {
        open_.pop_back();
        return true;
    }

    /// The pointers in open_ stay good, for nothing is added to a parent while its child is open.
    JsonTree* place (JsonTree value)
    {
        if (++valueCount_ > DocumentLimits::values)
            refuse ("the document holds more than 50000 values.");
        if (open_.empty())
            return &(root_ = std::move (value));

        auto& parent = *open_.back();
        if (parent.is_array())
        {
            parent.push_back (std::move (value));
            return &parent.back();
        }
        return &(parent[key_] = std::move (value));
    }

    [[noreturn]] void refuse (const std::string& sentence) const
    {
        // The last character read belongs to what is at fault, or just ended it; a line feed there is still its line.
        const auto read = static_cast<std::size_t> (cursor_ - text_.data());
        const auto before = text_.substr (0, read > 0 ? read - 1 : 0);
        const auto line = 1 + std::count (before.begin(), before.end(), '\n');
        throw DocumentError (origin_, "line " + std::to_string (line), sentence);
    }

    std::string_view text_;
    std::string origin_;
    const char* cursor_;
    JsonTree root_;
    std::vector<JsonTree*> open_;
    std::string key_;
    std::size_t valueCount_ = 0;
};

void requireText (std::string_view text, const std::string& origin)
{
    if (text.size() > DocumentLimits::bytes)
        throw DocumentError (origin, {}, "the document is larger than 4 MiB.");
    if (text.starts_with ("\xFF\xFE") || text.starts_with ("\xFE\xFF"))
        throw DocumentError (origin, {}, "the document is UTF-16 text; save it as UTF-8.");

    const auto bad = std::min (firstByteNotUtf8 (text), text.find ('\0'));
    if (bad == std::string_view::npos)
        return;
    const auto before = text.substr (0, bad);
    const auto line = 1 + std::count (before.begin(), before.end(), '\n');
    throw DocumentError (origin, "line " + std::to_string (line),
                         text[bad] == '\0' ? "this is binary data, not a text document."
                                           : "this is not UTF-8 text; save the document as UTF-8.");
}

} // namespace

JsonTree parseJson (std::string_view text, const std::string& origin)
{
    requireText (text, origin);
    if (text.starts_with ("\xEF\xBB\xBF"))
        text.remove_prefix (3);
    if (text.find_first_not_of (" \t\r\n") == std::string_view::npos)
        throw DocumentError (origin, {}, "the document is empty; name another file, or put back a copy of it.");
    return TreeBuilder (text, origin).build();
}

} // namespace stopwright
