#include "input/content/customers.h"

#include "base/hidden.h"
#include "base/joined.h"
#include "base/letters.h"
#include "base/nearest.h"
#include "input/read.h"
#include "input/yaml/overlay.h"

#include <algorithm>
#include <filesystem>

namespace input {
namespace {

using model::KnownCustomer;

/// On one line, as in a job.
std::string trimmed(const std::string& s) {
  std::string words;
  for (const char c : s) {
    const bool isBlank = c == ' ' || c == '\t' || c == '\n' || c == '\r';
    if (isBlank && (words.empty() || words.back() == ' ')) continue;
    words += isBlank ? ' ' : c;
  }
  if (!words.empty() && words.back() == ' ') words.pop_back();
  return words;
}

void addLines(std::vector<std::string>& lines, const std::string& text, char between) {
  for (std::size_t at = 0; at <= text.size();) {
    const auto end = std::min(text.find(between, at), text.size());
    if (auto line = trimmed(text.substr(at, end - at)); !line.empty()) lines.push_back(std::move(line));
    at = end + 1;
  }
}

// ---------------------------------------------------------------- tables

struct TableRow {
  int line = 1;
  std::vector<std::string> cells = {""};
};

/// Hands over each row of a table in the form of RFC 4180, whatever the sign between its cells.
template <class Take>
void forEachRow(const std::string& text, char between, Take take) {
  TableRow row;
  bool isQuoted = false;
  int line = 1;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    auto& cell = row.cells.back();
    if (c == '\n') ++line;
    if (isQuoted && c == '"' && i + 1 < text.size() && text[i + 1] == '"') {
      cell += text[++i];
    } else if (c == '"' && (isQuoted || cell.empty())) {
      isQuoted = !isQuoted;
    } else if (!isQuoted && c == between) {
      row.cells.emplace_back();
    } else if (!isQuoted && c == '\n') {
      take(row);
      row = {line, {""}};
    } else {
      cell += c;
    }
  }
  take(row);
}

enum class Column { Key, Name, Address, Phone, Email, Other };

Column columnOf(const std::string& head) {
  constexpr std::pair<const char*, Column> heads[] = {
      {"key", Column::Key},         {"name", Column::Name},        {"customer", Column::Name},
      {"address", Column::Address}, {"street", Column::Address},   {"town", Column::Address},
      {"city", Column::Address},    {"state", Column::Address},    {"county", Column::Address},
      {"zip", Column::Address},     {"postcode", Column::Address}, {"phone", Column::Phone},
      {"mobile", Column::Phone},    {"telephone", Column::Phone},  {"email", Column::Email},
      {"e-mail", Column::Email}};
  auto word = base::lowered(trimmed(head));
  while (!word.empty() && (base::isDigit(word.back()) || word.back() == ' ')) word.pop_back();  // 'Address 2'
  for (const auto& [name, column] : heads) {
    if (word == name) return column;
  }
  return Column::Other;
}

KnownCustomer customerOf(const TableRow& row, const std::vector<Column>& columns, const std::string& file) {
  KnownCustomer known;
  known.pos = {file, row.line, 0};
  auto& c = known.customer;
  for (std::size_t i = 0; i < std::min(row.cells.size(), columns.size()); ++i) {
    const auto& cell = row.cells[i];
    const auto setOnce = [&](std::string& into) {
      if (into.empty()) into = trimmed(cell);
    };
    switch (columns[i]) {
      case Column::Key:
        setOnce(known.key);
        break;
      case Column::Name:
        setOnce(c.name);
        break;
      case Column::Address:
        addLines(c.address, cell, '\n');
        break;
      case Column::Phone:
        setOnce(c.phone);
        break;
      case Column::Email:
        setOnce(c.email);
        break;
      case Column::Other:
        break;
    }
  }
  return known;
}

void readTable(const std::string& text, const std::string& file, std::vector<KnownCustomer>& customers,
               base::Diagnostics& messages) {
  const auto head = text.substr(0, text.find('\n'));
  const char between = head.find('\t') != std::string::npos  ? '\t'
                       : head.find(';') != std::string::npos ? ';'
                                                             : ',';
  std::optional<std::vector<Column>> columns;
  forEachRow(text, between, [&](const TableRow& row) {
    if (!columns) {
      columns.emplace();
      for (const auto& name : row.cells) columns->push_back(columnOf(name));
      return;
    }
    auto known = customerOf(row, *columns, file);
    if (!known.customer.name.empty()) customers.push_back(std::move(known));
  });
  if (std::find(columns->begin(), columns->end(), Column::Name) == columns->end())
    messages.error({file, 1, 1}, "", "no column is named 'name'",
                   "begin with a line like key,name,address,town,phone,email");
}

// ---------------------------------------------------------------- cards

/// '\n', '\,' and the like are written so in a card (RFC 6350, 3.4).
std::string unescaped(const std::string& s) {
  std::string text;
  for (std::size_t i = 0; i < s.size(); ++i) {
    const bool isEscape = s[i] == '\\' && i + 1 < s.size();
    if (isEscape) ++i;
    text += isEscape && (s[i] == 'n' || s[i] == 'N') ? '\n' : s[i];
  }
  return text;
}

/// Box, extension, street, town, state, code, land of 'ADR' as lines; box and extension go with the street.
std::vector<std::string> addressOf(const std::string& value) {
  std::vector<std::string> lines;
  std::string part;
  for (std::size_t i = 0; i <= value.size(); ++i) {
    if (i < value.size() && value[i] == '\\' && i + 1 < value.size()) part += value[i++];
    if (i < value.size() && value[i] != ';') {
      part += value[i];
      continue;
    }
    addLines(lines, unescaped(part), '\n');
    part.clear();
  }
  return lines;
}

void addProperty(KnownCustomer& known, const std::string& line) {
  const auto colon = line.find(':');
  if (colon == std::string::npos) return;
  auto name = base::lowered(line.substr(0, std::min(line.find(';'), colon)));
  name = name.substr(name.find('.') + 1);  // of a group: 'item1.TEL'
  const auto value = line.substr(colon + 1);
  auto& c = known.customer;
  const auto setOnce = [](std::string& into, const std::string& words) {
    if (into.empty()) into = trimmed(unescaped(words));
  };
  if (name == "fn") setOnce(c.name, value);
  if (name == "nickname") setOnce(known.key, value);
  if (name == "tel") setOnce(c.phone, value.starts_with("tel:") ? value.substr(4) : value);
  if (name == "email") setOnce(c.email, value);
  if (name == "adr" && c.address.empty()) c.address = addressOf(value);
}

void readCards(const std::string& text, const std::string& file, std::vector<KnownCustomer>& customers) {
  KnownCustomer known;
  std::string line;
  int number = 0, begin = 0;
  const auto take = [&] {
    if (base::lowered(line) == "begin:vcard") known = {"", {}, {file, begin, 0}};
    else if (base::lowered(line) == "end:vcard" && !known.customer.name.empty()) customers.push_back(known);
    else addProperty(known, line);
  };
  for (std::size_t at = 0; at < text.size();) {
    const auto end = std::min(text.find('\n', at), text.size());
    const std::string_view next(text.data() + at, end - at);
    at = end + 1;
    ++number;
    if (next.starts_with(' ') || next.starts_with('\t')) {  // RFC 6350, 3.2
      line += next.substr(1);
      continue;
    }
    take();
    line = next;
    begin = number;
  }
  take();
}

bool isUtf8(const std::string& text) {
  for (std::size_t at = 0; at < text.size();) {
    const auto start = at;
    if (base::nextLetter(text, at) == 0xFFFD && text.compare(start, 3, "\xEF\xBF\xBD") != 0) return false;
  }
  return true;
}

std::optional<std::string> textOf(const std::string& file, base::Diagnostics& messages) {
  if (!isThere(file)) return {};
  constexpr std::size_t most = 4 << 20;
  auto text = readFile(file);
  const bool isLong = text && text->size() > most;
  if (!text || isLong) {
    messages.error(
        {file}, "",
        "the customers cannot be read: " + (isLong ? "they are more than 4 MiB" : whyUnreadable(file)),
        "check that it is the right file and may be read");
    return {};
  }
  if (text->starts_with("\xEF\xBB\xBF")) text->erase(0, 3);
  std::erase(*text, '\r');
  if (!isUtf8(*text)) {
    messages.error({file}, "", "this is not UTF-8 text", "save the file as UTF-8");
    return {};
  }
  return text;
}

// ---------------------------------------------------------------- the one that is meant

bool hasWord(const std::string& name, const std::string& word) {
  for (std::size_t at = name.find(word); at != std::string::npos; at = name.find(word, at + 1)) {
    const auto isPart = [&](std::size_t i) {
      return i < name.size() && (base::isLetter(name[i]) || base::isDigit(name[i]) || (name[i] & 0x80) != 0);
    };
    if ((at == 0 || !isPart(at - 1)) && !isPart(at + word.size())) return true;
  }
  return false;
}

template <class IsMeant>
std::vector<const KnownCustomer*> all(const std::vector<KnownCustomer>& customers, IsMeant isMeant) {
  std::vector<const KnownCustomer*> found;
  for (const auto& c : customers) {
    if (isMeant(c)) found.push_back(&c);
  }
  return found;
}

std::vector<const KnownCustomer*> meant(const std::string& named,
                                        const std::vector<KnownCustomer>& customers) {
  const auto word = base::lowered(named);
  auto found = all(customers, [&](const auto& c) { return base::lowered(c.key) == word; });
  if (found.empty())
    found = all(customers, [&](const auto& c) { return base::lowered(c.customer.name) == word; });
  if (found.empty())
    found = all(customers, [&](const auto& c) { return hasWord(base::lowered(c.customer.name), word); });
  return found;
}

/// What must not get onto a sheet is told where it stands.
bool isSound(const KnownCustomer& known, const Field& f) {
  const auto& c = known.customer;
  std::string all = c.name + c.phone + c.email + base::joined(c.address);
  auto& messages = f.source().messages;
  if (const auto hidden = base::firstHiddenLetter(all); !hidden.empty())
    messages.error(known.pos, "", hidden, "delete it");
  else if (!c.email.empty() && !isEmail(c.email))
    messages.error(known.pos, "", inQuotes(c.email) + " is not an e-mail address",
                   "write it like name@place.example");
  else return true;
  return false;
}

std::string placeWords(const KnownCustomer& c) {
  return c.customer.name + " (" + std::filesystem::path(c.pos.file).filename().string() + ":" +
         std::to_string(c.pos.line) + ")";
}

}  // namespace

bool isEmail(const std::string& s) {
  const std::size_t at = s.find('@');
  if (at == 0 || at == std::string::npos || s.find('@', at + 1) != std::string::npos) return false;
  const std::string place = s.substr(at + 1);
  const std::size_t point = place.find('.');
  return s.find_first_of(" ,;<>") == std::string::npos && point != std::string::npos && point > 0 &&
         place.back() != '.';
}

std::vector<KnownCustomer> readCustomers(const std::string& folder, base::Diagnostics& messages) {
  std::vector<KnownCustomer> customers;
  const auto table = folder + "/customers.csv", cards = folder + "/customers.vcf";
  if (const auto text = textOf(table, messages)) readTable(*text, table, customers, messages);
  if (const auto text = textOf(cards, messages)) readCards(*text, cards, customers);
  return customers;
}

const KnownCustomer* knownCustomer(const Field& f, const std::vector<KnownCustomer>& customers) {
  const auto word = text(f);
  if (word.empty()) return nullptr;
  const auto found = meant(word, customers);
  if (found.size() == 1) return isSound(*found.front(), f) ? found.front() : nullptr;
  if (found.empty()) {
    std::vector<std::string> known;
    for (const auto& c : customers) known.push_back(c.key.empty() ? c.customer.name : c.key);
    f.error(
        inQuotes(word) + " is not one of the firm's customers" + base::didYouMean(base::nearest(word, known)),
        customers.empty()
            ? "put a 'customers.csv' or 'customers.vcf' into the firm's folder, or write customer: "
              "{name: A. Customer}"
            : "they are listed in 'customers.csv' or 'customers.vcf' in the firm's folder");
    return nullptr;
  }
  std::vector<std::string> places;
  for (const auto* c : found) places.push_back(placeWords(*c));
  if (places.size() > 3) {
    places.resize(3);
    places.emplace_back("and more");
  }
  f.error(inQuotes(word) + " is more than one customer: " + base::joined(places),
          "give the whole name, or a key of its own");
  return nullptr;
}

}  // namespace input
