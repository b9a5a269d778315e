// What a layout is made of: blocks, theme, faces, drawings, and what stands around the text.
#pragma once

#include "base/diagnostic.h"
#include "markup/block.h"
#include "typeset/drawing_request.h"
#include "typeset/fonts.h"

#include <map>

namespace typeset {

/// Of the letterhead: no logo is higher.
inline constexpr Dim logoHeight = Dim::pt(30);

/// What stands around the text on every page, as ready words.
struct Furniture {
  std::string firm;                          // name
  std::vector<std::string> firmLines;        // right of the letterhead, at most four
  std::map<std::string, std::string> links;  // words of firmLines and footLeft that lead to an address
  std::string kind;                   // 'Quote': in the side column beside the title and in the running head
  std::string where;                  // 'Kettle Point, Lake Brindle': running head
  std::string jobLabel;               // 'Job LA-2027-031': running head, right
  std::string footLeft;               // telephone
  std::string footMiddle;             // 'Quote . job LA-2027-031'
  std::string pageOf;                 // 'page {n} of {m}'
  bool hasLetterhead = false;         // on the first page
  std::shared_ptr<const Image> logo;  // may be null
  std::string logoAlt;
  std::string signalWords[4];  // NOTICE CAUTION WARNING DANGER in the document's language
};

/// How a document uses paper. Whatever it says, a last page filled less than two fifths is saved by a tighter
/// grid, as far as the theme's 'shrink' allows, or else gets more of the page before it.
struct FitPolicy {
  std::size_t mostPages = 0;      // of the document; 0 = as many as it takes
  std::size_t mostPagesEach = 0;  // of what stands under one title
  std::size_t bestPagesEach = 0;  // drawings leave room for so few where they can; 0 = mostPagesEach
  /// Pages between two page breaks are filled alike, those of the fewest that hold their matter.
  bool fillsEvenly = false;
  bool compactTables = false;  // as small as notes
  bool largeReading = false;   // never below 10.5 pt on 14 pt
  bool keepsType = false;      // never smaller to save a page: white between sections goes first

  bool hasLimit() const { return mostPages > 0 || mostPagesEach > 0; }
};

struct LayoutInput {
  const markup::Document& blocks;
  const model::Theme& theme;
  const Fonts& fonts;
  model::Paper paper = model::Paper::A4;
  Furniture furniture;
  const Drawings& drawings;  // by name, for 'figure:' addresses
  std::string title, subject, author, language, date;
  std::span<const base::SourcePos> lines;  // of the filled text in its templates, for messages
  FitPolicy fit = {};
};

}  // namespace typeset
