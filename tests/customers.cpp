// The firm's customers: tables and address books as programs write them, and who is meant by a word.
#include "input/content/customers.h"
#include "content_folder.h"
#include "input_fixture.h"

#include <sys/stat.h>

using fixture::edited;
using fixture::Folder;

namespace {

struct Book {
  Folder folder;
  base::Diagnostics messages;
  std::vector<model::KnownCustomer> read() { return input::readCustomers(folder.path().string(), messages); }
  std::string said() const {
    std::string all;
    for (base::Diagnostic d : messages.all()) {
      d.pos.file = fixture::fs::path(d.pos.file).lexically_relative(folder.path()).string();
      all += base::format(d);
    }
    return all;
  }
};

model::KnownCustomer someone(const std::string& key, const std::string& name, int line) {
  model::KnownCustomer known;
  known.key = key;
  known.customer.name = name;
  known.pos = {"firm/customers.csv", line, 0};
  return known;
}

/// The customer of a good job that says this of him, and all that is said about it.
std::pair<model::Customer, std::string> customerOf(const std::string& words) {
  auto content = fixture::content();
  content.customers = {someone("thorley", "Inga Thorley", 2), someone("", "Ben O'Farrell", 3),
                       someone("", "Ann Thorley-Smith", 4), someone("", "Ann Marsh", 5)};
  content.customers[0].customer.email = "inga@coldwater.example";
  content.customers[1].customer.email = "ben at home";
  base::Diagnostics messages;
  const auto job =
      input::readJob(edited(fixture::goodJob, "{name: Inga Thorley, email: inga@coldwater.example}", words),
                     "job.yaml", content, messages);
  std::string all;
  for (const auto& d : messages.all()) all += base::format(d);
  return {job.customer, all};
}

}  // namespace

// RFC 4180 (2005), section 2: quotes around cells, doubled inside, line breaks and commas in them.
TEST_CASE(
    "a table of customers is read by its header, whatever the order of its columns and the sign between") {
  Book book;
  book.folder.write(
      "customers.csv",
      "\xEF\xBB\xBFPhone,Name,Remark,Address,Town,Key,E-Mail\r\n"
      "03 555 0191,\"Thorley, Inga\",\"said \"\"soon\"\"\",\"Landing Cottage\r\n12 Shore Road\",Coldwater,"
      "thorley,inga@coldwater.example\r\n"
      "\r\n"
      ",Ben Marsh\r\n");
  const auto read = book.read();
  CHECK(book.said() == "");
  REQUIRE(read.size() == 2);
  CHECK(read[0].key == "thorley");
  CHECK(read[0].customer.name == "Thorley, Inga");
  CHECK(read[0].customer.address ==
        std::vector<std::string>{"Landing Cottage", "12 Shore Road", "Coldwater"});
  CHECK(read[0].customer.phone == "03 555 0191");
  CHECK(read[0].customer.email == "inga@coldwater.example");
  CHECK(read[0].pos.line == 2);
  CHECK(read[1].customer.name == "Ben Marsh");
  CHECK(read[1].pos.line == 5);
  for (const std::string between : {";", "\t"}) {
    book.folder.write("customers.csv", "name" + between + "phone\nBen Marsh, senior" + between + "1\n");
    CHECK(book.read().at(0).customer.name == "Ben Marsh, senior");
  }
}

// RFC 6350 (2011), 3.2: a line that begins with a blank goes on with the one before; 3.4: \n \, \; \\ in
// values; 6.3.1: the seven parts of ADR; 6.2.1, 6.4.1, 6.4.2: FN, TEL, EMAIL. RFC 2426 (1998) writes them
// alike.
TEST_CASE("an address book of vCards is read") {
  Book book;
  book.folder.write(
      "customers.vcf",
      "BEGIN:VCARD\r\nVERSION:4.0\r\nN:Thorley;Inga;;;\r\nFN:Inga Thor\r\n ley\r\nNICKNAME:inga\r\n"
      "item1.TEL;TYPE=home;VALUE=uri:tel:+64-3-555-0191\r\nTEL:03 555 0000\r\n"
      "ADR;TYPE=home:;;12 Shore Road\\nRear\\, left;Coldwater;;9382;New Zealand\r\n"
      "EMAIL:inga@coldwater.example\r\nEND:VCARD\r\n"
      "begin:vcard\r\nversion:3.0\r\nfn:Ben\\; Marsh\r\nend:vcard\r\n"
      "BEGIN:VCARD\r\nEMAIL:nobody@home.example\r\nEND:VCARD\r\n");
  const auto read = book.read();
  CHECK(book.said() == "");
  REQUIRE(read.size() == 2);
  CHECK(read[0].key == "inga");
  CHECK(read[0].customer.name == "Inga Thorley");
  CHECK(read[0].customer.phone == "+64-3-555-0191");
  CHECK(read[0].customer.email == "inga@coldwater.example");
  CHECK(read[0].customer.address ==
        std::vector<std::string>{"12 Shore Road", "Rear, left", "Coldwater", "9382", "New Zealand"});
  CHECK(read[1].customer.name == "Ben; Marsh");
}

TEST_CASE("a book of customers that is none is told so") {
  const auto saidOf = [](const std::string& text) {
    Book book;
    book.folder.write("customers.csv", text);
    book.read();
    return book.said();
  };
  const std::string noName =
      "customers.csv:1:1: error: no column is named 'name'\n"
      "  hint: begin with a line like key,name,address,town,phone,email\n";
  CHECK(saidOf("") == noName);
  CHECK(saidOf("a,b\n1,2\n") == noName);
  CHECK(saidOf("name\nJos\xE9\n") ==
        "customers.csv: error: this is not UTF-8 text\n  hint: save the file as UTF-8\n");
  CHECK(saidOf("name\n" + std::string(5 << 20, 'x')) ==
        "customers.csv: error: the customers cannot be read: they are more than 4 MiB\n"
        "  hint: check that it is the right file and may be read\n");
  Book book;
  ::mkfifo((book.folder.path() / "customers.vcf").c_str(), 0600);
  fixture::fs::create_symlink("/dev/zero", book.folder.path() / "customers.csv");
  CHECK(book.read().empty());
  const std::string device =
      ": error: the customers cannot be read: it is a device or a pipe, not a file\n"
      "  hint: check that it is the right file and may be read\n";
  CHECK(book.said() == "customers.csv" + device + "customers.vcf" + device);
  CHECK(saidOf("name,key\n\"Ben, x\n").empty());  // a quote that never closes: one customer
}

TEST_CASE("a job names its customer by key, by name, or by a word that only he has") {
  const auto named = [](const std::string& words) {
    const auto [customer, said] = customerOf(words);
    CHECK(said == "");
    return customer.name;
  };
  CHECK(named("Thorley") == "Inga Thorley");
  CHECK(named("ann marsh") == "Ann Marsh");
  CHECK(named("marsh") == "Ann Marsh");
  CHECK(named("smith") == "Ann Thorley-Smith");
  CHECK(named("INGA") == "Inga Thorley");
  CHECK(customerOf("{known: thorley, uninvited: true, phone: 03 555 0100}").first.isUninvited);
  CHECK(customerOf("{known: thorley, phone: 03 555 0100}").first.email == "inga@coldwater.example");
  CHECK(customerOf("{known: thorley, phone: 03 555 0100}").first.phone == "03 555 0100");
}

TEST_CASE("a customer nobody knows, that may be two, or that cannot be printed is told") {
  const std::string book =
      "  hint: they are listed in 'customers.csv' or 'customers.vcf' in the firm's folder\n";
  CHECK(customerOf("thorly").second ==
        "job.yaml:3:11: error: customer: 'thorly' is not one of the firm's customers; did you mean "
        "'thorley'?\n" +
            book);
  CHECK(customerOf("{known: mar}").second ==
        "job.yaml:3:19: error: customer.known: 'mar' is not one of the firm's customers\n" + book);
  CHECK(customerOf("Ann").second ==
        "job.yaml:3:11: error: customer: 'Ann' is more than one customer: Ann Thorley-Smith "
        "(customers.csv:4), Ann "
        "Marsh (customers.csv:5)\n"
        "  hint: give the whole name, or a key of its own\n");
  CHECK(customerOf("Ben O'Farrell").second ==
        "firm/customers.csv:3: error: 'ben at home' is not an e-mail address\n"
        "  hint: write it like name@place.example\n");
  CHECK(
      fixture::messagesOf(
          edited(fixture::goodJob, "{name: Inga Thorley, email: inga@coldwater.example}", "Ann")) ==
      "job.yaml:3:11: error: customer: 'Ann' is not one of the firm's customers\n"
      "  hint: put a 'customers.csv' or 'customers.vcf' into the firm's folder, or write customer: {name: A. "
      "Customer}\n");
}
