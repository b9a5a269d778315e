// QR codes: the library chooses the modules, here they become one path.
#include "drawings/pen/paths.h"

#include <qrencode.h>
#include <memory>

namespace drawings {

typeset::Drawing qrCode(const std::string& address, const std::string& alt, const Pen& pen, Dim width) {
  const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
      QRcode_encodeString8bit(address.c_str(), 0, QR_ECLEVEL_M), &QRcode_free);
  if (!code) return {};
  constexpr int quiet = 4;  // modules of white on each side: ISO/IEC 18004
  const Dim module = {width.raw / (code->width + 2 * quiet)};
  const auto isDark = [&](int x, int y) { return (code->data[y * code->width + x] & 1) != 0; };
  Path path;
  path.fill = colour(pen, "ink");
  for (int y = 0; y < code->width; ++y) {
    for (int x = 0; x < code->width; ++x) {
      if (!isDark(x, y)) continue;
      const int from = x;
      while (x + 1 < code->width && isDark(x + 1, y)) ++x;
      const Dim left = module * (from + quiet), right = module * (x + 1 + quiet), top = module * (y + quiet);
      moveTo(path, {left, top});
      lineTo(path, {right, top});
      lineTo(path, {right, top + module});
      lineTo(path, {left, top + module});
      lineTo(path, {left, top});
    }
  }
  typeset::Drawing out;
  put(out.items, std::move(path));
  out.size = {width, width};
  out.alt = alt;
  return out;
}

}  // namespace drawings
