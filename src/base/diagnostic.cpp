#include "base/diagnostic.h"

#include "base/hidden.h"

#include <map>

namespace base {

SourcePos placeOf(const Places& places, std::string path) {
  while (true) {
    if (const auto found = places.find(path); found != places.end()) return found->second;
    if (path.empty()) return {};
    const std::size_t end = path.find_last_of(".[");
    path.resize(end == std::string::npos ? 0 : end);
  }
}

void Diagnostics::error(SourcePos pos, std::string path, std::string message, std::string hint) {
  all_.push_back({Severity::Error, std::move(pos), std::move(path), std::move(message), std::move(hint)});
  ++errors_;
}

void Diagnostics::warn(SourcePos pos, std::string path, std::string message, std::string hint) {
  all_.push_back({Severity::Warning, std::move(pos), std::move(path), std::move(message), std::move(hint)});
}

void Diagnostics::add(const Diagnostics& other) {
  all_.insert(all_.end(), other.all_.begin(), other.all_.end());
  errors_ += other.errors_;
}

void Diagnostics::addAt(const Places& places, const Diagnostics& other) {
  const auto before = all_.size();
  add(other);
  for (auto i = before; i < all_.size(); ++i) {
    if (all_[i].pos.file.empty()) all_[i].pos = placeOf(places, all_[i].path);
  }
}

std::string format(const Diagnostic& d) {
  std::string s = printable(d.pos.file);
  if (d.pos.line > 0) s.append(":").append(std::to_string(d.pos.line));
  if (d.pos.column > 0) s.append(":").append(std::to_string(d.pos.column));
  if (!s.empty()) s += ": ";
  s += d.severity == Severity::Error ? "error: " : "warning: ";
  if (!d.path.empty()) s += printable(d.path) + ": ";
  s += printable(d.message) + "\n";
  if (!d.hint.empty()) s += "  hint: " + printable(d.hint) + "\n";
  return s;
}

std::string format(const Diagnostics& all) {
  constexpr std::size_t most = 50;  // more than anybody mends at a time
  std::map<std::pair<std::string, Severity>, std::size_t> counts;
  std::string s;
  for (const Diagnostic& d : all.all()) {
    if (++counts[{d.pos.file, d.severity}] <= most) s += format(d);
  }
  for (const auto& [kind, count] : counts) {
    if (count <= most) continue;
    const bool isError = kind.second == Severity::Error;
    s += format({kind.second,
                 {kind.first, 0, 0},
                 "",
                 "and " + std::to_string(count - most) + " more " + (isError ? "mistakes" : "warnings"),
                 isError ? "mend those above first" : "look at those above first"});
  }
  return s;
}

SourcePos placeOf(std::span<const SourcePos> lines, int number) {
  if (number >= 1 && static_cast<std::size_t>(number) <= lines.size())
    return lines[static_cast<std::size_t>(number - 1)];
  return lines.empty() ? SourcePos{} : SourcePos{lines.front().file, 0, 0};
}

}  // namespace base
