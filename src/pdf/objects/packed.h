// The bytes of a file whose small objects share one deflated stream: ISO 32000-1:2008, 7.5.7 and 7.5.8.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace pdf {

/// An object as PDF syntax, without 'obj' and 'endobj'. The first of a list is object 1.
struct ObjectText {
  std::string_view syntax;
  bool isStream = false;  // stands for itself; what is none goes into the shared stream
};

/// Streams, the stream of all other objects, and the stream of cross-references with the entries of the
/// trailer ('/Root 1 0 R ...').
std::string packedFile(const std::vector<ObjectText>& objects, const std::string& trailer);

}  // namespace pdf
