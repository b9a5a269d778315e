// Picture files made for the tests, whole ones and pieces of broken ones.
#pragma once

#include <png.h>
#include <zlib.h>

#include <cstdio>  // jpeglib.h needs it and does not say so
#include <cstdlib>
#include <string>

#include <jpeglib.h>

namespace sample {

inline std::string makePng(std::uint32_t width, std::uint32_t height, std::uint32_t format,
                           const std::string& pixels) {
  png_image png{};
  png.version = PNG_IMAGE_VERSION;
  png.width = width;
  png.height = height;
  png.format = format;
  png_alloc_size_t length = 0;
  png_image_write_to_memory(&png, nullptr, &length, 0, pixels.data(), 0, nullptr);
  std::string bytes(length, '\0');
  png_image_write_to_memory(&png, bytes.data(), &length, 0, pixels.data(), 0, nullptr);
  return bytes;
}

inline std::string word(unsigned long n) {
  return {static_cast<char>(n >> 24), static_cast<char>(n >> 16), static_cast<char>(n >> 8),
          static_cast<char>(n)};
}

inline std::string chunk(const std::string& typeAndData) {
  const auto* data = reinterpret_cast<const Bytef*>(typeAndData.data());
  return word(typeAndData.size() - 4) + typeAndData +
         word(crc32(0, data, static_cast<uInt>(typeAndData.size())));
}

inline std::string makeJpeg(int width, int height, int parts, J_COLOR_SPACE colours) {
  jpeg_compress_struct jpeg{};
  jpeg_error_mgr errors{};
  jpeg.err = jpeg_std_error(&errors);
  jpeg_create_compress(&jpeg);
  unsigned char* data = nullptr;
  unsigned long length = 0;
  jpeg_mem_dest(&jpeg, &data, &length);
  jpeg.image_width = static_cast<JDIMENSION>(width);
  jpeg.image_height = static_cast<JDIMENSION>(height);
  jpeg.input_components = parts;
  jpeg.in_color_space = colours;
  jpeg_set_defaults(&jpeg);
  jpeg_start_compress(&jpeg, TRUE);
  const std::string gps = "Exif the gate code is 4711";
  jpeg_write_marker(&jpeg, JPEG_APP0 + 1, reinterpret_cast<const JOCTET*>(gps.data()),
                    static_cast<unsigned>(gps.size()));
  for (int y = 0; y < height; ++y) {
    std::string line(static_cast<std::size_t>(width * parts), '\0');
    for (std::size_t i = 0; i < line.size(); ++i)
      line[i] = static_cast<char>(i * 37 + static_cast<std::size_t>(y) * 11);
    auto* row = reinterpret_cast<JSAMPROW>(line.data());
    jpeg_write_scanlines(&jpeg, &row, 1);
  }
  jpeg_finish_compress(&jpeg);
  std::string bytes(reinterpret_cast<char*>(data), length);
  jpeg_destroy_compress(&jpeg);
  free(data);
  return bytes;
}

/// Eight lines of grey in so many scans, one for each frequency of the cosines: ITU-T T.81 (1992), G.1.
inline std::string makeJpegOfScans(int scans) {
  jpeg_compress_struct jpeg{};
  jpeg_error_mgr errors{};
  jpeg.err = jpeg_std_error(&errors);
  jpeg_create_compress(&jpeg);
  unsigned char* data = nullptr;
  unsigned long length = 0;
  jpeg_mem_dest(&jpeg, &data, &length);
  jpeg.image_width = jpeg.image_height = 8;
  jpeg.input_components = 1;
  jpeg.in_color_space = JCS_GRAYSCALE;
  jpeg_set_defaults(&jpeg);
  jpeg_scan_info plan[64] = {};
  for (int i = 0; i < scans; ++i) {
    plan[i].comps_in_scan = 1;
    plan[i].Ss = plan[i].Se = i;
  }
  if (scans > 1) plan[scans - 1].Se = 63;
  jpeg.scan_info = plan;
  jpeg.num_scans = scans;
  jpeg_start_compress(&jpeg, TRUE);
  JSAMPLE line[8] = {0, 40, 90, 10, 200, 255, 30, 70};
  for (JSAMPROW row = line; jpeg.next_scanline < 8;) jpeg_write_scanlines(&jpeg, &row, 1);
  jpeg_finish_compress(&jpeg);
  std::string bytes(reinterpret_cast<char*>(data), length);
  jpeg_destroy_compress(&jpeg);
  free(data);
  return bytes;
}

/// The red, green and blue of sound JPEG data.
inline std::string pixelsOf(const std::string& bytes) {
  jpeg_decompress_struct jpeg{};
  jpeg_error_mgr errors{};
  jpeg.err = jpeg_std_error(&errors);
  jpeg_create_decompress(&jpeg);
  jpeg_mem_src(&jpeg, reinterpret_cast<const unsigned char*>(bytes.data()),
               static_cast<unsigned long>(bytes.size()));
  jpeg_read_header(&jpeg, TRUE);
  jpeg.out_color_space = JCS_RGB;
  jpeg_start_decompress(&jpeg);
  std::string rgb(std::size_t{jpeg.output_width} * jpeg.output_height * 3, '\0');
  while (jpeg.output_scanline < jpeg.output_height) {
    auto* row =
        reinterpret_cast<JSAMPROW>(rgb.data()) + std::size_t{jpeg.output_scanline} * jpeg.output_width * 3;
    jpeg_read_scanlines(&jpeg, &row, 1);
  }
  jpeg_finish_decompress(&jpeg);
  jpeg_destroy_decompress(&jpeg);
  return rgb;
}

inline std::string deflated(const std::string& data) {
  uLongf length = compressBound(data.size());
  std::string out(length, '\0');
  compress(reinterpret_cast<Bytef*>(out.data()), &length, reinterpret_cast<const Bytef*>(data.data()),
           data.size());
  out.resize(length);
  return out;
}

/// A PNG by hand: depth in bits, type of colour and interlacing as in IHDR, chunks before the pixels, and the
/// lines with their filter bytes.
inline std::string craftedPng(unsigned long width, unsigned long height,
                              const std::string& depthTypeInterlace, const std::string& chunks,
                              const std::string& lines) {
  const std::string ihdr = {depthTypeInterlace[0], depthTypeInterlace[1], 0, 0, depthTypeInterlace[2]};
  return "\x89PNG\r\n\x1A\n" + chunk("IHDR" + word(width) + word(height) + ihdr) + chunks +
         chunk("IDAT" + deflated(lines)) + chunk("IEND");
}

}  // namespace sample
