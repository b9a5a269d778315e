// What a template says of the document it is.
#pragma once

#include <cstddef>
#include <string>

namespace model {

/// Decides which facts a document may print.
enum class Reader {
  Customer,  // no cost, margin, office note or path
  Crew,      // no money at all
  Office     // everything
};

/// What a job must have before a document says anything.
enum class DocumentNeeds { Nothing, Coats, Invoices };

inline std::string nameOf(Reader reader) {
  switch (reader) {
    case Reader::Customer:
      return "customer";
    case Reader::Crew:
      return "crew";
    case Reader::Office:
      return "office";
  }
  return {};
}

struct DocumentKind {
  Reader reader = Reader::Customer;
  std::string heading;        // over its pages, in its language: 'Crew safety'
  std::size_t mostPages = 0;  // more than these are set closer; 0 = as many as it takes
  std::size_t morePages = 0;  // besides, of a job of more than six areas
  bool isByDay = false;       // two for what stands under one title, the rest filled alike
  bool hasLetterhead = false;
  bool hasSmallTables = false;
  bool hasLargeReading = false;                  // never below 10.5 pt, in any look
  DocumentNeeds needs = DocumentNeeds::Nothing;  // left out of a pack without it
};

}  // namespace model
