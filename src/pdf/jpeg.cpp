// JPEG data is embedded as it is (ISO 32000-1:2008, 7.4.8), so it has to be whole before it is.
#include "pdf/jpeg.h"

#include "pdf/exif.h"
#include "pdf/file.h"
#include "pdf/pixels.h"

#include <csetjmp>
#include <cstdio>  // jpeglib.h needs it and does not say so
#include <stdexcept>
#include <vector>

#include <jpeglib.h>

#include <jerror.h>

namespace pdf {
namespace {

/// libjpeg reports through these; its own functions would print and end the program.
struct Decoder {
  jpeg_decompress_struct jpeg{};
  jpeg_error_mgr errors{};
  std::jmp_buf out{};
  bool hasFault = false;
};

Decoder& decoderOf(j_common_ptr jpeg) { return *static_cast<Decoder*>(jpeg->client_data); }

void onError(j_common_ptr jpeg) { std::longjmp(decoderOf(jpeg).out, 1); }

/// Level -1 is data that libjpeg mends by guessing.
void onMessage(j_common_ptr jpeg, int level) {
  if (level < 0 && jpeg->err->msg_code != JWRN_EXTRANEOUS_DATA) decoderOf(jpeg).hasFault = true;
}

/// Runs a step of libjpeg; false when it gave up. Nothing with a destructor may live inside.
template <class Step>
bool attempt(Decoder& decoder, Step step) {
  if (setjmp(decoder.out) != 0) return false;
  step(decoder.jpeg);
  return true;
}

struct Owner {
  Decoder decoder;
  Owner() {
    decoder.jpeg.err = jpeg_std_error(&decoder.errors);
    decoder.errors.error_exit = onError;
    decoder.errors.emit_message = onMessage;
    decoder.errors.output_message = [](j_common_ptr) {};
    decoder.jpeg.client_data = &decoder;
  }
  ~Owner() { jpeg_destroy_decompress(&decoder.jpeg); }
  Owner(const Owner&) = delete;
  Owner& operator=(const Owner&) = delete;
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

}  // namespace

typeset::Image readJpeg(std::string_view bytes) {
  const auto damaged = [] { return std::runtime_error("the JPEG picture is damaged or cut off"); };
  Owner owner;
  Decoder& decoder = owner.decoder;
  const bool hasHead = attempt(decoder, [&](jpeg_decompress_struct& jpeg) {
    jpeg_create_decompress(&jpeg);
    jpeg_mem_src(&jpeg, reinterpret_cast<const unsigned char*>(bytes.data()),
                 static_cast<unsigned long>(bytes.size()));
    jpeg_read_header(&jpeg, TRUE);
  });
  if (!hasHead) throw damaged();
  const jpeg_decompress_struct& jpeg = decoder.jpeg;
  checkPixels(jpeg.image_width, jpeg.image_height);
  if (jpeg.num_components == 4)
    throw std::runtime_error("the JPEG picture is in CMYK colours; save it as RGB");
  if (jpeg.num_components != 1 && jpeg.num_components != 3)
    throw std::runtime_error("the JPEG picture is neither grey nor RGB");
  if (jpeg.arith_code)  // readers of PDF need not know it
    throw std::runtime_error("the JPEG picture uses arithmetic coding; save it as a baseline JPEG");

  // The data of an upright picture is kept as it is; of another the pixels are, to be turned.
  const int orientation = orientationOf(bytes);
  typeset::Image image;
  image.width = static_cast<int>(jpeg.image_width);
  image.height = static_cast<int>(jpeg.image_height);
  const std::size_t lineLength = std::size_t{jpeg.image_width} * 3;
  image.rgb.resize(orientation == 1 ? lineLength : lineLength * jpeg.image_height);
  const bool isWhole = attempt(decoder, [&](jpeg_decompress_struct& j) {
    j.out_color_space = JCS_RGB;
    jpeg_start_decompress(&j);
    while (j.output_scanline < j.output_height) {
      const std::size_t line = orientation == 1 ? 0 : j.output_scanline;
      JSAMPROW row = reinterpret_cast<JSAMPROW>(image.rgb.data()) + line * lineLength;
      jpeg_read_scanlines(&j, &row, 1);
    }
    jpeg_finish_decompress(&j);
  });
  if (!isWhole || decoder.hasFault) throw damaged();
  if (orientation != 1) {
    makeUpright(image, orientation);
    image.packedRgb = deflated(image.rgb);
    return image;
  }
  image.rgb.clear();
  image.isGrey = jpeg.num_components == 1;
  image.jpeg = withoutNotes(bytes);
  return image;
}

}  // namespace pdf
