// Walks over a marked tree and turns its values into checked ones. A value that is missing or wrong is
// reported with its place and path ('areas[1].boards.width', lists count from 1) and replaced by a harmless
// one, so that reading goes on and finds the next mistake.
#pragma once

#include "base/date.h"
#include "input/yaml/quantity.h"
#include "input/yaml/tree.h"

#include <functional>
#include <utility>

namespace input {

/// The file being read and where its mistakes go.
struct Source {
  std::string file;
  base::Diagnostics& messages;
  bool isUs = false;         // a number without its unit is likely in feet or inches
  std::string overlay = {};  // the file laid over it; empty = none
};

/// A value in the tree, or the place where one could be.
class Field {
 public:
  Field(const Source& source, const Node* node, std::string path, Mark mark)
      : source_(&source), node_(node), path_(std::move(path)), mark_(mark) {}

  /// Something is written here, be it right or wrong.
  bool isGiven() const { return node_ != nullptr; }
  bool is(Node::Kind kind) const { return node_ != nullptr && node_->kind == kind; }
  const Node* node() const { return node_; }
  const std::string& path() const { return path_; }
  const Source& source() const { return *source_; }
  base::SourcePos pos() const {
    return {mark_.isOverlay ? source_->overlay : source_->file, mark_.line, mark_.column};
  }
  bool isOverlay() const { return mark_.isOverlay; }

  void error(std::string message, std::string hint) const {
    source_->messages.error(pos(), path_, std::move(message), std::move(hint));
  }
  void warn(std::string message, std::string hint) const {
    source_->messages.warn(pos(), path_, std::move(message), std::move(hint));
  }

  /// The single value written here; nothing when there is none, with an error unless it was not given at all.
  std::optional<std::string> word() const;
  bool isEmptyList() const { return is(Node::Kind::List) && node_->items.empty(); }
  /// The items of the list written here.
  std::vector<Field> items() const;

 private:
  const Source* source_;
  const Node* node_;
  std::string path_;
  Mark mark_;
};

/// A key and its value; 'at' is the key's place.
struct Keyed {
  std::string key;
  Field at, value;
};

/// A group of keys. Ask for every key that may stand there, then call finish().
class Record {
 public:
  explicit Record(Field field);

  /// A key that may be left out.
  Field may(const std::string& key);
  /// A key that must be there; an error with the example otherwise, which can be typed in as it stands.
  Field must(const std::string& key, const char* example);
  /// Every key written, each once, for maps whose keys are ids.
  std::vector<Keyed> all();
  bool has(const std::string& key) const;
  const Field& field() const { return field_; }

  /// Reports keys nobody asked for and keys given twice.
  void finish();

 private:
  const Entry* find(const std::string& key) const;
  std::string pathOf(const std::string& key) const;

  Field field_;
  std::vector<std::string> known_;
  bool isMap_;
};

// ---------------------------------------------------------------- single values

/// Least and most of a value, both allowed; the words are printed.
template <class T>
struct Limits {
  T least, most;
  const char* words;            // 'from 10 mm to 1 m'
  T usualLeast{}, usualMost{};  // by these the unit of a bare number is guessed; both zero = by all allowed
  const char* usual = nullptr;  // words for them; a value beyond them that is not zero gets a warning
};

template <class T>
void warnOfUnusual(const Field& f, const T& value, const Limits<T>& limits) {
  if (limits.usual == nullptr || value == T{} || (limits.usualLeast <= value && value <= limits.usualMost))
    return;
  f.warn(inQuotes(f.word().value_or("")) + " is unusual here",
         std::string("usually ") + limits.usual + "; check number and unit");
}

/// Text on one line: white space becomes single spaces.
std::string text(const Field& f);
bool yesNo(const Field& f, bool fallback);
base::Date date(const Field& f);
/// A whole number.
int whole(const Field& f, Limits<int> limits, int fallback);
/// Texts of a list.
std::vector<std::string> texts(const Field& f);

struct Hours24 {
  int from = 0, until = 0;  // minutes since midnight
};
/// '07:30-16:00'; the end comes after the start.
std::optional<Hours24> clockSpan(const Field& f);

/// "write '140 mm' or '14 cm'": those of the first kind of guesses that has any to be accepted; else empty.
std::string writeHint(const Guesses& guesses, const std::function<bool(const std::string&)>& isAccepted);

/// The same for a number with a comma, or without the unit that it needs; else the problem's own hint.
std::string commaHint(const Problem& problem, const std::string& text,
                      const std::function<bool(const std::string&)>& isAccepted);

/// The value of a text that 'parse' takes and 'isWithin' allows; nothing, and an error, for another one.
/// 'allowed' says what is; 'units' are those a bare number may be meant in.
template <class Parse, class IsWithin>
auto valueWithin(const Field& f, Parse parse, IsWithin isWithin, const std::string& allowed,
                 const std::vector<std::string>& units = {})
    -> std::optional<decltype(parse(std::string_view{}).value)> {
  const std::optional<std::string> s = f.word();
  if (!s) return {};
  const auto p = parse(*s);
  const auto isAccepted = [&](const std::string& meant) {
    const auto value = parse(meant);
    return !value.problem && isWithin(value.value);
  };
  if (p.problem && p.problem->isBare && !units.empty()) {
    std::vector<std::string> alike;
    for (const auto& unit : units) alike.push_back(plain(*s) + " " + unit);
    const std::string hint = writeHint({alike}, isAccepted);
    f.error(p.problem->message, hint.empty() ? allowed : hint);
  } else if (p.problem) {
    f.error(p.problem->message, commaHint(*p.problem, plain(*s), isAccepted));
  } else if (!isWithin(p.value)) {
    f.error(inQuotes(*s) + " is out of range", allowed);
  } else {
    return p.value;
  }
  return {};
}

/// What may be meant by a text that is no such quantity, a usual value if there is one.
template <class T>
std::string meantHint(const Problem& problem, const std::string& text, Parsed<T> (*parse)(std::string_view),
                      const Limits<T>& limits, bool isUs) {
  const auto isWithin = [&](const T& least, const T& most) {
    return [&, least, most](const std::string& s) {
      const Parsed<T> p = parse(s);
      return !p.problem && least <= p.value && p.value <= most;
    };
  };
  if (!problem.isBare) return commaHint(problem, text, isWithin(limits.least, limits.most));
  const Guesses guesses = withUnits(text, T{}, isUs);
  std::string hint;
  if (!(limits.usualMost == T{})) hint = writeHint(guesses, isWithin(limits.usualLeast, limits.usualMost));
  if (hint.empty()) hint = writeHint(guesses, isWithin(limits.least, limits.most));
  return hint.empty() ? std::string("allowed: ") + limits.words : hint;
}

/// A value read by one of the quantity parsers and kept within limits.
template <class T>
T quantity(const Field& f, Parsed<T> (*parse)(std::string_view), Limits<T> limits, T fallback = {}) {
  const std::optional<std::string> s = f.word();
  if (!s) return fallback;
  const Parsed<T> p = parse(*s);
  if (p.problem) {
    f.error(p.problem->message, meantHint(*p.problem, plain(*s), parse, limits, f.source().isUs));
    return fallback;
  }
  if (p.value < limits.least || limits.most < p.value) {
    f.error(inQuotes(*s) + " is out of range", std::string("allowed: ") + limits.words);
    return fallback;
  }
  warnOfUnusual(f, p.value, limits);
  return p.value;
}

/// A number with one fixed unit, like '830 kg/m3'; the least allowed when there is none.
base::Count quantityWith(const Field& f, const char* unit, Limits<base::Count> limits);
int wholeWith(const Field& f, const char* unit, Limits<int> limits);

base::Money money(const Field& f, int digits);

// ---------------------------------------------------------------- words

template <class E>
struct Word {
  const char* name;
  E value;
};

/// "'opn' is not a known exposure; did you mean 'open'?", with the known words as the hint, and what else to
/// do.
void reportUnknown(const Field& f, const std::string& word, const std::string& what,
                   const std::vector<std::string>& known, const std::string& more = {});

/// One of a table of words, 'what' naming them: 'exposure'. Nothing (and an error) for another word.
template <class E, std::size_t N>
std::optional<E> chosen(const Field& f, const Word<E> (&table)[N], const char* what) {
  const std::optional<std::string> s = f.word();
  if (!s) return {};
  std::vector<std::string> known;
  for (const Word<E>& w : table) {
    if (*s == w.name) return w.value;
    known.emplace_back(w.name);
  }
  reportUnknown(f, *s, what, known);
  return {};
}

template <class E, std::size_t N>
E choice(const Field& f, const Word<E> (&table)[N], const char* what, E fallback) {
  return chosen(f, table, what).value_or(fallback);
}

/// The keys of a map, for 'did you mean'.
template <class Map>
std::vector<std::string> keysOf(const Map& map) {
  std::vector<std::string> keys;
  for (const auto& entry : map) keys.push_back(entry.first);
  return keys;
}

/// An id that must be a key of the map; empty when it is not. 'more' is a further hint.
template <class Map>
std::string knownId(const Field& f, const Map& map, const char* what, const char* more = "") {
  const std::string id = text(f);
  if (id.empty() || map.contains(id)) return id;
  reportUnknown(f, id, what, keysOf(map), more);
  return {};
}

}  // namespace input
