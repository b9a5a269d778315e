#include "input/yaml/cursor.h"

#include "base/letters.h"
#include "base/nearest.h"

#include <algorithm>

namespace input {
namespace {

const char* nameOf(Node::Kind kind) {
  switch (kind) {
    case Node::Kind::Word:
      return "a single value";
    case Node::Kind::List:
      return "a list";
    case Node::Kind::Map:
      return "a group of keys";
    case Node::Kind::Nothing:
    case Node::Kind::Broken:
      break;
  }
  return "nothing";
}

/// How to write what stands there as the kind that is needed.
std::string remedy(Node::Kind needed, const Node& given) {
  switch (needed) {
    case Node::Kind::List:
      if (given.kind != Node::Kind::Word || given.word.empty() || given.word.size() > 60)
        return "write it like [one, two]";
      return "put [ ] around it: [" + given.word + "]";
    case Node::Kind::Map:
      return "write it like {key: value}";
    case Node::Kind::Word:
    case Node::Kind::Nothing:
    case Node::Kind::Broken:
      break;
  }
  return given.kind == Node::Kind::List ? "take the [ ] or the dashes away"
                                        : "write the value right behind the key";
}

constexpr std::size_t mostItems = 1000;  // in one list or group; the rest of the work grows with its square

/// The field holds that kind of node; an error when it holds another.
bool holds(const Field& f, Node::Kind kind) {
  if (!f.isGiven() || f.is(Node::Kind::Broken)) return false;
  if (f.is(kind)) {
    if (f.node()->items.size() <= mostItems && f.node()->entries.size() <= mostItems) return true;
    f.error("more than " + std::to_string(mostItems) + " items", "make several files of it");
    return false;
  }
  if (f.is(Node::Kind::Nothing)) {
    f.error("no value is given", "give one or leave the key out");
  } else {
    f.error(std::string(nameOf(kind)) + " is needed here, not " + nameOf(f.node()->kind),
            remedy(kind, *f.node()));
  }
  return false;
}

std::string listed(const std::vector<std::string>& words) {
  std::string s;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) s += i + 1 == words.size() ? " or " : ", ";
    s += words[i];
  }
  return s;
}

/// As ids are written: small letters, lines for blanks.
std::string asId(const std::string& word) {
  std::string id = base::lowered(word);
  std::replace(id.begin(), id.end(), ' ', '-');
  return id;
}

/// The known words that may be meant: the same but for its form, a slip of the finger away, or 'cedar' in
/// 'western-red-cedar'.
std::vector<std::string> meant(const std::string& word, const std::vector<std::string>& known) {
  const std::string id = asId(word);
  std::vector<std::string> longer;
  for (const std::string& one : known) {
    if (asId(one) == id) return {one};
    if (id.size() > 2 && ("-" + asId(one) + "-").find("-" + id + "-") != std::string::npos)
      longer.push_back(one);
  }
  if (!longer.empty()) return longer;
  const std::string near = base::nearest(word, known);
  return near.empty() ? longer : std::vector<std::string>{near};
}

}  // namespace

std::optional<std::string> Field::word() const {
  if (!holds(*this, Node::Kind::Word)) return {};
  return node_->word;
}

std::vector<Field> Field::items() const {
  if (!holds(*this, Node::Kind::List)) return {};
  std::vector<Field> all;
  for (const Node& n : node_->items)
    all.emplace_back(*source_, &n, path_ + "[" + std::to_string(all.size() + 1) + "]", n.mark);
  return all;
}

Record::Record(Field field) : field_(std::move(field)), isMap_(holds(field_, Node::Kind::Map)) {}

const Entry* Record::find(const std::string& key) const {
  if (!isMap_) return nullptr;
  for (const Entry& e : field_.node()->entries) {
    if (e.key == key) return &e;
  }
  return nullptr;
}

std::string Record::pathOf(const std::string& key) const {
  return field_.path().empty() ? key : field_.path() + "." + key;
}

bool Record::has(const std::string& key) const { return find(key) != nullptr; }

Field Record::may(const std::string& key) {
  known_.push_back(key);
  const Entry* e = find(key);
  if (e == nullptr) return {field_.source(), nullptr, pathOf(key), {field_.pos().line, field_.pos().column}};
  return {field_.source(), &e->value, pathOf(key), e->value.mark};
}

Field Record::must(const std::string& key, const char* example) {
  if (isMap_ && find(key) == nullptr)
    field_.error(inQuotes(key) + " is missing", "write it like " + key + ": " + example);
  return may(key);
}

std::vector<Keyed> Record::all() {
  std::vector<Keyed> fields;
  if (!isMap_) return fields;
  for (const Entry& e : field_.node()->entries) {
    if (std::find(known_.begin(), known_.end(), e.key) != known_.end()) continue;
    const Field value = may(e.key);
    fields.push_back({e.key, Field(field_.source(), &e.value, value.path(), e.mark), value});
  }
  return fields;
}

void Record::finish() {
  if (!isMap_) return;
  std::vector<const Entry*> seen;
  for (const Entry& e : field_.node()->entries) {
    const Field at(field_.source(), &e.value, field_.path(), e.mark);
    const auto first =
        std::find_if(seen.begin(), seen.end(), [&](const Entry* s) { return s->key == e.key; });
    if (first != seen.end()) {
      at.error(inQuotes(e.key) + " is given twice",
               "the first stands in line " + std::to_string((*first)->mark.line));
      continue;
    }
    seen.push_back(&e);
    // An empty or '<<' key has its error already.
    if (e.key.empty() || e.key == "<<" || std::find(known_.begin(), known_.end(), e.key) != known_.end())
      continue;
    const std::string near = base::nearest(e.key, known_);
    at.error(inQuotes(e.key) + " is not a known key here" + base::didYouMean(near),
             "known: " + listed(known_));
  }
}

std::string text(const Field& f) {
  const std::optional<std::string> s = f.word();
  if (!s) return {};
  std::string line;
  for (const char c : *s) {
    const bool isSpace = c == ' ' || c == '\n' || c == '\t';
    if (!isSpace) line += c;
    if (isSpace && !line.empty() && line.back() != ' ') line += ' ';
  }
  if (!line.empty() && line.back() == ' ') line.pop_back();
  if (line.empty()) f.error("the text is empty", "give one or leave the key out");
  if (line.size() > 2000) {
    f.error("the text is longer than 2000 bytes", "shorten it");
    return {};
  }
  return line;
}

bool yesNo(const Field& f, bool fallback) {
  constexpr Word<bool> table[] = {{"true", true}, {"false", false}, {"yes", true}, {"no", false}};
  return choice(f, table, "answer", fallback);
}

base::Date date(const Field& f) {
  const std::optional<std::string> s = f.word();
  if (!s) return {};
  const std::optional<base::Date> d = base::parseDate(*s);
  if (!d) {
    const bool hasForm = s->size() == 10 && (*s)[4] == '-' && (*s)[7] == '-';
    f.error(inQuotes(*s) + (hasForm ? " is not a date that exists" : " is not a date"),
            "write year, month and day like 2027-03-16");
    return {};
  }
  const int year = static_cast<int>(std::chrono::year_month_day{*d}.year());
  if (year < 2000 || year > 2199) {
    f.error(inQuotes(*s) + " is out of range", "allowed: years from 2000 to 2199");
    return {};
  }
  return *d;
}

std::string writeHint(const Guesses& guesses, const std::function<bool(const std::string&)>& isAccepted) {
  for (const std::vector<std::string>& alike : guesses) {
    std::string hint;
    for (const std::string& text : alike) {
      if (isAccepted(text)) hint += (hint.empty() ? "write " : " or ") + inQuotes(text);
    }
    if (!hint.empty()) return hint;
  }
  return {};
}

std::string commaHint(const Problem& problem, const std::string& text,
                      const std::function<bool(const std::string&)>& isAccepted) {
  const std::string hint = problem.hasComma ? writeHint({withoutCommas(text)}, isAccepted) : "";
  return hint.empty() ? problem.hint : hint;
}

int whole(const Field& f, Limits<int> limits, int fallback) {
  const auto isWithin = [&](std::int64_t n) { return limits.least <= n && n <= limits.most; };
  const auto value = valueWithin(f, parseWhole, isWithin, std::string("allowed: ") + limits.words);
  if (!value) return fallback;
  warnOfUnusual(f, static_cast<int>(*value), limits);
  return static_cast<int>(*value);
}

std::vector<std::string> texts(const Field& f) {
  std::vector<std::string> all;
  for (const Field& item : f.items()) {
    std::string s = text(item);
    if (!s.empty()) all.push_back(std::move(s));
  }
  return all;
}

std::optional<Hours24> clockSpan(const Field& f) {
  const std::optional<std::string> s = f.word();
  if (!s) return {};
  std::optional<int> from, until;
  if (s->size() == 11 && (*s)[5] == '-') {
    from = base::parseClock(s->substr(0, 5));
    until = base::parseClock(s->substr(6));
  }
  if (!from || !until) {
    f.error(inQuotes(*s) + " is not a span of hours", "write it like 07:30-16:00");
    return {};
  }
  if (*until <= *from) {
    f.error(inQuotes(*s) + " ends before it begins", "the earlier time comes first, like 07:30-16:00");
    return {};
  }
  return Hours24{*from, *until};
}

base::Count quantityWith(const Field& f, const char* unit, Limits<base::Count> limits) {
  return valueWithin(
             f, [&](std::string_view s) { return parseWith(unit, s); },
             [&](base::Count n) { return limits.least <= n && n <= limits.most; },
             std::string("allowed: ") + limits.words, {unit})
      .value_or(limits.least);
}

int wholeWith(const Field& f, const char* unit, Limits<int> limits) {
  const base::Count n = quantityWith(
      f, unit, {base::Count::whole(limits.least), base::Count::whole(limits.most), limits.words});
  if (n.millionths % 1'000'000 != 0) {
    f.error(inQuotes(f.word().value_or("")) + " is not a whole number", "round it");
    return limits.least;
  }
  return static_cast<int>(n.millionths / 1'000'000);
}

base::Money money(const Field& f, int digits) {
  const std::optional<std::string> s = f.word();
  if (!s) return {};
  const Parsed<base::Money> p = parseMoney(*s, digits);
  const auto isWithin = [](base::Money m) { return 0 <= m.minor && m.minor <= 10'000'000'000; };
  if (p.problem) {
    f.error(p.problem->message, commaHint(*p.problem, plain(*s), [&](const std::string& meant) {
              const auto amount = parseMoney(meant, digits);
              return !amount.problem && isWithin(amount.value);
            }));
    return {};
  }
  if (!isWithin(p.value)) {
    f.error(inQuotes(*s) + " is out of range",
            p.value.minor < 0 ? "amounts are not below zero" : "check the amount");
    return {};
  }
  return p.value;
}

void reportUnknown(const Field& f, const std::string& word, const std::string& what,
                   const std::vector<std::string>& known, const std::string& more) {
  std::string question;
  for (const std::string& one : meant(word, known))
    question += (question.empty() ? "" : " or ") + inQuotes(one);
  if (!question.empty()) question = "; did you mean " + question + "?";
  f.error(inQuotes(word) + " is not a known " + what + question,
          "known: " + listed(known) + (more.empty() ? "" : "; " + more));
}

}  // namespace input
