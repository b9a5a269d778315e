// Information dictionary, XMP and output intent: PDF/A-2 (ISO 19005-2:2011), 6.2.3 and 6.6. The only date is
// the document's own, at midnight UTC.
#include "pdf/metadata.h"

#include "base/date.h"
#include "base/letters.h"
#include "pdf/objects/deflate.h"
#include "pdf/objects/notation.h"

#include <fstream>
#include <iterator>
#include <stdexcept>

namespace pdf {
namespace {

constexpr const char* producer = "planksheaf";
constexpr const char* uaAddress = "http://www.aiim.org/pdfua/ns/id/";
constexpr const char* profileFile = "/usr/share/color/icc/sRGB.icc";  // Debian package icc-profiles-free

/// Deflated, once in the process.
const std::string& colourProfile() {
  static const std::string profile = [] {
    std::ifstream in(profileFile, std::ios::binary);
    std::string bytes{std::istreambuf_iterator<char>(in), {}};
    if (bytes.size() < 128 || bytes.substr(36, 4) != "acsp")
      throw std::runtime_error(std::string("cannot read the colour profile '") + profileFile +
                               "' of package icc-profiles-free");
    return deflated(bytes, Effort::Thorough);
  }();
  return profile;
}

/// Text for XML: escaped, and without what XML 1.0 does not allow.
std::string xml(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t from = at;
    const char32_t letter = base::nextLetter(text, at);
    if (letter == U'&') out += "&amp;";
    else if (letter == U'<') out += "&lt;";
    else if (letter == U'>') out += "&gt;";
    else if (letter < 0x20) out += ' ';
    else if (letter == 0xFFFD || letter == 0xFFFE || letter == 0xFFFF) out += "\uFFFD";
    else out += text.substr(from, at - from);
  }
  return out;
}

std::string description(const char* prefix, const char* address, const std::string& properties) {
  return std::string("<rdf:Description rdf:about=\"\" xmlns:") + prefix + "=\"" + address + "\">" +
         properties + "</rdf:Description>\n";
}

std::string element(const std::string& name, const std::string& content) {
  return "<" + name + ">" + content + "</" + name + ">";
}

std::string inLanguage(const char* name, const std::string& text) {
  if (text.empty()) return "";
  return element(name, element("rdf:Alt", "<rdf:li xml:lang=\"x-default\">" + xml(text) + "</rdf:li>"));
}

/// Says what PDF/UA's identifier is: PDF/A knows no properties but those described (ISO
/// 19005-2:2011, 6.6.2.3).
std::string extension() {
  const auto resource = [](const std::string& list, const std::string& content) {
    return element("rdf:" + list, "<rdf:li rdf:parseType=\"Resource\">" + content + "</rdf:li>");
  };
  const std::string part = element("pdfaProperty:name", "part") +
                           element("pdfaProperty:valueType", "Integer") +
                           element("pdfaProperty:category", "internal") +
                           element("pdfaProperty:description", "Part of ISO 14289 that the file keeps to");
  const std::string schema =
      element("pdfaSchema:schema", "PDF/UA identification") + element("pdfaSchema:namespaceURI", uaAddress) +
      element("pdfaSchema:prefix", "pdfuaid") + element("pdfaSchema:property", resource("Seq", part));
  return description("pdfaExtension",
                     "http://www.aiim.org/pdfa/ns/extension/\""
                     " xmlns:pdfaSchema=\"http://www.aiim.org/pdfa/ns/schema#\""
                     " xmlns:pdfaProperty=\"http://www.aiim.org/pdfa/ns/property#",
                     element("pdfaExtension:schemas", resource("Bag", schema)));
}

/// Only what the tests check is claimed: PDF/A by preflight, PDF/UA-1 by tests/ua_check.py over every
/// document of the examples.
std::string claims(Variant variant) {
  return description("pdfaid", "http://www.aiim.org/pdfa/ns/id/",
                     element("pdfaid:part", variant == Variant::A1b ? "1" : "2") +
                         element("pdfaid:conformance", "B")) +
         description("pdfuaid", uaAddress, element("pdfuaid:part", "1")) + extension();
}

std::string xmp(const typeset::Document& d, Variant variant) {
  std::string core = element("dc:format", "application/pdf") + inLanguage("dc:title", d.title) +
                     inLanguage("dc:description", d.subject);
  if (!d.author.empty()) core += element("dc:creator", element("rdf:Seq", element("rdf:li", xml(d.author))));
  if (!d.language.empty())
    core += element("dc:language", element("rdf:Bag", element("rdf:li", xml(d.language))));
  std::string made = element("xmp:CreatorTool", producer);
  if (!d.date.empty()) {
    const std::string time = d.date + "T00:00:00+00:00";
    for (const char* name : {"xmp:CreateDate", "xmp:ModifyDate", "xmp:MetadataDate"})
      made += element(name, time);
  }
  return "<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
         "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">"
         "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n" +
         description("dc", "http://purl.org/dc/elements/1.1/", core) +
         description("xmp", "http://ns.adobe.com/xap/1.0/", made) +
         description("pdf", "http://ns.adobe.com/pdf/1.3/", element("pdf:Producer", producer)) +
         claims(variant) + "</rdf:RDF></x:xmpmeta>\n<?xpacket end=\"w\"?>";
}

std::string information(const typeset::Document& d) {
  std::string out;
  const auto add = [&](const char* key, const std::string& text) {
    if (!text.empty()) out += std::string("/") + key + " " + words(text) + "\n";
  };
  add("Title", d.title);
  add("Author", d.author);
  add("Subject", d.subject);
  add("Creator", producer);
  add("Producer", producer);
  if (d.date.empty()) return out;
  if (!base::parseDate(d.date)) throw std::logic_error("internal error: the document's date is not a day");
  const std::string time =
      "(D:" + d.date.substr(0, 4) + d.date.substr(5, 2) + d.date.substr(8, 2) + "000000+00'00')\n";
  return out + "/CreationDate " + time + "/ModDate " + time;
}

}  // namespace

std::string addMetadata(File& file, const typeset::Document& document, Variant variant) {
  file.setInformation(information(document));
  const Object metadata =
      file.addStream("/Type /Metadata\n/Subtype /XML\n", xmp(document, variant), Packing::AsIs);
  const Object profile = file.addStream("/N 3\n/Alternate /DeviceRGB\n", colourProfile(), Packing::Deflated);
  const Object intent = file.addDictionary(
      "/Type /OutputIntent\n/S /GTS_PDFA1\n/OutputConditionIdentifier (sRGB)\n/Info (sRGB IEC61966-2.1)\n"
      "/DestOutputProfile " +
      reference(profile) + "\n");
  std::string entries = "/Metadata " + reference(metadata) + "\n/OutputIntents [" + reference(intent) +
                        "]\n/ViewerPreferences <</DisplayDocTitle true>>\n";
  if (!document.language.empty()) entries += "/Lang " + words(document.language) + "\n";
  return entries;
}

}  // namespace pdf
