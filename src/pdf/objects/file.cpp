// libharu keeps the objects, numbers them and writes the cross-reference table; what is in them is ours. Its
// own text, font, image and metadata functions are slower, cannot tag, and crash on damaged input.
#include "pdf/objects/file.h"

#include "pdf/objects/deflate.h"
#include "pdf/objects/notation.h"
#include "pdf/objects/packed.h"

#include <hpdf.h>
#include <hpdf_doc.h>
#include <hpdf_objects.h>
#include <hpdf_pages.h>
#include <hpdf_streams.h>

#include <new>
#include <stdexcept>

namespace pdf {
namespace {

/// What stands in an object besides what the library adds.
struct Raw {
  std::string entries;
  bool isStream = false;
  std::string own;        // data of this file only
  std::string_view data;  // of the stream
  HPDF_Stream to = nullptr;
};

void put(HPDF_Stream stream, std::string_view data) {
  HPDF_Stream_Write(stream, reinterpret_cast<const HPDF_BYTE*>(data.data()),
                    static_cast<HPDF_UINT>(data.size()));
}

HPDF_STATUS writeEntries(HPDF_Dict dictionary, HPDF_Stream stream) {
  auto& raw = *static_cast<Raw*>(dictionary->attr);
  raw.to = stream;
  put(stream, raw.entries);
  return HPDF_OK;
}

// The library's own streams copy all data byte by byte, twice, and need an object for their length.
HPDF_STATUS writeData(HPDF_Dict dictionary) {
  const auto& raw = *static_cast<const Raw*>(dictionary->attr);
  if (!raw.isStream) return HPDF_OK;
  put(raw.to, "\nstream\n");
  put(raw.to, raw.data);
  put(raw.to, "\nendstream");
  return HPDF_OK;
}

void freeRaw(HPDF_Dict dictionary) { delete static_cast<Raw*>(dictionary->attr); }

/// Makes a dictionary of the library print raw entries after its own.
Raw& setEntries(HPDF_Dict dictionary, std::string entries) {
  if (dictionary->attr) throw std::logic_error("internal error: PDF entries are set twice");
  auto* raw = new Raw;
  raw->entries = std::move(entries);
  dictionary->attr = raw;
  dictionary->write_fn = writeEntries;
  dictionary->after_write_fn = writeData;
  dictionary->free_fn = freeRaw;
  return *raw;
}

bool isStream(HPDF_Dict dictionary) {
  return dictionary->write_fn == writeEntries && static_cast<const Raw*>(dictionary->attr)->isStream;
}

template <class T>
T* made(T* object) {
  if (!object) throw std::bad_alloc();
  return object;
}

HPDF_Dict dictionaryOf(Object object) { return static_cast<HPDF_Dict>(object.handle); }

HPDF_STATUS append(HPDF_Stream stream, const HPDF_BYTE* data, HPDF_UINT size) {
  static_cast<std::string*>(stream->attr)->append(reinterpret_cast<const char*>(data), size);
  return HPDF_OK;
}

}  // namespace

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
  return {dictionary, dictionary->header.obj_id & 0x00FFFFFF};
}

void File::fill(Object dictionary, std::string entries) {
  digest_.add(entries);
  setEntries(dictionaryOf(dictionary), std::move(entries));
}

Object File::addDictionary(std::string entries) {
  const Object dictionary = reserve();
  fill(dictionary, std::move(entries));
  return dictionary;
}

Object File::addStream(std::string entries, std::string_view data, Packing packing) {
  const Object stream = reserve();
  digest_.add(data);
  digest_.add(entries);
  if (packing != Packing::AsIs) entries += "/Filter /FlateDecode\n";
  Raw& raw = setEntries(dictionaryOf(stream), std::move(entries));
  raw.isStream = true;
  if (packing == Packing::Deflate) raw.own = deflated(data);
  if (packing == Packing::AsIs) raw.own = data;
  raw.data = packing == Packing::Deflated ? data : raw.own;
  raw.entries += "/Length " + std::to_string(raw.data.size()) + "\n";
  return stream;
}

Object File::addPage(const PageParts& parts) {
  const Object content = addStream("", parts.content);
  std::string entries = "/Type /Page\n/Parent " +
                        std::to_string(document_->root_pages->header.obj_id & 0x00FFFFFF) +
                        " 0 R\n/MediaBox [0 0 " + number(parts.size.w) + " " + number(parts.size.h) +
                        "]\n/Contents " + reference(content) + "\n/Resources " + reference(parts.resources) +
                        "\n/StructParents " + std::to_string(parts.structParents) + "\n/Tabs /S\n";
  if (!parts.annotations.empty()) {
    entries += "/Annots [";
    for (const Object& annotation : parts.annotations) entries += reference(annotation) + " ";
    entries += "]\n";
  }
  const Object page = addDictionary(std::move(entries));
  auto* const kids =
      static_cast<HPDF_Array>(HPDF_Dict_GetItem(document_->root_pages, "Kids", HPDF_OCLASS_ARRAY));
  HPDF_Array_Add(kids, page.handle);
  dictionaryOf(page)->header.obj_class |= HPDF_OSUBCLASS_PAGE;  // by this the library counts them
  return page;
}

void File::setCatalogue(std::string entries) { fill({document_->catalog, 1}, std::move(entries)); }

void File::setInformation(std::string entries) { fill({document_->info, 1}, std::move(entries)); }

std::string File::save(Objects objects) { return objects == Objects::Packed ? packed() : plain(); }

std::string File::plain() {
  const HPDF_Array id = made(HPDF_Array_New(document_->mmgr));
  HPDF_Dict_Add(document_->trailer, "ID", id);
  std::string name = identifier();
  for (int i = 0; i < 2; ++i)
    HPDF_Array_Add(id, made(HPDF_Binary_New(document_->mmgr, reinterpret_cast<HPDF_BYTE*>(name.data()),
                                            static_cast<HPDF_UINT>(name.size()))));
  std::string out;
  document_->stream = made(HPDF_CallbackWriter_New(document_->mmgr, append, &out));
  HPDF_SaveToStream(document_.get());
  checkErrors();
  return out;
}

// The library writes each object; it has no streams of objects.
std::string File::packed() {
  std::string text;
  text.reserve(200'000);
  document_->stream = made(HPDF_CallbackWriter_New(document_->mmgr, append, &text));
  std::vector<std::size_t> ends;
  std::vector<ObjectText> objects;
  for (HPDF_UINT i = 1; const HPDF_XrefEntry entry = HPDF_Xref_GetEntry(document_->xref, i); ++i) {
    HPDF_Obj_WriteValue(entry->obj, document_->stream, nullptr);
    objects.push_back({{}, isStream(static_cast<HPDF_Dict>(entry->obj))});
    ends.push_back(text.size());
  }
  checkErrors();
  for (std::size_t i = 0; i < objects.size(); ++i) {
    const std::size_t begin = i == 0 ? 0 : ends[i - 1];
    objects[i].syntax = std::string_view(text).substr(begin, ends[i] - begin);
  }
  const auto numberOf = [](HPDF_Dict dictionary) {
    return std::to_string(dictionary->header.obj_id & 0x00FFFFFF) + " 0 R";
  };
  const std::string id = literal(identifier());
  return packedFile(objects, "/Root " + numberOf(document_->catalog) + "/Info " + numberOf(document_->info) +
                                 "/ID[" + id + id + "]");
}

std::string File::identifier() const {
  std::string bytes;
  for (std::size_t i = 0; i < 16; ++i)
    bytes += static_cast<char>(digest_.value()[i / 8] >> (56 - 8 * (i % 8)));
  return bytes;
}

/// The library's errors stick, so one look at the end is enough.
void File::checkErrors() const {
  if (HPDF_GetError(document_.get()) != HPDF_OK)
    throw std::logic_error("internal error: the PDF library refused");
}

}  // namespace pdf
