#include "forecast/json_value.h"

#include "forecast/steps.h"
#include "forecast/times.h"
#include "forecast/units.h"

#include <cmath>

namespace forecast {
namespace {

constexpr auto saveAgain = "save the file again as the service gives it";

std::string asWritten(const nlohmann::json& value) {
  std::string s = value.is_structured()
                      ? (value.is_array() ? "a list" : "a group")
                      : value.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
  constexpr std::size_t most = 40;
  if (s.size() <= most) return s;
  return s.substr(0, most).append("...");
}

}  // namespace

JsonValue JsonValue::operator[](const std::string& key) const {
  const std::string path = path_.empty() ? key : path_ + "." + key;
  if (value_ == nullptr || !value_->is_object()) return {nullptr, path};
  const auto found = value_->find(key);
  return {found == value_->end() ? nullptr : &*found, path};
}

std::vector<std::string> JsonValue::keys() const {
  std::vector<std::string> keys;
  if (isObject())
    for (const auto& item : value_->items()) keys.push_back(item.key());
  return keys;
}

std::vector<JsonValue> JsonValue::items() const {
  if (!isGiven() || !value_->is_array()) refuse("a list is missing");
  std::vector<JsonValue> items;
  for (const auto& each : *value_)
    items.push_back({&each, path_ + "[" + std::to_string(items.size() + 1) + "]"});
  return items;
}

std::string JsonValue::text() const {
  if (!isGiven()) refuse("is missing");
  if (!value_->is_string()) refuse("'" + asWritten(*value_) + "' is no text");
  return value_->get<std::string>();
}

std::optional<double> JsonValue::number() const {
  if (!isGiven()) return {};
  if (!value_->is_number() || !std::isfinite(value_->get<double>()))
    refuse("'" + asWritten(*value_) + "' is not a number");
  return value_->get<double>();
}

std::chrono::minutes JsonValue::span() const {
  const auto span = parseDuration(text());
  if (!span) refuse("'" + text() + "' is not a span of time");
  return *span;
}

void JsonValue::refuse(std::string message, std::string hint) const {
  throw Refusal{path_, std::move(message), std::move(hint)};
}

void JsonValue::refuse(std::string message) const { refuse(std::move(message), saveAgain); }

std::optional<double> readElement(Element element, const JsonValue& number, const std::string& unit) {
  const auto raw = number.number();
  if (!raw) return {};
  const auto known = unitOf(element, unit);
  if (!known) number.refuse("'" + unit + "' is not a unit we know for " + nameOf(element));
  const double value = known->of(*raw);
  if (const auto range = rangeMissed(element, value))
    number.refuse("'" + asWritten(nlohmann::json(*raw)) + "' " + unit + " is out of range",
                  "allowed: " + *range);
  return value;
}

std::optional<model::Coordinates> readPoint(const JsonValue& coordinates) {
  if (!coordinates.isGiven()) return {};
  const auto at = coordinates.items();
  return at.size() < 2 ? std::nullopt : placeAt(at[1].number(), at[0].number());
}

Time readTime(const JsonValue& stamp) {
  const auto parsed = parseStamp(stamp.text());
  if (!parsed || !parsed->offset) stamp.refuse("'" + stamp.text() + "' is not a time with its zone");
  return parsed->clock - *parsed->offset;
}

}  // namespace forecast
