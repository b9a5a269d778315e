#include "app/report/csv.h"

namespace app {
namespace {

std::string csvField(const std::string& field) {
  const bool isNumber = field.find_first_not_of("0123456789.", 1) == std::string::npos;
  const bool isFormula = field.find_first_of("=+-@\t\r\n") == 0 && !(field[0] == '-' && isNumber);
  const std::string s = (isFormula ? "'" : "") + field;
  if (s.find_first_of(",\"\r\n") == std::string::npos) return s;
  std::string quoted = "\"";
  for (const char c : s) quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + "\"";
}

}  // namespace

std::string csvLine(const std::vector<std::string>& fields) {
  std::string line;
  for (const auto& field : fields) line += (&field == &fields.front() ? "" : ",") + csvField(field);
  return line + "\r\n";
}

}  // namespace app
