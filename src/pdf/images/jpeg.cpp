// JPEG data is embedded as it is (ISO 32000-1:2008, 7.4.8), so it has to be whole before it is. A photograph
// with more pixels than paper can show, or one to be turned, is coded anew.
#include "pdf/images/jpeg.h"

#include "pdf/images/encode_jpeg.h"
#include "pdf/images/exif.h"
#include "pdf/images/jpeg_errors.h"
#include "pdf/images/pixels.h"
#include "pdf/images/shrink.h"

#include <algorithm>
#include <stdexcept>

namespace pdf {
namespace {

/// Encoders make about ten; every further one takes as long again.
constexpr int mostScans = 50;

struct Progress : jpeg_progress_mgr {
  bool hasTooManyScans = false;
};

struct Decoder {
  jpeg_decompress_struct jpeg{};
  JpegErrors errors;
  Progress progress{};

  Decoder() { errors.attach(jpeg); }
  ~Decoder() { jpeg_destroy_decompress(&jpeg); }
  Decoder(const Decoder&) = delete;
  Decoder& operator=(const Decoder&) = delete;

  bool readHeader(std::string_view bytes) {
    return errors.attempt([&] {
      jpeg_create_decompress(&jpeg);
      progress.progress_monitor = countScans;
      jpeg.progress = &progress;
      jpeg_mem_src(&jpeg, reinterpret_cast<const unsigned char*>(bytes.data()),
                   static_cast<unsigned long>(bytes.size()));
      jpeg_read_header(&jpeg, TRUE);
    });
  }

  /// All pixels, or each line over the one before where only their soundness matters.
  bool readPixels(std::string& rgb, bool keepsAll) {
    jpeg.out_color_space = JCS_RGB;
    if (!errors.attempt([&] { jpeg_calc_output_dimensions(&jpeg); })) return false;
    const std::size_t lineLength = std::size_t{jpeg.output_width} * 3;
    rgb.resize(keepsAll ? lineLength * jpeg.output_height : lineLength);
    return errors.attempt([&] {
      jpeg_start_decompress(&jpeg);
      while (jpeg.output_scanline < jpeg.output_height) {
        const std::size_t line = keepsAll ? jpeg.output_scanline : 0;
        JSAMPROW row = reinterpret_cast<JSAMPROW>(rgb.data()) + line * lineLength;
        jpeg_read_scanlines(&jpeg, &row, 1);
      }
      jpeg_finish_decompress(&jpeg);
    });
  }

 private:
  static void countScans(j_common_ptr common) {
    auto& jpeg = *reinterpret_cast<j_decompress_ptr>(common);
    if (jpeg.input_scan_number <= mostScans) return;
    static_cast<Progress*>(jpeg.progress)->hasTooManyScans = true;
    jpeg.err->error_exit(common);
  }
};

/// The data without application segments and comments: a photo's tell the place, the hour and the camera.
/// Kept are APP0 (JFIF) and APP14, which tells how the colours are coded.
std::string withoutNotes(std::string_view bytes) {
  std::string out(bytes.substr(0, 2));
  std::size_t at = 2;
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(bytes[i]); };
  while (at + 4 <= bytes.size() && byte(at) == 0xFF && byte(at + 1) != 0xDA) {
    const unsigned marker = byte(at + 1);
    if (marker == 0xFF) {  // filling
      ++at;
      continue;
    }
    const std::size_t end = at + 2 + (std::size_t{byte(at + 2)} << 8 | byte(at + 3));
    const bool isNote = (marker > 0xE0 && marker <= 0xEF && marker != 0xEE) || marker == 0xFE;
    if (!isNote) out += bytes.substr(at, end - at);
    at = end;
    if (at > bytes.size()) throw std::runtime_error("the JPEG picture is damaged or cut off");
  }
  return out += bytes.substr(at);
}

void checkKind(const jpeg_decompress_struct& jpeg) {
  checkPixels(jpeg.image_width, jpeg.image_height);
  if (jpeg.num_components == 4)
    throw std::runtime_error("the JPEG picture is in CMYK colours; save it as RGB");
  if (jpeg.num_components != 1 && jpeg.num_components != 3)
    throw std::runtime_error("the JPEG picture is neither grey nor RGB");
  if (jpeg.arith_code)  // readers of PDF need not know it
    throw std::runtime_error("the JPEG picture uses arithmetic coding; save it as a baseline JPEG");
}

/// The pixels averaged down to about so many rows.
void shrinkTo(typeset::Image& image, std::size_t rows) {
  Pixels pixels{static_cast<std::size_t>(image.width), static_cast<std::size_t>(image.height), {}};
  pixels.rgba.reserve(image.rgb.size() / 3 * 4);
  for (std::size_t i = 0; i < image.rgb.size(); i += 3) pixels.rgba.append(image.rgb, i, 3) += '\xFF';
  pixels = shrink(std::move(pixels), rows);
  image.width = static_cast<int>(pixels.width);
  image.height = static_cast<int>(pixels.height);
  image.rgb.clear();
  for (std::size_t i = 0; i < pixels.rgba.size(); i += 4) image.rgb.append(pixels.rgba, i, 3);
}

}  // namespace

typeset::Image readJpeg(std::string_view bytes, std::size_t rows) {
  const auto damaged = [] { return std::runtime_error("the JPEG picture is damaged or cut off"); };
  Decoder decoder;
  if (!decoder.readHeader(bytes)) throw damaged();
  jpeg_decompress_struct& jpeg = decoder.jpeg;
  checkKind(jpeg);

  const int orientation = orientationOf(bytes);
  const std::size_t shownRows = orientation >= 5 ? jpeg.image_width : jpeg.image_height;
  const std::size_t side = rows == 0 ? 1 : std::max<std::size_t>(1, shownRows / rows);
  const bool isKept = orientation == 1 && side == 1;
  // The library averages by 2, 4 and 8 while it decodes, which takes less time and memory.
  jpeg.scale_denom = side % 8 == 0 ? 8 : side % 4 == 0 ? 4 : side % 2 == 0 ? 2 : 1;
  typeset::Image image;
  image.isGrey = jpeg.num_components == 1;
  const bool isWhole = decoder.readPixels(image.rgb, !isKept);
  if (decoder.progress.hasTooManyScans)
    throw std::runtime_error("the JPEG picture comes in more than " + std::to_string(mostScans) +
                             " scans; save it as a baseline JPEG");
  if (!isWhole || decoder.errors.hasFault) throw damaged();
  image.width = static_cast<int>(jpeg.output_width);
  image.height = static_cast<int>(jpeg.output_height);
  if (isKept) {
    image.jpeg = withoutNotes(bytes);
  } else {
    makeUpright(image, orientation);
    shrinkTo(image, rows);
    image.jpeg = encodeJpeg(image);
  }
  image.rgb.clear();
  return image;
}

}  // namespace pdf
