#include "sheets/template/template_scan.h"

#include "base/hidden.h"
#include "base/letters.h"

#include <algorithm>
#include <optional>

namespace sheets {
namespace {

using Kind = Piece::Kind;

bool isBlank(char c) { return c == ' ' || c == '\t'; }
using base::isDigit;
bool isLetter(char c) { return base::isLetter(c) || c == '_'; }

std::string trimmed(std::string_view s) {
  const auto isSpace = [](char c) { return isBlank(c) || c == '\n'; };
  while (!s.empty() && isSpace(s.front())) s.remove_prefix(1);
  while (!s.empty() && isSpace(s.back())) s.remove_suffix(1);
  return std::string(s);
}

/// 'name' or 'customer.name'.
bool isName(const std::string& s) {
  bool atStart = true;
  for (const char c : s) {
    if (c == '.' ? atStart : !(isLetter(c) || (!atStart && isDigit(c)))) return false;
    atStart = c == '.';
  }
  return !atStart;
}

/// Names of partials are file names without their ending: 'hand_over', 'rag-fire'.
bool isPartialName(const std::string& s) {
  return !s.empty() && std::all_of(s.begin(), s.end(),
                                   [](char c) { return isLetter(c) || isDigit(c) || c == '-' || c == '/'; });
}

/// Line ends as '\n', no byte order mark.
std::string normalised(const std::string& text) {
  std::string s = text.starts_with("\xEF\xBB\xBF") ? text.substr(3) : text;
  std::string out;
  out.reserve(s.size());
  for (std::size_t i = 0; i < s.size(); ++i) {
    if (s[i] != '\r') out += s[i];
    else if (i + 1 == s.size() || s[i + 1] != '\n') out += '\n';
  }
  return out;
}

class Scanner {
 public:
  Scanner(const Template& source, base::Diagnostics& messages)
      : file_(source.file),
        text_(normalised(source.text)),
        messages_(messages),
        lineNumber_(source.firstLine) {}

  Pieces scan() {
    if (holdsHidden()) return {};
    while (at_ < text_.size()) scanLine();
    matchSections();
    return std::move(pieces_);
  }

 private:
  bool holdsHidden() {
    for (std::size_t next = 0; next < text_.size();) {
      const std::size_t start = next;
      std::string hidden = base::hiddenLetter(base::nextLetter(text_, next));
      if (hidden.empty()) continue;
      moveTo(start);
      messages_.error(place(), "", std::move(hidden), "delete it");
      return true;
    }
    return false;
  }

  /// Reads up to and with the next line break; a comment may carry the line over further ones.
  void scanLine() {
    line_.clear();
    holdsComment_ = false;
    while (true) {
      const std::size_t end = std::min(text_.find('\n', at_), text_.size());
      const std::size_t tag = text_.find("{{", at_);
      if (tag >= end) {
        addWords(std::min(end + 1, text_.size()));
        break;
      }
      addWords(tag);
      readTag();
    }
    finishLine();
  }

  void addWords(std::size_t end) {
    if (end > at_) line_.push_back({Kind::Words, text_.substr(at_, end - at_), place(), false, false, {}});
    moveTo(end);
  }

  void readTag() {
    Piece tag;
    tag.pos = place();
    const std::size_t inner = at_ + 2;
    const char sign = inner < text_.size() ? text_[inner] : '\0';
    const std::size_t close = text_.find("}}", inner);
    const bool isComment = sign == '!';
    const std::size_t lineEnd = std::min(text_.find('\n', at_), text_.size());
    if (close == std::string::npos || (!isComment && close > lineEnd)) {
      messages_.error(tag.pos, "", "this tag is not closed", "end it with }} on the same line");
      moveTo(isComment ? text_.size() : lineEnd);
      return;
    }
    const std::string raw = text_.substr(inner, close - inner);
    moveTo(close + 2);
    if (isComment) {
      holdsComment_ = true;
      return;
    }
    const std::string shown = "{{" + raw + "}}";
    if (sign == '{' || sign == '&') {
      if (sign == '{' && at_ < text_.size() && text_[at_] == '}') moveTo(at_ + 1);
      messages_.error(tag.pos, sign == '{' ? shown + "}" : shown, "prints a value without escaping it",
                      "write {{" + trimmed(raw.substr(1)) + "}}");
      return;
    }
    if (sign == '=') {
      messages_.error(tag.pos, shown, "the marks of a tag cannot be changed", "write {{name}}");
      return;
    }
    tag.kind = kindOf(sign);
    tag.text = trimmed(tag.kind == Kind::Variable ? raw : raw.substr(1));
    if (tag.kind == Kind::Partial ? !isPartialName(tag.text) : !isName(tag.text)) {
      messages_.error(tag.pos, shown, "'" + tag.text + "' is not a name",
                      "names are made of letters, digits and '_', joined by '.'");
      return;
    }
    line_.push_back(std::move(tag));
  }

  static Kind kindOf(char sign) {
    switch (sign) {
      case '#':
        return Kind::Section;
      case '^':
        return Kind::Inverted;
      case '/':
        return Kind::Close;
      case '>':
        return Kind::Partial;
    }
    return Kind::Variable;
  }

  /// Moves the line to the result; of a standalone line only its tags.
  void finishLine() {
    if (const auto prefix = standalonePrefix()) {
      for (auto& piece : line_) {
        if (piece.kind == Kind::Words) continue;
        if (piece.kind == Kind::Partial) {
          piece.isStandalone = true;
          piece.prefix = *prefix;
        }
        pieces_.push_back(std::move(piece));
      }
      return;
    }
    if (!line_.empty()) line_.front().startsLine = true;
    for (auto& piece : line_) pieces_.push_back(std::move(piece));
  }

  /// The blanks and quote marks before the first tag of a standalone line; nothing for any other line.
  std::optional<std::string> standalonePrefix() const {
    std::string prefix;
    bool hasTag = false;
    for (const auto& piece : line_) {
      if (piece.kind == Kind::Variable) return {};
      if (piece.kind != Kind::Words) {
        hasTag = true;
        continue;
      }
      for (const char c : piece.text) {
        const bool isQuoteMark = c == '>' && !hasTag;
        if (!isBlank(c) && c != '\n' && !isQuoteMark) return {};
        if (!hasTag && c != '\n') prefix += c;
      }
    }
    if (!hasTag && !holdsComment_) return {};
    return prefix;
  }

  void matchSections() {
    std::vector<const Piece*> open;
    for (const auto& piece : pieces_) {
      if (piece.kind == Kind::Section || piece.kind == Kind::Inverted) {
        open.push_back(&piece);
      } else if (piece.kind == Kind::Close) {
        close(piece, open);
      }
    }
    for (const auto* piece : open) {
      messages_.error(piece->pos, written(*piece), "this section is never closed",
                      "add {{/" + piece->text + "}}");
    }
  }

  void close(const Piece& tag, std::vector<const Piece*>& open) {
    const auto match =
        std::find_if(open.rbegin(), open.rend(), [&](const Piece* piece) { return piece->text == tag.text; });
    if (match == open.rend()) {
      messages_.error(tag.pos, written(tag), "no section of this name is open here",
                      open.empty() ? "take it away" : "{{/" + open.back()->text + "}} is expected next");
      return;
    }
    if (match != open.rbegin()) {
      const Piece& inner = *open.back();
      messages_.error(tag.pos, written(tag),
                      written(inner) + " of line " + std::to_string(inner.pos.line) + " is still open",
                      "put {{/" + inner.text + "}} before it");
    }
    open.erase(match.base() - 1, open.end());
  }

  base::SourcePos place() const { return {file_, lineNumber_, column_}; }

  void moveTo(std::size_t end) {
    for (; at_ < end; ++at_) {
      if (text_[at_] == '\n') {
        ++lineNumber_;
        column_ = 1;
      } else if ((static_cast<unsigned char>(text_[at_]) & 0xC0) != 0x80) {
        ++column_;
      }
    }
  }

  std::string file_;
  std::string text_;
  base::Diagnostics& messages_;
  std::size_t at_ = 0;
  int lineNumber_;
  int column_ = 1;
  Pieces line_;
  bool holdsComment_ = false;
  Pieces pieces_;
};

}  // namespace

Pieces scanTemplate(const Template& source, base::Diagnostics& messages) {
  if (source.text.size() > templateSizeCap) {
    messages.error({source.file, 0, 0}, "", "the template is longer than 256 KiB",
                   "check that it is the right file");
    return {};
  }
  return Scanner(source, messages).scan();
}

std::string written(const Piece& tag) {
  switch (tag.kind) {
    case Kind::Words:
      return tag.text;
    case Kind::Variable:
      return "{{" + tag.text + "}}";
    case Kind::Section:
      return "{{#" + tag.text + "}}";
    case Kind::Inverted:
      return "{{^" + tag.text + "}}";
    case Kind::Close:
      return "{{/" + tag.text + "}}";
    case Kind::Partial:
      return "{{>" + tag.text + "}}";
  }
  return {};
}

}  // namespace sheets
