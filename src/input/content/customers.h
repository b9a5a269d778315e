// The firm's customers, from a table or an address book, and the one a job names.
#pragma once

#include "input/yaml/cursor.h"
#include "model/content.h"

namespace input {

/// Reads 'customers.csv' (RFC 4180, with a header; comma, semicolon or tab) and 'customers.vcf' (vCard 3.0
/// and 4.0, RFC 2426 and 6350) of a firm's folder, as far as they are there. A customer without a name is
/// passed over: he cannot be named.
std::vector<model::KnownCustomer> readCustomers(const std::string& folder, base::Diagnostics& messages);

/// One @ with something on both sides, a point in the right part, no spaces.
bool isEmail(const std::string& s);

/// The customer of a key, or of a name, or of a word in it that no other has. Capitals do not matter. Null,
/// and an error, where there is none or more than one.
const model::KnownCustomer* knownCustomer(const Field& f, const std::vector<model::KnownCustomer>& customers);

}  // namespace input
