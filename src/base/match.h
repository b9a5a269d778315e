// One handler for each alternative of a variant: std::visit(Match{...}, value).
#pragma once

namespace base {

template <class... Fs>
struct Match : Fs... {
  using Fs::operator()...;
};
template <class... Fs>
Match(Fs...) -> Match<Fs...>;

}  // namespace base
