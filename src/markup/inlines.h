// The words inside one block: md4c's spans and pieces of text become Inlines.
#pragma once

#include "markup/block.h"
#include "markup/source.h"

#include <md4c.h>

namespace markup {

class InlineReader {
 public:
  /// 'line' always holds the line that is being read.
  InlineReader(const Source& source, const int& line) : source_(source), line_(line) {}

  void enter(MD_SPANTYPE type, const void* detail);
  void leave(MD_SPANTYPE type);
  void text(MD_TEXTTYPE type, std::string_view text);

  bool isEmpty() const { return inlines_.empty(); }
  /// What was read since the last time.
  Inlines take();

 private:
  void add(std::string_view text);
  void addPicture();
  void checkLink() const;
  std::string decoded(const MD_ATTRIBUTE& attribute) const;
  std::string entity(std::string_view text) const;

  const Source& source_;
  const int& line_;
  Inlines inlines_;
  int strong_ = 0, emphasis_ = 0, pictures_ = 0;  // how many are open
  std::string link_, address_, alt_;
};

}  // namespace markup
