#include "app/pack/firm_look.h"

#include "base/joined.h"
#include "input/read.h"
#include "pdf/images/read_image.h"
#include "sheets/words/addresses.h"
#include "typeset/face.h"

#include <filesystem>

namespace app {
namespace fs = std::filesystem;

namespace {

std::shared_ptr<const typeset::Image> readLogo(const std::string& file, base::Diagnostics& messages) {
  std::error_code failed;
  if (fs::is_regular_file(file, failed) && fs::is_empty(file, failed)) {
    messages.error({file}, "", "the logo is empty",
                   "save it again as a PNG or JPEG, or leave 'logo' out of the firm's file");
    return {};
  }
  const auto bytes = input::readFile(file);
  if (!bytes) {
    messages.error({file}, "", "the logo cannot be read: " + input::whyUnreadable(file),
                   "check that the file may be read");
    return {};
  }
  try {
    constexpr std::int64_t inch = 72, perInch = 600;  // finer than office printers
    constexpr auto rows =
        static_cast<std::size_t>(typeset::logoHeight.raw * perInch / typeset::Dim::pt(inch).raw);
    return std::make_shared<const typeset::Image>(pdf::readImage(*bytes, rows));
  } catch (const std::runtime_error& e) {
    messages.error({file}, "", e.what(), "save it again as a plain PNG or JPEG");
    return {};
  }
}

}  // namespace

std::shared_ptr<const typeset::Image> logoOf(const model::Firm& firm, const Shipped& shipped,
                                             base::Diagnostics& messages) {
  if (firm.logoFile.empty()) return {};
  return readOnce(shipped.caches->logos, firm.logoFile, messages,
                  [&](auto& told) { return readLogo(firm.logoFile, told); });
}

typeset::Fonts fontsOf(const model::Theme& theme, const Shipped& shipped) {
  std::string files;
  for (const auto& [role, file] : theme.faces) files += std::to_string(static_cast<int>(role)) + file + "\n";
  for (const auto& file : theme.fallbackFaces) files += file + "\n";
  return *shipped.caches->fonts.getOrMake(files, [&] { return typeset::readFonts(theme); });
}

namespace {

constexpr auto anotherFont = "name another file or family";

/// By its path, or by the name of its face.
bool isNamedIn(const std::string& fault, const std::string& file) {
  if (fault.find("'" + file + "'") != std::string::npos) return true;
  try {
    return fault.find("'" + typeset::FontFace::read(file)->postscriptName() + "'") != std::string::npos;
  } catch (const std::runtime_error&) {
    return false;
  }
}

}  // namespace

void tellOfFont(const model::Theme& theme, const std::string& fault, base::Diagnostics& messages) {
  for (const auto& [file, named] : theme.named) {
    if (!isNamedIn(fault, file)) continue;
    messages.error(named.pos, named.key, fault, anotherFont);
    return;
  }
  messages.error({"theme " + theme.name}, "faces", fault, anotherFont);
}

typeset::Furniture furnitureOf(const model::DocumentKind& document, const model::JobResult& x,
                               const std::shared_ptr<const typeset::Image>& logo) {
  const model::JobInputs& c = x.c;
  const base::Language& w = x.language;
  typeset::Furniture f;
  f.firm = c.firm.name;
  std::string last = c.firm.phone;
  for (const auto& [region, lines] : c.firm.registrations)
    for (const auto& line : lines)
      if (region.empty() || region == c.region->id) last += " · " + line;
  f.firmLines.push_back(base::joined(c.firm.address));
  if (!c.firm.email.empty()) f.firmLines.push_back(c.firm.email);
  if (!c.firm.web.empty()) f.firmLines.push_back(sheets::webWords(c.firm.web));
  f.firmLines.push_back(last);
  f.links[c.firm.phone] = sheets::phoneAddress(c.firm.phone, c.region->dialling);
  f.links[c.firm.email] = sheets::mailAddress(c.firm.email);
  if (!c.firm.web.empty()) f.links[sheets::webWords(c.firm.web)] = sheets::webAddress(c.firm.web);
  f.kind = document.heading;
  f.where = base::joined(c.job.site.address);
  if (f.where.empty()) f.where = c.job.customer.name;
  f.jobLabel = w("furniture.job", {{"ref", c.job.ref}});
  f.footLeft = c.firm.phone;
  f.footMiddle = w("furniture.foot", {{"document", document.heading}, {"ref", c.job.ref}});
  f.pageOf = w("furniture.page", {{"n", "{n}"}, {"m", "{m}"}});  // filled in when the pages are counted
  f.hasLetterhead = document.hasLetterhead;
  f.logo = logo;
  f.logoAlt = w("furniture.logo", {{"firm", c.firm.name}});
  f.signalWords[0] = w("signals.notice");
  f.signalWords[1] = w("signals.caution");
  f.signalWords[2] = w("signals.warning");
  f.signalWords[3] = w("signals.danger");
  return f;
}

void colourForCrew(typeset::Document& document, const model::Theme& theme) {
  const auto change = [&](model::Colour& c) {
    for (const auto& [name, crew] : theme.crewColours) {
      if (const auto old = theme.colours.find(name); old == theme.colours.end() || old->second != c) continue;
      c = crew;
      return;
    }
  };
  for (auto& page : document.pages) {
    for (auto& item : page.items) {
      if (auto* run = std::get_if<typeset::TextRun>(&item.what)) change(run->colour);
      auto* path = std::get_if<typeset::Path>(&item.what);
      if (path && path->fill) change(*path->fill);
      if (path && path->stroke) change(path->stroke->colour);
    }
  }
}

}  // namespace app
