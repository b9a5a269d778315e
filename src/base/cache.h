// Things that are made once and shared, also between threads.
#pragma once

#include <map>
#include <memory>
#include <mutex>

namespace base {

/// What has been made so far, by key. A thing must depend on its key alone: then nobody can tell who asked
/// first, and the same job gives the same bytes whatever was made before it.
template <class Key, class Thing>
class Cache {
 public:
  /// Holds at most so many things: then it begins anew, and who took one keeps it.
  explicit Cache(std::size_t most = 10'000) : most_(most) {}

  /// The thing of this key, made by 'make' when nobody has asked for it before. What 'make' throws goes to
  /// the caller; the next one who asks tries again.
  template <class Make>
  std::shared_ptr<const Thing> getOrMake(const Key& key, Make make) {
    const std::lock_guard lock(guard_);
    const auto found = things_.find(key);
    if (found != things_.end()) return found->second;
    auto thing = std::make_shared<const Thing>(make());
    if (things_.size() >= most_) things_.clear();
    return things_.emplace(key, std::move(thing)).first->second;
  }

 private:
  const std::size_t most_;
  std::mutex guard_;
  std::map<Key, std::shared_ptr<const Thing>> things_;
};

}  // namespace base
