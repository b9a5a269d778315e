// Mistakes of people: where, what, and how to mend it. All of a job's mistakes are collected before any is
// shown.
#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

namespace base {

enum class Severity { Error, Warning };

/// A place in a file; line and column count from 1 (columns count letters, not bytes), 0 = not known.
struct SourcePos {
  std::string file;
  int line = 0;
  int column = 0;
};

/// Where the parts of a file stand: 'site', 'site.timezone', 'done[2]'; '' is its beginning.
using Places = std::map<std::string, SourcePos>;

/// The place of a path, or of the nearest part around it.
SourcePos placeOf(const Places& places, std::string path);

struct Diagnostic {
  Severity severity = Severity::Error;
  SourcePos pos;
  std::string path;     // 'areas[1].boards.width'; may be empty
  std::string message;  // lower case, no full stop, values in single quotes
  std::string hint;     // what to do
};

class Diagnostics {
 public:
  void error(SourcePos pos, std::string path, std::string message, std::string hint);
  void warn(SourcePos pos, std::string path, std::string message, std::string hint);
  /// All of another's messages, after one's own.
  void add(const Diagnostics& other);
  /// The same, with the place of their path for those that have none.
  void addAt(const Places& places, const Diagnostics& other);
  bool ok() const { return errors_ == 0; }
  const std::vector<Diagnostic>& all() const { return all_; }

 private:
  std::vector<Diagnostic> all_;
  int errors_ = 0;
};

/// 'file:line:column: error: path: message' and, where there is one, '  hint: ...' on a second line.
/// Letters that would steer a terminal are written out.
std::string format(const Diagnostic& d);

/// All messages so, of each file the first 50 mistakes and the first 50 warnings, then how many more there
/// are.
std::string format(const Diagnostics& all);

/// Where line 'number' (from 1) of a text comes from; the file alone for a number that is none of its lines.
SourcePos placeOf(std::span<const SourcePos> lines, int number);

}  // namespace base
