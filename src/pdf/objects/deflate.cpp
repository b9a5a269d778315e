#include "pdf/objects/deflate.h"

#include <libdeflate.h>

#include <memory>
#include <new>

namespace pdf {

std::string deflated(std::string_view data, Effort effort) {
  const std::unique_ptr<libdeflate_compressor, void (*)(libdeflate_compressor*)> packer(
      libdeflate_alloc_compressor(static_cast<int>(effort)), libdeflate_free_compressor);
  if (!packer) throw std::bad_alloc();
  const std::size_t most = libdeflate_zlib_compress_bound(packer.get(), data.size());
  const auto out = std::make_unique_for_overwrite<char[]>(most);  // most of it is never touched
  return {out.get(), libdeflate_zlib_compress(packer.get(), data.data(), data.size(), out.get(), most)};
}

}  // namespace pdf
