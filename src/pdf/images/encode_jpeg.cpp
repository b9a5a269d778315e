#include "pdf/images/encode_jpeg.h"

#include "pdf/images/jpeg_errors.h"

#include <cstdlib>
#include <stdexcept>

namespace pdf {
namespace {

struct Encoder {
  jpeg_compress_struct jpeg{};
  JpegErrors errors;
  unsigned char* data = nullptr;
  unsigned long length = 0;

  Encoder() { errors.attach(jpeg); }
  ~Encoder() {
    jpeg_destroy_compress(&jpeg);
    std::free(data);
  }
  Encoder(const Encoder&) = delete;
  Encoder& operator=(const Encoder&) = delete;
};

}  // namespace

std::string encodeJpeg(const typeset::Image& image) {
  constexpr int quality = 90;
  Encoder encoder;
  jpeg_compress_struct& jpeg = encoder.jpeg;
  std::string rgb = image.rgb;  // the library takes lines that it could write to
  const bool isDone = encoder.errors.attempt([&] {
    jpeg_create_compress(&jpeg);
    jpeg_mem_dest(&jpeg, &encoder.data, &encoder.length);
    jpeg.image_width = static_cast<JDIMENSION>(image.width);
    jpeg.image_height = static_cast<JDIMENSION>(image.height);
    jpeg.input_components = 3;
    jpeg.in_color_space = JCS_RGB;
    jpeg_set_defaults(&jpeg);
    if (image.isGrey) jpeg_set_colorspace(&jpeg, JCS_GRAYSCALE);
    jpeg_set_quality(&jpeg, quality, TRUE);
    jpeg.comp_info[0].h_samp_factor = jpeg.comp_info[0].v_samp_factor = 1;
    jpeg.optimize_coding = TRUE;
    jpeg_start_compress(&jpeg, TRUE);
    while (jpeg.next_scanline < jpeg.image_height) {
      JSAMPROW row =
          reinterpret_cast<JSAMPROW>(rgb.data()) + std::size_t{jpeg.next_scanline} * jpeg.image_width * 3;
      jpeg_write_scanlines(&jpeg, &row, 1);
    }
    jpeg_finish_compress(&jpeg);
  });
  if (!isDone) throw std::runtime_error("the JPEG picture cannot be coded anew");
  return {reinterpret_cast<char*>(encoder.data), encoder.length};
}

}  // namespace pdf
