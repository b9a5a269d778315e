// A font file, read once per process and shared: shaping and metrics through HarfBuzz.
#pragma once

#include "typeset/page.h"

#include <cstdint>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <typeindex>

struct hb_face_t;
struct hb_font_t;

namespace typeset {

/// What a face measures, in font units.
struct FaceMetrics {
  int unitsPerEm = 1000;
  int ascent = 0, descent = 0, capHeight = 0, xHeight = 0;
  int box[4] = {0, 0, 0, 0};
  int italicAngle = 0, weight = 400;
};

class FontFace {
 public:
  /// Reads a TrueType or OpenType file. Throws std::runtime_error with the file's name and what is wrong when
  /// it cannot be read, is damaged or lacks the letter A.
  static std::shared_ptr<const FontFace> read(const std::string& file);
  ~FontFace();
  FontFace(const FontFace&) = delete;
  FontFace& operator=(const FontFace&) = delete;

  bool has(char32_t letter) const;
  /// Its glyph of a letter; nothing when it has none.
  std::optional<std::uint32_t> glyphOf(char32_t letter) const;
  const FaceMetrics& metrics() const { return metrics_; }
  const std::string& postscriptName() const { return name_; }
  bool isCff() const { return isCff_; }
  hb_face_t* hbFace() const { return face_; }
  hb_font_t* hbFont() const { return font_; }

  /// What others make of this face and keep with it, one of each type: it goes when the face goes.
  template <class T>
  T& kept() const {
    const std::lock_guard lock(guard_);
    auto& thing = kept_[std::type_index(typeid(T))];
    if (!thing) thing = std::make_shared<T>();
    return *static_cast<T*>(thing.get());
  }

 private:
  FontFace() = default;
  hb_face_t* face_ = nullptr;
  hb_font_t* font_ = nullptr;
  FaceMetrics metrics_;
  std::string name_;
  bool isCff_ = false;
  mutable std::mutex guard_;
  mutable std::map<std::type_index, std::shared_ptr<void>> kept_;
};

}  // namespace typeset
