// SPDX-License-Identifier: GPL-3.0-or-later
#include "Organ/SchemaChecker.h"

#include "Organ/SampleDocuments.h"

#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validator.hpp>

#include <cctype>

namespace stopwright
{

using Adapter = valijson::adapters::NlohmannJsonAdapter;

struct SchemaChecker::Schema
{
    Json json;
    valijson::Schema parsed;
};

Json schemaOf (const std::string& kind)
{
    auto name = kind;
    name.front() = static_cast<char> (std::toupper (static_cast<unsigned char> (name.front())));
    return Json::parse (textOf (STOPWRIGHT_ROOT "/Assets/" + name + ".schema.json"));
}

SchemaChecker::SchemaChecker (const std::string& kind) : schema_ (std::make_unique<Schema>())
{
    schema_->json = schemaOf (kind);
    valijson::SchemaParser().populateSchema (Adapter (schema_->json), schema_->parsed);
}

SchemaChecker::~SchemaChecker() = default;

bool SchemaChecker::accepts (const Json& document) const
{
    valijson::Validator validator;
    return validator.validate (schema_->parsed, Adapter (document), nullptr);
}

} // namespace stopwright
