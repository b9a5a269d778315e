// The file being written: numbered objects of raw PDF syntax, pages and the final bytes. The only place that
// knows the PDF library.
#pragma once

#include "pdf/objects/digest.h"
#include "typeset/page.h"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

struct _HPDF_Doc_Rec;

namespace pdf {

/// A numbered object; nothing when default made.
struct Object {
  void* handle = nullptr;
  unsigned number = 0;
  explicit operator bool() const { return handle != nullptr; }
};

/// '12 0 R'
std::string reference(Object object);

enum class Packing {
  Deflate,   // now
  Deflated,  // the data are, and stay where they are until save()
  AsIs
};

/// How objects that are no streams are kept: all in one deflated stream, or one by one, as PDF/A-1 wants.
enum class Objects { Packed, Plain };

class File {
 public:
  File();

  /// A dictionary whose entries ('/Key value ...') are filled in later, at the latest before save().
  Object reserve();
  void fill(Object dictionary, std::string entries);
  Object addDictionary(std::string entries);
  Object addStream(std::string entries, std::string_view data, Packing packing = Packing::Deflate);

  struct PageParts {
    typeset::Size size;
    std::string content;  // operators
    Object resources;
    std::vector<Object> annotations;
    int structParents = 0;
  };
  Object addPage(const PageParts& parts);

  /// Entries of the document catalogue and of the information dictionary; each once.
  void setCatalogue(std::string entries);
  void setInformation(std::string entries);

  /// The bytes, with an identifier computed from everything that was added.
  std::string save(Objects objects = Objects::Packed);

 private:
  std::string packed();
  std::string plain();
  std::string identifier() const;
  void checkErrors() const;

  std::unique_ptr<_HPDF_Doc_Rec, void (*)(_HPDF_Doc_Rec*)> document_;
  Digest digest_;
};

}  // namespace pdf
