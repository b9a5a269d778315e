#include "fuzz/targets.h"

#include <algorithm>
#include <array>

namespace fuzz {
namespace {

struct Piece {
  std::size_t at = 0, size = 0;
};

/// Up to 'most', evenly; 0 where that is 0.
std::size_t upTo(std::size_t most, std::mt19937& random) { return random() % (most + 1); }

/// Some bytes, or some whole lines.
Piece pieceOf(const std::string& bytes, std::mt19937& random) {
  constexpr std::size_t longest = 64;
  const auto at = upTo(bytes.size(), random);
  const auto end = std::min(at + 1 + upTo(longest, random), bytes.size());
  if (random() % 2 == 0) return {at, end - at};
  const auto lineOf = [&](std::size_t i) { return i == 0 ? 0 : bytes.rfind('\n', i - 1) + 1; };
  const auto from = lineOf(at), next = std::min(bytes.find('\n', end), bytes.size() - 1) + 1;
  return bytes.empty() ? Piece{} : Piece{from, next - from};
}

std::string takenFrom(const std::string& bytes, std::mt19937& random) {
  const auto piece = pieceOf(bytes, random);
  return bytes.substr(piece.at, piece.size);
}

/// The number at a place, or the first after it, becomes one that few expect.
void changeNumber(std::string& bytes, std::mt19937& random) {
  constexpr std::array odd = {"0",          "-1",
                              "1e308",      "99999999999999999999",
                              "0.000001",   "nan",
                              "256",        "1/0",
                              "2147483648", "-9223372036854775808",
                              "0x10",       "",
                              "1",          "00000001",
                              "1,000",      "60000",
                              "2",          "100"};
  constexpr auto digits = "0123456789";
  const auto at = bytes.find_first_of(digits, upTo(bytes.size(), random));
  if (at == std::string::npos) return;
  const auto end = std::min(bytes.find_first_not_of(digits, at), bytes.size());
  bytes.replace(at, end - at, odd[upTo(odd.size() - 1, random)]);
}

void change(std::string& bytes, const std::vector<std::string>& samples, std::mt19937& random) {
  const auto piece = pieceOf(bytes, random);
  const auto& other = samples[upTo(samples.size() - 1, random)];
  switch (random() % 6) {
    case 0:
      bytes.erase(piece.at, piece.size);
      break;
    case 1:
      bytes.insert(upTo(bytes.size(), random), bytes.substr(piece.at, piece.size));
      break;
    case 2:
      bytes.insert(piece.at, takenFrom(other, random));
      break;
    case 3:
      bytes.replace(piece.at, piece.size, takenFrom(other, random));
      break;
    case 4:
      changeNumber(bytes, random);
      break;
    case 5:
      if (piece.size > 0) bytes[piece.at] = static_cast<char>(random());
      break;
  }
}

}  // namespace

std::string changed(std::string bytes, const std::vector<std::string>& samples, std::mt19937& random) {
  do change(bytes, samples, random);
  while (random() % 3 == 0);
  return bytes;
}

}  // namespace fuzz
