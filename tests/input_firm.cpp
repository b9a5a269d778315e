// Mistakes in the firm's file, and files that are not there.
#include "content_folder.h"

using fixture::Bad;
using fixture::checkEach;
using fixture::Folder;
namespace fs = std::filesystem;

TEST_CASE("mistakes in a firm's file are told with the whole message") {
  const Bad table[] = {
      {"firm.yaml", "logo: logo.png", "logo: sign.png",
       "firm.yaml:9:7: error: logo: 'sign.png' cannot be read: there is no such file\n"
       "  hint: the path starts at the firm's folder\n"},
      {"firm.yaml", "accent: '#7a4522'", "accent: '#c89a6a'",
       "firm.yaml:10:19: error: colours.accent: text in this colour has a contrast of 2.53:1 on white\n"
       "  hint: it needs 4.5:1 (WCAG 2.1, 1.4.3); the nearest that passes is '#92704d'\n"},
      {"firm.yaml", "accent: '#7a4522'", "acent: '#7a4522'",
       "firm.yaml:10:11: error: colours: 'acent' is not a known key here; did you mean 'accent'?\n"
       "  hint: known: ink, soft, accent, tint, rule, wood, wall, white, warning, danger, caution or "
       "notice\n"},
      {"firm.yaml", "accent: '#7a4522'", "accent: brown",
       "firm.yaml:10:19: error: colours.accent: 'brown' is not a colour\n"
       "  hint: write it in quotes like '#7a4522'\n"},
      {"firm.yaml", "accent: '#7a4522'", "accent: #7a4522",
       "firm.yaml:10:10: error: this { is not closed, or a comma is missing after it\n"
       "  hint: values with # , { } [ ] in them need quotes\n"},
      {"firm.yaml", "  nz:", "  mz:",
       "firm.yaml:14:3: error: rates.mz: 'mz' is not a known region\n"
       "  hint: known: nz or us\n"},
      {"firm.yaml", "margin: 25 %", "margin: 250 %",
       "firm.yaml:14:102: error: rates.nz.margin: '250 %' is out of range\n"
       "  hint: allowed: from 0 % to below 95 %\n"},
      {"firm.yaml", "labour_cost: 42.00", "labour_cost: -42.00",
       "firm.yaml:14:21: error: rates.nz.labour_cost: '-42.00' is out of range\n"
       "  hint: amounts are not below zero\n"},
      {"firm.yaml", "logo: logo.png", "payment_days: 200",
       "firm.yaml:9:15: error: payment_days: '200' is out of range\n"
       "  hint: allowed: from 0 to 120\n"},
      {"firm.yaml", "logo: logo.png", "price: {show: area}",
       "firm.yaml:9:15: error: price.show: 'area' is not a known way to show the price; did you mean "
       "'areas'?\n"
       "  hint: known: areas, work or lump\n"},
      {"firm.yaml", "logo: logo.png", "delivery: {days: 90}",
       "firm.yaml:9:18: error: delivery.days: '90' is out of range\n"
       "  hint: allowed: from 0 to 60\n"},
      {"firm.yaml", "logo: logo.png",
       "ten_years: {discount_rate: 30 %, sand_after: {new: 8, weathered: 3, sanded: 0, oiled: 6}, sanding: "
       "[60, 40]}",
       "firm.yaml:9:12: error: ten_years: 'coats' is missing\n"
       "  hint: write it like coats: 2\n"
       "firm.yaml:9:28: error: ten_years.discount_rate: '30 %' is out of range\n"
       "  hint: allowed: from 0 % to 25 %\n"
       "firm.yaml:9:46: error: ten_years.sand_after: 'film' is missing\n"
       "  hint: write it like film: 8\n"
       "firm.yaml:9:77: error: ten_years.sand_after.sanded: '0' is out of range\n"
       "  hint: allowed: from 1 to 50 years\n"
       "firm.yaml:9:105: error: ten_years.sanding[2]: grit 40 is not finer than 60\n"
       "  hint: list the grits from coarse to fine\n"},
      {"firm.yaml", "travel: 95.00, ", "",
       "firm.yaml:14:7: error: rates.nz: 'travel' is missing\n"
       "  hint: write it like travel: 95.00\n"},
      {"firm.yaml", "registrations: [GST 000-000-000]", "registrations: {mz: [GST 000-000-000]}",
       "firm.yaml:7:17: error: registrations.mz: 'mz' is not a known region\n"
       "  hint: known: nz or us\n"},
  };
  checkEach(table, [](Folder& f) { f.firm(); });
}

TEST_CASE("registrations stand for every region, or by region") {
  Folder all, each;
  CHECK(all.firm().registrations.at("") == std::vector<std::string>{"GST 000-000-000"});
  each.edit("firm.yaml", "registrations: [GST 000-000-000]",
            "registrations: {nz: [GST 000-000-000], us: []}");
  const auto registrations = each.firm().registrations;
  CHECK(registrations.at("nz") == std::vector<std::string>{"GST 000-000-000"});
  CHECK(registrations.at("us").empty());
  CHECK(each.said() == "");
}

TEST_CASE("files and folders that are not there are told") {
  Folder folder;
  fs::remove(folder.path() / "tools.yaml");
  fs::remove_all(folder.path() / "products");
  folder.content();
  fs::remove(folder.path() / "firm.yaml");
  folder.firm();
  fs::remove(folder.path() / "theme.yaml");
  folder.theme();
  CHECK(folder.said() ==
        "products: error: no .yaml files in this folder\n"
        "  hint: copy those that come with planksheaf\n"
        "tools.yaml: error: the file cannot be read: there is no such file\n"
        "  hint: check that it is there and may be read\n"
        "products: error: no .yaml files in this folder\n"
        "  hint: copy those that come with planksheaf\n"
        "tools.yaml: error: the file cannot be read: there is no such file\n"
        "  hint: check that it is there and may be read\n"
        "firm.yaml: error: the firm's file cannot be read: there is no such file\n"
        "  hint: 'planksheaf firm DIR' writes one to fill in\n"
        "theme.yaml: error: the theme's file cannot be read: there is no such file\n"
        "  hint: check that it may be read\n");
}
