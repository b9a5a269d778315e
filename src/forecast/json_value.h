// A value of a JSON file that knows its path, for messages.
#pragma once

#include "forecast/series.h"

#include <nlohmann/json.hpp>

namespace forecast {

class JsonValue {
 public:
  JsonValue(const nlohmann::json* value, std::string path) : value_(value), path_(std::move(path)) {}

  /// Something other than null is there.
  bool isGiven() const { return value_ != nullptr && !value_->is_null(); }
  bool isObject() const { return isGiven() && value_->is_object(); }
  const std::string& path() const { return path_; }

  /// The value of a key; none where this is no object or has no such key.
  JsonValue operator[](const std::string& key) const;
  /// Keys of an object, in order of the alphabet.
  std::vector<std::string> keys() const;
  // These throw Refusal for anything else; where nothing is there all but 'number' do.
  std::vector<JsonValue> items() const;
  std::string text() const;
  std::optional<double> number() const;
  std::chrono::minutes span() const;  // like 'PT3H'

  [[noreturn]] void refuse(std::string message, std::string hint) const;
  [[noreturn]] void refuse(std::string message) const;

 private:
  const nlohmann::json* value_;
  std::string path_;
};

/// A number in some unit as one of ours; nothing where it is missing. Throws Refusal for what no weather has.
std::optional<double> readElement(Element element, const JsonValue& number, const std::string& unit);

/// [longitude, latitude, ...], as GeoJSON has it (RFC 7946, 2016). Nothing where it is no place.
std::optional<model::Coordinates> readPoint(const JsonValue& coordinates);

/// A stamp with its zone. Throws Refusal.
Time readTime(const JsonValue& stamp);

// Each of these reads the file of one service; which one is told by the keys at its top.
Series readOpenMeteo(const JsonValue& root);
Series readMetNorway(const JsonValue& root);
Series readGridpoint(const JsonValue& root);   // of the US National Weather Service
Series readMetOffice(const JsonValue& root);   // of the United Kingdom
Series readMetService(const JsonValue& root);  // of New Zealand

}  // namespace forecast
