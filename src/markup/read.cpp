#include "markup/read.h"

#include "markup/builder.h"

#include <algorithm>
#include <exception>
#include <stdexcept>

namespace markup {
namespace {

/// What md4c hands back to its callbacks. They must not throw through it (that leaks), and only a negative
/// result stops it.
struct Reading {
  Builder builder;
  std::exception_ptr failure;

  template <class Step>
  int guarded(Step step) {
    try {
      return step(builder) ? 0 : -1;
    } catch (...) {
      failure = std::current_exception();
      return -1;
    }
  }
};

Reading& reading(void* user) { return *static_cast<Reading*>(user); }

int enterBlock(MD_BLOCKTYPE type, void* detail, void* user) {
  return reading(user).guarded([&](Builder& b) { return b.enterBlock(type, detail); });
}
int leaveBlock(MD_BLOCKTYPE, void*, void* user) {
  return reading(user).guarded([](Builder& b) { return b.leaveBlock(), true; });
}
int enterSpan(MD_SPANTYPE type, void* detail, void* user) {
  return reading(user).guarded([&](Builder& b) { return b.enterSpan(type, detail), true; });
}
int leaveSpan(MD_SPANTYPE type, void*, void* user) {
  return reading(user).guarded([&](Builder& b) { return b.leaveSpan(type), true; });
}
int text(MD_TEXTTYPE type, const MD_CHAR* begin, MD_SIZE size, void* user) {
  return reading(user).guarded([&](Builder& b) { return b.text(type, {begin, size}), true; });
}

}  // namespace

Document readMarkdown(const std::string& text, const std::vector<base::SourcePos>& lines,
                      base::Diagnostics& messages) {
  const Source source(text, lines, messages);
  Reading state{Builder(source), nullptr};
  MD_PARSER parser{};
  // HTML stays on: only then does md4c say where some stands, so that it can be refused.
  parser.flags = MD_FLAG_TABLES | MD_FLAG_TASKLISTS;
  parser.enter_block = enterBlock;
  parser.leave_block = leaveBlock;
  parser.enter_span = enterSpan;
  parser.leave_span = leaveSpan;
  parser.text = markup::text;
  const std::string& buffer = source.buffer();
  const int result = md_parse(buffer.data(), static_cast<MD_SIZE>(buffer.size()), &parser, &state);
  if (state.failure) std::rethrow_exception(state.failure);
  if (result != 0 && messages.ok()) throw std::runtime_error("out of memory while reading a document");
  return std::move(state.builder.document);
}

Document readMarkdown(const std::string& text, const std::string& file, base::Diagnostics& messages) {
  const int count = static_cast<int>(std::count(text.begin(), text.end(), '\n')) + 1;
  std::vector<base::SourcePos> lines;
  for (int n = 1; n <= count; ++n) lines.push_back({file, n, 0});
  return readMarkdown(text, lines, messages);
}

}  // namespace markup
