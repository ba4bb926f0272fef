// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace stopwright
{

/// The names that nodes of the card in hand have had, so that what is put on a node finds it again after it was renamed,
/// after undo and redo, and in the other trial, which may know it by the former name. Threading: [control].
class NodeNames
{
public:
    void noteRenaming (const std::string& from, const std::string& to) { renamings_.emplace_back (from, to); }

    /// For another card.
    void forget() noexcept { renamings_.clear(); }

    /// The name that the node has now; `node` itself when `isThere` knows it, empty when it is there under no name.
    std::string presentName (const std::string& node, const std::function<bool (const std::string&)>& isThere) const;

private:
    std::vector<std::pair<std::string, std::string>> renamings_; ///< from and to, in their order
};

} // namespace stopwright
