#include "base/currency.h"

#include <string_view>

namespace base {
namespace {

/// Currencies by the digits of their smallest coin. ISO 4217 list one, written from memory; where system
/// libraries differ (IQD, HUF, MGA as they are used in cash) the standard's figure stands.
struct Digits {
  int digits;
  std::string_view codes;
};

constexpr Digits currencies[] = {
    {0, "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF"},
    {2,
     "AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD "
     "CDF CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD "
     "GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA "
     "MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR "
     "RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD "
     "TZS UAH USD USN UYU UZS VED VES WST XCD XCG YER ZAR ZMW ZWG"},
    {3, "BHD IQD JOD KWD LYD OMR TND"},
    {4, "CLF UYW"},
};

}  // namespace

std::optional<int> currencyDigits(const std::string& code) {
  if (code.size() != 3 || code.find(' ') != std::string::npos) return std::nullopt;
  for (const auto& [digits, codes] : currencies) {
    if (codes.find(code) != std::string_view::npos) return digits;
  }
  return std::nullopt;
}

}  // namespace base
