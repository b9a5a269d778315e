#include "pdf/objects/packed.h"

#include "pdf/objects/deflate.h"

#include <cstdint>

namespace pdf {
namespace {

/// Where an object is: ISO 32000-1:2008, table 18.
struct Place {
  enum class Kind : std::uint8_t { Free = 0, InFile = 1, InStream = 2 } kind = Kind::Free;
  std::size_t at = 0;     // offset in the file, or number of the stream
  std::size_t index = 0;  // in the stream
};

constexpr int widths[] = {1, 4, 2};  // bytes of the fields of a row: /W and /Columns below
constexpr std::size_t rowSize = widths[0] + widths[1] + widths[2];

void addBytes(std::string& out, std::size_t value, int count) {
  for (int shift = 8 * (count - 1); shift >= 0; shift -= 8) out += static_cast<char>(value >> shift & 0xFF);
}

/// Each row less the row above, with its filter's number in front: rows are much alike (PNG Specification
/// (Third Edition), 9.2).
std::string differences(const std::string& rows) {
  std::string out;
  out.reserve(rows.size() + rows.size() / rowSize);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (i % rowSize == 0) out += '\2';
    out += static_cast<char>(rows[i] - (i < rowSize ? '\0' : rows[i - rowSize]));
  }
  return out;
}

void addObject(std::string& out, std::size_t number, std::string_view syntax) {
  out += std::to_string(number) + " 0 obj\n";
  out += syntax;
  out += "\nendobj\n";
}

std::string streamText(const std::string& entries, const std::string& data) {
  return "<<" + entries + "/Filter/FlateDecode/Length " + std::to_string(data.size()) + ">>\nstream\n" +
         data + "\nendstream";
}

std::string crossReferences(const std::vector<Place>& places, const std::string& trailer) {
  std::string rows;
  for (const Place& place : places) {
    addBytes(rows, static_cast<std::size_t>(place.kind), widths[0]);
    addBytes(rows, place.at, widths[1]);
    addBytes(rows, place.index, widths[2]);
  }
  return streamText("/Type/XRef/Size " + std::to_string(places.size()) +
                        "/W[1 4 2]/DecodeParms<</Predictor 12/Columns 7>>" + trailer,
                    deflated(differences(rows)));
}

}  // namespace

std::string packedFile(const std::vector<ObjectText>& objects, const std::string& trailer) {
  const std::size_t shared = objects.size() + 1, references = shared + 1;  // numbers of the two streams
  std::string out = "%PDF-1.7\n%\xB5\xB6\xB7\xB8\n";
  std::vector<Place> places(1);  // object 0 is free
  places[0].index = 0xFFFF;
  std::string index, texts;
  std::size_t count = 0;
  for (const ObjectText& object : objects) {
    const std::size_t number = places.size();
    if (object.isStream) {
      places.push_back({Place::Kind::InFile, out.size(), 0});
      addObject(out, number, object.syntax);
      continue;
    }
    places.push_back({Place::Kind::InStream, shared, count++});
    index += std::to_string(number) + " " + std::to_string(texts.size()) + " ";
    texts += object.syntax;
    texts += '\n';
  }
  places.push_back({Place::Kind::InFile, out.size(), 0});
  addObject(out, shared,
            streamText("/Type/ObjStm/N " + std::to_string(count) + "/First " + std::to_string(index.size()),
                       deflated(index + texts)));
  places.push_back({Place::Kind::InFile, out.size(), 0});
  const std::size_t start = out.size();
  addObject(out, references, crossReferences(places, trailer));
  return out + "startxref\n" + std::to_string(start) + "\n%%EOF\n";
}

}  // namespace pdf
