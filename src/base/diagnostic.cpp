#include "base/diagnostic.h"

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
  std::string s = d.pos.file;
  if (d.pos.line > 0) s.append(":").append(std::to_string(d.pos.line));
  if (d.pos.column > 0) s.append(":").append(std::to_string(d.pos.column));
  if (!s.empty()) s += ": ";
  s += d.severity == Severity::Error ? "error: " : "warning: ";
  if (!d.path.empty()) s += d.path + ": ";
  s += d.message + "\n";
  if (!d.hint.empty()) s += "  hint: " + d.hint + "\n";
  return s;
}

}  // namespace base
