// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>

#include <memory>
#include <string>

namespace stopwright
{

using Json = nlohmann::json;

/// The schema of a kind of document, "card", "instrument" or "mask".
Json schemaOf (const std::string& kind);

/// Whether documents keep to a schema, judged by a validator that knows nothing of the loader.
class SchemaChecker
{
public:
    explicit SchemaChecker (const std::string& kind);
    ~SchemaChecker();
    SchemaChecker (const SchemaChecker&) = delete;
    SchemaChecker& operator= (const SchemaChecker&) = delete;

    bool accepts (const Json& document) const;

private:
    struct Schema;
    std::unique_ptr<Schema> schema_;
};

} // namespace stopwright
