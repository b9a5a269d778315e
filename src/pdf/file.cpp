// libharu keeps the objects, numbers them and writes the cross-reference table; what is in them is ours. Its
// own text, font, image and metadata functions are slower, cannot tag, and crash on damaged input.
#include "pdf/file.h"

#include <hpdf.h>
#include <hpdf_doc.h>
#include <hpdf_objects.h>
#include <hpdf_pages.h>
#include <hpdf_streams.h>
#include <libdeflate.h>

#include <new>
#include <stdexcept>

namespace pdf {
namespace {

HPDF_STATUS writeEntries(HPDF_Dict dictionary, HPDF_Stream stream) {
  const auto& entries = *static_cast<std::string*>(dictionary->attr);
  return HPDF_Stream_Write(stream, reinterpret_cast<const HPDF_BYTE*>(entries.data()),
                           static_cast<HPDF_UINT>(entries.size()));
}

void freeEntries(HPDF_Dict dictionary) { delete static_cast<std::string*>(dictionary->attr); }

/// Makes a dictionary of the library print raw entries after its own.
void setEntries(HPDF_Dict dictionary, std::string entries) {
  if (dictionary->attr) throw std::logic_error("internal error: PDF entries are set twice");
  dictionary->attr = new std::string(std::move(entries));
  dictionary->write_fn = writeEntries;
  dictionary->free_fn = freeEntries;
}

template <class T>
T* made(T* object) {
  if (!object) throw std::bad_alloc();
  return object;
}

Object objectOf(HPDF_Dict dictionary) { return {dictionary, dictionary->header.obj_id & 0x00FFFFFF}; }

void put(HPDF_Stream stream, std::string_view data) {
  HPDF_Stream_Write(stream, reinterpret_cast<const HPDF_BYTE*>(data.data()),
                    static_cast<HPDF_UINT>(data.size()));
}

/// The filter stands among the raw entries, because the library drops one that it does not apply itself.
constexpr const char* deflateEntry = "/Filter /FlateDecode\n";

HPDF_REAL points(typeset::Dim length) { return static_cast<HPDF_REAL>(length.raw) / 12'700; }

}  // namespace

std::string deflated(std::string_view data, Effort effort) {
  const std::unique_ptr<libdeflate_compressor, void (*)(libdeflate_compressor*)> packer(
      made(libdeflate_alloc_compressor(static_cast<int>(effort))), libdeflate_free_compressor);
  std::string out(libdeflate_zlib_compress_bound(packer.get(), data.size()), '\0');
  out.resize(libdeflate_zlib_compress(packer.get(), data.data(), data.size(), out.data(), out.size()));
  return out;
}

std::string reference(Object object) {
  if (!object) throw std::logic_error("internal error: a reference to nothing");
  return std::to_string(object.number) + " 0 R";
}

// Not with the library's own memory pool: it puts objects on addresses they are not aligned for.
File::File() : document_(made(HPDF_New(nullptr, nullptr)), HPDF_Free) {
  document_->pdf_version = HPDF_VER_17;
  HPDF_Dict_RemoveElement(document_->info, "Producer");
}

Object File::reserve() {
  const HPDF_Dict dictionary = made(HPDF_Dict_New(document_->mmgr));
  HPDF_Xref_Add(document_->xref, dictionary);
  return objectOf(dictionary);
}

void File::fill(Object dictionary, std::string entries) {
  digest_.add(entries);
  setEntries(static_cast<HPDF_Dict>(dictionary.handle), std::move(entries));
}

Object File::addDictionary(std::string entries) {
  const Object dictionary = reserve();
  fill(dictionary, std::move(entries));
  return dictionary;
}

Object File::addStream(std::string entries, std::string_view data, Packing packing) {
  const HPDF_Dict stream = made(HPDF_DictStream_New(document_->mmgr, document_->xref));
  digest_.add(data);
  if (packing != Packing::AsIs) entries += deflateEntry;
  fill(objectOf(stream), std::move(entries));
  put(stream->stream, packing == Packing::Deflate ? deflated(data) : data);
  return objectOf(stream);
}

Object File::addPage(const PageParts& parts) {
  const HPDF_Page page = made(HPDF_AddPage(document_.get()));
  HPDF_Page_SetWidth(page, points(parts.size.w));
  HPDF_Page_SetHeight(page, points(parts.size.h));
  HPDF_Dict_Add(page, "Resources", parts.resources.handle);
  HPDF_Dict_AddNumber(page, "StructParents", parts.structParents);
  HPDF_Dict_AddName(page, "Tabs", "S");
  if (!parts.annotations.empty()) {
    const HPDF_Array array = made(HPDF_Array_New(document_->mmgr));
    HPDF_Dict_Add(page, "Annots", array);
    for (const Object& annotation : parts.annotations) HPDF_Array_Add(array, annotation.handle);
  }
  const HPDF_Dict contents = static_cast<HPDF_PageAttr>(page->attr)->contents;
  digest_.add(parts.content);
  setEntries(contents, deflateEntry);
  put(contents->stream, deflated(parts.content));
  return objectOf(page);
}

void File::setCatalogue(std::string entries) { fill({document_->catalog, 1}, std::move(entries)); }

void File::setInformation(std::string entries) { fill({document_->info, 1}, std::move(entries)); }

std::string File::save() {
  HPDF_BYTE bytes[16];
  for (std::size_t i = 0; i < 16; ++i)
    bytes[i] = static_cast<HPDF_BYTE>(digest_.value()[i / 8] >> (56 - 8 * (i % 8)));
  const HPDF_Array id = made(HPDF_Array_New(document_->mmgr));
  HPDF_Dict_Add(document_->trailer, "ID", id);
  for (int i = 0; i < 2; ++i) HPDF_Array_Add(id, made(HPDF_Binary_New(document_->mmgr, bytes, 16)));

  HPDF_SaveToStream(document_.get());
  // The library's errors stick, so one look at the end is enough.
  if (HPDF_GetError(document_.get()) != HPDF_OK)
    throw std::logic_error("internal error: the PDF library refused");
  std::string out;
  const HPDF_UINT buffers = HPDF_MemStream_GetBufCount(document_->stream);
  for (HPDF_UINT i = 0; i < buffers; ++i) {
    HPDF_UINT length = 0;
    const HPDF_BYTE* data = HPDF_MemStream_GetBufPtr(document_->stream, i, &length);
    out.append(reinterpret_cast<const char*>(data), length);
  }
  return out;
}

}  // namespace pdf
